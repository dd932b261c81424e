import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { PROJECT_ROOT } from '../../src/reference/load-tables.js';

/** The program as `npm run build` made it, started as a user starts it, on a store of its own. */
export interface BuiltProgram {
  readonly url: string;
  readonly stop: () => Promise<void>;
}

/** @param clockFile the program's clock is so many milliseconds ahead as the file says */
export async function startBuilt(clockFile?: string): Promise<BuiltProgram> {
  const dataDir = mkdtempSync(join(tmpdir(), 'broodfold-page-'));
  const { DATABASE_URL: _database, ...env } = process.env;
  const clock =
    clockFile === undefined
      ? {}
      : {
          CLOCK_SHIFT_FILE: clockFile,
          NODE_OPTIONS: '--import=./test/support/shifted-clock.mjs',
        };
  const child = spawn(process.execPath, ['dist/src/main.js'], {
    cwd: PROJECT_ROOT,
    env: { ...env, ...clock, DATA_DIR: dataDir, PORT: '0' },
    stdio: ['ignore', 'pipe', 'inherit'],
  });
  const url = await new Promise<string>((resolve, reject) => {
    let said = '';
    child.stdout.on('data', (chunk: Buffer) => {
      said += chunk.toString();
      const found = /http:\/\/\S+/.exec(said)?.[0];
      if (found) resolve(found.replace(/\/$/, ''));
    });
    child.once('exit', (code) =>
      reject(new Error(`The program ended with ${code} before it was ready: ${said}`)),
    );
  });
  return {
    url,
    stop: async () => {
      const gone = once(child, 'exit');
      child.kill();
      await gone;
      rmSync(dataDir, { recursive: true, force: true });
    },
  };
}
