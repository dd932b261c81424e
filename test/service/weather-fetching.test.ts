import { afterAll, beforeAll, beforeEach, describe, expect, it } from '@jest/globals';
import type { BatchPlan } from '../../shared/plan/batch-plan.js';
import type { FarmPicture } from '../../shared/farm/picture.js';
import type { WeatherView } from '../../src/weather/weather-view.js';
import { openApp, type TestApp } from '../support/app.js';
import { anyDatabase } from '../support/databases.js';
import { newBatch } from '../support/factories.js';
import { saveFarm, type SavedFarm } from '../support/orders.js';
import { expectProblem } from '../support/problem.js';
import {
  sendJson,
  startWeatherStub,
  type DailyBody,
  type Misbehave,
  type WeatherStub,
} from '../support/weather-stub.js';

const TIMEOUT_MS = 2000;

const changedBody =
  (change: (body: DailyBody) => unknown): Misbehave =>
  (response, good) => {
    const body = good();
    sendJson(response, 200, change(body) ?? body);
  };

/** Each way in which the service may fail, and what must be said of it. */
const FAILURES: readonly (readonly [what: string, says: RegExp, misbehave: Misbehave])[] = [
  ['does not answer', /within 2 seconds/, () => undefined],
  [
    'stops in the middle of its answer',
    /within 2 seconds/,
    (response) => void response.writeHead(200).write('{"daily": {"time": ["20'),
  ],
  [
    'asks to wait',
    /429/,
    (response) => sendJson(response, 429, { error: true, reason: 'Minutely limit' }),
  ],
  ['breaks', /500/, (response) => void response.writeHead(500).end('<html>oops</html>')],
  ['is closed for repairs', /503/, (response) => void response.writeHead(503).end()],
  ['closes the connection', /could not be reached/, (response) => void response.socket?.destroy()],
  [
    'sends its answer cut short',
    /cut off/,
    (response, good) => {
      const text = JSON.stringify(good());
      response.writeHead(200, { 'content-type': 'application/json' });
      response.end(text.slice(0, text.length / 2));
    },
  ],
  ['sends nothing', /cut off/, (response) => void response.writeHead(200).end()],
  [
    'refuses the request, with its reason',
    /400.*Latitude must be in range/,
    (response) =>
      sendJson(response, 400, { error: true, reason: 'Latitude must be in range of -90 to 90°.' }),
  ],
  [
    'sends the reason with status 200',
    /shape/,
    (response) => sendJson(response, 200, { error: true, reason: 'No data' }),
  ],
  ['sends null', /shape|cut off/, (response) => sendJson(response, 200, null)],
  ['sends a list', /shape/, (response) => sendJson(response, 200, [])],
  ['sends a number', /shape/, (response) => sendJson(response, 200, 5)],
  [
    'sends a list that is one too short',
    /shape/,
    changedBody((body) => void body.daily.temperature_2m_min.pop()),
  ],
  [
    'sends no highs',
    /shape/,
    changedBody(
      (body) => void delete (body.daily as Partial<DailyBody['daily']>).temperature_2m_max,
    ),
  ],
  [
    'sends degrees Fahrenheit',
    /°F/,
    changedBody((body) => void (body.daily_units['temperature_2m_max'] = '°F')),
  ],
  [
    'leaves out one day in five',
    /left out/,
    changedBody((body) => {
      body.daily.temperature_2m_min = body.daily.temperature_2m_min.map((c, i) =>
        i % 5 === 0 ? null : c,
      );
    }),
  ],
  [
    'sends text for numbers',
    /left out/,
    changedBody((body) => {
      const highs = body.daily.temperature_2m_max;
      body.daily.temperature_2m_max = highs.map((c) => String(c)) as unknown as number[];
    }),
  ],
  [
    'sends no days',
    /left out|shape|days/,
    changedBody((body) => {
      for (const list of Object.values(body.daily)) (list as unknown[]).length = 0;
    }),
  ],
  [
    'sends one day twice',
    /twice|shape|repeat|day/i,
    changedBody((body) => void (body.daily.time[1] = body.daily.time[0]!)),
  ],
  [
    'sends the reader elsewhere',
    /could not be reached/,
    (response) => void response.writeHead(302, { location: '/archive/elsewhere' }).end(),
  ],
];

describe.each([anyDatabase()])('fetching weather on $name', (database) => {
  let stub: WeatherStub;
  let app: TestApp;
  let farm: SavedFarm;

  beforeAll(async () => {
    stub = await startWeatherStub(TIMEOUT_MS);
    app = await openApp(database, stub.settings);
  }, 60_000);
  afterAll(async () => {
    await app.close();
    await stub.close();
  });
  beforeEach(() => {
    stub.misbehave = {};
    stub.calls.length = 0;
  });

  const fetchWeather = () => app.api.post(`${farm.path}/weather/fetch`);
  const view = async (): Promise<WeatherView> =>
    (await app.api.get(`${farm.path}/weather`).expect(200)).body as WeatherView;
  const plan = async (): Promise<BatchPlan> => {
    const batch = newBatch({ brooderId: farm.brooderId });
    const order = { farmId: farm.id, today: '2026-11-25', batch };
    return (await app.api.post('/api/plans/preview').send(order).expect(200)).body as BatchPlan;
  };

  describe('before it is allowed', () => {
    beforeAll(async () => {
      farm = await saveFarm(app);
    });

    it('is off, and plans go by the typed months', async () => {
      expect(await view()).toEqual({
        inUse: 'monthly-means',
        label: 'Typed monthly averages',
        fetchAllowed: false,
        fetchedDays: 0,
        csvDays: 0,
        forecastDays: 0,
      });
    });

    it('answers 409 and asks nobody', async () => {
      const before = await app.contents();
      expect(expectProblem(await fetchWeather(), 409).detail).toContain('switched off');
      expect(stub.calls).toEqual([]);
      expect(await app.contents()).toBe(before);
    });

    it('can be allowed and forbidden again', async () => {
      const allow = (allowed: boolean) =>
        app.api.put(`${farm.path}/weather/fetching`).send({ allowed }).expect(200);
      expect((await allow(true)).body).toMatchObject({ fetchAllowed: true });
      expect((await allow(false)).body).toMatchObject({ fetchAllowed: false });
      expectProblem(await fetchWeather(), 409);
      expect(stub.calls).toEqual([]);
    });

    it('answers 404 for a farm that is not there', async () => {
      expectProblem(await app.api.post('/api/farms/none/weather/fetch'), 404);
      expect(stub.calls).toEqual([]);
    });
  });

  describe('that fails the first time', () => {
    beforeAll(async () => {
      farm = await saveFarm(app);
      await app.api.put(`${farm.path}/weather/fetching`).send({ allowed: true }).expect(200);
    });

    it.each(['archive', 'forecast'] as const)(
      'in the %s leaves the typed months',
      async (which) => {
        stub.misbehave = { [which]: FAILURES[3]![2] };
        const before = await app.contents();
        expect(expectProblem(await fetchWeather(), 502).detail).toContain('Typed monthly averages');
        expect(await app.contents()).toBe(before);
        expect((await plan()).weather.way).toBe('monthly-means');
      },
    );
  });

  describe('that is allowed', () => {
    let fetched: BatchPlan;

    beforeAll(async () => {
      farm = await saveFarm(app);
      await app.api.put(`${farm.path}/weather/fetching`).send({ allowed: true }).expect(200);
    });

    it('keeps thirty years of days and sixteen days ahead', async () => {
      const { status, body } = await fetchWeather();
      expect(status).toBe(200);
      expect(body).toMatchObject({ inUse: 'fetched', fetchAllowed: true, forecastDays: 16 });
      const rows = await app.rows('weather_days', { farmId: farm.id, kind: 'fetched' });
      expect(rows).toHaveLength((body as WeatherView).fetchedDays);
      expect(rows.length).toBeGreaterThan(30 * 365);
      expect(rows.every((row) => Number(row['minC']) <= Number(row['maxC']))).toBe(true);
    });

    it('tells the service where the farm is and nothing else about it', async () => {
      await fetchWeather().expect(200);
      expect(stub.calls.map((call) => call.which)).toEqual(['archive', 'forecast']);
      const shared = ['latitude', 'longitude', 'timezone', 'daily'];
      expect(Object.keys(stub.calls[0]!.query).sort()).toEqual(
        [...shared, 'start_date', 'end_date'].sort(),
      );
      expect(Object.keys(stub.calls[1]!.query).sort()).toEqual([...shared, 'forecast_days'].sort());
      expect(stub.calls[0]!.query).toMatchObject({
        latitude: '42.9',
        longitude: '-75.3',
        timezone: 'America/New_York',
        start_date: expect.stringMatching(/^\d{4}-01-01$/),
        end_date: expect.stringMatching(/^\d{4}-\d\d-\d\d$/),
      });
    });

    it('gives plans the years and a chance of warm nights', async () => {
      fetched = await plan();
      expect(fetched.weather.way).toBe('fetched');
      expect([30, 31]).toContain(fetched.weather.years);
      expect(fetched.outdoors.coldNight?.value).toEqual(expect.any(Number));
      const { body } = await app.api.get(`${farm.path}/picture`).expect(200);
      expect((body as FarmPicture).climate).toMatchObject({
        way: 'fetched',
        forecast: expect.any(Array),
      });
    });

    it('does not ask the service for a plan', async () => {
      await plan();
      expect(stub.calls).toEqual([]);
    });

    it.each(FAILURES)(
      'keeps the former weather when the service %s',
      async (_what, says, misbehave) => {
        stub.misbehave = { archive: misbehave };
        const before = await app.contents();
        const { detail } = expectProblem(await fetchWeather(), 502);
        expect(detail).toMatch(says);
        expect(detail).toContain('Open-Meteo daily archive');
        expect(await app.contents()).toBe(before);
        expect(await plan()).toEqual(fetched);
      },
    );

    it('keeps the former weather when only the forecast fails', async () => {
      stub.misbehave = { forecast: FAILURES[4]![2] };
      const before = await app.contents();
      expect(expectProblem(await fetchWeather(), 502).detail).toContain('503');
      expect(await app.contents()).toBe(before);
    });

    it('skips a few days that are missing', async () => {
      const former = (await view()).fetchedDays;
      stub.misbehave = {
        archive: changedBody((body) => {
          body.daily.temperature_2m_min[10] = null;
          body.daily.temperature_2m_max[20] = null;
          body.daily.precipitation_sum[30] = null;
        }),
      };
      const { body } = await fetchWeather().expect(200);
      expect((body as WeatherView).fetchedDays).toBe(former - 2);
      const rows = await app.rows('weather_days', { farmId: farm.id, kind: 'fetched' });
      expect(rows.filter((row) => row['rainMm'] === null)).toHaveLength(1);
    });

    it('is forgotten again, forecast and all', async () => {
      const { body } = await app.api.delete(`${farm.path}/weather/fetched`).expect(200);
      expect(body).toMatchObject({ inUse: 'monthly-means', fetchedDays: 0, forecastDays: 0 });
      expect(await app.rows('weather_days', { farmId: farm.id })).toEqual([]);
      expect((await plan()).weather.way).toBe('monthly-means');
    });
  });
});
