import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { PROJECT_ROOT } from '../../src/reference/load-tables.js';

/** Published figures that only checks use: no plan needs them, so that they are not in `seeds/`. */
export const figures = <T>(file: string): T =>
  JSON.parse(readFileSync(join(PROJECT_ROOT, 'test', 'published', 'figures', file), 'utf8')) as T;
