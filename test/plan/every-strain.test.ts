import { describe, expect, it } from '@jest/globals';
import { explain } from '../../shared/formulas/explanation.js';
import { MARK_MEANING } from '../../shared/explain/formula.js';
import { FORMULAS } from '../../shared/formulas/formulas.js';
import { quantityOfDay } from '../../shared/explain/daily-series.js';
import { quantitiesIn } from '../../shared/explain/quantities-in.js';
import type { Facility } from '../../shared/farm/facility.js';
import type { Quantity } from '../../shared/explain/quantity.js';
import type { BatchPlan } from '../../shared/plan/batch-plan.js';
import { taskHours } from '../../shared/plan/tasks/task-hours.js';
import { SHOWN } from '../../shared/units/unit.js';
import { newBrooder, newRequest, tables } from '../support/factories.js';
import { notFiniteIn } from './not-finite.js';
import { plannedBatch } from '../support/pictures.js';

const PLACES: readonly Facility[] = [
  newBrooder({ circuitId: 'circuit', feederCm: 300, drinkerCm: 120 }),
  { kind: 'circuit', id: 'circuit', name: 'Circuit', volts: 120, amps: 20, otherLoadW: 100 },
  { kind: 'field-pen', id: 'pen', name: 'Pen', floorM2: 11.1, count: 2 },
  { kind: 'coop', id: 'coop', name: 'Coop', floorM2: 12, roostM: 10, nestBoxes: 8, runM2: 60 },
  { kind: 'freezer', id: 'freezer', name: 'Freezer', liters: 400, usedL: 50 },
  { kind: 'feed-store', id: 'store', name: 'Store', capacityKg: 300 },
];
const CASES = tables.strains.flatMap((strain) =>
  strain.purposes.flatMap((purpose) =>
    (['straight-run', 'cockerels', 'pullets'] as const)
      .filter((sex) => purpose === 'meat' || sex !== 'cockerels')
      .flatMap((sex) =>
        [true, false].map(
          (placed) => [strain.id, purpose, sex, placed ? 'with places' : 'without places'] as const,
        ),
      ),
  ),
);

const plans = new Map<string, BatchPlan>();
function planOf(
  strainId: string,
  purpose: 'meat' | 'layers',
  sex: 'straight-run' | 'cockerels' | 'pullets',
  placed: string,
): BatchPlan {
  const key = [strainId, purpose, sex, placed].join();
  const known = plans.get(key);
  if (known) return known;
  const ids =
    placed === 'with places'
      ? {
          brooderId: 'brooder',
          penId: 'pen',
          coopId: 'coop',
          freezerId: 'freezer',
          feedStoreId: 'store',
        }
      : {};
  const prices = {
    perBird: '3.10',
    beddingPerBag: '8.50',
    feedPerBag: { starter: '24.50', grower: '23.00' },
  };
  const plan = plannedBatch(
    newRequest({
      facilities: PLACES,
      batch: { strainId, purpose, sex, ...ids, prices },
      previousArrivalDate: '2027-04-28',
    }),
  );
  plans.set(key, plan);
  return plan;
}

const BROKEN = /NaN|Invalid|undefined|Infinity/;

/** What is wrong with a quantity, or with the way it explains itself in either unit system. */
function complaintsOf(quantity: Quantity): string[] {
  const { label, formula, unit, mark, sources } = quantity;
  const shown = (['metric', 'us'] as const).map((units) =>
    explain(quantity, tables, { units, currency: 'USD' }),
  );
  const checks: [string, boolean][] = [
    ['has no label', label !== ''],
    ['has an unknown formula', FORMULAS.has(formula)],
    ['has an unknown unit', unit in SHOWN],
    ['has an unknown mark', mark in MARK_MEANING],
    ['has an unknown source', sources.every((id) => id in tables.sources)],
    ['loses a source', shown.every((e) => e.sources.length === new Set(sources).size)],
    ['has no words', shown.every((e) => 10 < e.words.length && 0 < e.symbols.length)],
    ['reads badly', shown.every((e) => !BROKEN.test(e.value) && !BROKEN.test(e.spread ?? ''))],
    ['has a bad input', shown.every((e) => e.inputs.every((each) => !BROKEN.test(each.value)))],
  ];
  return checks.filter(([, holds]) => !holds).map(([complaint]) => `${label} ${complaint}`);
}

describe('planBatch', () => {
  it('is asked for every strain, purpose and sex, with and without places', () => {
    // 5 strains for meat × 3 sexes, 3 strains for eggs × 2 sexes, twice each.
    expect(CASES).toHaveLength(42);
  });

  it.each(CASES)('gives %s for %s, %s, %s, finite numbers everywhere', (...of) => {
    expect(notFiniteIn(planOf(...of))).toEqual([]);
  });

  it.each(CASES)('explains every quantity of %s for %s, %s, %s, in both unit systems', (...of) => {
    const plan = planOf(...of);
    const hours = plan.tasks.tasks.map((task) => taskHours(task, tables));
    const quantities = [...quantitiesIn(plan), ...hours];
    expect(quantities.length).toBeGreaterThan(30);
    expect(quantities.flatMap(complaintsOf)).toEqual([]);
  });

  it('names a source for every quantity of every plan', () => {
    const without = CASES.flatMap((of) => quantitiesIn(planOf(...of))).filter(
      (q) => q.sources.length === 0,
    );
    expect([...new Set(without.map((q) => q.label))]).toEqual([]);
  });

  it('keeps every value of every plan inside the spread that is shown for it', () => {
    const outside = CASES.flatMap((of) => quantitiesIn(planOf(...of))).filter(
      ({ value, spread }) =>
        spread &&
        typeof value === 'number' &&
        (value < spread.low - 1e-6 || spread.high + 1e-6 < value),
    );
    const said = outside.map(
      (q) => `${q.label}: ${q.value}, but ${q.spread!.low} to ${q.spread!.high}`,
    );
    expect([...new Set(said)]).toEqual([]);
  });

  it.each(CASES)('explains every day of every series of %s for %s, %s, %s', (...of) => {
    const plan = planOf(...of);
    expect(new Set(plan.daily.map((s) => s.id)).size).toBe(plan.daily.length);
    const complaints = plan.daily.flatMap((series) => {
      const last = series.values.length - 1;
      const lost =
        quantityOfDay(plan.daily, series.id, last + 1) === undefined
          ? []
          : [`${series.id} runs on`];
      return [0, Math.floor(last / 2), last].reduce((all, day) => {
        const quantity = quantityOfDay(plan.daily, series.id, day)!;
        const whole = quantity.inputs.length === series.inputs.length; // no input is lost on the way
        return [
          ...all,
          ...complaintsOf(quantity),
          ...(whole ? [] : [`${series.id} loses an input on day ${day}`]),
        ];
      }, lost);
    });
    expect(complaints).toEqual([]);
  });

  it.each(CASES)('dates everything of %s for %s, %s, %s, between order and end', (...of) => {
    const plan = planOf(...of);
    for (const quantity of quantitiesIn(plan).filter((q) => q.unit === 'date')) {
      expect(quantity.value).toMatch(/^\d{4}-\d{2}-\d{2}$/);
      expect(quantity.value >= '2026-10-01').toBe(true);
    }
    expect(plan.hatchDate < plan.arrivalDate).toBe(true);
    expect(plan.arrivalDate < plan.lastDate).toBe(true);
  });
});
