import { addDays, daysBetween } from '../../calendar/plain-date.js';
import type { Formula } from '../../explain/formula.js';
import {
  from,
  fromJudgement,
  input,
  quantity,
  type NumberQuantity,
} from '../../explain/quantity.js';
import { forageMassFormulas, heightSpread } from '../../pasture/forage-mass.js';
import { intakeFormulas } from '../../pasture/intake.js';
import type { HerdPart } from './herd-part.js';
import type { PaddockPart } from './paddock-part.js';
import type { PasturePlan } from './pasture-plan.js';

export const standingFormulas = {
  standing: {
    id: 'standing-in-evening',
    title: 'Grass on hand in the evening',
    words:
      'What stood when the plan begins and all that grew since, less what was eaten, trampled, mown and died off up to that evening. Growth is worked out day by day.',
    symbols: 'W = W₀ + grown − eaten − trampled − mown − died off',
    sources: ['JOUVEN_2006', 'GRAZING_20'],
    mark: 'computed',
  },
  all: {
    id: 'standing-in-all',
    title: 'Grass on hand in all paddocks',
    words: 'What stands in each paddock that evening times its area, summed.',
    symbols: 'M = Σ W·A',
    sources: ['ARITHMETIC'],
    mark: 'computed',
  },
  average: {
    id: 'standing-average',
    title: 'Average grass on hand',
    words: 'What stands in all paddocks over their area.',
    symbols: 'W_mean = Σ W·A ÷ Σ A',
    sources: ['ARITHMETIC'],
    mark: 'computed',
  },
  usable: {
    id: 'standing-above-residuals',
    title: 'Grass above the residuals',
    words:
      'What stands in each paddock above what must be left for regrowth, times its area, summed. A part of it is trampled, so that less can be eaten.',
    symbols: 'U = Σ max(0, W − W_res)·A',
    sources: ['ARITHMETIC'],
    mark: 'computed',
  },
  needAhead: {
    id: 'need-of-days-ahead',
    title: 'Need of the days ahead',
    words: 'What each herd needs on each of the days, summed; fewer days where the plan ends.',
    symbols: 'F = Σ need of a day',
    sources: ['NRC_BEEF_1996', 'NRC_DAIRY_2001'],
    mark: 'from-memory',
  },
} satisfies Record<string, Formula>;

/** What stands in a paddock in the evening of a day of the plan, kg/ha. */
export function standingOn(plan: PasturePlan, paddock: PaddockPart, day: number): NumberQuantity {
  const { grown, eaten, trampled, mown, diedOff } = paddock.days;
  const upTo = (values: readonly number[]): number => sumOf(values, 0, day + 1);
  return quantity(
    `Grass on hand in ${paddock.name}`,
    paddock.massByDay[day]!,
    'kgPerHa',
    standingFormulas.standing,
    [
      input('Evening of', addDays(plan.from, day), 'date'),
      input('First day of the plan', plan.from, 'date'),
      from(paddock.mass, 'W₀', 'Stood on its morning'),
      input('Grown since', upTo(grown), 'kgPerHa', 'grown'),
      input('Eaten since', upTo(eaten), 'kgPerHa', 'eaten'),
      input('Trampled and refused since', upTo(trampled), 'kgPerHa', 'trampled'),
      input('Mown since', upTo(mown), 'kgPerHa', 'mown'),
      input('Died off since', upTo(diedOff), 'kgPerHa', 'died off'),
      input('Of it, grown on that day', grown[day]!, 'kgPerHa'),
    ],
    { rows: [plan.order] },
  );
}

/** How high it stands then, cm. */
export function heightOn(plan: PasturePlan, paddock: PaddockPart, day: number): NumberQuantity {
  const standing = standingOn(plan, paddock, day);
  return quantity(
    `Height in ${paddock.name}`,
    standing.value / paddock.perCm.value,
    'cm',
    forageMassFormulas.height,
    [
      from(standing, 'W'),
      from(paddock.perCm, 'm'),
      input('Ready height', paddock.readyHeightCm, 'cm', 'h_in'),
      input('Residual', paddock.residualHeightCm, 'cm', 'h_res'),
    ],
    { spread: heightSpread(standing.value, paddock.perCm.spread) },
  );
}

/** What stands in all paddocks in the evening of a day, kg. */
export function allStandingOn(plan: PasturePlan, day: number): NumberQuantity {
  return sumOfPaddocks(plan, 'Grass on hand in all paddocks', standingFormulas.all, (paddock) =>
    kgOf(paddock, paddock.massByDay[day]!),
  );
}

/** The same over the area of the paddocks, kg/ha. */
export function averageOn(plan: PasturePlan, day: number): NumberQuantity {
  const all = allStandingOn(plan, day);
  const areaM2 = plan.paddocks.reduce((sum, { area }) => sum + area.value, 0);
  return quantity(
    'Average grass on hand',
    (all.value / areaM2) * M2_PER_HA,
    'kgPerHa',
    standingFormulas.average,
    [from(all, 'M'), input('All paddocks', areaM2, 'ha', 'A')],
  );
}

/** What of it stands above the residuals, kg. */
export function usableOn(plan: PasturePlan, day: number): NumberQuantity {
  return sumOfPaddocks(plan, 'Grass above the residuals', standingFormulas.usable, (paddock) =>
    kgOf(paddock, Math.max(0, paddock.massByDay[day]! - paddock.residualKgPerHa)),
  );
}

/** Dry matter a herd needs on a day, kg. */
export function needOn(plan: PasturePlan, herd: HerdPart, day: number): NumberQuantity {
  const present = herd.groups.filter(({ headByDay }) => 0 < headByDay[day]!);
  return quantity(
    `${herd.name}: need of the day`,
    herd.needByDay[day]!,
    'kg',
    intakeFormulas.demand,
    [
      input('On', addDays(plan.from, day), 'date'),
      ...present.flatMap(({ name, headByDay, eachKgByDay }) => [
        input(`${name}, head`, headByDay[day]!, 'count', 'head'),
        input(`${name}, each that day`, eachKgByDay[day]!, 'kg', 'DMI'),
      ]),
    ],
    { rows: [herd.need] },
  );
}

/** Days ahead of a day that need is summed over: fewer where the plan ends. */
export const daysAheadOf = (plan: PasturePlan, day: number): number =>
  Math.min(plan.aheadDays.value, daysBetween(plan.from, plan.to) + 1 - day);

/** Dry matter all herds need from a day on, kg. */
export function needAheadOf(plan: PasturePlan, day: number): NumberQuantity {
  const days = daysAheadOf(plan, day);
  const needOf = (herd: HerdPart): number => sumOf(herd.needByDay, day, day + days);
  return quantity(
    `Need of the ${days === 1 ? 'day' : `${days} days`} from then`,
    plan.herds.reduce((sum, herd) => sum + needOf(herd), 0),
    'kg',
    standingFormulas.needAhead,
    [
      input('From', addDays(plan.from, day), 'date'),
      input('Days', days, 'day'),
      fromJudgement(plan.aheadDays),
      ...plan.herds.map((herd) => input(herd.name, needOf(herd), 'kg')),
    ],
    { rows: plan.herds.map(({ need }) => need) },
  );
}

const M2_PER_HA = 10_000;

const kgOf = ({ area }: PaddockPart, kgPerHa: number): number => (kgPerHa * area.value) / M2_PER_HA;

function sumOfPaddocks(
  plan: PasturePlan,
  label: string,
  formula: Formula,
  kg: (paddock: PaddockPart) => number,
): NumberQuantity {
  return quantity(
    label,
    plan.paddocks.reduce((sum, paddock) => sum + kg(paddock), 0),
    'kg',
    formula,
    plan.paddocks.map((paddock) => input(paddock.name, kg(paddock), 'kg')),
    { rows: [plan.order] },
  );
}

function sumOf(values: readonly number[], start: number, end: number): number {
  let sum = 0;
  for (let i = start; i < Math.min(end, values.length); i++) sum += values[i]!;
  return sum;
}
