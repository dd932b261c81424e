import { issue, type PlanIssue } from '../../problems/plan-issue.js';
import { listed } from '../../units/listed.js';
import type { PastureContext } from './pasture-context.js';
import { grazingOf } from './season-feed.js';
import type { Chosen } from './surplus.js';

/**
 * Grass that is over in the middle of the warm months and does not come back: what is fed from then on
 * lies behind the last day on grass, where no shortage is looked for.
 */
export function grassOver(context: PastureContext, { books }: Chosen): PlanIssue[] {
  const { span, herds, herdDays, tables, say, dateOf } = context;
  const { backFromHayDays } = tables.judgements.grazing;
  const { growsKgPerHa } = tables.judgements.grass;
  const over = herds.flatMap(({ name }, h) => {
    const last = grazingOf(books, h)?.last;
    return last === undefined || herdDays[h]!.grassKg[last + 1] === 0 ? [] : [{ name, last, h }];
  });
  if (over.length === 0) return [];
  const from = Math.max(...over.map(({ last }) => last)) + 1;
  const lost = lostDays(context, from);
  if (lost <= backFromHayDays.value) return [];
  const fedKg = over.reduce((sum, { h }) => {
    const fed = books.hayKg[h]!.subarray(from, span.to);
    return sum + fed.reduce((a, b) => a + b, 0);
  }, 0);
  return [
    issue(
      'act',
      'grass-over',
      `The last grass is eaten by ${say(dateOf(from - 1), 'date')}: after that it is too hot or too dry for it to come back before ${say(dateOf(span.to - 1), 'date')}. ${listed(
        over.map(({ name }) => name),
        'and',
      )} ${over.length === 1 && !over[0]!.name.endsWith('s') ? 'needs' : 'need'} hay from then on, ${say(fedKg, 'kg')} of dry matter. Buy it before, sell head by then, or rent land that has water.`,
      [growsKgPerHa, backFromHayDays],
    ),
  ];
}

/** Days of the plan from one on that are warm enough for growth, and on which none comes for heat or drought. */
export function lostDays({ grass, span, weather, tables }: PastureContext, from: number): number {
  const { growsKgPerHa } = tables.judgements.grass;
  const { minC, maxC } = weather.expected;
  let lost = 0;
  for (let day = from; day < span.to; day++) {
    const meanC = (minC[day]! + maxC[day]!) / 2;
    const isLost = grass.swards.every(
      ({ sward, growth }) => sward.kind.fullFromC <= meanC && growth[day]! < growsKgPerHa.value,
    );
    if (isLost) lost++;
  }
  return lost;
}
