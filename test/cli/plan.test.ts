import { afterAll, beforeAll, describe, expect, it, jest } from '@jest/globals';
import { execFile } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { formatShortDate, formatValue } from '../../shared/units/format.js';
import type { BatchPlan } from '../../shared/plan/batch-plan.js';
import { PROJECT_ROOT } from '../../src/reference/load-tables.js';
import { openApp, type TestApp } from '../support/app.js';
import { changed, LEFT_OUT } from '../support/bad-values.js';
import { databases } from '../support/databases.js';
import { exampleOrder } from '../support/orders.js';

jest.setTimeout(60_000);

const ORDER = 'seeds/order.example.jsonc';

interface Output {
  readonly code: number;
  readonly stdout: string;
  readonly stderr: string;
}

/** Runs the terminal as people do. */
function plan(...args: string[]): Promise<Output> {
  return new Promise((resolve) => {
    execFile(
      'npm',
      ['run', '--silent', 'plan', '--', ...args],
      { cwd: PROJECT_ROOT, maxBuffer: 50_000_000, env: { ...process.env, NODE_OPTIONS: '' } },
      (error, stdout, stderr) =>
        resolve({ code: error ? Number(error.code ?? 1) : 0, stdout, stderr }),
    );
  });
}

describe('planning in the terminal', () => {
  let app: TestApp;
  let folder: string;
  let fromApi: string;
  let example: BatchPlan;

  beforeAll(async () => {
    app = await openApp(databases({})[0]!);
    folder = mkdtempSync(join(tmpdir(), 'broodfold-orders-'));
    fromApi = (await app.api.post('/api/plans/preview').send(exampleOrder()).expect(200)).text;
    example = JSON.parse(fromApi) as BatchPlan;
  });
  afterAll(async () => {
    await app.close();
    rmSync(folder, { recursive: true });
  });

  /** Writes an order to a file of its own. */
  const fileOf = (name: string, text: string): string => {
    const file = join(folder, name);
    writeFileSync(file, text);
    return file;
  };

  /** Expects words on stderr, nothing on stdout, exit code 1, and no trace of the program. */
  const expectRefusal = ({ code, stdout, stderr }: Output, ...words: (string | RegExp)[]): void => {
    for (const each of words) expect(stderr).toMatch(each);
    expect(stderr).not.toMatch(/^\s+at /m);
    expect(stderr).not.toMatch(/Error:/);
    expect({ code, stdout }).toEqual({ code: 1, stdout: '' });
  };

  it('prints exactly what the API returns with --json', async () => {
    const { code, stdout, stderr } = await plan(ORDER, '--json');
    expect(stderr).toBe('');
    expect(stdout).toBe(`${fromApi}\n`);
    expect(code).toBe(0);
  });

  it('prints the key numbers and dates of the plan', async () => {
    const { code, stdout } = await plan(ORDER);
    expect(code).toBe(0);
    const reader = exampleOrder().farm;
    const { birds, heat, feed, leaving, bill, outdoors } = example;
    for (const quantity of [
      birds.toOrder,
      birds.atEnd,
      heat!.need,
      heat!.installed,
      feed.total,
      outdoors.moveOut!,
      leaving!.on,
      leaving!.packedAll,
      bill.total,
    ]) {
      const line = stdout.split('\n').find((each) => each.includes(`│ ${quantity.label} `));
      expect(line).toContain(formatValue(quantity.value, quantity.unit, reader));
    }
    for (const task of example.tasks.tasks) expect(stdout).toContain(formatShortDate(task.start));
    for (const issue of example.issues) expect(stdout).toContain(issue.text);
    expect(stdout).not.toMatch(/NaN|undefined|Infinity|\[object/);
  });

  it('opens the numbers about lamps with --explain lamp', async () => {
    const { code, stdout } = await plan(ORDER, '--explain', 'lamp');
    expect(code).toBe(0);
    expect(stdout).toMatch(/^Lamps needed: 5 {2}\[/m);
    expect(stdout).toContain('Source: ');
    expect(stdout).not.toMatch(/^Birds to order/m);
    expect(stdout).not.toMatch(/NaN|undefined/);
  });

  it('opens every number with --explain', async () => {
    const { code, stdout } = await plan(ORDER, '--explain');
    expect(code).toBe(0);
    expect(stdout.split('\n\n').length).toBeGreaterThan(100);
  });

  it('says so when no number has the word', async () => {
    const { code, stdout } = await plan(ORDER, '--explain', 'zebra');
    expect(code).toBe(0);
    expect(stdout).toContain('"zebra"');
  });

  it('ranks the arrival weeks of a span with --arrivals', async () => {
    const { code, stdout } = await plan(ORDER, '--arrivals', '2027-03-01', '2027-09-30');
    expect(code).toBe(0);
    const ranks = [...stdout.matchAll(/^│ (\d+) /gm)].map((match) => Number(match[1]));
    expect(ranks).toEqual(Array.from({ length: 31 }, (_, i) => i + 1)); // 3 March to 29 September
  });

  it('says why not a week with --why-not', async () => {
    const { code, stdout } = await plan(
      ...[ORDER, '--arrivals', '2027-03-01', '2027-09-30', '--why-not', '2027-03-10'],
    );
    expect(code).toBe(0);
    expect(stdout).toMatch(/^Wed 10 Mar.* has \d+ points, .* has \d+\. \S/);
  });

  it('shows how to use it without an order', async () => {
    const { code, stdout } = await plan();
    expect(code).toBe(2);
    expect(stdout).toContain(ORDER);
  });

  it('refuses a file that is not there', async () => {
    expectRefusal(await plan(join(folder, 'none.jsonc')), 'none.jsonc', 'There is no such file');
  });

  it('refuses a folder', async () => {
    expectRefusal(await plan(folder), 'cannot be read');
  });

  it('names the line of JSON that is not well-formed', async () => {
    const file = fileOf('broken.jsonc', '{\n  // an order\n  "farm": {\n    "name" "Thistledown"\n}\n');
    expectRefusal(await plan(file), 'broken.jsonc line 4', 'quote, comma or bracket');
  });

  it('refuses an empty file', async () => {
    expectRefusal(await plan(fileOf('empty.jsonc', '')), 'empty.jsonc line 1');
  });

  it('names every field that is wrong, what was given and what is allowed', async () => {
    const body = changed(exampleOrder(), 'batch.wantedBirds', -75);
    const file = fileOf('negative.json', JSON.stringify(changed(body, 'farm.units', 'imperial')));
    expectRefusal(await plan(file), 'batch.wantedBirds is -75', 'from 1 to 5000', 'farm.units is "imperial"');
  });

  it('names a strain that no table has', async () => {
    const file = fileOf('dodo.json', JSON.stringify(changed(exampleOrder(), 'batch.strainId', 'dodo')));
    expectRefusal(await plan(file), 'batch.strainId is "dodo"', 'fast-meat');
  });

  it.each([
    ['nothing', LEFT_OUT],
    ['an empty list', []],
  ])('refuses %s for a batch', async (_what, value) => {
    const file = fileOf('batch.json', JSON.stringify(changed(exampleOrder(), 'batch', value)));
    expectRefusal(await plan(file), 'batch');
  });

  it('refuses a list in place of an order', async () => {
    expectRefusal(await plan(fileOf('list.json', '[]')), 'one object in braces');
  });

  it('refuses an option that it does not know', async () => {
    expectRefusal(await plan(ORDER, '--yaml'), '--yaml', '--json');
  });

  it('refuses a span without its end', async () => {
    expectRefusal(await plan(ORDER, '--arrivals', '2027-03-01'), 'to is ""', 'not a calendar date');
  });
});
