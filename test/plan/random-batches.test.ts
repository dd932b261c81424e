import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { addDays } from '../../shared/calendar/plain-date.js';
import type { Origin } from '../../shared/farm/batch-origin.js';
import { batchFields, type Batch } from '../../shared/farm/batch.js';
import {
  brooderFields,
  buildUpFields,
  circuitFields,
  coopFields,
  feedStoreFields,
  fieldPenFields,
  freezerFields,
  heatSourceFields,
  layerFields,
  type Facility,
} from '../../shared/farm/facility.js';
import { farmFields } from '../../shared/farm/farm.js';
import type { NumberField } from '../../shared/farm/field.js';
import type { PlanRequest } from '../../shared/plan/request.js';
import { FieldError } from '../../shared/problems/field-problem.js';
import { climateFromMonthlyMeans } from '../../shared/weather/climate.js';
import { newBrooder, newFarm, newRequest, tables } from '../support/factories.js';
import { notFiniteIn } from './not-finite.js';
import { plannedBatch } from '../support/pictures.js';

/** A number within the bounds of a field, its ends more often than chance would have it. */
function within({ bounds: { min, max, integer } }: NumberField): fc.Arbitrary<number> {
  const inside = integer
    ? fc.integer({ min, max })
    : fc.double({ min, max, noNaN: true }).map((x) => Math.max(min, Number(x.toFixed(6)))); // as people type
  return fc.oneof(
    { weight: 4, arbitrary: inside },
    { weight: 1, arbitrary: fc.constantFrom(min, max) },
  );
}
const maybe = <T>(arbitrary: fc.Arbitrary<T>): fc.Arbitrary<T | undefined> =>
  fc.option(arbitrary, { nil: undefined });
const defined = <T extends object>(value: T): T =>
  Object.fromEntries(Object.entries(value).filter(([, v]) => v !== undefined)) as T;

const heat = fc.record({
  kind: fc.constantFrom('lamp' as const, 'plate' as const, 'gas' as const),
  wattsEach: within(heatSourceFields.fields.wattsEach),
  count: within(heatSourceFields.fields.count),
  thermostat: fc.boolean(),
});
const buildUp = fc.oneof(
  fc.record({ rM2KPerW: within(buildUpFields.fields.rM2KPerW) }),
  fc.record({
    layers: fc.array(
      fc.record({
        materialId: fc.constantFrom(...tables.materials.map((m) => m.id)),
        thicknessMm: within(layerFields.fields.thicknessMm),
      }),
      { maxLength: 3 },
    ),
  }),
);
const facilities: fc.Arbitrary<readonly Facility[]> = fc
  .record({
    brooder: fc.record({
      lengthM: within(brooderFields.fields.lengthM),
      widthM: within(brooderFields.fields.widthM),
      heightM: within(brooderFields.fields.heightM),
      walls: buildUp,
      standsIn: fc.constantFrom(
        'outdoors' as const,
        'unheated-building' as const,
        'heated-room' as const,
      ),
      heat,
    }),
    penM2: within(fieldPenFields.fields.floorM2),
    pens: within(fieldPenFields.fields.count),
    coopM2: within(coopFields.fields.floorM2),
    freezerL: within(freezerFields.fields.liters),
    usedL: within(freezerFields.fields.usedL),
    storeKg: within(feedStoreFields.fields.capacityKg),
    amps: within(circuitFields.fields.amps),
  })
  .map(({ brooder, penM2, pens, coopM2, freezerL, usedL, storeKg, amps }) => [
    newBrooder({ ...brooder, circuitId: 'circuit', feederCm: 100, drinkerCm: 50 }),
    { kind: 'circuit', id: 'circuit', name: 'Circuit', volts: 120, amps, otherLoadW: 0 },
    { kind: 'field-pen', id: 'pen', name: 'Pen', floorM2: penM2, count: pens },
    { kind: 'coop', id: 'coop', name: 'Coop', floorM2: coopM2, roostM: 3, nestBoxes: 2, runM2: 0 },
    { kind: 'freezer', id: 'freezer', name: 'Freezer', liters: freezerL, usedL },
    { kind: 'feed-store', id: 'store', name: 'Store', capacityKg: storeKg },
  ]);
const strainAndPurpose = fc.constantFrom(
  ...tables.strains.flatMap((s) => s.purposes.map((purpose) => ({ strainId: s.id, purpose }))),
);
const strainOf = ({ strainId }: { strainId: string }) =>
  tables.strains.find(({ id }) => id === strainId)!;

/** One of the rules that the strain has. */
function ruleOf(strain: { strainId: string }, k: number | undefined): Partial<Batch> {
  if (k === undefined) return {};
  const { rules } = tables.moveOut.find(({ id }) => id === strainOf(strain).moveOut)!;
  return { moveOutRuleId: rules[k % rules.length]!.id };
}

/**
 * Own eggs hatch here, of both sexes; no hen sits on eggs that are not planned under one. Grown
 * pullets are hens to be.
 */
function comesFrom(
  strain: { strainId: string; purpose: string },
  origin: Origin,
  arrivalAgeWeeks: number,
): Partial<Batch> {
  if (origin === 'started')
    return strain.purpose === 'layers'
      ? { origin, arrivalAgeWeeks, sex: 'pullets', hatchToArrivalDays: 0 }
      : {};
  if (origin === 'hatchery') return {};
  const species = tables.hatching.species.find(({ id }) => id === strainOf(strain).species)!;
  return {
    origin: origin === 'hen' && !species.hen ? 'incubator' : origin,
    sex: 'straight-run',
    hatchToArrivalDays: 0,
  };
}

const validBatch: fc.Arbitrary<Partial<Batch>> = fc
  .tuple(
    strainAndPurpose,
    fc.record({
      sex: fc.constantFrom('straight-run' as const, 'pullets' as const),
      wantedBirds: within(batchFields.fields.wantedBirds),
      hatchToArrivalDays: within(batchFields.fields.hatchToArrivalDays),
      arrivalDate: fc.integer({ min: -60, max: 700 }).map((days) => addDays('2026-11-25', days)),
      orderedBirds: maybe(within(batchFields.fields.orderedBirds)),
      weightFactor: maybe(within(batchFields.fields.weightFactor)),
      feedFactor: maybe(within(batchFields.fields.feedFactor)),
      wastePercent: maybe(within(batchFields.fields.wastePercent)),
      firstWeekLossPercent: maybe(within(batchFields.fields.firstWeekLossPercent)),
      laterLossPercent: maybe(within(batchFields.fields.laterLossPercent)),
      leaveAgeDays: maybe(within(batchFields.fields.leaveAgeDays)),
      targetLiveKg: maybe(within(batchFields.fields.targetLiveKg)),
      dressingShare: maybe(within(batchFields.fields.dressingShare)),
      movesPerDay: maybe(within(batchFields.fields.movesPerDay)),
      medicatedWithdrawalDays: maybe(within(batchFields.fields.medicatedWithdrawalDays)),
      bagKg: maybe(within(batchFields.fields.bagKg)),
      processing: maybe(fc.constantFrom('home' as const, 'hired' as const)),
      brooderId: maybe(fc.constant('brooder')),
      penId: maybe(fc.constant('pen')),
      coopId: maybe(fc.constant('coop')),
      freezerId: maybe(fc.constant('freezer')),
      feedStoreId: maybe(fc.constant('store')),
      broodingScheduleId: maybe(fc.constantFrom(...tables.broodingSchedules.map((s) => s.id))),
      eggsSet: maybe(within(batchFields.fields.eggsSet)),
      oldestEggDays: maybe(within(batchFields.fields.oldestEggDays)),
      hatchPercent: maybe(within(batchFields.fields.hatchPercent)),
      prices: maybe(
        fc.constant({ perBird: '3.10', processingPerBird: '5.00', beddingPerBag: '8' }),
      ),
    }),
    maybe(fc.integer({ min: 1, max: 200 })),
    maybe(fc.nat({ max: 2 })),
    fc.constantFrom<Origin>('hatchery', 'hatchery', 'incubator', 'hen', 'started'),
    within(batchFields.fields.arrivalAgeWeeks),
  )
  .map(
    ([strain, rest, moveAfter, rule, origin, weeks]) =>
      defined({
        ...strain,
        ...rest,
        ...ruleOf(strain, rule),
        ...comesFrom(strain, origin, weeks),
        ...(moveAfter === undefined ? {} : { moveOutDate: addDays(rest.arrivalDate, moveAfter) }),
      }) as Partial<Batch>,
  );
const place = fc
  .record({
    meanC: fc.double({ min: -20, max: 30, noNaN: true }),
    swingC: fc.double({ min: -25, max: 25, noNaN: true }),
    latitudeDeg: within(farmFields.fields.latitudeDeg),
    elevationM: within(farmFields.fields.elevationM),
    currency: fc.constantFrom('USD', 'JPY', 'EUR'),
  })
  .map(({ meanC, swingC, ...farm }) => ({
    ...farm,
    monthlyMinC: Array.from(
      { length: 12 },
      (_, m) => meanC - swingC * Math.cos((2 * Math.PI * m) / 12),
    ),
  }));
const order = fc.record({ batch: validBatch, facilities, place });
type Order = typeof order extends fc.Arbitrary<infer T> ? T : never;

/** Made from the small parts inside the property, so that a counterexample can be read. */
function requestOf({
  batch,
  facilities: places,
  place: { monthlyMinC, ...farm },
}: Order): PlanRequest {
  const monthlyMaxC = monthlyMinC.map((c) => c + 10);
  return newRequest({
    batch,
    facilities: places,
    farm: newFarm({ ...farm, monthlyMinC, monthlyMaxC }),
    climate: climateFromMonthlyMeans(monthlyMinC, monthlyMaxC, 6),
  });
}

/** One field of a valid batch replaced by something that has no business there. */
const junk = fc.oneof(
  fc.constantFrom<unknown>(
    null,
    Number.NaN,
    Infinity,
    -Infinity,
    -1,
    0,
    1e12,
    '',
    '12',
    'x',
    true,
    [],
    {},
  ),
  fc.double(),
  fc.string({ maxLength: 12 }),
  fc.date({ noInvalidDate: true }).map((d) => d.toISOString()),
);
const NUMBERS_DATES_AND_IDS = [
  ...[
    'wantedBirds',
    'orderedBirds',
    'hatchToArrivalDays',
    'weightFactor',
    'feedFactor',
    'wastePercent',
  ],
  ...['firstWeekLossPercent', 'laterLossPercent', 'leaveAgeDays', 'targetLiveKg', 'dressingShare'],
  ...['movesPerDay', 'medicatedWithdrawalDays', 'bagKg', 'arrivalDate', 'orderDate', 'moveOutDate'],
  ...[
    'strainId',
    'purpose',
    'growthTableId',
    'broodingScheduleId',
    'spaceStandardId',
    'moveOutRuleId',
  ],
  ...['brooderId', 'penId', 'coopId', 'freezerId', 'feedStoreId'],
];

describe('planBatch', () => {
  it('plans any batch within the bounds with finite numbers only', () => {
    fc.assert(
      fc.property(order, (given) => {
        expect(notFiniteIn(plannedBatch(requestOf(given)))).toEqual([]);
      }),
      { numRuns: 150 },
    );
  }, 60_000);

  it('refuses a spoiled batch with the field named, or plans it with finite numbers', () => {
    fc.assert(
      fc.property(order, fc.constantFrom(...NUMBERS_DATES_AND_IDS), junk, (given, field, value) => {
        const request = requestOf(given);
        const spoiled = { ...request, batch: { ...request.batch, [field]: value } };
        try {
          expect(notFiniteIn(plannedBatch(spoiled))).toEqual([]);
        } catch (error) {
          if (!(error instanceof FieldError)) throw error;
          expect(error.problems.length).toBeGreaterThan(0);
          for (const problem of error.problems) {
            expect(problem.field).toMatch(/^batch\./);
            expect(problem.fix.length).toBeGreaterThan(10);
          }
        }
      }),
      { numRuns: 300 },
    );
  }, 60_000);
});
