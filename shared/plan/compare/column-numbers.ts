import { from, input, quantity, type NumberQuantity } from '../../explain/quantity.js';
import type { BatchPlan } from '../batch-plan.js';
import type { BreakEven } from '../cost/break-even.js';
import { compareFormulas } from './compare-formulas.js';

/** What people choose by, of one batch or of several together. */
export interface ColumnNumbers {
  /** Birds to process, or hens at the first egg. */
  readonly birds: NumberQuantity;
  readonly costs: NumberQuantity;
  /** Of a kilogram dressed, or a dozen; left out where it is not known. */
  readonly each?: NumberQuantity;
  /** Dressed weight, or eggs of the first laying year. */
  readonly yields: NumberQuantity;
  readonly hours: NumberQuantity;
  /** What the largest of them takes in the freezer at once. */
  readonly freezer?: NumberQuantity;
  readonly feed: NumberQuantity;
  /** Lost between the arrival and the last day, or the first egg. */
  readonly lost: NumberQuantity;
  /** That fewer birds are left than are wanted, in none of them. */
  readonly enough: NumberQuantity;
  /** Of a night too cold in the first week outdoors, in the worse of them. */
  readonly coldNights?: NumberQuantity;
}

interface Made {
  readonly plan: BatchPlan;
  readonly breakEven: BreakEven;
}

export function columnNumbers(made: readonly Made[]): ColumnNumbers {
  const plans = made.map(({ plan }) => plan);
  const costs = added(
    'All costs',
    made.map(({ breakEven }) => breakEven.withHours ?? breakEven.withoutHours),
  );
  const yields = added(
    plans[0]!.leaving ? 'Dressed weight' : 'Eggs in the first laying year',
    plans.map(({ leaving, laying }) => (leaving?.dressedAll ?? laying?.eggsInYear)!),
  );
  const isKnown = made.every(({ breakEven }) => 0 < breakEven.mustBring.length);
  return {
    birds: birdsOf(plans),
    costs,
    ...(isKnown ? { each: eachOf(costs, yields) } : {}),
    yields,
    hours: added(
      'Your hours',
      plans.map(({ tasks }) => tasks.hoursInAll),
    ),
    ...largest(
      'Freezer room at once',
      plans.map(({ leaving }) => leaving?.freezerNeed),
      'freezer',
    ),
    feed: added(
      'Feed',
      plans.map(({ feed }) => feed.total),
    ),
    lost: lostOf(plans),
    enough: least(
      'Chance of as many as you want',
      plans.map(({ birds }) => birds.enough),
    ),
    ...largest(
      'Nights too cold in the first week out',
      plans.map(({ outdoors }) => outdoors.coldNights),
      'coldNights',
    ),
  };
}

/** One of them as it is, several as their sum. */
function added(label: string, all: readonly NumberQuantity[]): NumberQuantity {
  if (all.length === 1) return { ...all[0]!, label };
  return quantity(
    label,
    all.reduce((sum, { value }) => sum + value, 0),
    all[0]!.unit,
    compareFormulas.added,
    all.map((each) => from(each)),
  );
}

function eachOf(costs: NumberQuantity, yields: NumberQuantity): NumberQuantity {
  const isMeat = yields.unit === 'kg';
  return quantity(
    isMeat ? 'Cost, dressed' : 'Cost of a dozen',
    costs.value / (isMeat ? yields.value : yields.value / 12),
    isMeat ? 'moneyPerKg' : 'money',
    compareFormulas.each,
    [from(costs, 'C'), from(yields, 'n')],
  );
}

const birdsOf = (plans: readonly BatchPlan[]): NumberQuantity =>
  added(
    plans[0]!.birds.atEnd.label,
    plans.map(({ birds }) => birds.atEnd),
  );

function lostOf(plans: readonly BatchPlan[]): NumberQuantity {
  const placed = plans.reduce((sum, { birds }) => sum + birds.chicksPlaced.value, 0);
  const cockerels = plans.reduce(
    (sum, { birds }) => sum + (birds.cockerelsLeave?.birds.value ?? 0),
    0,
  );
  const left = plans.reduce((sum, { birds }) => sum + birds.atEnd.value, 0);
  return quantity(
    plans[0]!.leaving ? 'Birds lost on the way' : 'Lost before the first egg',
    Math.max(0, placed - cockerels - left),
    'count',
    compareFormulas.lost,
    [
      ...plans.map(({ birds }) => from(birds.chicksPlaced, 'N₀')),
      ...(cockerels === 0 ? [] : [input('Cockerels that leave', cockerels, 'count')]),
      ...plans.map(({ birds }) => from(birds.atEnd, 'N')),
    ],
  );
}

function least(label: string, all: readonly NumberQuantity[]): NumberQuantity {
  return { ...all.reduce((a, b) => (b.value < a.value ? b : a)), label };
}

function largest<K extends string>(
  label: string,
  all: readonly (NumberQuantity | undefined)[],
  key: K,
): Partial<Record<K, NumberQuantity>> {
  const known = all.flatMap((each) => each ?? []);
  const most = known.reduce<NumberQuantity | undefined>(
    (a, b) => (a && b.value <= a.value ? a : b),
    undefined,
  );
  return most ? ({ [key]: { ...most, label } } as Record<K, NumberQuantity>) : {};
}
