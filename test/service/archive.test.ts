import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { randomUUID } from 'node:crypto';
import { download, entriesOf, tablesIn, uploaded, withoutIds } from '../support/archives.js';
import { openApp, TABLES, type TestApp } from '../support/app.js';
import { dailyCsv, syntheticDays } from '../support/daily-weather.js';
import { databases } from '../support/databases.js';
import { inDays } from '../support/orders.js';
import { farmTables, putRows, randomFarm, uniqueColumns } from '../support/random-rows.js';
import { smallJpeg } from '../support/small-jpeg.js';
import { service } from '../support/outside.js';

const { storedTables } = service;

/** Tables that belong to no farm: what is the program's own. */
describe.each(databases())('a farm in one file on $name', (database) => {
  let app: TestApp;

  beforeAll(async () => {
    app = await openApp(database);
  });
  afterAll(() => app.close());

  it('holds every table', async () => {
    const all = (await farmTables(app)).map(({ name }) => name);
    expect([...all].sort()).toEqual([...TABLES].sort());
    const entities = app.source.entityMetadatas.map(({ tableName }) => tableName);
    expect([...all].sort()).toEqual(entities.sort());
  });

  it('holds columns in their order, whatever way the database takes to its catalog', async () => {
    const runner = app.source.createQueryRunner();
    try {
      const usual = await storedTables(runner);
      if (database.name === 'PostgreSQL')
        for (const way of ['indexscan', 'bitmapscan', 'nestloop'])
          await runner.query(`SET enable_${way} = off`);
      expect(await storedTables(runner)).toEqual(usual);
      expect(usual.find(({ name }) => name === 'weather_days')!.key).toEqual([
        'farmId',
        'kind',
        'date',
      ]);
    } finally {
      if (database.name === 'PostgreSQL') await runner.query('RESET ALL');
      await runner.release();
    }
  }, 30_000);

  it('is the same farm when it is read back, whatever lies in its tables', async () => {
    const tables = await farmTables(app);
    await fc.assert(
      fc.asyncProperty(randomFarm(tables, await uniqueColumns(app)), async (farm) => {
        const farmId = farm.get('farms')![0]!['id'] as string;
        let copyId = '';
        try {
          await putRows(app, farm);
          const first = await entriesOf(await download(app, farmId));
          copyId = await uploaded(app, await download(app, farmId));
          const second = await entriesOf(await download(app, copyId));
          expect(withoutIds(second)).toEqual(withoutIds(first));
          for (const [table, rows] of farm)
            expect(tablesIn(second).get(table)).toHaveLength(rows.length);
          const old = [...farm.values()].flat().flatMap(({ id }) => (id === undefined ? [] : [id]));
          const text = [...second].filter(([name]) => name.startsWith('tables/')).join('');
          expect(old.filter((id) => text.includes(id as string))).toEqual([]);
        } finally {
          for (const id of [farmId, copyId]) await app.api.delete(`/api/farms/${id}`);
        }
      }),
      { numRuns: 15, endOnFailure: true },
    );
  }, 120_000);

  it('gives the same plans for the sample farm, with all that was said of it', async () => {
    const farmId = await fullSample(app);
    await app.api.get(`/api/farms/${farmId}/work`).expect(200);
    const file = await download(app, farmId);
    const copyId = await uploaded(app, file);
    expect(copyId).not.toBe(farmId);
    const first = await entriesOf(file);
    expect(withoutIds(await entriesOf(await download(app, copyId)))).toEqual(withoutIds(first));
    for (const [, rows] of tablesIn(first)) expect(rows).not.toEqual([]);
    // A note of the copy names the copy's own photo.
    const { body: told } = await app.api.get(`/api/farms/${copyId}/told?kind=note`).expect(200);
    const { facts } = told as { facts: { details: { photos?: string[] } }[] };
    const [photoId] = facts.flatMap(({ details }) => details.photos ?? []);
    const photo = await app.api.get(`/api/farms/${copyId}/photos/${photoId}`).expect(200);
    expect(photo.body).toEqual(smallJpeg(9));
    for (const what of ['work', 'pasture/plan', 'batches', 'weather', 'people', 'handovers']) {
      const [one, other] = await Promise.all(
        [farmId, copyId].map((id) => app.api.get(`/api/farms/${id}/${what}`).expect(200)),
      );
      expect(shapeOf(other!.text)).toBe(shapeOf(one!.text));
    }
  }, 120_000);

  it('says which farm it could not find', async () => {
    const { body } = await app.api.get('/api/farms/none/archive').expect(404);
    expect((body as { detail: string }).detail).toBe('There is no farm with the id "none".');
  });
});

/** An answer with every id as its place among the ids that stand in it. */
function shapeOf(text: string): string {
  const seen = new Map<string, string>();
  return text.replaceAll(
    /[\w-]*-[0-9a-f]{8}\b(-[0-9a-f]{4}){0,3}(-[0-9a-f]{12})?|[0-9a-f]{8}(-[0-9a-f]{4}){3}-[0-9a-f]{12}/g,
    (id) => {
      if (!seen.has(id)) seen.set(id, `id${seen.size}`);
      return seen.get(id)!;
    },
  );
}

/** The sample farm with a row in every table. */
async function fullSample({ api }: TestApp): Promise<string> {
  const { id } = (await api.post('/api/farms/sample').expect(201)).body as { id: string };
  const path = `/api/farms/${id}`;
  const all = async (what: string): Promise<{ id: string }[]> =>
    (await api.get(`${path}/${what}`).expect(200)).body as { id: string }[];
  const [people, batches, paddocks, herds] = await Promise.all(
    ['people', 'batches', 'paddocks', 'herds'].map(all),
  );
  const job = {
    name: 'Plant garlic',
    hours: 3,
    dueOn: inDays(40),
    priority: 'should',
    conditions: { dryGround: true },
    canBeSpread: true,
    personIds: [people![0]!.id],
    tiedTo: { eventId: `event/${batches![0]!.id}/arrival`, on: inDays(45) },
  };
  const first = (await api.post(`${path}/jobs`).send(job).expect(201)).body as { id: string };
  await api
    .post(`${path}/jobs`)
    .send({ ...job, name: 'Mulch', waitsForId: first.id, waitDays: 2 })
    .expect(201);
  await api
    .post(`${path}/handovers`)
    .send({
      sitter: 'A neighbor',
      from: inDays(24),
      to: inDays(26),
      hoursPerDay: 4,
      roundOrder: [batches![0]!.id, herds![0]!.id],
      phones: [{ who: 'Vet', number: '555 0100' }],
      whereabouts: [{ what: 'Key', where: 'Under the pot' }],
      notes: 'Shut the gate.\nTwice.',
    })
    .expect(201);
  await api
    .put(`${path}/work/progress`)
    .send({ key: `own/${first.id}`, doneOn: inDays(0), hours: 2 })
    .expect(200);
  await api
    .put(`${path}/work/ground`)
    .send({ date: inDays(0), isWorkable: true })
    .expect(200);
  await api
    .post(`${path}/grass-readings`)
    .send({ readings: [{ paddockId: paddocks![0]!.id, date: inDays(-1), heightCm: 14 }] })
    .expect(201);
  await api
    .put(`${path}/pasture/choices`)
    .send({ keepForAutumnIds: [paddocks![1]!.id] })
    .expect(200);
  await api
    .put(`${path}/weather/csv`)
    .set('content-type', 'text/csv')
    .send(dailyCsv(syntheticDays('2020-01-01', '2023-12-31')))
    .expect(200);
  const photoId = randomUUID();
  await api.put(`${path}/photos/${photoId}`).type('image/jpeg').send(smallJpeg(9)).expect(204);
  const note = { text: 'The gate', photos: [photoId] };
  await api
    .post(`${path}/told`)
    .send({ facts: [{ kind: 'note', about: 'farm', on: inDays(0), details: note }] })
    .expect(201);
  return id;
}
