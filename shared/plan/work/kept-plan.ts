import { addDays, daysBetween } from '../../calendar/plain-date.js';
import type { KeptJob, KeptPlan, PartBy } from '../../farm/kept-plan.js';
import { digestOf } from '../../maths/digest.js';
import { signatureOf } from '../../schedule/work-signature.js';
import { placedMinutes, type WorkJob, type WorkPiece } from '../../schedule/work.js';
import type { WorkPlacing, WorkProblem } from '../../schedule/work.js';
import type { TripToBuy } from '../tasks/task.js';
import { nearSignatures } from './near-work.js';
import type { WorkNeed } from './work-need.js';
import type { WorkRequest } from './work-request.js';

/** A plan as it is kept for the next time. */
export function keptPlan(
  request: WorkRequest,
  needs: readonly WorkNeed[],
  { problem, plan }: { problem: WorkProblem; plan: WorkPlacing },
  latestDays: readonly number[],
): KeptPlan {
  const { today, people } = request;
  const partOf = new Map(
    request.progress.flatMap(({ key, partOn, partHours = 0 }): [string, number][] =>
      partOn === today && 0 < partHours ? [[key, partHours]] : [],
    ),
  );
  const near = nearSignatures(request, needs, { problem, plan });
  const putOff = putOffKeys(request);
  return {
    plannedOn: today,
    madeFor: signatureOf(problem),
    madeBy: signatureOfPeople(request),
    jobs: Object.fromEntries([
      ...doneToday(request),
      ...needs.map((need, i): [string, KeptJob] => [
        need.key,
        {
          name: need.name,
          ...(need.belongsTo ? { belongsTo: need.belongsTo.name } : {}),
          latest: addDays(today, latestDays[i]!),
          ...lostOf(problem.jobs[i]!, plan[i]!),
          ...(near.has(need.key) ? { nearFor: near.get(need.key)! } : {}),
          ...(need.isBoundToADay ? { isBoundToADay: true } : {}),
          ...(need.doneWithout ? { doneWithout: need.doneWithout } : {}),
          ...(need.buys ? { trip: tripOf(need.buys) } : {}),
          ...(putOff.has(need.key) ? stoodAt(request, need.key) : {}),
          ...partTold(request, need.key, partOf.get(need.key)),
          pieces: plan[i]!.map(({ day, minutes, workers }) => ({
            date: addDays(today, day),
            minutes,
            personIds: workers.map((w) => people[w]!.id),
          })),
        },
      ]),
    ]),
  };
}

const tripOf = ({ on, from, lines }: TripToBuy): NonNullable<KeptJob['trip']> => ({
  on,
  ...(from === undefined ? {} : { from }),
  lines: lines.flatMap(({ what, name, amount: bags }) => (what === 'feed' ? [{ name, bags }] : [])),
});

/** Hours of a part that was told today, and whose they were. */
function partTold(
  request: WorkRequest,
  key: string,
  partHours: number | undefined,
): Pick<KeptJob, 'partHours' | 'partBy'> {
  if (partHours === undefined) return {};
  const partBy = takenOf(handsToday(plannedToday(request, key)), partHours);
  return { partHours, ...(partBy.length === 0 ? {} : { partBy }) };
}

/** Who is at work today and for how long, as planned: first what was told of it since. */
export function handsToday(planned: KeptJob | undefined): PartBy[] {
  if (!planned) return [];
  const { pieces, partHours, partBy } = planned;
  const [first] = pieces;
  const told = partBy ?? (partHours && first ? [{ ...first, hours: partHours }] : []);
  return [...told, ...pieces.map(({ minutes, personIds }) => ({ hours: minutes / 60, personIds }))];
}

/** The first so many hours of those of several people; more than they had are the last one’s. */
export function takenOf(hands: readonly PartBy[], hours: number): PartBy[] {
  let left = hours;
  return hands.flatMap(({ hours: its, personIds }, k) => {
    const taken = k === hands.length - 1 ? left : Math.min(left, its);
    left -= taken;
    return 0 < taken ? [{ hours: taken, personIds }] : [];
  });
}

/** Work that is put off to a day still to come. */
const putOffKeys = ({ progress, today }: Pick<WorkRequest, 'progress' | 'today'>): Set<string> =>
  new Set(
    progress.flatMap(({ key, notBefore }) =>
      notBefore !== undefined && today < notBefore ? [key] : [],
    ),
  );

/** Where work stood that is put off since; put off twice, before the first time. */
function stoodAt({ kept }: WorkRequest, key: string): Pick<KeptJob, 'stoodAt'> {
  const was = kept?.jobs[key];
  return was === undefined ? {} : { stoodAt: was.stoodAt ?? was.pieces };
}

/**
 * What today’s plans had for today of work that was since ticked off: whose hours it took, and how many,
 * is asked again with every plan that is made on this day.
 */
const doneToday = (request: WorkRequest): [string, KeptJob][] =>
  request.progress.flatMap(({ key, doneOn }): [string, KeptJob][] => {
    const planned = doneOn === request.today ? plannedToday(request, key) : undefined;
    return planned ? [[key, planned]] : [];
  });

/** A piece of work as the last plan that knew of it had it for today; undefined where it had not. */
export function plannedToday(
  { today, kept, before }: Pick<WorkRequest, 'today' | 'kept' | 'before'>,
  key: string,
): KeptJob | undefined {
  const job = kept?.jobs[key] ?? before?.jobs[key];
  const pieces = job?.pieces.filter(({ date }) => date === today) ?? [];
  if (!job || pieces.length === 0) return undefined;
  const { name, belongsTo, latest } = job;
  // What an earlier plan had of a part was of its own day.
  const { partHours, partBy } = (kept?.plannedOn === today ? kept.jobs[key] : undefined) ?? {};
  return {
    ...{ name, latest, pieces },
    ...(belongsTo === undefined ? {} : { belongsTo }),
    ...(partHours === undefined ? {} : { partHours }),
    ...(partBy === undefined ? {} : { partBy }),
  };
}

/** A short text for who has hours when, days away and hand-overs included. */
export function signatureOfPeople({ people, handovers }: WorkRequest): string {
  const rows = people.map(({ name: _name, ...person }) => person);
  const inCharge = handovers.map(({ from, to, personId, awayIds, hoursPerDay }) => [
    ...[from, to, personId, awayIds, hoursPerDay],
  ]);
  return digestOf(JSON.stringify([rows, inCharge]));
}

function lostOf({ minutes }: WorkJob, pieces: readonly WorkPiece[]) {
  const placed = placedMinutes(pieces);
  return 0 < placed && placed < minutes ? { lostMinutes: minutes - placed } : {};
}

/**
 * An earlier plan in the days and people of a new one, from today on; what cannot be said in them is
 * left out.
 */
export function earlierPieces(
  { today, people, progress }: Pick<WorkRequest, 'today' | 'people' | 'progress'>,
  needs: readonly WorkNeed[],
  kept: KeptPlan,
): WorkPiece[][] {
  const index = new Map(people.map(({ id }, w) => [id, w]));
  const putOff = putOffKeys({ progress, today });
  return needs.map((need) => {
    const was = kept.jobs[need.key];
    const isBack = !putOff.has(need.key) && was?.stoodAt?.every(({ date }) => today <= date);
    const ahead = ((isBack ? was?.stoodAt : was?.pieces) ?? []).filter(({ date }) => today <= date);
    const pieces = ahead.map(({ date, minutes, personIds }) => ({
      day: daysBetween(today, date),
      minutes,
      workers: personIds.map((id) => index.get(id) ?? -1).sort((a, b) => a - b),
    }));
    return pieces.every(({ workers }) => !workers.includes(-1)) ? pieces : [];
  });
}
