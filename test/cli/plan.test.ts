import { afterAll, beforeAll, describe, expect, it, jest } from '@jest/globals';
import { execFile } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { parse } from 'jsonc-parser';
import type { Batch } from '../../shared/farm/batch.js';
import type { Farm } from '../../shared/farm/farm.js';
import { formatDate } from '../../shared/units/dates.js';
import { formatValue } from '../../shared/units/format.js';
import type { BatchPlan } from '../../shared/plan/batch-plan.js';
import { PROJECT_ROOT, readSeed } from '../../src/reference/load-tables.js';
import { compiled } from '../support/compiled.js';
import { openApp, type TestApp } from '../support/app.js';
import { changed, LEFT_OUT } from '../support/bad-values.js';
import { databases } from '../support/databases.js';

jest.setTimeout(60_000);

const FARM = 'seeds/farm.example.jsonc';
const example = (): ExampleFarm =>
  parse(readSeed('farm.example.jsonc'), undefined, { allowTrailingComma: true }) as ExampleFarm;

interface ExampleFarm {
  readonly farm: Farm;
  readonly batches: readonly Batch[];
}
const PACKAGE = JSON.parse(readFileSync(join(PROJECT_ROOT, 'package.json'), 'utf8')) as {
  readonly scripts: { readonly plan: string };
};

interface Output {
  readonly code: number;
  readonly stdout: string;
  readonly stderr: string;
}

/** Runs the terminal as people do. */
const planByNpm = (...args: string[]): Promise<Output> =>
  run('npm', ['run', '--silent', 'plan', '--', ...args]);

/** The command that npm runs, without the wait for npm and for the compiler. */
const [node, ...script] = compiled(PACKAGE.scripts.plan) as [string, ...string[]];
const plan = (...args: string[]): Promise<Output> => run(node, [...script, ...args]);

function run(command: string, args: readonly string[]): Promise<Output> {
  const options = {
    cwd: PROJECT_ROOT,
    maxBuffer: 50_000_000,
    env: { ...process.env, NODE_OPTIONS: '' },
  };
  return new Promise((resolve) => {
    execFile(command, args, options, (error, stdout, stderr) =>
      resolve({ code: error ? Number(error.code ?? 1) : 0, stdout, stderr }),
    );
  });
}

describe('planning in the terminal', () => {
  let app: TestApp;
  let folder: string;
  let fromApi: string;
  let planned: BatchPlan;

  beforeAll(async () => {
    app = await openApp(databases({})[0]!);
    folder = mkdtempSync(join(tmpdir(), 'broodfold-orders-'));
    const order = { ...example(), batch: example().batches[0]! };
    fromApi = (await app.api.post('/api/plans/preview').send(order).expect(200)).text;
    planned = JSON.parse(fromApi) as BatchPlan;
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
    const { code, stdout, stderr } = await planByNpm(FARM, 'batch', '--json');
    expect(stderr).toBe('');
    expect(stdout).toBe(`${fromApi}\n`);
    expect(code).toBe(0);
  });

  it('prints the key numbers and dates of the plan', async () => {
    const { code, stdout } = await plan(FARM, 'batch');
    expect(code).toBe(0);
    const reader = { ...example().farm, today: planned.today };
    const { birds, heat, feed, leaving, bill, outdoors } = planned;
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
    for (const task of planned.tasks.tasks)
      expect(stdout).toContain(formatDate(task.start, reader));
    const unwrapped = stdout.replace(/\s+/g, ' ');
    for (const issue of planned.issues) expect(unwrapped).toContain(issue.text);
    for (const line of stdout.split('\n')) expect(line.length).toBeLessThanOrEqual(100);
    expect(stdout).not.toMatch(/NaN|undefined|Infinity|\[object/);
  });

  it('opens the numbers about lamps with --explain lamp', async () => {
    const { code, stdout } = await plan(FARM, 'batch', '--explain=lamp');
    expect(code).toBe(0);
    expect(stdout).toMatch(/^Lamps needed: 3 {2}\[/m);
    expect(stdout).toContain('Source: ');
    expect(stdout).toMatch(/^ {2}What moves it most: \S.*\n {2}Known better: \S/m);
    expect(stdout).not.toMatch(/^Birds to order/m);
    expect(stdout).not.toMatch(/NaN|undefined/);
  });

  it('opens every number with --explain', async () => {
    const { code, stdout } = await plan(FARM, 'batch', '--explain');
    expect(code).toBe(0);
    expect(stdout.split('\n\n').length).toBeGreaterThan(100);
  });

  it('prints a mixing sheet of the farm’s own ingredients, and says whether it beats the bag', async () => {
    const { stdout } = await plan(FARM, 'mix', 'meat-chickens', 'grower', '100');
    expect(stdout).toMatch(/^Meat chickens: grower, 3 to 6 weeks, 100 lb/);
    expect(stdout).toMatch(/│ [\d.]+ lb +│ Cracked corn +│ \$/);
    expect(stdout).toMatch(/ oz +│ Feed salt +│ \$[\d.]+ +│ stir first/);
    expect(stdout).toMatch(/a bag of Meat bird\s+grower\s+does\s+\(\$23\.00\)/);
    for (const line of stdout.split('\n')) expect(line.length).toBeLessThanOrEqual(100);
    const json = await plan(FARM, 'mix', '--json');
    expect(JSON.parse(json.stdout)).toHaveProperty('mix.lines.0.name', 'Cracked corn');
  });

  it('refuses birds, an age and an amount that cannot be mixed for', async () => {
    const refused = async (...words: string[]): Promise<string> => {
      const { code, stderr } = await plan(FARM, 'mix', ...words);
      expect(code).toBe(1);
      return stderr;
    };
    expect(await refused('cows')).toMatch(/^birdsId is "cows", but must be one of: meat-chickens/);
    expect(await refused('ducks', 'layer')).toMatch(/^stageId is "layer", but must be one of/);
    expect(await refused('ducks', 'starter', '0')).toMatch(/^batchKg is "0"/);
    expect(await refused('ducks', 'starter', '-5')).toMatch(/^batchKg is "-5", but must be from 1/);
  });

  it('names what was typed where a number is meant', async () => {
    const { code, stderr } = await plan(FARM, 'compare', 'birds', '25', 'abc', '-3');
    expect(code).toBe(1);
    expect(stderr.trim().split('\n')).toEqual([
      expect.stringMatching(/^choices\.1\.wantedBirds is "abc", which is not a number\. /),
      expect.stringMatching(/^choices\.2\.wantedBirds is -3, but must be from 1 to 5000\. /),
    ]);
  });

  it('says so when no number has the word', async () => {
    const { code, stdout } = await plan(FARM, 'batch', '--explain=zebra');
    expect(code).toBe(0);
    expect(stdout).toContain('"zebra"');
  });

  it('ranks the arrival weeks of a span with --arrivals', async () => {
    const { code, stdout } = await plan(FARM, 'weeks', '2027-03-01', '2027-09-30');
    expect(code).toBe(0);
    const ranks = [...stdout.matchAll(/^│ (\d+) /gm)].map((match) => Number(match[1]));
    expect(ranks).toEqual(Array.from({ length: 31 }, (_, i) => i + 1)); // 3 March to 29 September
  });

  it('says why not a week with --why-not', async () => {
    const { code, stdout } = await plan(
      ...[FARM, 'weeks', '2027-03-01', '2027-09-30', '--why-not', '2027-03-10'],
    );
    expect(code).toBe(0);
    expect(stdout).toMatch(/^Wed, Mar 10.* is a .*week.*; .* is the best[^.]*\. \S/);
  });

  it('shows how to use it without an order', async () => {
    const { code, stdout } = await plan();
    expect(code).toBe(2);
    expect(stdout).toContain(FARM);
  });

  it('refuses what is not a file that can be read', async () => {
    const [none, aFolder] = await Promise.all([plan(join(folder, 'none.jsonc')), plan(folder)]);
    expectRefusal(none, /none\.jsonc cannot be read\. There is no such file\./);
    expectRefusal(aFolder, 'cannot be read. Give the path');
  });

  it('names the line of JSON that is not well-formed', async () => {
    const text = '{\n  // an order\n  "farm": {\n    "name" "Thistledown"\n}\n';
    const [broken, empty] = await Promise.all([
      plan(fileOf('broken.jsonc', text)),
      plan(fileOf('empty.jsonc', '')),
    ]);
    expectRefusal(
      broken,
      'broken.jsonc line 4 cannot be read: a colon is expected there.',
      'quote, comma or bracket',
    );
    expectRefusal(empty, 'empty.jsonc line 1');
  });

  it('names every field that is wrong, what was given and what is allowed', async () => {
    const negative = changed(example(), 'batches.0.wantedBirds', -75);
    const both = changed(negative, 'batches.0.strainId', 'dodo');
    const [shape, strain, together] = await Promise.all([
      plan(fileOf('negative.json', JSON.stringify(changed(negative, 'farm.units', 'imperial')))),
      plan(fileOf('dodo.json', JSON.stringify(changed(example(), 'batches.0.strainId', 'dodo')))),
      plan(fileOf('both.json', JSON.stringify(both))),
    ]);
    expectRefusal(together, 'batches.0.wantedBirds is -75', 'batches.0.strainId is "dodo"');
    expectRefusal(
      shape,
      'batches.0.wantedBirds is -75',
      'from 1 to 5000',
      'farm.units is "imperial"',
    );
    expectRefusal(strain, 'batches.0.strainId is "dodo"', 'fast-meat');
  });

  it('refuses to plan a batch of a farm that has none, or not that one', async () => {
    const file = fileOf('none.json', JSON.stringify(changed(example(), 'batches', LEFT_OUT)));
    expectRefusal(await plan(file, 'batch'), 'batches is missing');
    expectRefusal(await plan(FARM, 'batch', 'Geese'), 'batch is "Geese"', 'Pullets');
  });

  it('refuses an empty list in place of a batch', async () => {
    const file = fileOf('list.json', JSON.stringify(changed(example(), 'batches.0', [])));
    expectRefusal(await plan(file), 'batches.0');
  });

  it('refuses a list in place of an order', async () => {
    expectRefusal(await plan(fileOf('orders.json', '[]')), 'one object in braces');
  });

  it('refuses an option that it does not know, or that lacks a value', async () => {
    const [unknown, short] = await Promise.all([
      plan(FARM, '--yaml'),
      plan(FARM, 'weeks', '2027-03-01'),
    ]);
    expectRefusal(unknown, '--yaml', '--json');
    expectRefusal(short, 'to is ""', 'not a calendar date');
  });
});
