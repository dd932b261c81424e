import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import type { BatchPlan } from '../../shared/plan/batch-plan.js';
import { openApp, type TestApp } from '../support/app.js';
import { dailyCsv, syntheticDays } from '../support/daily-weather.js';
import { anyDatabase } from '../support/databases.js';
import { newBatch } from '../support/factories.js';
import { inDays, saveFarm, type SavedFarm } from '../support/orders.js';
import { expectFieldProblem, expectProblem, type ProblemPattern } from '../support/problem.js';
import { startWeatherStub, type WeatherStub } from '../support/weather-stub.js';

const DAYS = syntheticDays('2020-01-01', '2023-12-31');
const GOOD = dailyCsv(DAYS);
const GOOD_F = dailyCsv(DAYS, 'f');

/** The good file with one line changed; line 1 is the header, line 2 is 1 January 2020. */
const withLine = (line: number, text: string): string =>
  GOOD.split('\n')
    .map((each, i) => (i === line - 1 ? text : each))
    .join('\n');

const BAD: readonly (readonly [what: string, csv: string, problem: ProblemPattern])[] = [
  [
    'a header without units',
    GOOD.replace('tmin_c,tmax_c', 'tmin,tmax'),
    { field: 'csv.header', code: 'unreadable', given: 'date, tmin, tmax' },
  ],
  [
    'a header with both units',
    GOOD.replace('date,tmin_c,tmax_c', 'date,tmin_c,tmin_f,tmax_c'),
    { field: 'csv.header', code: 'unreadable' },
  ],
  [
    'a header without a date',
    GOOD.replace('date', 'when'),
    { field: 'csv.header', code: 'unreadable' },
  ],
  ['no header', GOOD.split('\n').slice(1).join('\n'), { field: 'csv.header', code: 'unreadable' }],
  [
    'Fahrenheit under a column of Celsius',
    GOOD_F.replace('tmin_f,tmax_f', 'tmin_c,tmax_c'),
    { field: expect.stringMatching(/^csv\.(header|row\d+\.t(min|max)_c)$/) },
  ],
  [
    'Celsius under a column of Fahrenheit',
    GOOD.replace('tmin_c,tmax_c', 'tmin_f,tmax_f'),
    { field: 'csv.header', code: 'conflict' },
  ],
  [
    'a day twice',
    withLine(100, '2020-01-01,1,2'),
    { field: 'csv.row100.date', code: 'conflict', given: '2020-01-01' },
  ],
  [
    'a day in the future',
    withLine(1462, `${inDays(2)},1,2`),
    { field: 'csv.row1462.date', code: 'out-of-bounds', given: inDays(2) },
  ],
  [
    'a quotation mark that is never closed',
    withLine(60, '"2020-02-29,1,2'),
    { field: 'csv.row60', code: 'unreadable' },
  ],
  [
    'a day that is no day',
    withLine(60, '2021-02-29,1,2'),
    { field: 'csv.row60.date', code: 'not-a-date', given: '2021-02-29' },
  ],
  [
    'a low above its high',
    withLine(3, '2020-01-02,9,4'),
    { field: 'csv.row3.tmin_c', code: 'out-of-bounds', given: '9', max: '4' },
  ],
  [
    'text for a low',
    withLine(50, '2020-02-19,cold,4'),
    { field: 'csv.row50.tmin_c', code: 'not-a-number', given: 'cold' },
  ],
  [
    'a high that is missing',
    withLine(50, '2020-02-19,-3,'),
    { field: 'csv.row50.tmax_c', code: 'not-a-number' },
  ],
  [
    'a high of 99 °C',
    withLine(50, '2020-02-19,-3,99'),
    { field: 'csv.row50.tmax_c', code: 'out-of-bounds', given: 99 },
  ],
  ['a high without its column', withLine(50, '2020-02-19,-3'), { field: 'csv.row50.tmax_c' }],
  [
    'less than three years',
    dailyCsv(DAYS.slice(0, 1094)),
    { field: 'csv.rows', code: 'out-of-bounds', given: 1094, min: 1095 },
  ],
  [
    'a header alone',
    'date,tmin_c,tmax_c\n',
    { field: 'csv.rows', code: 'out-of-bounds', given: 0 },
  ],
  ['prose', 'It was cold, and then it was warm.', { field: 'csv.header' }],
  ['nothing', '', { field: 'csv', code: 'missing' }],
  [
    'a bad line under a line of comment, counted as an editor counts',
    `# from the station in the yard\n${withLine(50, '2020-02-19,cold,4')}`,
    { field: 'csv.row51.tmin_c' },
  ],
];

describe.each([anyDatabase()])('weather from a file on $name', (database) => {
  let stub: WeatherStub;
  let app: TestApp;
  let farm: SavedFarm;

  beforeAll(async () => {
    stub = await startWeatherStub(10_000);
    app = await openApp(database, stub.settings);
    farm = await saveFarm(app);
  }, 60_000);
  afterAll(async () => {
    await app.close();
    await stub.close();
  });

  const put = (csv: string) =>
    app.api.put(`${farm.path}/weather/csv`).set('content-type', 'text/csv').send(csv);
  const plan = async (): Promise<BatchPlan> => {
    const batch = newBatch({ brooderId: farm.brooderId });
    const order = { farmId: farm.id, today: '2026-11-25', batch };
    return (await app.api.post('/api/plans/preview').send(order).expect(200)).body as BatchPlan;
  };
  const csvRows = () => app.rows('weather_days', { farmId: farm.id, kind: 'csv' });

  describe('that is good', () => {
    it('is kept day by day in °C, and used by plans', async () => {
      const { status, body } = await put(GOOD);
      expect(status).toBe(200);
      expect(body).toMatchObject({
        inUse: 'csv',
        csvDays: 1461,
        label: expect.stringContaining('4 years'),
      });
      const rows = await csvRows();
      expect(rows).toHaveLength(1461); // 2020 is a leap year
      expect(rows.map((row) => row['minC']).sort()).toEqual(DAYS.map((day) => day.minC).sort());
      expect((await plan()).weather).toMatchObject({ way: 'csv', years: 4 });
      expect((await plan()).outdoors.coldNight?.value).toEqual(expect.any(Number));
    });

    it('in °F gives the same plan', async () => {
      await put(GOOD).expect(200);
      const inC = await plan();
      await put(GOOD_F).expect(200);
      const inF = await plan();
      expect(inF.outdoors.moveOut).toEqual(inC.outdoors.moveOut);
      const rows = await csvRows();
      for (const [i, row] of rows.entries()) {
        if (i % 100 === 0) expect(Number(row['maxC'])).toBeLessThanOrEqual(60);
      }
      // A tenth of a degree Fahrenheit is 0.06 °C.
      const mean = (values: readonly number[]) => values.reduce((a, b) => a + b, 0) / values.length;
      const meanLow = mean(rows.map((row) => Number(row['minC'])));
      expect(Math.abs(meanLow - mean(DAYS.map((day) => day.minC)))).toBeLessThan(0.06);
    });

    it('replaces the file before it', async () => {
      await put(dailyCsv(DAYS.slice(0, 1200))).expect(200);
      expect(await csvRows()).toHaveLength(1200);
    });

    it('may hold its days in any order, and more columns', async () => {
      const [header, ...lines] = GOOD.split('\n');
      const shuffled = [
        `${header},prcp_mm,station`,
        ...lines.reverse().map((line) => `${line},1.5,yard`),
      ];
      await put(shuffled.join('\n')).expect(200);
      const rows = await csvRows();
      expect(rows).toHaveLength(1461);
      expect(new Set(rows.map((row) => row['rainMm']))).toEqual(new Set([1.5]));
    });

    it('may come from a spreadsheet: byte order mark, CRLF, semicolons, capitals', async () => {
      const csv = GOOD.replace('date,tmin_c,tmax_c', 'Date,Tmin_C,Tmax_C')
        .replaceAll(',', ';')
        .replaceAll('\n', '\r\n');
      await put(`\ufeff${csv}`).expect(200);
      expect(await csvRows()).toHaveLength(1461);
    });
  });

  describe('that is bad', () => {
    it.each(BAD)('is refused for %s, and nothing is imported', async (_what, csv, problem) => {
      const before = await app.contents();
      expectFieldProblem(await put(csv), problem);
      expect(await app.contents()).toBe(before);
    });

    it('names many rows at once, but not thousands', async () => {
      const [header, ...lines] = GOOD.split('\n');
      const csv = [header, ...lines.map((line) => line.replace(/,.*/, ',x,y'))].join('\n');
      const { problems } = expectProblem(await put(csv), 400);
      expect(problems!.length).toBeGreaterThan(5);
      expect(problems!.length).toBeLessThanOrEqual(50);
    });

    it('is refused for a farm that is not there', async () => {
      const request = app.api.put('/api/farms/none/weather/csv').set('content-type', 'text/csv');
      expectProblem(await request.send(GOOD), 404);
    });
  });

  describe('beside fetched weather', () => {
    it('wins, and gives way when it is deleted', async () => {
      await app.api.put(`${farm.path}/weather/fetching`).send({ allowed: true }).expect(200);
      await app.api.post(`${farm.path}/weather/fetch`).expect(200);
      await put(GOOD).expect(200);
      expect((await plan()).weather).toMatchObject({ way: 'csv', years: 4 });
      const { body } = await app.api.delete(`${farm.path}/weather/csv`).expect(200);
      expect(body).toMatchObject({ inUse: 'fetched', csvDays: 0 });
      expect((await plan()).weather.way).toBe('fetched');
      expect(await csvRows()).toEqual([]);
    }, 20_000);

    it('leaves the typed months when both are deleted', async () => {
      await app.api.delete(`${farm.path}/weather/fetched`).expect(200);
      expect((await plan()).weather.way).toBe('monthly-means');
    });

    it.each(['forecast', 'everything'])('cannot delete %s by that name', async (kind) => {
      const before = await app.contents();
      const response = await app.api.delete(`${farm.path}/weather/${kind}`);
      expectFieldProblem(response, { field: 'kind', allowed: ['csv', 'fetched'] });
      expect(await app.contents()).toBe(before);
    });
  });

  it('may end today', async () => {
    const days = syntheticDays(inDays(-1200), inDays(0));
    await put(dailyCsv(days)).expect(200);
    expect(await csvRows()).toHaveLength(1201);
  });
});
