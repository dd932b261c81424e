import { afterAll, beforeAll, describe, expect, it, jest } from '@jest/globals';
import type { Herd } from '../../shared/farm/herd.js';
import type { GrassReading, Paddock } from '../../shared/farm/paddock.js';
import type { FarmPicture } from '../../shared/farm/picture.js';
import { planPasture, type PasturePlan } from '../../shared/plan/pasture/pasture-plan.js';
import { outlineAreaM2 } from '../../src/outlines/outline.js';
import { openApp, type TestApp } from '../support/app.js';
import { anyDatabase } from '../support/databases.js';
import { inManyParts } from '../support/many-parts.js';
import { newFarm, tables } from '../support/factories.js';
import { inDays, saveFarm, type SavedFarm } from '../support/orders.js';
import { expectFieldProblem, expectProblem } from '../support/problem.js';
import { service } from '../support/outside.js';

const { WorkPool } = service;

const PADDOCK = {
  name: 'Pond',
  areaM2: 2600,
  forageId: 'orchardgrass-legume',
  stand: 'good',
  productivity: 'medium',
  soilId: 'loam',
  hasWater: true,
  hasShade: false,
  closedDays: [],
};
const HERD = {
  name: 'Cows',
  longestStayDays: 3,
  tankL: 750,
  supplyLPerH: 120,
  groups: [{ classId: 'cow-calf', head: 4, weightKg: 520 }],
};
/** A rectangle of 0.001° by 0.001° at the equator. */
const SQUARE = [
  [0, 0],
  [0.001, 0],
  [0.001, 0.001],
  [0, 0.001],
];

describe.each([anyDatabase()])('grass and cattle on $name', (database) => {
  let app: TestApp;
  let farm: SavedFarm;

  beforeAll(async () => {
    app = await openApp(database);
    farm = await saveFarm(app, { monthlyRainMm: Array.from({ length: 12 }, () => 90) });
  }, 60_000);
  afterAll(() => app.close());

  const addPaddock = async (more: object = {}): Promise<Paddock> =>
    (
      await app.api
        .post(`${farm.path}/paddocks`)
        .send({ ...PADDOCK, ...more })
        .expect(201)
    ).body as Paddock;

  it('keeps paddocks and herds, and gives them back as they were sent', async () => {
    const bed = { harvestOn: '2027-07-01', lastHarvestOn: '2027-10-01', cropOffSoil: true };
    const paddock = await addPaddock(bed);
    expect(paddock).toEqual({ ...PADDOCK, ...bed, id: expect.any(String), version: 1 });
    const early = await app.api
      .post(`${farm.path}/paddocks`)
      .send({ ...PADDOCK, ...bed, lastHarvestOn: '2027-06-30' });
    expectFieldProblem(early, { field: 'lastHarvestOn', code: 'out-of-bounds' });
    const { body } = await app.api.post(`${farm.path}/herds`).send(HERD).expect(201);
    const herd = body as Herd;
    expect(herd).toEqual({ ...HERD, id: expect.any(String), version: 1 });
    await app.api
      .put(`${farm.path}/herds/${herd.id}`)
      .send({ ...HERD, inPaddockId: paddock.id, inSince: inDays(-1) })
      .expect(200);
    // A paddock that goes leaves its herd without one.
    await app.api.delete(`${farm.path}/paddocks/${paddock.id}`).expect(204);
    const after = (await app.api.get(`${farm.path}/herds/${herd.id}`).expect(200)).body as Herd;
    expect(after).toEqual({ ...HERD, id: herd.id, version: 3 });
    await app.api.delete(`${farm.path}/herds/${herd.id}`).expect(204);
  });

  it('works an area out from an outline on the ellipsoid', async () => {
    const { areaM2: _area, ...rest } = PADDOCK;
    const paddock = await addPaddock({ ...rest, areaM2: undefined, outline: SQUARE });
    // WGS84: 0.001° is 111.3195 m along the equator and 110.5743 m along a meridian there.
    expect(paddock.areaM2).toBeCloseTo(111.3195 * 110.5743, 0);
    await app.api.delete(`${farm.path}/paddocks/${paddock.id}`).expect(204);
  });

  it.each([
    ['areaM2', { areaM2: 0 }, { field: 'areaM2', code: 'out-of-bounds', given: 0 }],
    [
      'residual',
      { readyHeightCm: 10, residualHeightCm: 12 },
      { field: 'residualHeightCm', code: 'out-of-bounds' },
    ],
    ['forage', { forageId: 'moss' }, { field: 'forageId', code: 'not-allowed', given: 'moss' }],
    [
      'crossing sides',
      { outline: [SQUARE[0], SQUARE[2], SQUARE[1], SQUARE[3]] },
      { field: 'outline', code: 'not-allowed' },
    ],
    ['two corners', { outline: SQUARE.slice(0, 2) }, { field: 'outline', code: 'out-of-bounds' }],
    ['no corners', { outline: ['a', 'b', 'c'] }, { field: 'outline.0', code: 'not-allowed' }],
    [
      'closed backward',
      { closedDays: [{ from: '2027-06-10', to: '2027-06-01', why: 'hay' }] },
      { field: 'closedDays.0.to', code: 'out-of-bounds' },
    ],
  ])('refuses a paddock with a bad %s, naming field and fix', async (_, more, problem) => {
    const before = await app.contents();
    const response = await app.api.post(`${farm.path}/paddocks`).send({ ...PADDOCK, ...more });
    expectFieldProblem(response, problem);
    expect(await app.contents()).toBe(before);
  });

  it('imports every polygon of a GeoJSON file, or none', async () => {
    const feature = (name: string | undefined, ring: unknown): object => ({
      type: 'Feature',
      properties: name === undefined ? {} : { name },
      geometry: { type: 'Polygon', coordinates: [ring] },
    });
    const ring = [...SQUARE, SQUARE[0]];
    const bad = {
      type: 'FeatureCollection',
      features: [feature('A', ring), feature('B', [[0, 0]])],
    };
    const before = await app.contents();
    expectFieldProblem(await app.api.post(`${farm.path}/paddocks/geojson`).send(bad), {
      field: 'geojson.features.1',
    });
    expect(await app.contents()).toBe(before);
    const good = {
      type: 'FeatureCollection',
      features: [feature('A', ring), feature(undefined, ring)],
    };
    const { body } = await app.api.post(`${farm.path}/paddocks/geojson`).send(good).expect(201);
    const paddocks = body as Paddock[];
    expect(paddocks.map((p) => p.name)).toEqual(['A', 'Paddock 2']);
    expect(paddocks[0]!.outline).toEqual(SQUARE);
    for (const { id } of paddocks) await app.api.delete(`${farm.path}/paddocks/${id}`).expect(204);
  });

  it('shows what a GeoJSON file holds before it is saved, and takes the ground given for all', async () => {
    const feature = (properties: object, geometry: object): object => ({
      type: 'Feature',
      properties,
      geometry,
    });
    const polygon = { type: 'Polygon', coordinates: [[...SQUARE, SQUARE[0]]] };
    const document = {
      type: 'FeatureCollection',
      forageId: 'orchardgrass-legume',
      stand: 'fair',
      hasWater: false,
      features: [
        feature({ name: 'Low', soil: 'Clay', shade: 'yes', forage: 'moss' }, polygon),
        feature({ name: 'Gate' }, { type: 'Point', coordinates: [0, 0] }),
        feature({}, polygon),
      ],
    };
    const path = `${farm.path}/paddocks/geojson`;
    const before = await app.contents();
    const found = await app.api.post(`${path}/preview`).send(document).expect(200);
    expect(found.body).toEqual({
      paddocks: [
        {
          name: 'Low',
          areaM2: expect.closeTo(12_309, 0),
          own: { soilId: 'clay', hasShade: true },
          notUsed: ['forage: "moss"'],
        },
        { name: 'Paddock 3', areaM2: expect.closeTo(12_309, 0), own: {}, notUsed: [] },
      ],
      leftOut: ['Feature 2 (Gate) is a Point'],
    });
    expect(await app.contents()).toBe(before);
    const paddocks = (await app.api.post(path).send(document).expect(201)).body as Paddock[];
    const chosen = { forageId: 'orchardgrass-legume', stand: 'fair', hasWater: false };
    expect(paddocks).toMatchObject([
      { name: 'Low', ...chosen, soilId: 'clay', hasShade: true, productivity: 'medium' },
      { name: 'Paddock 3', ...chosen, soilId: 'loam', hasShade: false, productivity: 'medium' },
    ]);
    for (const { id } of paddocks) await app.api.delete(`${farm.path}/paddocks/${id}`).expect(204);
  });

  it.each([
    ['forage for all', { forageId: 'moss' }, { field: 'forageId', code: 'not-allowed' }],
    ['stand for all', { stand: 'lush' }, { field: 'stand', code: 'not-allowed', given: 'lush' }],
    ['no water for all', { hasWater: null }, { field: 'hasWater' }],
    [
      'small polygon',
      {
        at: [
          [0, 0],
          [0.00001, 0],
          [0, 0.00005],
        ],
      },
      { field: 'geojson.features.1.areaM2', code: 'out-of-bounds', min: 50 },
    ],
    [
      'feature without a shape',
      { at: undefined },
      { field: 'geojson.features.1', code: 'missing' },
    ],
  ])('refuses a GeoJSON file with a bad %s, naming its place', async (_, more, problem) => {
    const { at, ...members } = { at: SQUARE as unknown, ...more };
    const shape = (ring: unknown): object => ({
      type: 'Feature',
      geometry: ring === undefined ? null : { type: 'Polygon', coordinates: [ring] },
    });
    const before = await app.contents();
    expectFieldProblem(
      await app.api.post(`${farm.path}/paddocks/geojson`).send({
        type: 'FeatureCollection',
        features: [shape(SQUARE), shape(at)],
        ...members,
      }),
      problem,
    );
    expect(await app.contents()).toBe(before);
  });

  it('splits a paddock into strips that keep its readings, and joins them again', async () => {
    const whole = await addPaddock({ name: 'Long', areaM2: 6000 });
    const reading = { paddockId: whole.id, date: inDays(-3), heightCm: 14 };
    await app.api
      .post(`${farm.path}/grass-readings`)
      .send({ readings: [reading] })
      .expect(201);
    const strips = (
      await app.api.post(`${farm.path}/paddocks/${whole.id}/split`).send({ parts: 3 }).expect(201)
    ).body as Paddock[];
    expect(strips.map((s) => [s.name, s.areaM2])).toEqual([
      ['Long 1', 2000],
      ['Long 2', 2000],
      ['Long 3', 2000],
    ]);
    const readings = (await app.api.get(`${farm.path}/grass-readings`)).body as GrassReading[];
    expect(readings.map((r) => r.paddockId).sort()).toEqual(strips.map((s) => s.id).sort());
    expectFieldProblem(
      await app.api.post(`${farm.path}/paddocks/${strips[0]!.id}/split`).send({ parts: 1 }),
      { field: 'parts', code: 'out-of-bounds', given: 1 },
    );
    const joined = (
      await app.api
        .post(`${farm.path}/paddocks/join`)
        .send({ ids: strips.map((s) => s.id), name: 'Long' })
        .expect(201)
    ).body as Paddock;
    expect(joined).toMatchObject({ name: 'Long', areaM2: 6000 });
    await app.api.delete(`${farm.path}/paddocks/${joined.id}`).expect(204);
  });

  it('cuts an outline with its paddock, across the longer side, and draws it whole again', async () => {
    const { areaM2: _area, ...rest } = PADDOCK;
    // Slanting, and longer from west to east.
    const outline = [
      [-75.3, 42.91],
      [-75.297, 42.9105],
      [-75.2968, 42.9118],
      [-75.2999, 42.9109],
    ];
    const whole = await addPaddock({ ...rest, areaM2: undefined, name: 'Bank', outline });
    const shares = [0.5, 0.3, 0.2];
    const strips = (
      await app.api.post(`${farm.path}/paddocks/${whole.id}/split`).send({ shares }).expect(201)
    ).body as Paddock[];
    const areasM2 = strips.map((strip) => outlineAreaM2(strip.outline));
    shares.forEach((share, k) => {
      // A side of 250 m on the ellipsoid bulges a millimeter from the straight line that is cut.
      expect(Math.abs(areasM2[k]! / (share * whole.areaM2) - 1)).toBeLessThan(3e-5);
      expect(strips[k]!.areaM2).toBeCloseTo(share * whole.areaM2, 6);
    });
    const sumM2 = areasM2.reduce((sum, areaM2) => sum + areaM2, 0);
    expect(Math.abs(sumM2 / whole.areaM2 - 1)).toBeLessThan(3e-5);
    const west = strips.map((strip) => Math.min(...strip.outline!.map(([east]) => east)));
    expect([...west].sort((a, b) => a - b)).toEqual(west);
    const joined = (
      await app.api
        .post(`${farm.path}/paddocks/join`)
        .send({ ids: strips.map((s) => s.id), name: 'Bank' })
        .expect(201)
    ).body as Paddock;
    expect(joined).not.toHaveProperty('noOutlineBecause');
    expect(joined.outline).toHaveLength(4);
    expect(Math.abs(outlineAreaM2(joined.outline) / whole.areaM2 - 1)).toBeLessThan(1e-6);
    expect(joined.areaM2).toBeCloseTo(whole.areaM2, 6);
    await app.api.delete(`${farm.path}/paddocks/${joined.id}`).expect(204);
  });

  it.each([
    ['lie apart', [0.0012, 0], /apart/],
    ['have only one outline', undefined, /Other had none/],
    ['share a fence drawn half a meter off', [0.0010045, 0], undefined],
  ])('joins paddocks that %s', async (_, moved, because) => {
    const { areaM2: _area, ...rest } = PADDOCK;
    const other = moved && SQUARE.map(([x, y]) => [x! + moved[0]!, y! + moved[1]!]);
    const one = await addPaddock({ ...rest, areaM2: undefined, outline: SQUARE });
    const two = await addPaddock({ name: 'Other', areaM2: 10_000, outline: other });
    const joined = (
      await app.api
        .post(`${farm.path}/paddocks/join`)
        .send({ ids: [one.id, two.id], name: 'Both' })
        .expect(201)
    ).body as Paddock & { noOutlineBecause?: string };
    if (because) {
      expect(joined.noOutlineBecause).toMatch(because);
      expect(joined).not.toHaveProperty('outline');
    } else {
      expect(joined).not.toHaveProperty('noOutlineBecause');
      const [oneM2, twoM2] = [outlineAreaM2(SQUARE), outlineAreaM2(other)];
      // Half a meter along a fence of 111 m.
      expect(Math.abs(outlineAreaM2(joined.outline) - oneM2 - twoM2)).toBeLessThan(60);
    }
    expect(joined.areaM2).toBeCloseTo(one.areaM2 + 10_000, 6);
    const stored = (await app.api.get(`${farm.path}/paddocks/${joined.id}`)).body as object;
    expect(stored).not.toHaveProperty('noOutlineBecause');
    await app.api.delete(`${farm.path}/paddocks/${joined.id}`).expect(204);
  });

  it.each([
    ['cut', 'cutOutline', 2],
    ['joined', 'joinOutlines', 1],
  ] as const)(
    'is %s in a thread, and again when it was changed meanwhile',
    async (_what, task, count) => {
      const { areaM2: _area, ...rest } = PADDOCK;
      const whole = await addPaddock({ ...rest, areaM2: undefined, outline: SQUARE });
      const east = SQUARE.map(([x, y]) => [x! + 0.001, y!]);
      const beside = await addPaddock({ ...rest, areaM2: undefined, outline: east });
      const wider = SQUARE.map(([x, y]) => [x === 0 ? -0.001 : x!, y!]);
      const pool = app.nest.get(WorkPool);
      const run = pool.run.bind(pool);
      const asked = jest.spyOn(pool, 'run').mockImplementationOnce(async (name, input, asker) => {
        const found = await run(name, input, asker);
        const { id, version, areaM2: _before, ...body } = whole;
        await app.api
          .put(`${farm.path}/paddocks/${id}`)
          .send({ ...body, outline: wider, version })
          .expect(200);
        return found;
      });
      const [path, body] =
        task === 'cutOutline'
          ? [`${whole.id}/split`, { parts: 2 }]
          : ['join', { ids: [whole.id, beside.id], name: 'Both' }];
      const answer = (await app.api.post(`${farm.path}/paddocks/${path}`).send(body).expect(201))
        .body as Paddock | Paddock[];
      expect(asked.mock.calls.map(([name]) => name)).toEqual([task, task]);
      asked.mockRestore();
      const made = [answer].flat();
      expect(made).toHaveLength(count);
      const madeM2 = made.reduce((sum, { outline }) => sum + outlineAreaM2(outline), 0);
      const wholeM2 = outlineAreaM2(wider) + (count === 1 ? outlineAreaM2(east) : 0);
      expect(madeM2 / wholeM2).toBeCloseTo(1, 4);
      const left = task === 'cutOutline' ? [...made, beside] : made;
      for (const { id } of left) await app.api.delete(`${farm.path}/paddocks/${id}`).expect(204);
    },
  );

  it('says when straight lines would leave strips in several pieces', async () => {
    const { areaM2: _area, ...rest } = PADDOCK;
    // A ring with a gap: every strip through its middle, along or across, is in two pieces.
    const ring = [
      [0, 0],
      [10, 0],
      [10, 4.9],
      [8, 4.9],
      [8, 2],
      [2, 2],
      [2, 8],
      [8, 8],
      [8, 5.1],
      [10, 5.1],
      [10, 10],
      [0, 10],
    ];
    const outline = ring.map(([x, y]) => [x! / 1e4, y! / 1e4]);
    const whole = await addPaddock({ ...rest, areaM2: undefined, outline });
    const strips = (
      await app.api.post(`${farm.path}/paddocks/${whole.id}/split`).send({ parts: 20 }).expect(201)
    ).body as (Paddock & { noOutlineBecause?: string })[];
    expect(strips[0]!.noOutlineBecause).toMatch(/several pieces/);
    for (const { id } of strips) await app.api.delete(`${farm.path}/paddocks/${id}`).expect(204);
  });

  it.each([
    [{}, { field: 'parts', code: 'missing' }],
    [{ shares: [0.5] }, { field: 'shares', code: 'out-of-bounds', given: 1 }],
    [{ shares: [0.5, 0.4] }, { field: 'shares', given: '0.9 together' }],
    [{ shares: [0.5, 'half'] }, { field: 'shares.1', code: 'not-a-number', given: 'half' }],
    [{ shares: [1.5, -0.5] }, { field: 'shares.0', code: 'out-of-bounds', given: 1.5 }],
    [
      { parts: 3, shares: [0.5, 0.5] },
      { field: 'parts', code: 'conflict', given: 3 },
    ],
  ])('refuses to split by %j', async (body, problem) => {
    const whole = await addPaddock();
    const path = `${farm.path}/paddocks/${whole.id}`;
    const before = await app.contents();
    expectFieldProblem(await app.api.post(`${path}/split`).send(body), problem);
    expect(await app.contents()).toBe(before);
    await app.api.delete(path).expect(204);
  });

  it('keeps a walk, the later reading of a day winning, and refuses one from the future', async () => {
    const paddock = await addPaddock();
    const read = (date: string, heightCm: number): object => ({
      readings: [{ paddockId: paddock.id, date, heightCm }],
    });
    const path = `${farm.path}/grass-readings`;
    await app.api
      .post(path)
      .send(read(inDays(-1), 12))
      .expect(201);
    await app.api
      .post(path)
      .send(read(inDays(-1), 13))
      .expect(201);
    const kept = (await app.api.get(path)).body as GrassReading[];
    expect(kept).toEqual([
      { id: expect.any(String), paddockId: paddock.id, date: inDays(-1), heightCm: 13 },
    ]);
    expectFieldProblem(await app.api.post(path).send(read(inDays(2), 12)), {
      field: 'readings.0.date',
      code: 'out-of-bounds',
    });
    expectFieldProblem(await app.api.post(path).send(read(inDays(-1), -4)), {
      field: 'readings.0.heightCm',
      code: 'out-of-bounds',
      given: -4,
    });
    expectProblem(await app.api.delete(`${path}/nowhere`), 404);
    await app.api.delete(`${path}/${kept[0]!.id}`).expect(204);
    await app.api.delete(`${farm.path}/paddocks/${paddock.id}`).expect(204);
  });

  it('plans the pasture of the sample farm as the core does, and notes where a herd went', async () => {
    const sample = (await app.api.post('/api/farms/sample').expect(201)).body as { id: string };
    const path = `/api/farms/${sample.id}`;
    const picture = (await app.api.get(`${path}/picture`).expect(200)).body as FarmPicture;
    const plan = (await app.api.get(`${path}/pasture/plan`).expect(200)).body as PasturePlan;
    const own = planPasture(picture, tables);
    expect(plan).toEqual(JSON.parse(JSON.stringify(own)));
    expect(plan.moves.length).toBeGreaterThan(30);
    expect(plan.birds.length).toBeGreaterThan(0);
    const herd = picture.herds[0]!;
    const paddock = picture.paddocks[0]!;
    await app.api
      .post(`${path}/herds/${herd.id}/moved`)
      .send({ paddockId: paddock.id, on: inDays(-2) })
      .expect(200);
    const other = picture.paddocks[1]!;
    await app.api
      .post(`${path}/herds/${herd.id}/moved`)
      .send({ paddockId: other.id, on: inDays(0) })
      .expect(200);
    const left = (await app.api.get(`${path}/paddocks/${paddock.id}`)).body as Paddock;
    expect(left.lastGrazedOn).toBe(inDays(-1));
    // What they left is told with the move, is a reading of the paddock they left (of that day's moves
    // the one before it says which), and goes with it.
    const third = picture.paddocks[2]!;
    const move = {
      ...{ kind: 'herd-move', about: herd.id, on: inDays(0) },
      details: { paddockId: third.id, leftHeightCm: 9 },
    };
    const [fact] = (
      await app.api
        .post(`${path}/told`)
        .send({ facts: [move] })
        .expect(201)
    ).body as { id: string }[];
    const readings = async (): Promise<GrassReading[]> =>
      (await app.api.get(`${path}/grass-readings`).expect(200)).body as GrassReading[];
    const ofMove = { paddockId: other.id, date: inDays(0), heightCm: 9, isOfMove: true };
    expect(await readings()).toContainEqual({ ...ofMove, id: fact!.id });
    const now = (await app.api.get(`${path}/picture`).expect(200)).body as FarmPicture;
    expect(now.readings).toContainEqual({ ...ofMove, id: fact!.id });
    await app.api.delete(`${path}/told/${fact!.id}`).expect(204);
    expect((await readings()).filter(({ isOfMove }) => isOfMove)).toEqual([]);
    expectFieldProblem(
      await app.api
        .post(`${path}/herds/${herd.id}/moved`)
        .send({ paddockId: third.id, on: inDays(0), leftHeightCm: 300 }),
      { field: 'leftHeightCm', code: 'out-of-bounds', given: 300 },
    );
    expectFieldProblem(
      await app.api
        .post(`${path}/herds/${herd.id}/moved`)
        .send({ paddockId: paddock.id, on: inDays(3) }),
      { field: 'on', code: 'out-of-bounds' },
    );
  }, 30_000);

  it('works a plan out once for all who ask at once, and answers others meanwhile', async () => {
    const sample = (await app.api.post('/api/farms/sample').expect(201)).body as { id: string };
    // So much land that its plan takes a while.
    await inManyParts(app, `/api/farms/${sample.id}`);
    const run = jest.spyOn(app.nest.get(WorkPool), 'run');
    const path = `/api/farms/${sample.id}/pasture/plan`;
    const answered: string[] = [];
    const ask = async (name: string, address: string): Promise<unknown> => {
      const { body } = await app.api.get(address).expect(200);
      answered.push(name);
      return body as unknown;
    };
    const plans = [ask('plan', path), ask('plan', path)];
    const farms = new Promise<void>((resolve) => setTimeout(resolve, 150)).then(() =>
      ask('farms', '/api/farms'),
    );
    const [one, two] = await Promise.all([...plans, farms]);
    expect(one).toEqual(two);
    expect(run).toHaveBeenCalledTimes(1);
    expect(answered).toEqual(['farms', 'plan', 'plan']);
    await ask('plan', path);
    expect(run).toHaveBeenCalledTimes(1);
    run.mockRestore();
  }, 30_000);

  it('says what cannot be planned each time it is asked', async () => {
    const bare = await saveFarm(app);
    for (let time = 0; time < 2; time++) {
      expectFieldProblem(await app.api.get(`${bare.path}/pasture/plan`), {
        field: expect.any(String),
      });
    }
  }, 30_000);

  it('keeps the choices of a plan, and refuses one that cannot be planned', async () => {
    const path = `${farm.path}/pasture`;
    await app.api.put(`${path}/choices`).send({ restFactor: 1.2, feedingId: 'cone' }).expect(200);
    const { pastureChoices } = (await app.api.get(`${farm.path}/picture`).expect(200))
      .body as FarmPicture;
    expect(pastureChoices).toEqual({ restFactor: 1.2, feedingId: 'cone', version: 2 });
    expectFieldProblem(await app.api.put(`${path}/choices`).send({ feedingId: 'shovel' }), {
      field: 'pastureChoices.feedingId',
      code: 'not-allowed',
      given: 'shovel',
    });
    expectFieldProblem(await app.api.put(`${path}/choices`).send({ restFactor: 9 }), {
      field: 'restFactor',
      code: 'out-of-bounds',
    });
  });

  it('plans and explains a pasture that is sent whole', async () => {
    const order = {
      farm: newFarm(),
      today: '2027-04-01',
      paddocks: ['a', 'b', 'c', 'd'].map((id) => ({ ...PADDOCK, id, name: id })),
      herds: [{ ...HERD, id: 'h', groups: [{ classId: 'stocker', head: 4 }] }],
    };
    const plan = (await app.api.post('/api/pasture/preview').send(order).expect(200))
      .body as PasturePlan;
    expect(plan.herds.map((h) => h.name)).toEqual(['Cows']);
    const { body } = await app.api.post('/api/pasture/explain').send(order).expect(200);
    expect((body as unknown[]).length).toBeGreaterThan(100);
    expectFieldProblem(
      await app.api.post('/api/pasture/preview').send({
        ...order,
        readings: [{ paddockId: 'z', date: '2027-03-30', heightCm: 8 }],
      }),
      { field: 'readings.0.paddockId', code: 'not-allowed', given: 'z' },
    );
    expectFieldProblem(
      await app.api
        .post('/api/pasture/preview')
        .send({ ...order, herds: [order.herds[0], order.herds[0]] }),
      { field: 'herds.1.id', code: 'conflict' },
    );
  }, 30_000);
});
