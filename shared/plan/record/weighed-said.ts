import type { ToldFact } from '../../farm/told-fact.js';
import type { Judgements } from '../../tables/judgements.js';
import { formatValue, type Reader } from '../../units/format.js';
import type { BatchPlan } from '../batch-plan.js';

/**
 * What weights that were told say beside the plan of that age: whether flocks usually lie so far from
 * it, and what to look at where they do not. Two of three flocks lie within what is called usual here:
 * one standard deviation of a flock's pace, of how birds of that age stray and of the birds not
 * weighed. What to look at is common practice, no source.
 *
 * @param after the plan of the batch with the fact
 */
export function weighedSaid(
  fact: ToldFact,
  { birds: { weighed } }: Pick<BatchPlan, 'birds'>,
  { reader, judged }: { readonly reader: Reader; readonly judged: Judgements['birds'] },
): string[] {
  if (fact.kind !== 'weighed') return [];
  const row = weighed?.rows.find(({ id }) => id === fact.id);
  // Of what is left out of the growth an issue of the plan says why.
  if (!weighed || row?.plannedKg === undefined || !row.isUsed || !weighed.speed) return [];
  const kg = row.average.value;
  const off = kg / row.plannedKg - 1;
  const usual = Math.hypot(judged.flocksApart.value, row.errorShare);
  const planned = formatValue(row.plannedKg, 'kg', reader);
  const share = (of: number): string =>
    formatValue(Math.round(100 * Math.abs(of)) / 100, 'share', reader);
  const way = `${share(off)} ${off < 0 ? 'under' : 'over'}`;
  const beside = `${formatValue(kg, 'kg', reader)} each, ${Math.abs(off) < 0.005 ? 'the same as' : way} the ${planned} planned for ${row.ageDays} days`;
  const { even } = weighed;
  return [
    `${beside}: ${judge(off, usual, share(usual))}`,
    ...(even?.on === row.on && even.advice !== undefined
      ? [`They differ by ${share(even.differ.value)}, which is uneven. ${even.advice}`]
      : []),
  ];
}

function judge(off: number, usual: number, share: string): string {
  if (Math.abs(off) <= usual)
    return `within the usual, flocks of that age lie up to ${share} apart. Weigh again in a week.`;
  if (0 < off)
    return `more than is usual, up to ${share}. See that the scale is set to the right unit and zero, and weigh again in a few days.`;
  return `less than is usual, up to ${share}. Look whether all of them eat at once, whether feeders or drinkers run dry, whether they crowd together at night (cold), and feel full crops in the evening. Weigh again in three days; ask your veterinarian if some look sick.`;
}
