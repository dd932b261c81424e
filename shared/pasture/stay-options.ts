import type { Grazers, RotationProblem } from './rotation-problem.js';
import { decisionDay, NEVER, type Option, type State } from './rotation-state.js';
import { grazeDay, massOn, type Sward } from './sward.js';

interface Enterable {
  readonly paddock: number;
  readonly mass: number;
  /** Share of the rest asked for that is missed, 0 when it is over. */
  readonly restMissed: number;
  /** How far above the residual, in turn-in heights: 1 is just ready. */
  readonly ripeness: number;
}

/**
 * Every stay the next herd could make now; a day on hay when it could make none at full height.
 *
 * A stay costs, in kilograms of dry matter: hay for what the grass does not give, and what the
 * judgments of the problem add to keep the sward right.
 *
 * @param most paddocks looked at, the ripest first; all of them for a proof
 */
export function optionsOf(
  problem: RotationProblem,
  state: State,
  most = problem.swards.length,
): Option[] {
  const { judged } = problem;
  const day = decisionDay(state);
  const herd = state.free.indexOf(day);
  const grazers = problem.herds[herd]!;
  const options: Option[] = [];
  let hasReady = false;
  if (grazers.notBefore <= day) {
    const found: Enterable[] = [];
    for (let p = 0; p < problem.swards.length; p++) {
      if (isTaken(state, herd, p, day)) continue;
      const sward = problem.swards[p]!;
      const rest = restShare(sward, state.lastEnd[p]!, day, grazers, p);
      if (rest < judged.leastRestShare) continue;
      const mass = massOn(sward, state.mass[p]!, state.massDay[p]!, day);
      // A lightly grazed stand can be back at its height before the rest of the month is over.
      const restMissed = Math.max(0, 1 - rest);
      if (0 < restMissed && mass < sward.turnInKgPerHa) continue;
      // Turn-out waits for the full height; later a herd may come a little early.
      const share = state.isOut[herd] ? judged.earliestShare : 1;
      const earliest =
        sward.residualKgPerHa + share * (sward.turnInKgPerHa - sward.residualKgPerHa);
      if (mass < earliest) continue;
      const ripeness =
        (mass - sward.residualKgPerHa) / (sward.turnInKgPerHa - sward.residualKgPerHa);
      found.push({ paddock: p, mass, restMissed, ripeness });
    }
    if (most < found.length) found.sort((a, b) => b.ripeness - a.ripeness);
    for (const { paddock, mass, restMissed, ripeness } of found.slice(0, most)) {
      const stays = staysIn(problem, { herd, paddock, day, mass, restMissed });
      if (0 < stays.length && 1 <= ripeness && restMissed === 0) hasReady = true;
      options.push(...stays);
    }
  }
  if (!hasReady) {
    const demand = grazers.demandKg[day]!;
    const costKg = demand * (state.isOut[herd] ? 1 + judged.backOnHay : 1);
    options.push({ herd, paddock: -1, from: day, days: 1, massAfter: 0, costKg });
  }
  return options;
}

function isTaken(state: State, herd: number, paddock: number, day: number): boolean {
  return state.at.some((at, other) => other !== herd && at === paddock && day < state.free[other]!);
}

/** Days rested over the days asked for. */
function restShare(
  sward: Sward,
  lastEnd: number,
  day: number,
  herd: Grazers,
  paddock: number,
): number {
  if (lastEnd === NEVER) return 1;
  // A herd that stands in a paddock on the first day may finish its stay there.
  if (herd.startsIn?.paddock === paddock && lastEnd === day) return 1;
  return (day - lastEnd) / Math.max(1, sward.minRestDays[day]!);
}

function staysIn(
  problem: RotationProblem,
  at: { herd: number; paddock: number; day: number; mass: number; restMissed: number },
): Option[] {
  const { swards, herds, to, harvestShare, rankDrop, judged } = problem;
  const sward = swards[at.paddock]!;
  const herd = herds[at.herd]!;
  const isRank = sward.rankKgPerHa < at.mass;
  const started = herd.startsIn?.paddock === at.paddock && at.day === problem.from;
  const longest = Math.max(
    1,
    herd.longestStayDays - (started ? problem.from - herd.startsIn!.since : 0),
  );
  const options: Option[] = [];
  for (let days = 1; days <= longest && at.day + days <= to; days++) {
    const last = at.day + days - 1;
    if (sward.isClosed[last] !== 0 || herd.demandKg[last]! <= 0) break;
    const share = harvestShare[Math.min(days, harvestShare.length) - 1]! - (isRank ? rankDrop : 0);
    const run = grazeStay(sward, herd, at, days, share, judged.leastDayShare);
    if (!run.lasts) break;
    const earlyKg = at.mass < sward.turnInKgPerHa ? judged.early * run.eatenKg : 0;
    const shortKg = judged.shortRest * at.restMissed * run.eatenKg;
    const rankKg = isRank ? judged.rank * (at.mass - sward.rankKgPerHa) * sward.areaHa : 0;
    options.push({
      herd: at.herd,
      paddock: at.paddock,
      from: at.day,
      days,
      massAfter: run.massAfter,
      costKg: run.hayKg + earlyKg + shortKg + rankKg + judged.moveKg,
    });
  }
  return options;
}

function grazeStay(
  sward: Sward,
  herd: Grazers,
  { mass: massBefore, day }: { readonly mass: number; readonly day: number },
  days: number,
  share: number,
  leastDayShare: number,
): { massAfter: number; hayKg: number; eatenKg: number; lasts: boolean } {
  let mass = massBefore;
  let hayKg = 0;
  let eatenKg = 0;
  for (let i = day; i < day + days; i++) {
    const demand = herd.demandKg[i]!;
    const grown = massOn(sward, mass, i, i + 1);
    const grazed = grazeDay(grown, sward.residualKgPerHa, demand / sward.areaHa, share);
    const eaten = grazed.eatenKgPerHa * sward.areaHa;
    mass = grazed.massKgPerHa;
    eatenKg += eaten;
    hayKg += demand - eaten;
    if (eaten < leastDayShare * demand) return { massAfter: mass, hayKg, eatenKg, lasts: false };
  }
  return { massAfter: mass, hayKg, eatenKg, lasts: true };
}
