import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { addDays } from '../../shared/calendar/plain-date.js';
import type { Product } from '../../shared/farm/product.js';
import { openApp, type TestApp } from '../support/app.js';
import { databases } from '../support/databases.js';
import { newBatch, newBrooder, newFarm, tables } from '../support/factories.js';
import { inDays } from '../support/orders.js';
import { newCow, newHerd, newPaddock, RAIN_MM } from '../support/pasture-factories.js';
import { weightBounds } from '../../shared/plan/weight-bounds.js';
import { newOwnJob } from '../support/season-factories.js';

const STRAINS = tables.strains.flatMap((s) => s.purposes.map((purpose) => ({ s, purpose })));
const FORAGES = tables.forages.map((f) => f.id);

/** Rows are saved in the order of their names, so that a list keeps its order. */
const farms = fc.record({
  warmer: fc.integer({ min: -6, max: 8 }),
  latitudeDeg: fc.integer({ min: -45, max: 55 }),
  rain: fc.boolean(),
  batches: fc.array(
    fc.record({
      which: fc.nat({ max: STRAINS.length - 1 }),
      wantedBirds: fc.integer({ min: 5, max: 200 }),
      arrives: fc.integer({ min: 5, max: 200 }),
    }),
    { maxLength: 3 },
  ),
  paddocks: fc.array(
    fc.record({
      areaM2: fc.integer({ min: 2000, max: 9000 }),
      forage: fc.nat({ max: FORAGES.length - 1 }),
      heightCm: fc.integer({ min: 4, max: 25 }),
    }),
    { maxLength: 4 },
  ),
  head: fc.integer({ min: 1, max: 6 }),
  /** Of the head; more than there are is left out. */
  named: fc.array(
    fc.record(
      {
        weightKg: fc.integer({ min: 350, max: 750 }),
        milkKgPerDay: fc.integer({ min: 2, max: 30 }),
        bredDaysAgo: fc.integer({ min: 0, max: 290 }),
        notes: fc.constant('Kicks.'),
      },
      { requiredKeys: [] },
    ),
    { maxLength: 4 },
  ),
  prices: fc.array(fc.constantFrom('18.00', '24.5', '7'), { maxLength: 3 }),
  follows: fc.boolean(),
  jobs: fc.array(
    fc.record({ hours: fc.integer({ min: 1, max: 9 }), due: fc.integer({ min: 3, max: 60 }) }),
    { maxLength: 5 },
  ),
  away: fc.boolean(),
  hands: fc.boolean(),
  lows: fc.array(fc.integer({ min: -5, max: 12 }), { maxLength: 10 }),
});
type Drawn = typeof farms extends fc.Arbitrary<infer T> ? T : never;

/** A farm as one document. */
function documentOf(d: Drawn) {
  const usual = newFarm();
  const brooder = newBrooder({ id: 'brooder', name: 'Brooder' });
  const batches = d.batches.map(({ which, wantedBirds, arrives }, k) => ({
    ...newBatch({
      name: `Batch ${k}`,
      strainId: STRAINS[which]!.s.id,
      purpose: STRAINS[which]!.purpose,
      wantedBirds,
      // Saved batches are listed by their arrival.
      arrivalDate: inDays(arrives + 300 * k),
    }),
    id: `batch-${k}`,
    brooderId: brooder.id,
  }));
  return {
    farm: newFarm({
      latitudeDeg: d.latitudeDeg,
      monthlyMinC: usual.monthlyMinC.map((c) => c + d.warmer),
      monthlyMaxC: usual.monthlyMaxC.map((c) => c + d.warmer),
      ...(d.rain ? { monthlyRainMm: RAIN_MM } : {}),
    }),
    facilities: [brooder],
    products: d.prices.map((price, k): Product => ({
      ...{ id: `feed-${k}`, kind: 'feed', name: `Feed ${k}`, phaseIds: ['starter', 'grower'] },
      ...{ bagKg: 20 + k, price },
    })),
    people: [
      { id: 'ann', name: 'A', away: d.away ? [{ from: inDays(3), to: inDays(9) }] : [] },
      { id: 'ben', name: 'B', away: [], hoursByWeekday: [3, 3, 3, 3, 3, 6, 4] },
    ],
    batches,
    paddocks: d.paddocks.map(({ areaM2, forage }, k) =>
      newPaddock({ id: `paddock-${k}`, name: `P ${k}`, areaM2, forageId: FORAGES[forage]! }),
    ),
    herds:
      d.paddocks.length === 0
        ? []
        : [
            newHerd({
              id: 'herd',
              groups: [{ classId: 'cow-calf', head: d.head }],
              ...(d.follows && batches[0] ? { followedByBatchId: batches[0].id } : {}),
            }),
          ],
    cows:
      d.paddocks.length === 0
        ? []
        : d.named.slice(0, d.head).map(({ bredDaysAgo, ...own }, k) => ({
            ...newCow({ id: `cow-${k}`, name: `Cow ${k}`, herdId: 'herd', ...own }),
            ...(bredDaysAgo === undefined ? {} : { bredOn: inDays(-bredDaysAgo) }),
          })),
    // A weight that is none of that age would be refused where it is told.
    weighings: batches.slice(0, 1).map((batch) => ({
      ...{ id: 'weighing', batchId: batch.id, date: inDays(-1), birds: 8 },
      averageKg: believedKg(batch),
    })),
    // Eggs of birds that are too young to lay, or for meat, would be refused where they are told.
    eggCounts: batches.slice(0, 1).map(({ id }) => ({
      ...{ id: 'count', batchId: id, date: inDays(-1), days: 7 },
      eggs: 0,
    })),
    readings: d.paddocks.map(({ heightCm }, k) => ({
      paddockId: `paddock-${k}`,
      date: inDays(-2),
      heightCm,
    })),
    jobs: d.jobs.map(({ hours, due }, k) =>
      newOwnJob({ id: `job-${k}`, name: `Job ${k}`, hours, dueOn: inDays(due) }),
    ),
    handovers: d.hands
      ? [
          {
            ...{ id: 'hand', personId: 'ben', from: inDays(4), to: inDays(6), hoursPerDay: 5 },
            ...{ roundOrder: [], phones: [], whereabouts: [] },
          },
        ]
      : [],
    forecast: d.lows.map((minC, k) => ({
      ...{ date: addDays(inDays(0), k), minC, maxC: minC + 9, rainMm: k % 3 },
    })),
  };
}
type FarmDocument = ReturnType<typeof documentOf>;

/** Saves a document row by row, as the page does; ids of the document by those they were given. */
async function save({ api }: TestApp, document: FarmDocument) {
  const ids = new Map<string, string>();
  const { body } = await api.post('/api/farms').send(document.farm).expect(201);
  const path = `/api/farms/${(body as { id: string }).id}`;
  const own = <T>(row: T): T =>
    JSON.parse(
      [...ids].reduce(
        (text, [given, saved]) => text.replaceAll(`"${given}"`, `"${saved}"`),
        JSON.stringify(row),
      ),
    ) as T;
  const lists = [
    'facilities',
    'products',
    'people',
    'batches',
    'paddocks',
    'herds',
    'cows',
    'jobs',
    'handovers',
  ] as const;
  for (const list of lists) {
    for (const { id, ...row } of document[list] as { id: string }[]) {
      const saved = (await api.post(`${path}/${list}`).send(own(row)).expect(201)).body as {
        id: string;
      };
      ids.set(id, saved.id);
    }
  }
  const tell = async (id: string, fact: object): Promise<void> => {
    const facts = [fact];
    const { body: told } = await api.post(`${path}/told`).send({ facts }).expect(201);
    ids.set(id, (told as { id: string }[])[0]!.id);
  };
  for (const { id, batchId, date, birds, averageKg } of own(document.weighings)) {
    const fact = { kind: 'weighed', about: batchId, on: date, details: { birds, averageKg } };
    await tell(id, fact);
  }
  for (const { id, batchId, date, days, eggs } of own(document.eggCounts)) {
    await tell(id, { kind: 'eggs-counted', about: batchId, on: date, details: { days, eggs } });
  }
  if (0 < document.readings.length)
    await api
      .post(`${path}/grass-readings`)
      .send({ readings: own(document.readings) })
      .expect(201);
  await api.put(`${path}/weather/forecast`).send({ days: document.forecast }).expect(200);
  return { path, ids };
}

function believedKg(batch: Parameters<typeof weightBounds>[0]): number {
  const { min, max } = weightBounds(batch, inDays(-1), tables);
  return Math.max(0.03, Math.round(1000 * Math.sqrt(min * max)) / 1000);
}

describe.each(databases())('a farm that is saved and one that is sent, on $name', (database) => {
  let app: TestApp;
  beforeAll(async () => {
    app = await openApp(database);
  }, 60_000);
  afterAll(() => app.close());

  it('get the same plans of batches, pasture and work', async () => {
    await fc.assert(
      fc.asyncProperty(farms, async (drawn) => {
        const document = documentOf(drawn);
        const { path, ids } = await save(app, document);
        const asSent = (text: string): unknown =>
          JSON.parse([...ids].reduce((t, [given, saved]) => t.replaceAll(saved, given), text));
        const saved = async (what: string): Promise<unknown> =>
          asSent((await app.api.get(`${path}/${what}`).expect(200)).text);
        const sent = async (what: string, body: object): Promise<unknown> =>
          (await app.api.post(`/api/${what}`).send(body).expect(200)).body;

        for (const batch of document.batches) {
          const own = `batches/${ids.get(batch.id)}/plan`;
          expect(await saved(own)).toEqual(await sent('plans/preview', { ...document, batch }));
        }
        if (0 < document.paddocks.length)
          expect(await saved('pasture/plan')).toEqual(await sent('pasture/preview', document));
        expect(await saved('work')).toEqual(await sent('plans/work', document));
        await app.api.delete(path).expect(204);
      }),
      { numRuns: 3 },
    );
  }, 300_000);
});
