import { describe, expect, it } from '@jest/globals';
import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { PROJECT_ROOT } from '../../../src/reference/load-tables.js';
import { keptPlans } from './kept-plans.js';

const FILE = join(PROJECT_ROOT, 'test', 'plan', 'kept', 'kept-plans.json');

/**
 * What many farms are told, kept from before the house was put in order: rebuilding it must not
 * change a number. It proves nothing about the world; `test/published/` does that.
 *
 *   KEEP_PLANS=1 npm test -- kept-plans    keeps today's results; say in the commit what changed
 */
describe('plans of many farms', () => {
  const now = keptPlans();

  if (process.env['KEEP_PLANS'] === '1') {
    writeFileSync(FILE, `${JSON.stringify(now)}\n`);
  }
  const kept = JSON.parse(readFileSync(FILE, 'utf8')) as typeof now;

  it('are of the same farms as those kept', () => {
    expect(Object.keys(now)).toEqual(Object.keys(kept));
    expect(Object.keys(kept).length).toBeGreaterThan(30);
  });

  it.each(Object.keys(kept))('keep their numbers: %s', (name) => {
    expect(now[name]).toEqual(kept[name]);
  });
});
