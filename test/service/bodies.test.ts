import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import { once } from 'node:events';
import { connect } from 'node:net';
import { openApp, type TestApp } from '../support/app.js';
import { dailyCsv, syntheticDays } from '../support/daily-weather.js';
import { databases } from '../support/databases.js';
import { newFarm } from '../support/factories.js';
import { batchBody, saveFarm, type SavedFarm } from '../support/orders.js';
import { expectFieldProblem, expectProblem } from '../support/problem.js';

const JSON_TYPE = 'application/json';
const DEEP = 100_000;

describe.each(databases())('bodies on $name', (database) => {
  let app: TestApp;
  let farm: SavedFarm;
  let before: string;

  beforeAll(async () => {
    app = await openApp(database);
    farm = await saveFarm(app);
    before = await app.contents();
  }, 60_000);
  afterAll(() => app.close());

  const post = (path: string, type: string, text: string) =>
    app.api.post(path).set('content-type', type).send(text);
  const places = (): string[] => [
    '/api/farms',
    '/api/plans/preview',
    '/api/plans/arrivals',
    `${farm.path}/facilities`,
    `${farm.path}/people`,
    `${farm.path}/batches`,
  ];
  const everywhere = async (send: (path: string) => PromiseLike<void>): Promise<void> => {
    for (const path of places()) await send(path);
    expect(await app.contents()).toBe(before);
  };

  it('that are empty are refused', () =>
    everywhere(async (path) => {
      expect(expectProblem(await app.api.post(path), 400).problems?.[0]?.field).toMatch(/^\w+$/);
      expectProblem(await app.api.post(path).send({}), 400);
    }));

  it('that dribble in byte by byte hold up nobody, and change nothing when they are cut off', async () => {
    const { hostname, port } = new URL(app.url);
    const text = JSON.stringify(newFarm());
    const senders = await Promise.all(
      Array.from({ length: 60 }, async () => {
        const socket = connect({ host: hostname, port: Number(port) });
        await once(socket, 'connect');
        const head = `host: ${hostname}:${port}\r\ncontent-type: ${JSON_TYPE}`;
        socket.write(
          `POST /api/farms HTTP/1.1\r\n${head}\r\ncontent-length: ${text.length}\r\n\r\n`,
        );
        let sent = 0;
        const timer = setInterval(() => socket.write(text[sent++]!), 20);
        return { socket, stop: () => clearInterval(timer), sent: () => sent };
      }),
    );
    for (let k = 0; k < 10; k++) await app.api.get(farm.path).expect(200);
    const { body } = await app.api.post('/api/farms').send(newFarm()).expect(201);
    await app.api.delete(`/api/farms/${(body as { id: string }).id}`).expect(204);
    for (const { socket, stop, sent } of senders) {
      stop();
      expect(sent()).toBeLessThan(text.length);
      socket.destroy();
    }
    expect(await app.contents()).toBe(before);
  });

  it('that are a list are refused', () =>
    everywhere(async (path) => {
      expectProblem(await app.api.post(path).send([]), 400);
      expectProblem(await app.api.post(path).send([newFarm()]), 400);
    }));

  it.each(['null', '5', '"farm"', 'true'])('that are only %s are refused', (text) =>
    everywhere(async (path) => void expectProblem(await post(path, JSON_TYPE, text), 400)),
  );

  it('that are not well-formed say so', () =>
    everywhere(async (path) => {
      const { detail } = expectProblem(await post(path, JSON_TYPE, '{"name": "Test'), 400);
      expect(detail).toContain('JSON');
    }));

  it('that hold a hundred thousand lists in each other are refused', () =>
    everywhere(async (path) => {
      const lists = `${'['.repeat(DEEP)}${']'.repeat(DEEP)}`;
      expectProblem(await post(path, JSON_TYPE, `{"name": ${lists}}`), 400);
    }));

  it('that give a kind as a hundred thousand lists in each other are refused', async () => {
    const kind = `${'['.repeat(DEEP)}${']'.repeat(DEEP)}`;
    expectProblem(await post(`${farm.path}/facilities`, JSON_TYPE, `{"kind": ${kind}}`), 400);
  });

  it('with a number past every number are refused', async () => {
    const text = JSON.stringify(newFarm()).replace('"elevationM":0', '"elevationM":1e999');
    expectFieldProblem(await post('/api/farms', JSON_TYPE, text), { field: 'elevationM' });
  });

  it.each(Object.getOwnPropertyNames(Object.prototype))(
    'with a field called %s, as every object has, are refused by its name',
    async (name) => {
      const farmText = JSON.stringify(newFarm()).replace('{', `{"${name}": {"isSample": true},`);
      expectFieldProblem(await post('/api/farms', JSON_TYPE, farmText), { field: name });
      const batch = JSON.stringify(batchBody()).replace('{', `{"feedPerBag": {"${name}": "9.50"},`);
      const field = `feedPerBag.${name}`;
      const saved = await post(`${farm.path}/batches`, JSON_TYPE, batch);
      expectFieldProblem(saved, { field, code: 'not-allowed' });
      const planned = await post('/api/plans/preview', JSON_TYPE, `{"batch": ${batch}}`);
      expectFieldProblem(planned, { field: expect.stringContaining(field) });
      expect(await app.contents()).toBe(before);
    },
  );

  it('of 50 MB answer 413', async () => {
    const big = `{"name": "${'x'.repeat(50_000_000)}"}`;
    for (const path of places()) {
      expect(expectProblem(await post(path, JSON_TYPE, big), 413).detail).toContain('1 MB');
    }
    expect(await app.contents()).toBe(before);
  }, 60_000);

  it('of 50 MB of CSV answer 413', async () => {
    const big = 'date,tmin_c,tmax_c\n'.repeat(2_700_000);
    const path = `${farm.path}/weather/csv`;
    const response = await app.api.put(path).set('content-type', 'text/csv').send(big);
    expect(expectProblem(response, 413).detail).toContain('12 MB');
    expect(await app.contents()).toBe(before);
  }, 60_000);

  it.each([60, 200])(
    'of a photo of %i MB are refused, and whoever sends it reads why',
    async (mb) => {
      const photo = Buffer.alloc(mb * 1_000_000);
      const path = `${farm.path}/photos/photo-of-${mb}`;
      const sent = await app.api.put(path).type('image/jpeg').send(photo);
      expectFieldProblem(sent, { field: 'photo', code: 'out-of-bounds', given: mb, max: 2 });
      expect(await app.contents()).toBe(before);
    },
    60_000,
  );

  it('in another content type are not read', () =>
    everywhere(async (path) => {
      expectProblem(await post(path, 'text/plain', JSON.stringify(newFarm())), 400);
    }));

  it('in an unknown character set answer 415', async () => {
    expectProblem(await post('/api/farms', `${JSON_TYPE}; charset=morse`, '{}'), 415);
  });

  it.each([
    'text/plain',
    JSON_TYPE,
    'application/octet-stream',
    'application/x-www-form-urlencoded',
  ])('of CSV sent as %s are refused', async (type) => {
    const csv = dailyCsv(syntheticDays('2020-01-01', '2023-12-31'));
    const path = `${farm.path}/weather/csv`;
    expectProblem(await app.api.put(path).set('content-type', type).send(csv), 400);
    expect(await app.contents()).toBe(before);
  });

  it.each([
    ['nothing', undefined],
    ['text', 'yes'],
    ['a number', 1],
    ['null', null],
  ])('that allow fetching with %s are refused', async (_what, allowed) => {
    const response = await app.api.put(`${farm.path}/weather/fetching`).send({ allowed });
    expectFieldProblem(response, { field: 'allowed' });
    expect(await app.contents()).toBe(before);
  });

  it('with a % that is no letter in the address say what is wrong with the address', async () => {
    const { detail } = expectProblem(await app.api.get('/api/farms/%E0%A4%A'), 400);
    expect(detail).not.toContain('JSON');
  });

  it('to an unknown address answer 404', async () => {
    expectProblem(await app.api.post('/api/nothing').send({}), 404);
    expectProblem(await app.api.get('/api/nothing'), 404);
  });
});
