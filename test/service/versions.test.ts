import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import { openApp, type TestApp } from '../support/app.js';
import { databases } from '../support/databases.js';
import { newFarm } from '../support/factories.js';
import { batchBody, brooderBody, inDays, saveFarm, type SavedFarm } from '../support/orders.js';
import { newHerd, newPaddock } from '../support/pasture-factories.js';
import { expectFieldProblem, expectProblem } from '../support/problem.js';
import { newOwnJob } from '../support/season-factories.js';

const withoutId = ({ id: _id, ...body }: { id?: string }): object => body;

interface Row {
  readonly id: string;
  readonly version: number;
  readonly name: string;
}

/** What can be edited, and how it is sent. */
const KINDS: readonly (readonly [string, () => object])[] = [
  ['people', () => ({ name: 'A', away: [] })],
  ['facilities', () => brooderBody()],
  ['batches', () => batchBody()],
  ['paddocks', () => withoutId(newPaddock())],
  ['herds', () => withoutId(newHerd())],
  ['jobs', () => withoutId(newOwnJob({ dueOn: inDays(20) }))],
];

describe.each(databases())('versions on $name', (database) => {
  let app: TestApp;
  let farm: SavedFarm;

  beforeAll(async () => {
    app = await openApp(database);
    farm = await saveFarm(app);
  }, 60_000);
  afterAll(() => app.close());

  describe.each(KINDS)('of %s', (what, body) => {
    let row: Row;
    let at: string;
    beforeAll(async () => {
      row = (await app.api.post(`${farm.path}/${what}`).send(body()).expect(201)).body as Row;
      at = `${farm.path}/${what}/${row.id}`;
    });

    it('let a save of the newest pass, in the body or as If-Match', async () => {
      expect(row.version).toBe(1);
      const { body: two } = await app.api
        .put(at)
        .send({ ...body(), name: 'Two', version: 1 })
        .expect(200);
      expect(two).toMatchObject({ name: 'Two', version: 2 });
      const { body: three } = await app.api
        .put(at)
        .set('If-Match', '"2"')
        .send({ ...body(), name: 'Three' })
        .expect(200);
      expect(three).toMatchObject({ name: 'Three', version: 3 });
    });

    it('refuse to overwrite a newer row, and show both', async () => {
      const before = await app.contents();
      const mine = { ...body(), name: 'Mine', version: 1 };
      const conflict = expectProblem(await app.api.put(at).send(mine), 409);
      expect(conflict).toMatchObject({
        type: 'urn:broodfold:problem:conflict',
        current: { id: row.id, name: 'Three', version: 3 },
        yours: mine,
      });
      const header = app.api.put(at).set('If-Match', '"2"').send(body());
      expectProblem(await header, 409);
      expectProblem(await app.api.delete(at).set('If-Match', '"2"'), 409);
      expect(await app.contents()).toBe(before);
    });

    it('stay when the same is saved again', async () => {
      const same = { ...body(), name: 'Three', version: 3 };
      expect((await app.api.put(at).send(same).expect(200)).body).toMatchObject({ version: 3 });
    });

    it('do not matter to who sends none, or any', async () => {
      await app.api.put(at).send(body()).expect(200);
      await app.api.put(at).set('If-Match', '*').send(body()).expect(200);
    });

    it('are refused when they are none', async () => {
      const response = await app.api.put(at).set('If-Match', 'yesterday').send(body());
      expectFieldProblem(response, { field: 'If-Match', code: 'not-allowed' });
      const wrong = await app.api.put(at).send({ ...body(), version: 'one' });
      expectFieldProblem(wrong, { field: 'version' });
    });

    it('let the newest be deleted', async () => {
      const { version } = (await app.api.get(at)).body as Row;
      await app.api.delete(at).set('If-Match', `"${version}"`).expect(204);
    });
  });

  it('of a farm go up with what is typed of it alone', async () => {
    const versionNow = async (): Promise<number> =>
      ((await app.api.get(farm.path)).body as Row).version;
    const loaded = await versionNow();
    await app.api.post(`${farm.path}/people`).send({ name: 'B', away: [] }).expect(201);
    expect(await versionNow()).toBe(loaded);
    await app.api
      .put(farm.path)
      .send({ ...newFarm({ name: 'Theirs' }), version: loaded })
      .expect(200);
    const before = await app.contents();
    const late = app.api.put(farm.path).send({ ...newFarm({ name: 'Mine' }), version: loaded });
    expect(expectProblem(await late, 409)).toMatchObject({
      current: { name: 'Theirs', version: loaded + 1 },
      yours: { name: 'Mine' },
    });
    expectProblem(await app.api.delete(farm.path).set('If-Match', `"${loaded}"`), 409);
    expect(await app.contents()).toBe(before);
  });

  it('of the pasture choices go up with them alone, and refuse to overwrite newer ones', async () => {
    const at = `${farm.path}/pasture/choices`;
    const picture = async (): Promise<{ farm: Row; pastureChoices: object }> =>
      (await app.api.get(`${farm.path}/picture`)).body as { farm: Row; pastureChoices: object };
    const { farm: before, pastureChoices } = await picture();
    expect(pastureChoices).toEqual({ version: 1 });
    const { body } = await app.api.put(at).send({ restFactor: 1.2, version: 1 }).expect(200);
    expect(body).toEqual({ restFactor: 1.2, version: 2 });
    const after = await picture();
    expect(after).toMatchObject({ pastureChoices: body, farm: { version: before.version } });

    const contents = await app.contents();
    const mine = { restFactor: 0.9, version: 1 };
    const header = app.api.put(at).set('If-Match', '"1"').send({ restFactor: 0.9 });
    for (const request of [app.api.put(at).send(mine), header]) {
      expect(expectProblem(await request, 409)).toMatchObject({
        type: 'urn:broodfold:problem:conflict',
        current: body,
        yours: { restFactor: 0.9 },
      });
    }
    expect(await app.contents()).toBe(contents);
    const two = await Promise.all(
      [1.3, 1.4].map((restFactor) => app.api.put(at).send({ restFactor, version: 2 })),
    );
    expect(two.map(({ status }) => status).sort()).toEqual([200, 409]);
    await app.api.put(at).send({}).expect(200);
    expect((await picture()).pastureChoices).toEqual({ version: 4 });
  });

  it('of a reading are its id: none is taken back that was read again unseen', async () => {
    const { body } = await app.api
      .post(`${farm.path}/paddocks`)
      .send(withoutId(newPaddock()))
      .expect(201);
    const paddockId = (body as Row).id;
    const read = async (heightCm: number): Promise<Row> => {
      const readings = [{ paddockId, date: inDays(-1), heightCm }];
      const answer = await app.api.post(`${farm.path}/grass-readings`).send({ readings });
      return (answer.body as Row[])[0]!;
    };
    const [first, second] = [await read(12), await read(15)];
    const before = await app.contents();
    const late = await app.api.delete(`${farm.path}/grass-readings/${first.id}`);
    expect(expectProblem(late, 409)).toMatchObject({ current: { id: second.id, heightCm: 15 } });
    expect(await app.contents()).toBe(before);
    await app.api.delete(`${farm.path}/grass-readings/${second.id}`).expect(204);
    expect((await app.api.get(`${farm.path}/grass-readings`)).body).toEqual([]);
  });

  it('go up with a change that comes from elsewhere', async () => {
    const batch = (
      await app.api
        .post(`${farm.path}/batches`)
        .send(batchBody({ brooderId: farm.brooderId }))
        .expect(201)
    ).body as Row;
    await app.api.delete(`${farm.path}/facilities/${farm.brooderId}`).expect(204);
    const after = (await app.api.get(`${farm.path}/batches/${batch.id}`)).body as Row;
    expect(after.version).toBe(batch.version + 1);
  });

  it('let one of two saves at once pass', async () => {
    const { body } = await app.api.post(`${farm.path}/people`).send({ name: 'C', away: [] });
    const { id, version } = body as Row;
    const answers = await Promise.all(
      ['One', 'Other'].map((name) =>
        app.api.put(`${farm.path}/people/${id}`).send({ name, away: [], version }),
      ),
    );
    expect(answers.map(({ status }) => status).sort()).toEqual([200, 409]);
  });
});
