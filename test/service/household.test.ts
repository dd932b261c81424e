import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import { execFile } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import ICAL from 'ical.js';
import { parse } from 'jsonc-parser';
import type { WorkPlan } from '../../shared/plan/work/work-plan.js';
import { PROJECT_ROOT, readSeed } from '../../src/reference/load-tables.js';
import { openApp, type TestApp } from '../support/app.js';
import { compiled } from '../support/compiled.js';
import { anyDatabase } from '../support/databases.js';
import { expectProblem } from '../support/problem.js';

type Household = Record<string, unknown> & {
  jobs: Record<string, unknown>[];
  handovers: Record<string, unknown>[];
  batches: Record<string, unknown>[];
};
const EXAMPLE = 'seeds/farm.example.jsonc';
const example = (): Household =>
  parse(readSeed('farm.example.jsonc'), undefined, { allowTrailingComma: true }) as Household;

const { scripts } = JSON.parse(readFileSync(join(PROJECT_ROOT, 'package.json'), 'utf8')) as {
  scripts: { plan: string };
};
const [node, ...script] = compiled(scripts.plan) as [string, ...string[]];
const terminal = (...args: string[]): Promise<{ code: number; stdout: string; stderr: string }> =>
  new Promise((resolve) => {
    execFile(
      node,
      [...script, ...args],
      { cwd: PROJECT_ROOT, maxBuffer: 50_000_000, env: { ...process.env, NODE_OPTIONS: '' } },
      (error, stdout, stderr) =>
        resolve({ code: error ? Number(error.code ?? 1) : 0, stdout, stderr }),
    );
  });

describe('a household that is sent whole', () => {
  let app: TestApp;
  let folder: string;
  beforeAll(async () => {
    app = await openApp(anyDatabase());
    folder = mkdtempSync(join(tmpdir(), 'household-'));
  });
  afterAll(async () => {
    await app.close();
    rmSync(folder, { recursive: true });
  });

  const preview = (order: object) => app.api.post('/api/plans/work').send(order);

  it('is planned the same over HTTP and in the terminal, and nothing is saved', async () => {
    const before = await app.contents();
    const { body } = await preview(example()).expect(200);
    const { stdout, code } = await terminal(EXAMPLE, 'work', '--json');
    expect(code).toBe(0);
    expect(JSON.parse(stdout)).toEqual(body);
    expect(await app.contents()).toBe(before);
    const plan = body as WorkPlan;
    expect(plan.jobs.some(({ key }) => key === 'own/beds')).toBe(true);
    expect(plan.weather.forecastDays).toBe(4);
  });

  it('prints its next days, its sheet a page a day, its chances and a calendar that parses', async () => {
    const work = await terminal(EXAMPLE);
    for (const heading of ['Today and the next three days', 'Hours by week', 'Work plan'])
      expect(work.stdout).toContain(`\n${heading}\n`);
    const sheet = await terminal(EXAMPLE, 'sheet', '1');
    expect(sheet.stdout.split('\f')).toHaveLength(4); // 11 to 14 May
    expect(sheet.stdout).toContain('Call Vet: 555 0100');
    const chances = await terminal(EXAMPLE, 'chances');
    expect(chances.stdout).toContain('Played through 300 years of weather');
    const calendar = await terminal(EXAMPLE, 'calendar');
    const parsed = new ICAL.Component(ICAL.parse(calendar.stdout) as unknown[] as never);
    expect(parsed.getAllSubcomponents('vevent').length).toBeGreaterThan(30);
  });

  it('names a hand-over that is not in the file, and an option that is none', async () => {
    const sheet = await terminal(EXAMPLE, 'sheet', '2');
    expect(sheet).toMatchObject({ code: 1, stdout: '' });
    expect(sheet.stderr).toContain('sheet is "2", but must be from 1 to 1');
    expect((await terminal(EXAMPLE, 'weather')).stderr).toContain('chances');
  });

  it.each([
    [
      'a job whose last day comes before it is due',
      'jobs.0.noUseAfter',
      (h: Household) => {
        h.jobs[0]!['noUseAfter'] = '2027-04-01';
      },
    ],
    [
      'jobs that wait for each other',
      'jobs.0.waitsForId',
      (h: Household) => {
        h.jobs[0]!['waitsForId'] = 'plant';
      },
    ],
    [
      'a hand-over to nobody',
      'handovers.0.sitter',
      (h: Household) => {
        delete h.handovers[0]!['personId'];
      },
    ],
    [
      'a strain that no table has',
      'batches.0.strainId',
      (h: Household) => {
        h.batches[0]!['strainId'] = 'phoenix';
      },
    ],
    [
      'a forecast colder than any',
      'forecast.0.minC',
      (h: Household) => {
        h['forecast'] = [{ date: '2027-04-05', minC: -200, maxC: 3 }];
      },
    ],
    [
      'a soil that no table has',
      'farm.gardenSoilId',
      (h: Household) => {
        (h['farm'] as Record<string, unknown>)['gardenSoilId'] = 'moon';
      },
    ],
  ] as const)('is refused with %s', async (_, field, change) => {
    const household = example();
    change(household);
    const { problems } = expectProblem(await preview(household), 400);
    expect(problems!.map((p) => p.field)).toContain(field);
  });

  it('is refused in the terminal by the same field', async () => {
    const household = example();
    household.jobs[0]!['noUseAfter'] = '2027-04-01';
    const file = join(folder, 'household.json');
    writeFileSync(file, JSON.stringify(household));
    const { code, stderr } = await terminal(file);
    expect([code, stderr.includes('jobs.0.noUseAfter')]).toEqual([1, true]);
  });
});
