import { addDays, daysBetween, type PlainDate } from '../../calendar/plain-date.js';
import type { Batch } from '../../farm/batch.js';
import type { OwnJob } from '../../farm/job.js';
import type { FarmPicture, NamedBatch } from '../../farm/picture.js';
import type { ToldFact } from '../../farm/told-fact.js';
import type { Tables } from '../../tables/tables.js';
import { herdsAgain, paddocksAgain, type NextHerd, type NextPaddock } from './next-land.js';
import { learnedFromBatches } from './own-batches.js';
import { recordOfBatches } from './record-of-batch.js';

/** A batch of a year, as it would come again in the next one. */
export interface NextBatch {
  readonly ofId: string;
  readonly name: string;
  readonly plannedFor: PlainDate;
  /** The day on which they came, where it was told. */
  readonly cameOn?: PlainDate;
  readonly next: Batch;
  /** What of it is planned by the farm's own record, a sentence each. */
  readonly learned: readonly string[];
  /** The batch that comes about then already, by its name. */
  readonly isThere?: string;
}

/** A job of the household's own, as it would come again. Its ties and waits name the old ones. */
export interface NextJob {
  readonly ofId: string;
  readonly name: string;
  readonly dueBefore: PlainDate;
  readonly next: OwnJob;
  readonly isThere: boolean;
}

/** A year begun from the one before it: nothing of it is saved. */
export interface NextYear {
  readonly from: number;
  readonly batches: readonly NextBatch[];
  readonly jobs: readonly NextJob[];
  /** Herds to which cattle come again, and paddocks whose days come again. */
  readonly herds: readonly NextHerd[];
  readonly paddocks: readonly NextPaddock[];
}

/** Weeks of a year: each day falls on its weekday again, of which post and processors depend. */
const YEAR_DAYS = 52 * 7;
/** A batch of the same kind that comes so near is the same one. */
const SAME_BATCH_DAYS = 21;

/**
 * Everything of a calendar year that comes again, a year of weeks later: batches with what the farm's
 * own record says of their losses, weight and feed, jobs of the household's own, cattle that came in
 * it, and the days of its paddocks. Dates that hang on an arrival follow it; what was booked, counted
 * or set by hand for the old one is left out.
 *
 * Left out: cattle that were there before, which go on by themselves; jobs that repeat, which do too.
 *
 * @param facts of the farm, for its record
 */
export function nextYear(
  picture: FarmPicture,
  tables: Tables,
  { year, facts }: { readonly year: number; readonly facts: readonly ToldFact[] },
): NextYear {
  const own = {
    batches: picture.batches,
    went: recordOfBatches(picture, tables, facts),
    facts,
  };
  const isOfYear = (date: PlainDate): boolean => date.startsWith(`${year}-`);
  const batches = picture.batches
    .filter(({ arrivalDate }) => isOfYear(arrivalDate))
    .map((batch): NextBatch => {
      const again = batchAgain(batch, year);
      const { values, words } = learnedFromBatches(again, own, tables, picture.farm);
      const came = picture.headChanges.findLast(
        ({ batchId, change }) => batchId === batch.id && change === 'arrived',
      );
      const there = picture.batches.find((other) => isSame(other, again));
      return {
        ...{ ofId: batch.id, name: batch.name, plannedFor: batch.arrivalDate },
        ...(came ? { cameOn: came.date } : {}),
        next: { ...again, ...values },
        learned: words,
        ...(there ? { isThere: there.name } : {}),
      };
    });
  const jobs = picture.jobs
    .filter(({ dueOn, repeats }) => isOfYear(dueOn) && repeats === undefined)
    .map((job): NextJob => {
      const next = jobAgain(job);
      const isThere = picture.jobs.some(
        ({ name, dueOn }) =>
          name === next.name && Math.abs(daysBetween(dueOn, next.dueOn)) <= SAME_BATCH_DAYS,
      );
      return { ofId: job.id, name: job.name, dueBefore: job.dueOn, next, isThere };
    })
    .sort((a, b) => (a.next.dueOn < b.next.dueOn ? -1 : a.next.dueOn > b.next.dueOn ? 1 : 0));
  const calvesAgainDays = tables.judgements.grass.calvingYearDays.value;
  const moved = { year, byDays: YEAR_DAYS, sameWithinDays: SAME_BATCH_DAYS, calvesAgainDays };
  const herds = herdsAgain(picture, moved);
  return { from: year, batches, jobs, herds, paddocks: paddocksAgain(picture, moved) };
}

/** What holds for one batch alone. */
const OF_ONE: ReadonlySet<string> = new Set([
  ...(['id', 'version', 'assumed', 'orderDate', 'orderedBirds'] as const),
  ...(['eggsSet', 'moveOutDate', 'slotDate', 'slotBirds'] as const),
] satisfies (keyof (NamedBatch & { version: number }))[]);

/** The same order a year later: what was fixed, booked or counted for the old one is open again. */
function batchAgain(batch: NamedBatch, year: number): Batch {
  const again = Object.fromEntries(Object.entries(batch).filter(([name]) => !OF_ONE.has(name)));
  return {
    ...(again as unknown as Batch),
    name: nameIn(batch.name, year),
    arrivalDate: addDays(batch.arrivalDate, YEAR_DAYS),
  };
}

const nameIn = (name: string, year: number): string =>
  name.includes(`${year}`) ? name.replaceAll(`${year}`, `${year + 1}`) : `${name} ${year + 1}`;

const isSame = (one: NamedBatch, other: Batch): boolean =>
  one.strainId === other.strainId &&
  one.purpose === other.purpose &&
  Math.abs(daysBetween(one.arrivalDate, other.arrivalDate)) <= SAME_BATCH_DAYS;

function jobAgain(job: OwnJob): OwnJob {
  const later = (date: PlainDate): PlainDate => addDays(date, YEAR_DAYS);
  const { notBefore, noUseAfter, tiedTo, ...rest } = job;
  return {
    ...rest,
    dueOn: later(job.dueOn),
    ...(notBefore === undefined ? {} : { notBefore: later(notBefore) }),
    ...(noUseAfter === undefined ? {} : { noUseAfter: later(noUseAfter) }),
    ...(tiedTo === undefined ? {} : { tiedTo: { ...tiedTo, on: later(tiedTo.on) } }),
  };
}

/**
 * A job with its ties and waits to what was made anew. Ties to anything else are left out, and its
 * dates stay plain ones: dates of cattle and of the place are not known yet for that year.
 */
export function tiedAnew(
  {
    id: _id,
    version: _version,
    waitsForId,
    waitDays,
    mostWaitDays,
    tiedTo,
    ...rest
  }: OwnJob & { version?: number },
  { batchIds, jobIds }: Readonly<Record<'batchIds' | 'jobIds', ReadonlyMap<string, string>>>,
): Omit<OwnJob, 'id'> {
  const waits = waitsForId === undefined ? undefined : jobIds.get(waitsForId);
  const [, of = '', ...event] = tiedTo?.eventId.split('/') ?? [];
  const batchId = batchIds.get(of);
  return {
    ...rest,
    ...(waits === undefined ? {} : { waitsForId: waits }),
    ...(waits === undefined || waitDays === undefined ? {} : { waitDays }),
    ...(waits === undefined || mostWaitDays === undefined ? {} : { mostWaitDays }),
    ...(batchId === undefined || !tiedTo
      ? {}
      : { tiedTo: { ...tiedTo, eventId: ['event', batchId, ...event].join('/') } }),
  };
}
