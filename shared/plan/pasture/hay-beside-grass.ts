import { addDays } from '../../calendar/plain-date.js';
import type { Formula } from '../../explain/formula.js';
import {
  from,
  fromJudgement,
  fromTable,
  input,
  quantity,
  type NumberQuantity,
} from '../../explain/quantity.js';
import type { Tables } from '../../tables/tables.js';
import type { PasturePlan } from './pasture-plan.js';
import { daysAheadOf } from './standing.js';

export const hayBesideGrassFormulas = {
  fedAhead: {
    id: 'hay-of-days-ahead',
    title: 'Hay fed in the days ahead',
    words:
      'What each herd is fed beside grass on each of the days, dry, summed; fewer days where the plan ends. It is a part of the need of the same days.',
    symbols: 'H = Σ fed on a day',
    sources: ['ARITHMETIC'],
    mark: 'computed',
  },
  madeOn: {
    id: 'hay-made-dry',
    title: 'Dry matter of the hay made',
    words:
      'The hay of each paddock that is mown on that day times the dry part of hay, summed. What is lost in store and at feeding is still in it.',
    symbols: 'M = Σ hay · dm',
    sources: ['ARITHMETIC'],
    mark: 'computed',
  },
} satisfies Record<string, Formula>;

/** Dry matter fed beside grass from a day on, over the days that need is looked ahead for, kg. */
export function hayAheadOf(plan: PasturePlan, day: number): NumberQuantity {
  const days = daysAheadOf(plan, day);
  const fed = plan.herds.map(({ name, hayByDay }) => ({
    name,
    kg: hayByDay.slice(day, day + days).reduce((sum, kg) => sum + kg, 0),
  }));
  return quantity(
    `Of it, hay${days === 1 ? '' : ` in the ${days} days`}`,
    fed.reduce((sum, { kg }) => sum + kg, 0),
    'kg',
    hayBesideGrassFormulas.fedAhead,
    [
      input('From', addDays(plan.from, day), 'date'),
      input('Days', days, 'day'),
      fromJudgement(plan.aheadDays),
      ...fed.map(({ name, kg }) => input(name, kg, 'kg')),
    ],
    { rows: [...plan.herds.map(({ need }) => need), plan.order] },
  );
}

/** Dry matter of the hay that is made of what is mown on a day, kg; undefined where none is. */
export function hayMadeOn(
  plan: PasturePlan,
  day: number,
  { pasture }: Tables,
): NumberQuantity | undefined {
  const date = addDays(plan.from, day);
  const cuts = plan.surplus.filter(({ cutOn }) => cutOn === date);
  if (cuts.length === 0) return undefined;
  const { hay } = pasture;
  return quantity(
    'Hay made, dry',
    cuts.reduce((sum, cut) => sum + cut.hay.value * hay.dryMatterShare, 0),
    'kg',
    hayBesideGrassFormulas.madeOn,
    [
      input('Mown on', date, 'date'),
      ...cuts.map((cut) => from(cut.hay, 'hay')),
      fromTable(hay, 'Dry share of hay', hay.dryMatterShare, 'share', 'dm'),
    ],
  );
}
