import { addDays, type PlainDate } from '../../calendar/plain-date.js';
import type { BatchPlan } from '../batch-plan.js';
import { dayInPlan } from '../day-in-plan.js';
import { longLeads } from '../story/long-leads.js';
import { FETCHES } from '../tasks/fetches.js';
import type { Task } from '../tasks/task.js';
import type { FittedDays } from '../work/fitted-days.js';
import { inOrder, type YearBar, type YearDate, type YearRow } from './year-row.js';

/** A batch on the strip: where it lives when, and the days on which that changes. */
export function batchRow(id: string, plan: BatchPlan): YearRow {
  const { name, arrivalDate, today } = plan;
  return {
    kind: 'batch',
    id,
    name,
    bars: barsOf(plan),
    dates: inOrder(datesOf(plan)),
    ...(today <= arrivalDate ? { arrivesOn: arrivalDate } : {}),
  };
}

/** What is known of the work of a batch: its days, and what of it is done or struck out. */
export interface WorkOfBatch {
  readonly fitted: FittedDays;
  readonly settled: ReadonlySet<string>;
}

/** The brooder is heated before the box is opened. */
const PREHEAT = /\.preheat-brooder/;

/** What is fetched, by the name of its task: 5 × starter. */
const FEED_TO_FETCH = /: (\d+ × .+)$/;

/** On the wall the bags are wanted, and not what they cost. */
const bagsOnly = (what: string): string =>
  what
    .split(', ')
    .filter((part) => part.includes(' × '))
    .join(', ');

/**
 * The same with the days on which its slot is booked, its birds are ordered and its feed is fetched: where the plan of
 * the work puts them, and counted back from their event beyond the days of that plan.
 */
export function batchRowWithWork(id: string, plan: BatchPlan, work: WorkOfBatch): YearRow {
  const row = batchRow(id, plan);
  const open = plan.tasks.tasks.filter(
    (task) => task.isOver !== true && !work.settled.has(`batch/${id}/${task.id}`),
  );
  const dated = (task: Task, words: string): YearDate => {
    const { on = task.start, dueBy = task.latestStart } =
      work.fitted.get(`batch/${id}/${task.id}`) ?? {};
    return { on, words, ...(on < dueBy ? { dueBy } : {}) };
  };
  const leads = longLeads(plan).filter(({ task }) => open.includes(task));
  const preheat = open.find(({ templateId }) => PREHEAT.test(templateId));
  const feed = open.flatMap((task) => {
    const trip = work.fitted.get(`batch/${id}/${task.id}`);
    // What the plan of the work has no trip for is brought on another.
    if (!FETCHES.has(task.templateId) || (trip === undefined && 0 < work.fitted.size)) return [];
    const what = FEED_TO_FETCH.exec(trip?.name ?? task.name)?.[1];
    return what === undefined ? [] : [dated(task, bagsOnly(what))];
  });
  return {
    ...row,
    dates: inOrder([
      ...leads.map(({ task, words, mark }) => ({ ...dated(task, words), mark })),
      ...(preheat
        ? [{ on: dated(preheat, '').on, words: 'brooder warm', isInWords: true as const }]
        : []),
      ...row.dates,
    ]),
    ...(0 < feed.length ? { feed: inOrder(feed) } : {}),
  };
}

const dateOf = (quantity: { readonly value: number | string } | undefined): PlainDate | undefined =>
  quantity === undefined ? undefined : String(quantity.value);

/** Last day of birds: meat birds are processed; hens stay over all the days that a year shows. */
function endOf(plan: BatchPlan): PlainDate {
  const { leaving, lastDate, today } = plan;
  const far = addDays(today, DAYS_SHOWN);
  return (
    leaving?.processingDays.at(-1)?.on ??
    (far <= lastDate || dayInPlan(plan, far) === undefined ? lastDate : far)
  );
}

const DAYS_SHOWN = 400;

/** Days on which they are processed: those that were told, and while some are there those planned. */
function processedOn({ leaving, birds }: BatchPlan): PlainDate[] {
  if (!leaving) return [];
  const { processedOn: told = [], lastLeftOn } = birds.counted ?? {};
  const planned = lastLeftOn === undefined ? leaving.processingDays.map(({ on }) => on) : [];
  return [...new Set([...told, ...planned])].sort();
}

const outOn = ({ outdoors }: BatchPlan): PlainDate | undefined => dateOf(outdoors.moveOut);

const eggsSetOn = ({ tasks }: BatchPlan): PlainDate | undefined =>
  tasks.events.find(({ kind }) => kind === 'eggs-set')?.date;

function barsOf(plan: BatchPlan): YearBar[] {
  const { arrivalDate, brooding, leaving, laying, purpose, outdoors } = plan;
  const out = outOn(plan);
  const end = endOf(plan);
  const firstEgg = dateOf(laying?.firstEgg);
  const eggsSet = eggsSetOn(plan);
  const eatenUp = dateOf(leaving?.eatenUp);
  const firstPacked = processedOn(plan)[0];
  const isInCoop = purpose === 'layers' || (outdoors.home !== undefined && !outdoors.pensNeeded);
  return [
    ...(eggsSet === undefined ? [] : [bar('eggs', eggsSet, arrivalDate)]),
    // Grown birds have no time between: their bar begins in the coop.
    bar(brooding ? 'brooder' : 'hen', arrivalDate, out ?? end),
    ...(out === undefined ? [] : [bar(isInCoop ? 'coop' : 'pens', out, firstEgg ?? end)]),
    ...(firstEgg === undefined ? [] : [bar('laying', firstEgg, end)]),
    ...(eatenUp === undefined || firstPacked === undefined
      ? []
      : [bar('freezer', firstPacked, eatenUp)]),
  ].filter(({ from, until }) => from < until);
}

const bar = (kind: YearBar['kind'], from: PlainDate, until: PlainDate): YearBar => ({
  kind,
  from,
  until,
});

function datesOf(plan: BatchPlan): YearDate[] {
  const { arrivalDate, birds, hatching, laying, leaving } = plan;
  const cockerels = dateOf(birds.cockerelsLeave?.on);
  return [
    ...on(eggsSetOn(plan), 'eggs set'),
    ...on(arrivalDate, hatching ? 'hatch' : 'arrive'),
    ...(outOn(plan) === arrivalDate
      ? []
      : on(outOn(plan), plan.brooding ? 'out of the brooder' : 'without the hen')),
    ...on(dateOf(laying?.firstEgg), 'first eggs'),
    ...on(cockerels, 'cockerels processed'),
    ...processedOn(plan).map((date) => ({ on: date, words: 'processing' })),
    ...on(dateOf(leaving?.eatenUp), 'eaten up'),
  ];
}

const on = (date: PlainDate | undefined, words: string): YearDate[] =>
  date === undefined ? [] : [{ on: date, words }];
