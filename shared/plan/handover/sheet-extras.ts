import type { PlainDate } from '../../calendar/plain-date.js';
import type { OwnJob } from '../../farm/job.js';
import { ROUNDS, type Round } from '../../tables/task-template.js';
import type { Trouble } from '../../tables/work-table.js';
import type { WorkPlan } from '../work/planned-work.js';
import type { SheetStop } from './sheet-stops.js';

/** When somebody has to be there: the rounds of all that is done, and those that looks ask for. */
export function visitsOf(
  chores: readonly { readonly rounds?: readonly Round[] }[],
  leastEveryH: number,
): Round[] {
  const asked = new Set<Round>([
    ...chores.flatMap(({ rounds = [] }) => rounds),
    ...(leastEveryH < TWICE_A_DAY_H ? ROUNDS : []),
    ...(leastEveryH < ONCE_A_DAY_H ? (['morning', 'evening'] as const) : []),
  ]);
  return ROUNDS.filter((round) => asked.has(round));
}

const TWICE_A_DAY_H = 12;
const ONCE_A_DAY_H = 24;

/** Whether plants stand in pots on a day: sown indoors, and those that a frost harms not set out. */
export function hasSeedlings(
  jobs: readonly OwnJob[],
  { jobs: planned }: Pick<WorkPlan, 'jobs'>,
  on: PlainDate,
): boolean {
  const open = new Map(planned.map((job) => [job.key, job.pieces]));
  const isDone = ({ id }: OwnJob): boolean => {
    const pieces = open.get(`own/${id}`);
    return pieces === undefined || (0 < pieces.length && pieces.at(-1)!.date < on);
  };
  return jobs
    .filter((job) => job.harmedAtOrBelowC !== undefined && !isDone(job))
    .some((job) => {
      const chain = chainBefore(job, jobs);
      const sown = chain.find(({ name }) => SOWN.test(name));
      // What was done a while ago rests and is not among the jobs: of it the next still tells.
      const { waitsForId } = chain.at(-1) ?? job;
      return sown ? isDone(sown) : waitsForId !== undefined;
    });
}

const SOWN = /\bindoors\b/i;

/** What a job waits for, and what that waits for. */
function chainBefore(job: OwnJob, jobs: readonly OwnJob[]): OwnJob[] {
  const chain: OwnJob[] = [];
  let before = jobs.find(({ id }) => id === job.waitsForId);
  while (before && !chain.includes(before)) {
    chain.push(before);
    const { waitsForId } = before;
    before = jobs.find(({ id }) => id === waitsForId);
  }
  return chain;
}

/** What may go wrong where these animals and plants are, in the order in which it is in a hurry. */
export function troublesOf(
  stops: readonly SheetStop[],
  { seedlings, hives }: { readonly seedlings: boolean; readonly hives: boolean },
): (Trouble | 'calving')[] {
  const herds = stops.some(({ isHerd }) => isHerd === true);
  return [
    ...(stops.some(({ isHeated }) => isHeated === true) ? (['heat'] as const) : []),
    ...(stops.some(({ isHerd }) => isHerd !== true) ? (['birds'] as const) : []),
    ...(herds ? (['cattle', 'fence'] as const) : []),
    ...(stops.some(({ mayCalve }) => mayCalve === true) ? (['calving'] as const) : []),
    ...(hives ? (['hives'] as const) : []),
    ...(seedlings ? (['seedlings'] as const) : []),
  ];
}
