import { issue, type PlanIssue } from '../../problems/plan-issue.js';
import type { PastureContext } from './pasture-context.js';

/** Says by how much the need of the growing season passes all that could be eaten in it. */
export function moreThanGrows(
  { herdDays, span, tables, grass, say }: PastureContext,
  {
    head,
    carried,
    startKgPerHa,
  }: { head: number; carried: number; startKgPerHa: readonly number[] },
): PlanIssue[] {
  const growsKgPerHa = tables.judgements.grass.growsKgPerHa.value;
  const share = Math.max(...tables.pasture.utilisation.byStayDays);
  let grownKg = 0;
  let standingKg = 0;
  const grows = new Uint8Array(span.days);
  for (const [p, { sward, growth }] of grass.swards.entries()) {
    standingKg += Math.max(0, startKgPerHa[p]! - sward.residualKgPerHa) * sward.areaHa;
    for (let i = span.from; i < span.to; i++) {
      const kgPerHa = growth[i]!;
      grownKg += kgPerHa * sward.areaHa;
      if (growsKgPerHa <= kgPerHa) grows[i] = 1;
    }
  }
  let needKg = 0;
  for (const days of herdDays) {
    for (let i = span.from; i < span.to; i++) if (grows[i] === 1) needKg += days.demandKg[i]!;
  }
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
