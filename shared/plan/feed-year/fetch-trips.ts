import Big from 'big.js';
import { addDays, daysBetween, weekdayOf, type PlainDate } from '../../calendar/plain-date.js';
import type { WorkConditions } from '../../farm/job.js';
import type { KeptJob } from '../../farm/kept-plan.js';
import type { FarmPicture } from '../../farm/picture.js';
import { formatMoney, minorDigits } from '../../units/format.js';
import { FETCHES } from '../tasks/fetches.js';
import type { Task, TripToBuy } from '../tasks/task.js';
import type { DatedWork } from '../work/work-request.js';
import type { FeedTrip } from './feed-trips.js';
import { ANYWHERE } from './where-bought.js';
import { YEAR_DAYS } from './year-buying.js';

interface OpenFetch {
  readonly work: DatedWork;
  readonly task: Task;
}

/**
 * Work in which feed is fetched on the trips of the year's feed, and on no others: each trip is made
 * by the task nearest to it of a batch that eats of it, and what no trip is left for falls away. Each
 * says what to bring, for whoever makes it early. What was done or struck out stays as it was.
 */
export function withTrips(
  all: readonly DatedWork[],
  trips: readonly FeedTrip[],
  picture: Pick<
    FarmPicture,
    'farm' | 'today' | 'progress' | 'keptPlans' | 'feedBought' | 'herdFeedBought'
  >,
): DatedWork[] {
  const { today, progress, keptPlans, farm } = picture;
  const keptOf = ({ work, task }: OpenFetch): KeptJob | undefined =>
    keptPlans[0]?.jobs[keyOf(work, task)];
  const keptOn = (of: OpenFetch): PlainDate | undefined => keptOf(of)?.pieces[0]?.date;
  const marks = new Map(progress.map((mark) => [mark.key, mark]));
  const end = addDays(today, YEAR_DAYS);
  const open = all.flatMap((work): OpenFetch[] =>
    work.tasks.flatMap((task) => {
      const mark = marks.get(keyOf(work, task));
      const isOpen = mark?.doneOn === undefined && mark?.struckOut !== true;
      return FETCHES.has(task.templateId) && isOpen && task.start < end ? [{ work, task }] : [];
    }),
  );
  const fetched = trips.filter(({ comes }) => comes === 'fetched');
  const made = new Map<Task, Task>();
  const makeBy = (trip: FeedTrip, among: readonly OpenFetch[]): boolean => {
    const left = among.filter(({ task }) => !made.has(task));
    const nearest = nearestTo(trip, left, keptOn);
    if (!nearest) return false;
    const on = dayNear(trip, keptOn(nearest), today);
    made.set(
      nearest.task,
      withoutLaterWaits(asTrip(nearest.task, { trip, on }, picture), nearest.work),
    );
    return true;
  };
  // A trip that the last plan had just so stays what it was; only then do the others look for a task.
  const changed = fetched.filter((trip) => {
    const name = nameOf(trip, farm.currency);
    const wasIt = (kept: KeptJob | undefined): boolean =>
      kept?.name === name && Math.abs(daysBetween(lastDayOf(trip), kept.latest)) <= NEAR_DAYS;
    return !makeBy(
      trip,
      open.filter((of) => wasIt(keptOf(of))),
    );
  });
  for (const trip of changed) makeBy(trip, open);
  const replaced = new Set(open.map(({ task }) => task));
  return all.map((work) => {
    if (!work.tasks.some(({ templateId }) => FETCHES.has(templateId))) return work;
    const first = trips.find((trip) => eatersOf(trip).has(work.name));
    const isOpen = (task: Task): boolean => {
      const mark = marks.get(keyOf(work, task));
      return mark?.doneOn === undefined && mark?.struckOut !== true;
    };
    const tasks = work.tasks.flatMap((task) => {
      if (replaced.has(task)) return made.get(task) ?? [];
      return first && ORDERS_FEED.has(task.templateId) && isOpen(task)
        ? [before(task, dayOf(first), today)]
        : [asBought(task, keyOf(work, task), picture)];
    });
    return { ...work, tasks };
  });
}

/** Tasks that compare prices and order the feed of a batch. */
const ORDERS_FEED: ReadonlySet<string> = new Set(['meat.price-and-order-feed']);
/** Days in which it is done before feed comes on a trip that others need sooner. */
const ORDERED_IN_DAYS = 7;

/** Feed that others’ trip brings sooner than it would be ordered is ordered before that trip. */
function before(task: Task, trip: PlainDate, today: PlainDate): Task {
  const latestStart = trip <= today ? today : addDays(trip, -1);
  if (task.latestStart <= latestStart) return task;
  if (task.start <= latestStart)
    return { ...task, latestStart, spareDays: daysBetween(task.start, latestStart) };
  const week = addDays(trip, -ORDERED_IN_DAYS);
  const start = week < today ? today : week;
  const spareDays = daysBetween(start, latestStart);
  return { ...task, start, end: start, latestStart, spareDays };
}

/** Where the work is lent by a batch to come, what that batch begins with later holds up no trip of before. */
function withoutLaterWaits(trip: Task, { tasks }: DatedWork): Task {
  const isLater = (id: string): boolean => {
    const first = tasks.find((task) => task.id === id);
    return first !== undefined && trip.latestStart < (first.earliestStart ?? first.start);
  };
  return { ...trip, waits: trip.waits.filter(({ id }) => !isLater(id)) };
}

/** A trip that was made goes by what was bought on it, whatever batch its task was of. */
function asBought(
  task: Task,
  key: string,
  { feedBought = [], herdFeedBought = [] }: Pick<FarmPicture, 'feedBought' | 'herdFeedBought'>,
): Task {
  const lines = [...feedBought, ...herdFeedBought.map(({ details }) => details)].filter(
    ({ work }) => work === key,
  );
  const what = lines.map(({ amount, name }) => `${amount} × ${name ?? 'feed'}`);
  return what.length === 0 ? task : { ...task, name: `Fetch feed: ${what.join(', ')}` };
}

const keyOf = ({ kind, id }: DatedWork, task: Task): string => `${kind}/${id}/${task.id}`;

const dayOf = ({ on }: FeedTrip): PlainDate => String(on.value);
function lastDayOf(trip: FeedTrip): PlainDate {
  const usedUp = addDays(dayOf(trip), trip.spareDays);
  const by = trip.firstFeed?.by;
  return by !== undefined && by < usedUp ? by : usedUp;
}

/**
 * The open task for a trip, of a batch that eats of it if there is one: the one that the last plan had
 * near its day, else the nearest.
 */
function nearestTo(
  trip: FeedTrip,
  open: readonly OpenFetch[],
  keptOn: (of: OpenFetch) => PlainDate | undefined,
): OpenFetch | undefined {
  const on = dayOf(trip);
  const inTime = open.filter(({ task: { noUseAfter } }) => !(noUseAfter && noUseAfter < on));
  const away = (of: OpenFetch): number => Math.abs(daysBetween(on, keptOn(of) ?? of.task.start));
  const kept = inTime.filter((of) => keptOn(of) !== undefined && away(of) <= NEAR_DAYS);
  const own = inTime.filter(({ work }) => eatersOf(trip).has(work.name));
  const both = kept.filter((each) => own.includes(each));
  const [of = inTime] = [both, own, kept].filter(({ length }) => 0 < length);
  return of.toSorted((a, b) => away(a) - away(b))[0];
}

/** Names of the batches that eat of what is bought on a trip. */
const eatersOf = ({ lines }: FeedTrip): ReadonlySet<string> =>
  new Set(lines.flatMap(({ eatenBy }) => eatenBy));

/**
 * The first day of a trip: where the last plan of the work had it not much earlier, that day, since
 * nobody is to plan a week anew for a day more or less. A later day of that plan is within the trip's
 * own, and is kept as that of any work is.
 */
function dayNear(trip: FeedTrip, kept: PlainDate | undefined, today: PlainDate): PlainDate {
  const on = dayOf(trip);
  if (kept === undefined || kept < today) return on;
  const later = daysBetween(on, kept);
  return -NEAR_DAYS <= later && later < 0 ? kept : on;
}

const NEAR_DAYS = 7;

/** A task as a trip: on its day, with what is bought on it. */
function asTrip(
  task: Task,
  { trip, on }: { readonly trip: FeedTrip; readonly on: PlainDate },
  { farm, today }: Pick<FarmPicture, 'farm' | 'today'>,
): Task {
  // The first feed is there before the chicks are: a trip that cannot be is late, and not due later.
  const last = lastDayOf(trip);
  const isTooLate = last < on;
  const spareDays = isTooLate ? 0 : daysBetween(on, last);
  const isLate = (isTooLate ? last : on) < today;
  const { isOver: _isOver, ...rest } = task;
  // Birds that are there already eat on that day: nobody looks for a better one.
  const isAtOnce = task.event === 'arrival' && task.offsetDays === 0;
  return {
    ...rest,
    name: nameOf(trip, farm.currency),
    ...(isAtOnce ? {} : { earliestStart: isTooLate ? (trip.firstFeed?.soonest ?? on) : on }),
    ...{
      start: on,
      end: isTooLate ? last : on,
      latestStart: isTooLate ? last : addDays(on, spareDays),
    },
    ...{ spareDays, alreadyLate: isLate, overdue: isLate },
    ...(task.conditions ? { conditions: onDaysOf(trip, task.conditions) } : {}),
    buys: buysOf(trip, farm.currency),
  };
}

/** A seller that is open when other shops are shut is gone to then. */
const onDaysOf = (trip: FeedTrip, { shopsOpen, ...conditions }: WorkConditions): WorkConditions =>
  shopsOpen === undefined || weekdayOf(dayOf(trip)) === SUNDAY
    ? conditions
    : { ...conditions, shopsOpen };

const SUNDAY = 7;

/** “Fetch feed from the mill: 8 × Layer feed, 1 × Salt block, $209.00”. */
function nameOf({ from, lines, along, total }: FeedTrip, currency: string): string {
  const what = [
    ...lines.map(({ name, bags }) => `${bags.value} × ${name}`),
    ...along.map(({ name, count }) => `${count} × ${name}`),
  ];
  const isWhole = [...lines, ...along].every(({ cost: of }) => of !== undefined);
  const cost = total === undefined || !isWhole ? [] : [formatMoney(total.value, currency)];
  const where = from === ANYWHERE ? '' : ` from ${from}`;
  return `Fetch feed${where}: ${[...what, ...cost].join(', ')}`;
}

const buysOf = ({ on, from, lines, along, firstFeed }: FeedTrip, currency: string): TripToBuy => {
  const paid = (minor: number | undefined): { money?: string } =>
    minor === undefined
      ? {}
      : { money: new Big(minor).div(10 ** minorDigits(currency)).toFixed(minorDigits(currency)) };
  return {
    ...(from === ANYWHERE ? {} : { from }),
    on: String(on.value),
    ...(firstFeed && firstFeed.by < String(on.value) ? { tooLateFor: firstFeed } : {}),
    lines: [
      ...lines.map(({ name, bags, bagKg, cost }) => ({
        ...({ what: 'feed', name } as const),
        ...{ amount: bags.value, eachKg: bagKg, ...paid(cost?.value) },
      })),
      ...along.map(({ name, count, kg, cost }) => ({
        ...({ what: 'minerals', name } as const),
        ...{ amount: count, eachKg: kg / count, ...paid(cost.value) },
      })),
    ],
  };
};
