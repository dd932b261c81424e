import { hayAheadOf } from '../../../shared/plan/pasture/hay-beside-grass.js';
import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { addDays } from '../../../shared/calendar/plain-date.js';
import { FORMULAS } from '../../../shared/formulas/formulas.js';
import { quantitiesIn } from '../../../shared/explain/quantities-in.js';
import type { Quantity } from '../../../shared/explain/quantity.js';
import type { Cow } from '../../../shared/farm/cow.js';
import type { CattleGroup, Herd } from '../../../shared/farm/herd.js';
import type { Paddock } from '../../../shared/farm/paddock.js';
import { moveQuantities } from '../../../shared/plan/pasture/move-quantities.js';
import type { PasturePlan } from '../../../shared/plan/pasture/pasture-plan.js';
import type { PastureChoices } from '../../../shared/farm/pasture-choices.js';
import { seasonRows } from '../../../shared/plan/pasture/season-rows.js';
import { taskHours } from '../../../shared/plan/tasks/task-hours.js';
import {
  allStandingOn,
  averageOn,
  heightOn,
  needAheadOf,
  needOn,
  standingOn,
  usableOn,
} from '../../../shared/plan/pasture/standing.js';
import { tables } from '../../support/factories.js';
import { newCow, newPaddock, newPastureRequest } from '../../support/pasture-factories.js';
import { notFiniteIn } from '../not-finite.js';
import { newBatch } from '../../support/factories.js';
import { plannedPasture, type PastureCase } from '../../support/pictures.js';

const ids = (rows: readonly { id: string }[]) => fc.constantFrom(...rows.map((row) => row.id));
/** Birds that may follow the first herd, a month old on the day of the plan. */
const hens = (today: string) => ({
  ...newBatch({ name: 'Hens', arrivalDate: addDays(today, -30) }),
  id: 'hens',
});

const maybe = <T>(arbitrary: fc.Arbitrary<T>): fc.Arbitrary<T | undefined> =>
  fc.option(arbitrary, { nil: undefined });
const defined = <T extends object>(value: T): T =>
  Object.fromEntries(Object.entries(value).filter(([, v]) => v !== undefined)) as T;
const stands = fc.constantFrom('fair' as const, 'good' as const, 'excellent' as const);
const levels = fc.constantFrom('low' as const, 'medium' as const, 'high' as const);
const span = fc.record({
  from: fc.integer({ min: 0, max: 90 }),
  days: fc.integer({ min: 0, max: 40 }),
});

const paddock = fc.record({
  areaM2: fc.oneof(fc.integer({ min: 500, max: 40_000 }), fc.constantFrom(50, 1e7)),
  forageId: ids(tables.forages),
  stand: stands,
  productivity: levels,
  soilId: ids(tables.soils),
  hasWater: fc.boolean(),
  massKgPerHaCm: maybe(fc.integer({ min: 20, max: 500 })),
  readyHeightCm: maybe(fc.integer({ min: 30, max: 90 })),
  residualHeightCm: maybe(fc.integer({ min: 1, max: 10 })),
  grazedDaysAgo: maybe(fc.integer({ min: 0, max: 300 })),
  harvestInDays: maybe(fc.integer({ min: 0, max: 200 })),
  closedDays: fc.array(span, { maxLength: 2 }),
  readings: fc.array(
    fc.record({
      daysAgo: fc.integer({ min: 0, max: 120 }),
      heightCm: fc.integer({ min: 1, max: 120 }),
    }),
    { maxLength: 3 },
  ),
});
/** Cows with a name in a group; those that are more than its head are left out. */
const named = fc.record({
  weightKg: maybe(fc.integer({ min: 150, max: 800 })),
  milkKgPerDay: maybe(fc.integer({ min: 0, max: 40 })),
  bred: maybe(fc.integer({ min: -300, max: 30 })),
});
const group = fc.record({
  named: fc.array(named, { maxLength: 3 }),
  classId: ids(tables.cattle.classes),
  head: fc.integer({ min: 1, max: 25 }),
  weightKg: maybe(fc.integer({ min: 150, max: 800 })),
  milkKgPerDay: maybe(fc.integer({ min: 0, max: 40 })),
  breedId: maybe(ids(tables.gestation.breeds)),
  arrives: maybe(fc.integer({ min: -30, max: 60 })),
  stays: maybe(fc.integer({ min: 1, max: 200 })),
  bred: maybe(fc.integer({ min: -300, max: 30 })),
  calves: maybe(fc.integer({ min: -150, max: 200 })),
});
const herd = fc.record({
  groups: fc.array(group, { minLength: 1, maxLength: 2 }),
  longestStayDays: maybe(fc.integer({ min: 1, max: 14 })),
  stands: fc.boolean(),
  turnsOut: maybe(fc.integer({ min: -10, max: 40 })),
});
const farm = fc.record({
  today: fc.integer({ min: 0, max: 364 }).map((day) => addDays('2027-01-01', day)),
  days: fc.integer({ min: 15, max: 130 }),
  latitudeDeg: fc.constantFrom(-66, -40, -5, 0, 12, 35, 43, 60, 90),
  warmer: fc.integer({ min: -25, max: 18 }),
  rain: maybe(fc.integer({ min: 0, max: 200 })),
  shares: maybe(fc.array(fc.integer({ min: 0, max: 3 }), { minLength: 12, maxLength: 12 })),
  restFactor: maybe(fc.constantFrom(0.3, 0.7, 1.5, 3)),
  refillH: maybe(fc.constantFrom(0.1, 3, 9, 48)),
  feedingId: maybe(ids(tables.pasture.hay.feeding)),
  baleId: maybe(ids(tables.pasture.hay.bales)),
  paddocks: fc.array(paddock, { minLength: 1, maxLength: 5 }),
  herds: fc.array(herd, { minLength: 0, maxLength: 2 }),
  birds: fc.boolean(),
});
type Order = typeof farm extends fc.Arbitrary<infer T> ? T : never;

/** Made from the small parts inside the property, so that a counterexample can be read. */
function requestOf(order: Order): PastureCase {
  const { today, warmer, rain } = order;
  const paddocks = order.paddocks.map(
    ({ grazedDaysAgo, harvestInDays, closedDays, readings: _, ...own }, k): Paddock =>
      newPaddock(
        defined({
          ...own,
          id: `p${k}`,
          name: `Paddock ${k}`,
          lastGrazedOn: grazedDaysAgo === undefined ? undefined : addDays(today, -grazedDaysAgo),
          harvestOn: harvestInDays === undefined ? undefined : addDays(today, harvestInDays),
          closedDays: closedDays.map((each) => ({
            from: addDays(today, each.from),
            to: addDays(today, each.from + each.days),
            why: 'wet' as const,
          })),
        }) as Partial<Paddock>,
      ),
  );
  const herds = order.herds.map(({ groups, stands: isIn, turnsOut, longestStayDays }, h): Herd =>
    defined({
      id: `h${h}`,
      name: `Herd ${h}`,
      longestStayDays,
      followedByBatchId: order.birds && h === 0 ? 'hens' : undefined,
      inPaddockId: isIn && h < paddocks.length ? `p${h}` : undefined,
      turnOutOn: turnsOut === undefined ? undefined : addDays(today, turnsOut),
      groups: groups.map(({ arrives, stays, bred, calves, named: _named, ...each }) => {
        const arrivesOn = arrives === undefined ? undefined : addDays(today, arrives);
        return defined({
          ...each,
          arrivesOn,
          leavesOn: stays === undefined ? undefined : addDays(arrivesOn ?? today, stays),
          bredOn: bred === undefined ? undefined : addDays(today, bred),
          calvesOn: calves === undefined ? undefined : addDays(today, calves),
        }) as CattleGroup;
      }),
    } as Herd),
  );
  const cows = order.herds.flatMap(({ groups }, h) =>
    groups.flatMap(({ named: own, head, classId }, g) =>
      own.slice(0, head).map(({ bred, ...each }, k): Cow =>
        defined({
          ...newCow({ id: `${h}-${g}-${k}`, name: `Cow ${h} ${g} ${k}`, herdId: `h${h}`, classId }),
          ...each,
          bredOn: bred === undefined ? undefined : addDays(today, bred),
        } as Cow),
      ),
    ),
  );
  const base = newPastureRequest({ farm: { latitudeDeg: order.latitudeDeg } });
  const warm = (months: readonly number[]): number[] => months.map((c) => c + warmer);
  const request = newPastureRequest({
    today,
    farm: {
      latitudeDeg: order.latitudeDeg,
      monthlyMinC: warm(base.farm.monthlyMinC),
      monthlyMaxC: warm(base.farm.monthlyMaxC),
    },
    ...(rain === undefined ? {} : { rainMm: new Array<number>(12).fill(rain) }),
    paddocks,
    herds,
    cows,
    readings: order.paddocks.flatMap(({ readings }, k) =>
      readings.map(({ daysAgo, heightCm }, n) => ({
        id: `r${k}.${n}`,
        paddockId: `p${k}`,
        date: addDays(today, -daysAgo),
        heightCm,
      })),
    ),
    ...(order.birds ? { batches: [hens(today)] } : {}),
    choices: defined({
      from: today,
      to: addDays(today, order.days),
      rainShareByMonth: order.shares,
      restFactor: order.restFactor,
      refillH: order.refillH,
      feedingId: order.feedingId,
      baleId: order.baleId,
    }) as PastureChoices,
  });
  if (rain !== undefined) return request;
  const { meanRainMm: _, ...climate } = request.climate;
  return { ...request, climate };
}

function expectWhole(plan: PasturePlan): void {
  expect(notFiniteIn(plan)).toEqual([]);
  const opened = [
    ...quantitiesIn(plan),
    ...plan.moves.flatMap((m) => moveQuantities(plan, m)),
    ...plan.tasks.map((task) => taskHours(task, tables)),
    ...quantitiesIn(seasonRows(plan)),
    ...standingOnDays(plan),
  ];
  for (const each of opened) {
    if (!FORMULAS.has(each.formula)) throw new Error(`no formula ${each.formula}`);
    for (const source of each.sources)
      if (!(source in tables.sources)) throw new Error(`${each.formula}: no source ${source}`);
    const labels = each.inputs.map(({ label }) => label);
    expect(new Set(labels).size).toBe(labels.length); // the page tells inputs apart by them
  }
  expect(notFiniteIn(opened)).toEqual([]);
}

/** What the page opens of the first, a middle and the last day. */
function standingOnDays(plan: PasturePlan): Quantity[] {
  const last = plan.paddocks[0]!.massByDay.length - 1;
  return [0, Math.floor(last / 2), last].flatMap((day) => [
    ...plan.paddocks.flatMap((own) => [standingOn(plan, own, day), heightOn(plan, own, day)]),
    ...plan.herds.map((each) => needOn(plan, each, day)),
    allStandingOn(plan, day),
    averageOn(plan, day),
    usableOn(plan, day),
    needAheadOf(plan, day),
    hayAheadOf(plan, day),
  ]);
}

/** Every day of every herd is in one row, of grass or of hay, where it needs anything. */
function expectRows(plan: PasturePlan): void {
  const rows = seasonRows(plan);
  const fed = rows.reduce((kg, row) => kg + ('hayKg' in row ? row.hayKg : 0), 0);
  const byDay = plan.herds.flatMap((each) => each.hayByDay).reduce((a, b) => a + b, 0);
  expect(Math.abs(fed - byDay)).toBeLessThan(1e-6 * (1 + byDay));
  expect(rows.filter((row) => row.kind === 'mow')).toHaveLength(plan.surplus.length);
  expect(rows.map((row) => row.from)).toEqual(rows.map((row) => row.from).sort());
  for (const row of rows) expect(row.from <= row.to).toBe(true);
}

/** In the evening of a day there stands what stood on the first, and grew, less what went. */
function expectLedger(plan: PasturePlan): void {
  for (const { mass, massByDay, days } of plan.paddocks) {
    let stands = mass.value;
    massByDay.forEach((kg, i) => {
      stands += days.grown[i]! - days.eaten[i]! - days.trampled[i]! - days.mown[i]!;
      stands -= days.diedOff[i]!;
      expect(Math.abs(stands - kg)).toBeLessThan(0.8 + 1e-5 * mass.value); // six digits of the start
    });
  }
}

function expectApart(plan: PasturePlan, request: PastureCase): void {
  const inPaddock = new Set<string>();
  const ofHerd = new Set<string>();
  for (const move of plan.moves) {
    const paddock = request.paddocks.find((p) => p.id === move.paddockId)!;
    const herd = request.herds.find((h) => h.id === move.herdId)!;
    expect(move.to).toBe(addDays(move.from, move.days - 1));
    expect(plan.from <= move.from && move.to <= plan.to).toBe(true);
    expect(herd.turnOutOn === undefined || herd.turnOutOn <= move.from).toBe(true);
    expect(move.longestDays).toBe(herd.longestStayDays ?? tables.pasture.longestStayDays.value);
    for (let date = move.from; date <= move.to; date = addDays(date, 1)) {
      for (const [seen, key] of [
        [inPaddock, `${move.paddockId} ${date}`],
        [ofHerd, `${move.herdId} ${date}`],
      ] as const) {
        expect(seen.has(key)).toBe(false);
        seen.add(key);
      }
      expect(paddock.closedDays.some((days) => days.from <= date && date <= days.to)).toBe(false);
    }
  }
}

/** No closed paddock takes birds, no bed takes cattle or birds before its harvest. */
function expectKeptOff({ moves, birds, beds, paddocks }: PasturePlan): void {
  for (const { paddockId, from, to } of [...moves, ...birds]) {
    const { closedDays } = paddocks.find(({ id }) => id === paddockId)!;
    expect(closedDays.some((days) => days.from <= to && from <= days.to)).toBe(false);
    const bed = beds.find((each) => each.paddockId === paddockId);
    if (bed) expect(to <= String(bed.lastDay.value)).toBe(true);
  }
}

function expectBalanced({ forageBalance: book, moves, herds }: PasturePlan): void {
  const came = book.startKg + book.grownKg;
  const went = book.eatenKg + book.trampledKg + book.mownKg + book.diedOffKg + book.endKg;
  expect(Math.abs(came - went)).toBeLessThan(0.5 + 1e-9 * came); // seven terms of one decimal
  for (const kg of Object.values(book)) expect(kg).toBeGreaterThanOrEqual(0);
  const sum = (values: readonly number[]): number => values.reduce((a, b) => a + b, 0);
  expect(Math.abs(sum(moves.map((m) => m.eatenKg)) - book.eatenKg)).toBeLessThan(
    0.1 + 0.06 * moves.length,
  );
  expect(Math.abs(sum(moves.map((m) => m.trampledKg)) - book.trampledKg)).toBeLessThan(
    0.1 + 0.06 * moves.length,
  );
  // Every herd is fed its need: what is not hay was eaten on its moves.
  for (const herd of herds) {
    const eaten = sum(moves.filter((m) => m.herdId === herd.id).map((m) => m.eatenKg));
    const off = sum(herd.needByDay) - sum(herd.hayByDay) - eaten;
    expect(Math.abs(off)).toBeLessThan(0.1 * herd.needByDay.length + 0.06 * moves.length);
    herd.hayByDay.forEach((kg, i) => {
      expect(kg).toBeGreaterThanOrEqual(0);
      expect(kg).toBeLessThanOrEqual(herd.needByDay[i]! + 0.06);
    });
  }
}

describe('planPasture on any farm', () => {
  it('has finite numbers that open, herds apart, and a book that balances', () => {
    fc.assert(
      fc.property(farm, (order) => {
        const request = requestOf(order);
        const plan = plannedPasture(request);
        expectWhole(plan);
        expectApart(plan, request);
        expectKeptOff(plan);
        expectBalanced(plan);
        expectRows(plan);
        expectLedger(plan);
      }),
      { numRuns: 40 },
    );
  }, 60_000);
});
