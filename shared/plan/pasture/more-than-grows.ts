import { issue, type PlanIssue } from '../../problems/plan-issue.js';
import type { PastureContext } from './pasture-context.js';

/** Days of the plan on which grass grows in some paddock. */
export function growingDays({ span, grass, tables }: PastureContext): number[] {
  const least = tables.judgements.grass.growsKgPerHa.value;
  const days: number[] = [];
  for (let i = span.from; i < span.to; i++)
    if (grass.swards.some(({ growth }) => least <= growth[i]!)) days.push(i);
  return days;
}

/** Says by how much the need of the growing season passes all that could be eaten in it. */
export function moreThanGrows(
  context: PastureContext,
  {
    head,
    carried,
    startKgPerHa,
  }: { head: number; carried: number; startKgPerHa: readonly number[] },
): PlanIssue[] {
  const { herdDays, span, tables, grass, say } = context;
  const share = Math.max(...tables.pasture.utilisation.byStayDays);
  let grownKg = 0;
  let standingKg = 0;
  for (const [p, { sward, growth }] of grass.swards.entries()) {
    standingKg += Math.max(0, startKgPerHa[p]! - sward.residualKgPerHa) * sward.areaHa;
    for (let i = span.from; i < span.to; i++) grownKg += growth[i]! * sward.areaHa;
  }
  let needKg = 0;
  for (const day of growingDays(context))
    for (const { demandKg } of herdDays) needKg += demandKg[day]!;
  const eatenKg = share * (grownKg + standingKg);
  if (needKg <= eatenKg) return [];
  return [
    issue(
      'stop',
      'more-than-grows',
      `While the grass grows the herds need ${say(needKg, 'kg')} of dry matter, but all paddocks together grow about ${say(grownKg + standingKg, 'kg')}, what is on hand now included, of which at best ${Math.round(share * 100)} % is eaten: ${say(needKg - eatenKg, 'kg')} too little whatever the moves. The land carries about ${carried} of ${head} head in the plan. Take head off, add land, or feed hay for it.`,
      [tables.pasture.utilisation],
    ),
  ];
}
