import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { parse } from 'jsonc-parser';
import { PROJECT_ROOT } from '../../src/reference/load-tables.js';

/** An invented farm that is sent whole, or an order of one batch on it. */
export const readExample = (name: 'order' | 'pasture' | 'household'): unknown =>
  parse(
    readFileSync(join(PROJECT_ROOT, 'test', 'support', 'examples', `${name}.jsonc`), 'utf8'),
    [],
    { allowTrailingComma: true },
  );
