import { addDays, weekdayOf } from '../../shared/calendar/plain-date.js';
import type { Person } from '../../shared/farm/farm.js';
import type { OwnJob, Progress } from '../../shared/farm/job.js';
import type { CareGap } from '../../shared/plan/work/care-gaps.js';
import type { PlannedJob, WorkPlan } from '../../shared/plan/work/planned-work.js';
import type { WorkRequest } from '../../shared/plan/work/work-request.js';
import { rowById } from '../../shared/tables/tables.js';
import { formatDate } from '../../shared/units/dates.js';
import { tables } from './factories.js';

/** What of a household is made otherwise when it takes what a plan offers. */
export type Asked = Pick<
  WorkRequest,
  'farm' | 'today' | 'people' | 'ownJobs' | 'progress' | 'handovers'
>;

const isWhole = ({ pieces, lostHours }: PlannedJob): boolean =>
  0 < pieces.length && lostHours === 0;
export const isInTime = (job: PlannedJob): boolean => isWhole(job) && job.lateDays === 0;
/** What work costs that is done late. */
const lateCost = ({ priority, lateDays }: PlannedJob): number =>
  lateDays * rowById(tables.work.placing.priority, priority).lateCostPerDay;

/** Whether work is as a way says that it would be, in the plan of a household that took it. */
export function isMended(
  plan: WorkPlan,
  job: PlannedJob,
  way: string,
  { jobs, cost }: Pick<WorkPlan, 'jobs' | 'cost'>,
): boolean {
  // Of what is late and has no room for all of it, the room is offered.
  const isLate = way.startsWith('A later last day') || way.includes('late even so');
  const mended = isLate || !isWhole(job) ? isWhole : isInTime;
  return (
    mended(jobs.find(({ key }) => key === job.key)!) ||
    // Hours that other late work wants more have that mended instead, which saves more.
    (way.endsWith('Other late work may want them more.') && cost < plan.cost - lateCost(job))
  );
}

/** What of a gap in the care of animals is left in another plan. */
export const leftOf = (gap: CareGap, { careGaps }: Pick<WorkPlan, 'careGaps'>): CareGap[] =>
  careGaps.filter(
    ({ kind, of, from, to }) =>
      kind === gap.kind && `${of}` === `${gap.of}` && from <= gap.to && gap.from <= to,
  );

const MORE = /^(?:(\d+) h)? ?(?:(\d+) min)? ?more on (.*?)(?: from .*|, or.*)?\.$/;
export const helper = { id: 'helper', name: 'Helper', away: [] };

/** The date that reads so. */
export function dayCalled({ farm, today }: Pick<Asked, 'farm' | 'today'>, said: string): string {
  const days = Array.from({ length: 400 }, (_, day) => addDays(today, day));
  return days.find((date) => formatDate(date, { units: farm.units, today }) === said)!;
}

/** The household with one of its adults at work for longer on a day, each in turn, or with all. */
function longerDays<Of extends Asked>(
  request: Of,
  on: string,
  { moreH, isOfEach }: { moreH: number; isOfEach: boolean },
  who?: string,
): Of[] {
  const { people } = request;
  const day = dayCalled(request, on);
  const hoursOf = ({ hoursByWeekday }: Person) =>
    hoursByWeekday ?? tables.work.hoursByWeekday.values;
  const at = weekdayOf(day) - 1;
  if (isOfEach) {
    const longer = (person: Person) =>
      hoursOf(person).map((hours, k) => (k === at ? hours + moreH + 1 / 60 : hours));
    const all = people.map((each) => ({ ...each, hoursByWeekday: longer(each) }));
    return [{ ...request, people: all }];
  }
  return people
    .filter(({ isChild, name }) => !isChild && (who === undefined || who.includes(name)))
    .map((person) => {
      const hoursPerDay = hoursOf(person)[at]! + moreH + 1 / 60;
      const longer = { from: day, to: day, personId: person.id, hoursPerDay, awayIds: [] };
      const rest = { roundOrder: [], phones: [], whereabouts: [] };
      return { ...request, handovers: [{ id: 'longer', ...longer, ...rest }] };
    });
}

/** The household with what a sentence offers, one of them enough; none for what is not its own to do. */
export function taken<Of extends Asked>(
  request: Of,
  plan: WorkPlan,
  job: PlannedJob,
  way: string,
): Of[] {
  const { key, hoursDone } = job;
  const { progress, ownJobs, people } = request;
  const [, h = 0, min = 0, on] = MORE.exec(way) ?? [];
  const moreH = Number(h) + Number(min) / 60;
  const helped = { key, hoursDone: hoursDone + moreH };
  if (way.includes('for as long')) return [{ ...request, progress: [...progress, helped] }];
  const [, who] = / from (?!each of)([^,]*),/.exec(way) ?? [];
  if (on !== undefined)
    return longerDays(request, on, { moreH, isOfEach: way.includes('from each of') }, who);
  // What holds it up is done, and somebody else does all of it.
  if (way.includes('with somebody else for all')) {
    const names = [...way.matchAll(/“(.*?)”/g)].map(([, held]) => held);
    const held = plan.jobs.filter((each) => names.includes(each.name));
    const done = held.map((each) => ({ key: each.key, doneOn: request.today }));
    const byOthers = { key, hoursDone: hoursDone + job.hours };
    return [{ ...request, progress: [...progress, ...done, byOthers] }];
  }
  const [, name] = /“(.*)”/.exec(way) ?? [];
  const other = plan.jobs.find((job) => job.name === name)?.key;
  const said = (mark: Omit<Progress, 'key'>): Of[] => [
    { ...request, progress: [...progress, { key: other!, ...mark }] },
  ];
  if (/^(Fits|In time) once/.test(way)) return said({ doneOn: request.today });
  if (way.startsWith('Leave')) return said({ struckOut: true });
  const own = (mend: (job: OwnJob) => OwnJob): Of[] => [
    { ...request, ownJobs: ownJobs.map((job) => (`own/${job.id}` === key ? mend(job) : job)) },
  ];
  const [, doneOn] = /^A later last day: it would be done on (.*)\.$/.exec(way) ?? [];
  if (doneOn !== undefined && !key.startsWith('own/'))
    return [{ ...request, progress: [...progress, { key, dueOn: dayCalled(request, doneOn) }] }];
  if (way.startsWith('A later last day')) return own(({ noUseAfter: _last, ...job }) => job);
  if (way.startsWith('Whatever the weather')) return own((job) => ({ ...job, conditions: {} }));
  const [, withHelper] = /^A helper on (.*) for all .* of it(?:, beside \w+)?\.$/.exec(way) ?? [];
  if (withHelper !== undefined) {
    const at = weekdayOf(dayCalled(request, withHelper)) - 1;
    const hoursByWeekday = Array.from({ length: 7 }, (_, k) => (k === at ? 6 : 0));
    return [{ ...request, people: [...people, { ...helper, hoursByWeekday }] }];
  }
  const [, forOthers] = /^Have somebody else do (?:all )?(\d.*?) of it/.exec(way) ?? [];
  if (forOthers !== undefined) {
    const [, hours = 0, minutes = 0] = /(?:(\d+) h)? ?(?:(\d+) min)?/.exec(forOthers)!;
    const done = hoursDone + Number(hours) + Number(minutes) / 60;
    return [{ ...request, progress: [...progress, { key, hoursDone: done }] }];
  }
  if (way.startsWith('Two people at it at once'))
    return own(({ conditions, hours, ...job }) => ({
      ...job,
      ...{ hours: hours / 2, conditions: { ...conditions, peopleNeeded: 2 } },
    }));
  if (way.startsWith('It takes')) return [{ ...request, people: [...people, helper] }];
  return [];
}

/** The same for a day on which animals have nobody. */
export function cared<Of extends Asked>(request: Of, { from, to }: CareGap, way: string): Of[] {
  const { people } = request;
  const withPeople = (mend: (person: Person) => Person) => ({
    ...request,
    people: people.map(mend),
  });
  if (way.startsWith('Put somebody in charge')) {
    const rest = { hoursPerDay: 6, roundOrder: [], phones: [], whereabouts: [] };
    return [{ ...request, handovers: [{ id: 'away', from, to, sitter: 'Sam', ...rest }] }];
  }
  const [, who] = /^(.*) stays at home /.exec(way) ?? [];
  const isAtHome = ({ name }: Person): boolean => who === 'Somebody' || name === who;
  if (who !== undefined)
    return [withPeople((person) => (isAtHome(person) ? { ...person, byDay: 'at-home' } : person))];
  if (way.endsWith(' stays.'))
    return people
      .filter(({ name }) => way.includes(name))
      .map((who) => withPeople((person) => (person === who ? { ...person, away: [] } : person)));
  const [, h = 0, min = 0] = /a helper for (?:(\d+) h)? ?(?:(\d+) min)?\.$/.exec(way) ?? [];
  if (way.includes('or a helper for')) {
    const hoursByWeekday = new Array<number>(7).fill(Number(h) + (Number(min) + 1) / 60);
    return [{ ...request, people: [...people, { ...helper, hoursByWeekday }] }];
  }
  return [];
}
