import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { addDays } from '../../../shared/calendar/plain-date.js';
import type { Batch } from '../../../shared/farm/batch.js';
import type { ToldFact } from '../../../shared/farm/told-fact.js';
import { howItWent } from '../../../shared/plan/record/how-it-went.js';
import type { RecordLine } from '../../../shared/plan/record/record-line.js';
import { newRequest } from '../../support/factories.js';
import { plannedBatch } from '../../support/pictures.js';

const ARRIVAL = '2027-05-05';
let k = 0;
const fact = (kind: ToldFact['kind'], day: number, details: object, more: object = {}): ToldFact =>
  ({
    id: `f${++k}`,
    key: `f${k}`,
    kind,
    about: 'b',
    on: addDays(ARRIVAL, day),
    details,
    toldAt: new Date(Date.UTC(2027, 4, 5) + day * 864e5 + k).toISOString(),
    ...more,
  }) as ToldFact;

const PRICES = { feedPerBag: { starter: '20', grower: '20' }, processingPerBird: '5.25' };
const went = (facts: readonly ToldFact[], today = 120, batch: Partial<Batch> = {}) =>
  howItWent({
    batchId: 'b',
    plan: plannedBatch(newRequest({ batch: { orderedBirds: 50, ...batch }, today: ARRIVAL })),
    facts,
    today: addDays(ARRIVAL, today),
  });
const lineOf = (lines: readonly RecordLine[], id: string): RecordLine =>
  lines.find((line) => line.id === id)!;

const SEASON = [
  fact('arrived', 0, { birds: 52, dead: 2 }),
  fact('died', 3, { birds: 4 }),
  fact('gone', 30, { birds: 6, how: 'sold', money: '60' }),
  fact('feed-opened', 1, { bags: 8, bagKg: 20 }),
  fact('feed-opened', 30, { bags: 12, bagKg: 20 }),
  fact('bought', 0, { what: 'feed', amount: 10, eachKg: 20, money: '150.00' }, { about: 'farm' }),
  fact('bought', 29, { what: 'feed', amount: 10, eachKg: 20, money: '170.01' }, { about: 'farm' }),
  fact('processed', 56, { birds: 40, liveKg: 100, dressedKg: 72, packs: 40 }),
];

describe('how a batch went', () => {
  it('counts to the bird, and is over when the last of them is gone', () => {
    const { lines, isOver, upTo } = went(SEASON);
    expect({ isOver, upTo }).toEqual({ isOver: true, upTo: addDays(ARRIVAL, 56) });
    expect(lineOf(lines, 'came').actual).toBe(50); // 52 less 2 dead in the box
    expect(lineOf(lines, 'lost').actual).toBe(4);
    expect(lineOf(lines, 'processed').actual).toBe(40);
    expect(lineOf(lines, 'sold').actual).toBe(6); // 50 = 4 + 40 + 6
  });

  it('weighs, and sets feed against live weight', () => {
    const { lines } = went(SEASON);
    expect(lineOf(lines, 'live-each').actual).toBeCloseTo(2.5, 9); // 100 kg ÷ 40
    expect(lineOf(lines, 'dressed-each').actual).toBeCloseTo(1.8, 9); // 72 kg ÷ 40
    expect(lineOf(lines, 'feed').actual).toBe(400); // 20 bags of 20 kg
    expect(lineOf(lines, 'conversion').actual).toBeCloseTo(4, 9); // 400 kg ÷ 100 kg
    expect(lineOf(lines, 'age').actual).toBe(57); // hatched a day before they came
    // What went over what 100 kg of birds eat with nothing spilled, as the plan has it.
    const conversion = lineOf(lines, 'conversion').planned!;
    const waste = lineOf(lines, 'waste');
    const eatenKg = (100 * conversion) / (1 + waste.planned!);
    expect(waste.actual).toBeCloseTo(400 / eatenKg - 1, 9);
  });

  it('takes what was paid for feed, to the cent', () => {
    const { lines } = went(SEASON);
    // 320.01 for 400 kg, and 400 kg were opened.
    expect(lineOf(lines, 'feed-cost').actual).toBe(32001);
    const [all, feed] = [lineOf(lines, 'cost'), lineOf(lines, 'feed-cost')];
    // The plan has no price of feed: all it has is beside it.
    expect(feed.planned).toBeUndefined();
    expect(all.actual! - feed.actual!).toBe(all.planned!);
    expect(lineOf(lines, 'cost-live').actual).toBeCloseTo(all.actual! / 100, 9);
    expect(lineOf(lines, 'cost-dressed').actual).toBeCloseTo(all.actual! / 72, 9);
  });

  it('costs what was planned beside feed, where feed has a planned price', () => {
    const { lines } = went(SEASON, 120, { prices: { feedPerBag: PRICES.feedPerBag }, bagKg: 20 });
    const [all, feed] = [lineOf(lines, 'cost'), lineOf(lines, 'feed-cost')];
    expect(feed.planned).toBeGreaterThan(0);
    expect(all.actual! - feed.actual!).toBe(all.planned! - feed.planned!);
  });

  it('takes the planned price of feed where none was paid, and says so', () => {
    const unpaid = SEASON.filter(({ kind }) => kind !== 'bought');
    const { lines } = went(unpaid, 120, { prices: PRICES, bagKg: 20 });
    expect(lineOf(lines, 'feed-cost').actual).toBe(40000); // 20 bags at 20.00
    expect(lineOf(lines, 'cost').note).toMatch(/feed at the planned price/);
  });

  it('pays for processing by the birds that were processed', () => {
    const hired = { prices: PRICES, bagKg: 20, processing: 'hired' } as const;
    const { lines } = went(SEASON, 120, hired);
    const fewer = SEASON.map((each) =>
      each.kind === 'processed' ? fact('processed', 56, { birds: 38, liveKg: 95 }) : each,
    );
    const left = fact('died', 56, { birds: 2 });
    const less = went([...fewer, left], 120, hired);
    expect(lineOf(lines, 'cost').actual! - lineOf(less.lines, 'cost').actual!).toBe(1050); // 2 × 5.25
    expect(lineOf(lines, 'cost-live').note).toBe('without the weight of 6 that left alive');
  });

  it('says what is missing rather than guess it', () => {
    const { lines, isOver } = went([]);
    expect(isOver).toBe(false);
    for (const line of lines.filter(({ actual }) => actual === undefined))
      expect(line.note).toBeTruthy();
    expect(lines.filter(({ actual }) => actual !== undefined)).toEqual([]);
    const unweighed = went([
      fact('arrived', 0, { birds: 50 }),
      fact('processed', 56, { birds: 50 }),
    ]);
    expect(lineOf(unweighed.lines, 'conversion').note).toBe('no opened feed was told');
    expect(lineOf(unweighed.lines, 'live-each').note).toMatch(/no live weight/);
  });

  it('leaves out what was taken back, and holds a correction', () => {
    const [arrived, died, ...rest] = SEASON;
    const back = { ...died!, takenBackAt: '2027-06-01T00:00:00.000Z' };
    expect(lineOf(went([arrived!, back, ...rest], 120).lines, 'lost').actual).toBe(0);
    const changed = fact('died', 3, { birds: 2 }, { replaces: died!.id });
    expect(lineOf(went([...SEASON, changed]).lines, 'lost').actual).toBe(2);
  });

  it('holds no half of a life against the plan of the whole', () => {
    const { lines } = went(SEASON.slice(0, 4), 20);
    expect(lineOf(lines, 'feed')).toMatchObject({ label: 'Feed opened so far', actual: 160 });
    expect(lineOf(lines, 'feed').planned).toBeUndefined();
    expect(lineOf(lines, 'cost').note).toBe('known when the last bird is gone');
  });

  it('weighs all by those that were weighed, and says of how many', () => {
    const some = [
      ...SEASON.slice(0, 7),
      fact('processed', 50, { birds: 20 }),
      fact('processed', 56, { birds: 20, liveKg: 50 }),
    ];
    const { lines } = went(some);
    expect(lineOf(lines, 'live-each')).toMatchObject({
      actual: 2.5,
      note: 'of 20 of the 40 birds',
    });
    expect(lineOf(lines, 'conversion').actual).toBeCloseTo(4, 9); // 400 kg ÷ (40 × 2.5 kg)
  });

  it('sets eggs against those planned for the same days', () => {
    const layers = { purpose: 'layers', strainId: 'brown-layer', sex: 'pullets' } as const;
    const { lines } = went(
      [fact('arrived', 0, { birds: 50 }), fact('eggs-counted', 210, { days: 7, eggs: 250 })],
      220,
      layers,
    );
    const [eggs, each] = [lineOf(lines, 'eggs'), lineOf(lines, 'eggs-per-hen')];
    expect(eggs).toMatchObject({ actual: 250, note: '7 days counted' });
    expect(each.actual).toBe(5); // 250 ÷ 50
    expect(each.planned).toBeGreaterThan(4);
    expect(each.planned).toBeLessThan(7);
  });

  it('comes to the same eggs a hen to the last figure, in whatever order they were told', () => {
    const layers = { purpose: 'layers', strainId: 'brown-layer', sex: 'pullets' } as const;
    const counts = Array.from({ length: 20 }, (_, k) =>
      fact('eggs-counted', 190 + 3 * k, { days: 1 + (k % 3), eggs: 7 + ((11 * k) % 13) }),
    );
    const came = fact('arrived', 0, { birds: 47 });
    const inTurn = (facts: readonly ToldFact[]) =>
      facts.map((each, k) => ({
        ...each,
        toldAt: new Date(Date.UTC(2028, 0, 1, k)).toISOString(),
      }));
    const eachOf = (facts: readonly ToldFact[]) =>
      lineOf(went([came, ...inTurn(facts)], 260, layers).lines, 'eggs-per-hen');
    // Each count told first once.
    for (const k of counts.keys())
      expect(eachOf([...counts.slice(k), ...counts.slice(0, k)])).toEqual(eachOf(counts));
  });

  it('sets hours against those reckoned for the same jobs', () => {
    const done = (hours: number, reckonedHours: number, n: number): ToldFact =>
      fact(
        'work-progress',
        5,
        { doneOn: ARRIVAL, hours, reckonedHours },
        { about: `batch/b/t${n}` },
      );
    const other = fact('work-progress', 5, { hours: 9, reckonedHours: 1 }, { about: 'batch/c/t' });
    const { lines } = went([done(2, 1.5, 1), done(1, 1, 2), other]);
    expect(lineOf(lines, 'hours')).toMatchObject({
      planned: 2.5,
      actual: 3,
      note: '2 jobs were timed',
    });
  });

  it('loses and makes no bird, in whatever order it was told', () => {
    const plan = plannedBatch(newRequest({ batch: { orderedBirds: 50 }, today: ARRIVAL }));
    const leaves = fc.record({
      kind: fc.constantFrom('died', 'processed', 'gone' as const),
      day: fc.nat(60),
      birds: fc.integer({ min: 1, max: 5 }),
    });
    fc.assert(
      fc.property(
        fc.array(leaves, { maxLength: 10 }),
        fc.infiniteStream(fc.nat()),
        (told, order) => {
          const facts = told.map(({ kind, day, birds }) =>
            fact(kind, day, kind === 'gone' ? { birds, how: 'given' } : { birds }),
          );
          const sortKey = facts.map(() => order.next().value!);
          const shuffled = facts
            .map((each, i) => [sortKey[i]!, each] as const)
            .sort(([a], [b]) => a - b)
            .map(([, each]) => each);
          const arrived = fact('arrived', 0, { birds: 50 });
          const of = (list: readonly ToldFact[]) =>
            howItWent({ batchId: 'b', plan, facts: list, today: addDays(ARRIVAL, 61) });
          const { lines, isOver } = of([arrived, ...facts]);
          expect(of([...shuffled, arrived]).lines).toEqual(lines);
          const out = ['lost', 'processed', 'given'].reduce(
            (sum, id) => sum + (lines.find((each) => each.id === id)?.actual ?? 0),
            0,
          );
          expect(out).toBe(told.reduce((sum, { birds }) => sum + birds, 0));
          expect(isOver).toBe(out === 50);
        },
      ),
      { numRuns: 60 },
    );
  });
});
