import { addDays, daysBetween, type PlainDate } from '../../calendar/plain-date.js';
import { quantityOfDay } from '../../explain/daily-series.js';
import { formatDate } from '../../units/dates.js';
import { formatAbout } from '../../units/format.js';
import type { BatchPlan } from '../batch-plan.js';
import type { PlannedBatch } from '../work/dated-work.js';
import type { Alarm, Looked } from './looked-at.js';

/** What is wrong with feed: more used than planned, out before the next trip, medicated too long. */
export const feedAlarms = (looked: Looked): Alarm[] => [
  ...feedOut(looked),
  ...feedAbovePlan(looked),
  ...withdrawalRuns(looked),
];

/** Feed that is used beyond the plan, once for each bag more that was opened. */
const feedAbovePlan = ({ batches }: Looked): Alarm[] =>
  batches.flatMap(({ id, name, plan }) => {
    const issue = plan.issues.find(({ code }) => code === 'feed-above-plan');
    const used = plan.feed.used?.used.value;
    return issue && used !== undefined
      ? [
          {
            key: `alarm/feed/${id}/${Math.round(used)}`,
            isAlarm: true,
            level: 'act',
            words: 'they use more feed than they should',
            text: issue.text,
            ...{ of: name, place: { kind: 'batch', id } },
          },
        ]
      : [];
  });

/** Medicated feed that would still be in the birds on the day they are processed. */
const withdrawalRuns = ({ batches, picture: { today } }: Looked): Alarm[] =>
  batches.flatMap(({ id, name, plan }) => {
    const issue = plan.issues.find(({ code }) => code === WITHDRAWAL);
    const leaves = plan.leaving && String(plan.leaving.on.value);
    if (!issue || leaves === undefined || today < plan.arrivalDate || leaves < today) return [];
    return [
      {
        key: `alarm/withdrawal/${id}/${leaves}`,
        isAlarm: true,
        level: 'stop',
        words: 'medicated feed too close to eating',
        text: issue.text,
        ...{ of: name, by: leaves, place: { kind: 'batch', id } },
      },
    ];
  });

const WITHDRAWAL = 'withdrawal-short';

/** Issues that are said as alarms, of birds that are there. */
export const isSaidAsAlarm = (code: string, plan: BatchPlan, today: PlainDate): boolean =>
  code === 'losses-above-usual' ||
  code === 'feed-above-plan' ||
  (code === WITHDRAWAL && plan.arrivalDate <= today);

/**
 * Feed that is gone before the next trip that is planned: what was bought less the bags that were
 * opened, or where none were, less what was fed as planned. Silent where no purchase was told, and
 * where more was opened than bought, because then some were not told.
 */
function feedOut(looked: Looked): Alarm[] {
  const { picture, plan, judged } = looked;
  const { today, farm, feedBought = [] } = picture;
  const [first] = feedBought;
  const fed = looked.batches.filter((batch) => 0 < feedKg(batch, today));
  if (!first || fed.length === 0) return [];
  const inHandKg = feedInHandKg(looked, fed, first.date);
  if (inHandKg === undefined) return [];
  const out = outOn(fed, today, { inHandKg, aheadDays: judged.feedAheadDays.value });
  const trip = nextTrip(plan, today);
  if (out === undefined || (trip !== undefined && trip <= out)) return [];
  const reader = { ...farm, today };
  const day = formatDate(out, reader);
  const next =
    trip === undefined
      ? 'No trip is planned in time.'
      : `The next trip is planned for ${formatDate(trip, reader)}.`;
  const dayKg = fed.reduce((sum, batch) => sum + feedKg(batch, today), 0);
  return [
    {
      key: `alarm/feed-out/${feedBought.at(-1)!.id ?? feedBought.at(-1)!.date}`,
      isAlarm: true,
      level: out <= addDays(today, 1) ? 'stop' : 'act',
      words: `feed is out on ${day}`,
      text: `About ${formatAbout(inHandKg, 'kg', farm)} is left of what you told as bought, and they eat about ${formatAbout(dayKg, 'kg', farm)} a day. ${next} Go before, or tell what else was bought.`,
      ...{ of: 'Feed', place: { kind: 'work' } },
    },
  ];
}

/** Feed of a day by the plan, waste included, kg; 0 before they come and when they are gone. */
function feedKg({ plan }: PlannedBatch, on: PlainDate): number {
  const day = daysBetween(plan.arrivalDate, on);
  if (day < 0 || (plan.leaving !== undefined && String(plan.leaving.on.value) < on)) return 0;
  return Number(quantityOfDay(plan.daily, 'feed-day', day)?.value ?? 0);
}

const bagKgOf = ({ plan }: PlannedBatch, on: PlainDate): number =>
  (plan.feed.phases.findLast(({ starts }) => String(starts.value) <= on) ?? plan.feed.phases[0]!)
    .bagKg;

/** Bought since a day and still there, kg; undefined where not all of it was told. */
function feedInHandKg(
  { picture: { feedBought = [], feedOpenings = [], today }, judged }: Looked,
  fed: readonly PlannedBatch[],
  since: PlainDate,
): number | undefined {
  const usualKg = bagKgOf(fed[0]!, today);
  const boughtKg = feedBought.reduce(
    (sum, { amount, eachKg = usualKg }) => sum + amount * eachKg,
    0,
  );
  const opened = fed.map((batch) => ({
    batch,
    bags: feedOpenings
      .filter(({ batchId, date }) => batchId === batch.id && since <= date)
      .map(({ date, bags, bagKg }) => ({ date, kg: bags * (bagKg ?? bagKgOf(batch, date)) })),
  }));
  const usedKg = opened.reduce((sum, { batch, bags }) => {
    const last = bags.at(-1)?.date;
    if (last === undefined) return sum + fedBetweenKg(batch, since, today);
    const before = bags.filter(({ date }) => date < last).reduce((all, { kg }) => all + kg, 0);
    const open = bags.filter(({ date }) => date === last).reduce((all, { kg }) => all + kg, 0);
    return sum + before + Math.min(open, fedBetweenKg(batch, last, today));
  }, 0);
  const leftKg = boughtKg - usedKg;
  return leftKg < -judged.bagLeftShare.value * usualKg ? undefined : Math.max(0, leftKg);
}

/** Fed by the plan from one day to before another. */
function fedBetweenKg(batch: PlannedBatch, from: PlainDate, to: PlainDate): number {
  let kg = 0;
  for (let day = from; day < to; day = addDays(day, 1)) kg += feedKg(batch, day);
  return kg;
}

/** The first day that is not fed to its end any more; undefined where the week is. */
function outOn(
  fed: readonly PlannedBatch[],
  today: PlainDate,
  { inHandKg, aheadDays }: { readonly inHandKg: number; readonly aheadDays: number },
): PlainDate | undefined {
  let leftKg = inHandKg;
  for (let k = 0; k < aheadDays; k++) {
    const day = addDays(today, k);
    leftKg -= fed.reduce((sum, batch) => sum + feedKg(batch, day), 0);
    if (leftKg < 0) return day;
  }
  return undefined;
}

/** Part of the key of work that fetches feed. */
const FETCHES_FEED = 'fetch-feed';

/** The first day, from today on, on which somebody fetches feed by the plan of the work. */
const nextTrip = ({ jobs }: Looked['plan'], today: PlainDate): PlainDate | undefined =>
  jobs
    .filter(({ key }) => key.includes(FETCHES_FEED))
    .flatMap(({ pieces }) => pieces.map(({ date }) => date))
    .filter((date) => today <= date)
    .sort()[0];
