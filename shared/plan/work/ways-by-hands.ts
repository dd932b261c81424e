import { formatHours } from '../../units/format.js';
import { followersOf, spanOf } from '../../schedule/work-span.js';
import { finishDay, placedMinutes, type WorkJob } from '../../schedule/work.js';
import type { WholeWork } from './whole-work.js';
import { dayText } from './work-words.js';

/**
 * What more hands would do for work that is late or finds no place, each sentence enough by itself:
 * two at once on the household’s own work that may be spread, and a helper for what is not in time.
 *
 * @param byDay last day on which it shall be done, no later than its own
 */
export function waysByHands(work: WholeWork, index: number, byDay: number): string[] {
  const job = work.problem.jobs[index]!;
  if (job.able.length < job.peopleNeeded) return [];
  const two = twoAtOnce(work, index, byDay);
  const date = dayText(work.request);
  const inTime = work.fitted.plan[index]!.filter(({ day }) => day <= byDay);
  const rest = job.minutes - placedMinutes(inTime);
  const by = byDay < work.problem.days - 1 ? ` by ${date(byDay)}` : '';
  return [
    ...(two
      ? [
          `Two people at it at once, ${formatHours(two.minutes / 60)} each: it would be done on ${date(two.doneOn)}.`,
        ]
      : []),
    0 < inTime.length && rest < job.minutes
      ? `Have somebody else do ${formatHours((rest * job.peopleNeeded) / 60)} of it${by}.`
      : doneByOthers(job),
  ];
}

/** Nobody’s but somebody else’s to do. */
export const doneByOthers = ({ minutes, peopleNeeded, suits }: WorkJob): string =>
  `Have somebody else do all ${formatHours((minutes * peopleNeeded) / 60)} of it${suits ? ', in whatever weather comes' : ''}.`;

/** The same work by two side by side on each of its days, with all else where it is. */
function twoAtOnce(
  { problem, fitted, needs, left }: WholeWork,
  index: number,
  byDay: number,
): { readonly minutes: number; readonly doneOn: number } | undefined {
  const job = problem.jobs[index]!;
  const { belongsTo, hoursDone = 0 } = needs[index]!;
  // Of what is begun or belongs to animals the people needed are not the household’s to say.
  if (belongsTo || 0 < hoursDone || job.peopleNeeded !== 1 || job.able.length < 2) return undefined;
  if (job.smallestPieceMinutes === undefined) return undefined;
  const { from, until } = spanOf(job, followersOf(problem)[index]!, fitted.plan);
  if (from < 0) return undefined;
  const minutes = Math.ceil(job.minutes / 2);
  const own = fitted.plan[index]!;
  left.giveBack(job, own);
  const together = { ...job, peopleNeeded: 2, minutes };
  const pieces = left.put(together, from, Math.min(until, byDay));
  left.giveBack(together, pieces);
  for (const piece of own) left.take(job, piece);
  return placedMinutes(pieces) < minutes ? undefined : { minutes, doneOn: finishDay(pieces) };
}
