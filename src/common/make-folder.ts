import { existsSync, mkdirSync, statSync } from 'node:fs';
import { dirname } from 'node:path';

/**
 * Makes a folder and those it lies in. Node's own way of doing so tries without end where a folder
 * that is there takes no other, as /proc does.
 *
 * @param mode of the folder itself, when it is not there yet
 * @throws what the system says, when a folder cannot be made
 */
export function makeFolder(folder: string, mode = 0o777): void {
  try {
    mkdirSync(folder, { mode });
  } catch (error) {
    const { code } = error as { code?: string };
    if (code === 'EEXIST' && statSync(folder).isDirectory()) return;
    const around = dirname(folder);
    if (code !== 'ENOENT' || existsSync(around)) throw error;
    makeFolder(around);
    makeFolder(folder, mode);
  }
}
