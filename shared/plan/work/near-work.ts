import { Digest } from '../../maths/digest.js';
import type { WorkPlacing, WorkProblem } from '../../schedule/work.js';
import type { WorkNeed } from './work-need.js';
import type { WorkRequest } from './work-request.js';

/** Days from today whose hours and work are looked at. */
const NEAR_DAYS = 14;

/** A problem, and the plan it has or had. */
interface Planned {
  readonly problem: WorkProblem;
  readonly plan: WorkPlacing;
}

/**
 * By key of the work that is due or planned within the next days a signature of all that it hangs on
 * there: its row, and everybody’s hours. Where they are the same, only what is far has changed.
 */
export function nearSignatures(
  { people }: Pick<WorkRequest, 'people'>,
  needs: readonly WorkNeed[],
  { problem, plan }: Planned,
): ReadonlyMap<string, string> {
  const hours = problem.workers.map(({ minutes, lightMinutes }, w) => [
    people[w]!.id,
    ...minutes.subarray(0, NEAR_DAYS),
    ...lightMinutes.subarray(0, NEAR_DAYS),
  ]);
  const allHours = JSON.stringify(hours);
  return new Map(
    needs.flatMap(({ key }, i) => {
      const { suits, waitsFor, able, ...row } = problem.jobs[i]!;
      const isNear = row.dueDay <= NEAR_DAYS || plan[i]!.some(({ day }) => day <= NEAR_DAYS);
      if (!isNear) return [];
      const others = waitsFor.map(({ job, ...wait }) => [needs[job]!.key, wait]);
      const days = suits ? [...suits.subarray(0, NEAR_DAYS)] : [];
      const hands = able.map((w) => people[w]!.id);
      const digest = new Digest();
      digest.addText(JSON.stringify([row, others, days, hands]));
      digest.addText(allHours);
      return [[key, digest.text()] as const];
    }),
  );
}

/** Whether the work of the next days and the hours for it are those that a plan was made from. */
export function isNearAsKept(
  request: WorkRequest,
  needs: readonly WorkNeed[],
  planned: Planned,
): boolean {
  const kept = Object.entries(request.kept?.jobs ?? {}).flatMap(([key, { nearFor }]) =>
    nearFor === undefined ? [] : [[key, nearFor] as const],
  );
  const now = nearSignatures(request, needs, planned);
  return kept.length === now.size && kept.every(([key, nearFor]) => now.get(key) === nearFor);
}
