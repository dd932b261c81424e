import { isFetch } from '../tasks/fetches.js';
import { addDays, type PlainDate } from '../../calendar/plain-date.js';
import type { FeedBought } from '../../farm/feed-bought.js';
import { formatDate } from '../../units/dates.js';
import { formatAbout } from '../../units/format.js';
import { fedOn } from '../fed-on.js';
import type { PlannedBatch } from '../work/dated-work.js';
import { kindsOfFeed, phaseOn, type FeedKind } from './feed-kinds.js';
import type { Alarm, Looked } from './looked-at.js';

/**
 * Feed that is gone before the next trip that brings it, each kind by itself: what was bought of it
 * less the bags that were opened, or where none were, less what was fed as planned. Where the plan has
 * just put a trip forward so that it lasts, that is said instead. Silent where no purchase was told,
 * and where more was opened than bought, because then some were not told.
 */
export const feedOut = (looked: Looked): Alarm[] =>
  kindsOfFeed(looked).flatMap((kind) => outOfKind(looked, kind));

function outOfKind({ picture, plan, batches, judged }: Looked, kind: FeedKind): Alarm[] {
  const { today, farm, feedOpenings = [] } = picture;
  const eaters = batches.map((batch) => new Eater(batch, kind));
  const fed = eaters.filter((eater) => 0 < eater.kg(today));
  if (fed.length === 0) return [];
  const usualKg = fed[0]!.bagKg(today);
  const usedKg = eaters.reduce(
    (sum, eater) => sum + eater.usedKg(feedOpenings, kind.bought[0]!.date, today),
    0,
  );
  const leftKg = boughtKg(kind.bought, usualKg) - usedKg;
  if (leftKg < -judged.bagLeftShare.value * usualKg) return [];
  const inHandKg = Math.max(0, leftKg);
  const out = outOn(eaters, today, { inHandKg, aheadDays: judged.feedAheadDays.value });
  const trip = nextTrip(plan, today, kind);
  if (out === undefined) return [];
  const reader = { ...farm, today };
  if (trip !== undefined && trip.on <= out) {
    if (!isPutForward(plan, trip, out)) return [];
    return [
      {
        key: `alarm/feed-sooner/${trip.key}/${trip.on}`,
        isAlarm: true,
        level: 'act',
        words: `fetch ${kind.name ?? 'feed'} sooner: by ${formatDate(out, reader)}`,
        text: `What you told as bought lasts to then. The trip is planned for ${formatDate(trip.on, reader)} now: keep that day free, or tell what else was bought.`,
        ...{ of: 'Feed', by: out, place: { kind: 'work' } },
      },
    ];
  }
  const next =
    trip === undefined
      ? 'No trip is planned in time.'
      : `The next trip is planned for ${formatDate(trip.on, reader)}.`;
  const dayKg = fed.reduce((sum, eater) => sum + eater.kg(today), 0);
  const last = kind.bought.at(-1)!;
  return [
    {
      key: `alarm/feed-out/${last.id ?? last.date}`,
      isAlarm: true,
      level: out <= addDays(today, 1) ? 'stop' : 'act',
      words: `${kind.name ?? 'feed'} is out on ${formatDate(out, reader)}`,
      text: `About ${formatAbout(inHandKg, 'kg', farm)} is left of what you told as bought, and they eat about ${formatAbout(dayKg, 'kg', farm)} a day. ${next} Go before, or tell what else was bought.`,
      ...{ of: 'Feed', place: { kind: 'work' } },
    },
  ];
}

const boughtKg = (bought: readonly FeedBought[], usualKg: number): number =>
  bought.reduce((sum, { amount, eachKg = usualKg }) => sum + amount * eachKg, 0);

type Opening = NonNullable<Looked['picture']['feedOpenings']>[number];

/** A batch, as far as it eats one kind of feed. */
class Eater {
  constructor(
    private readonly batch: PlannedBatch,
    private readonly kind: FeedKind,
  ) {}

  /** Feed of a day by the plan, waste included, kg; 0 before they come and when they are gone. */
  kg(on: PlainDate): number {
    const { plan } = this.batch;
    return this.kind.isFedTo(plan, on) ? fedOn(plan, on) : 0;
  }

  bagKg(on: PlainDate): number {
    return phaseOn(this.batch.plan, on).bagKg;
  }

  /** Used since a day: bags that are empty, and of the last one what was fed of it as planned. */
  usedKg(openings: readonly Opening[], since: PlainDate, today: PlainDate): number {
    const bags = openings
      .filter(({ batchId, date }) => batchId === this.batch.id && since <= date)
      .filter(({ date }) => this.kind.isFedTo(this.batch.plan, date))
      .map(({ date, bags, bagKg }) => ({ date, kg: bags * (bagKg ?? this.bagKg(date)) }));
    const last = bags.at(-1)?.date;
    if (last === undefined) return this.fedBetweenKg(since, today);
    const kgOf = (isMeant: (date: PlainDate) => boolean): number =>
      bags.filter(({ date }) => isMeant(date)).reduce((all, { kg }) => all + kg, 0);
    const open = kgOf((date) => date === last);
    return kgOf((date) => date < last) + Math.min(open, this.fedBetweenKg(last, today));
  }

  private fedBetweenKg(from: PlainDate, to: PlainDate): number {
    let kg = 0;
    for (let day = from; day < to; day = addDays(day, 1)) kg += this.kg(day);
    return kg;
  }
}

/** The first day that is not fed to its end any more; undefined where the days ahead are. */
function outOn(
  eaters: readonly Eater[],
  today: PlainDate,
  { inHandKg, aheadDays }: { readonly inHandKg: number; readonly aheadDays: number },
): PlainDate | undefined {
  let leftKg = inHandKg;
  for (let k = 0; k < aheadDays; k++) {
    const day = addDays(today, k);
    leftKg -= eaters.reduce((sum, eater) => sum + eater.kg(day), 0);
    if (leftKg < 0) return day;
  }
  return undefined;
}

interface Trip {
  readonly key: string;
  readonly on: PlainDate;
}

/** The first trip, from today on, that brings feed of a kind by the plan of the work. */
const nextTrip = ({ jobs }: Looked['plan'], today: PlainDate, kind: FeedKind): Trip | undefined =>
  jobs
    .filter(({ key }) => isFetch(key))
    .filter(
      ({ buys }) =>
        buys === undefined ||
        buys.lines.some(({ what, name }) => what === 'feed' && kind.isBroughtAs(name)),
    )
    .flatMap(({ key, pieces }) => pieces.map(({ date: on }) => ({ key, on })))
    .filter(({ on }) => today <= on)
    .sort((a, b) => a.on.localeCompare(b.on))[0];

/**
 * Whether the last plan had a trip only after the feed is out. One that is new is one put forward where
 * another of the same animals is gone or later instead: trips are numbered in the order of their days.
 */
function isPutForward({ changes }: Looked['plan'], { key }: Trip, out: PlainDate): boolean {
  const list = changes?.list ?? [];
  const own = list.find((each) => each.key === key);
  if (own?.kind === 'moved') return wasAfter(own, out);
  if (own?.kind !== 'new') return false;
  return list.some(
    (each) =>
      each.key !== key &&
      isFetch(each.key) &&
      whoseOf(each.key) === whoseOf(key) &&
      (each.kind === 'gone' || each.kind === 'moved') &&
      wasAfter(each, out),
  );
}

const wasAfter = ({ from }: { readonly from?: string }, out: PlainDate): boolean =>
  from !== undefined && out < from;

/** Whom a trip is for: the key of its batch. */
const whoseOf = (key: string): string => key.split('/').slice(0, 2).join('/');
