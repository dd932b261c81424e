import { daysBetween, type PlainDate } from '../calendar/plain-date.js';
import { isStarted, type Occupancy } from '../farm/batch.js';
import type { FeedOpening } from '../farm/feed-opening.js';
import type { HeadChange } from '../farm/head-count.js';
import type { AnimalPicture, NamedBatch } from '../farm/picture.js';
import { isGrownUp } from '../farm/who-is-there.js';
import { FieldError } from '../problems/field-problem.js';
import { tablesForStrain } from '../tables/for-kind.js';
import { tablesIn } from '../tables/in-own-units.js';
import type { Tables } from '../tables/tables.js';
import { careOf, herdChores } from './chore-hours.js';
import { planContext, type PlanContext } from './context.js';
import { packedOf } from './leaving-freezer.js';
import { asItCame } from './flock-told.js';
import { birdsToProcess } from './leaving-weights.js';
import { occupanciesOf } from './occupancy.js';
import { flockOf } from './other-flocks.js';
import { FURTHEST_DAYS, isHistory, planningDay } from './planning-day.js';
import { processingDays } from './processing-days.js';
import type { ChoreHours, OtherFlock, PlanRequest } from './request.js';

/**
 * A batch in the picture of its farm, with what the other batches hold on to.
 *
 * @param previousArrivalDate when given, the plan says which tasks moved since
 * @throws FieldError when the picture has no such batch
 */
export function batchRequest(
  picture: AnimalPicture,
  allTables: Tables,
  batchId: string,
  previousArrivalDate?: PlainDate,
): PlanRequest {
  const tables = tablesIn(picture.farm.units, allTables);
  const batch = picture.batches.find(({ id }) => id === batchId);
  if (!batch) throw unknownBatch(picture, batchId);
  const others = picture.batches
    .filter(({ id }) => id !== batchId)
    .map((other) => heldBy(picture, tables, other));
  const choresOfOthers = choresBeside(picture, tables, batchId);
  return {
    ...around(picture, tablesForStrain(tables, batch.strainId)),
    batch: asPlanned(batch, headChangesOf(picture, batchId)),
    choresOfOthers,
    hasOlderFlock: picture.batches.some((other) => isOlderFlock(other, batch, tables)),
    headChanges: headChangesOf(picture, batchId),
    weighings: weighingsOf(picture, batchId),
    eggCounts: eggCountsOf(picture, batchId),
    feedOpenings: openingsOf(picture, batchId),
    occupied: others.flatMap(({ occupied }) => occupied),
    packed: others.flatMap(({ packed }) => packed),
    otherFlocks: others.flatMap(({ flock }) => flock ?? []),
    ...(previousArrivalDate === undefined ? {} : { previousArrivalDate }),
  };
}

/**
 * What every section of a batch's plan works from. Its life hangs on no other batch: it is worked out
 * once, for its own plan and for those of its neighbors.
 *
 * @throws FieldError when the picture has no such batch, or it cannot be planned
 */
export function batchContext(
  picture: AnimalPicture,
  allTables: Tables,
  batchId: string,
  request = batchRequest(picture, allTables, batchId),
): PlanContext {
  const row = picture.batches.find(({ id }) => id === batchId)!;
  const { context } = alone(picture, tablesIn(picture.farm.units, allTables), row);
  return { ...context, ...request, tables: context.tables };
}

/**
 * A batch as it came. A hen and grown birds need no brooder, whatever stands in the row; a slot is a
 * processor's.
 */
function asPlanned(row: NamedBatch, changes: readonly HeadChange[]): NamedBatch {
  const batch = asItCame(row, changes);
  const { brooderId, ...rest } = batch;
  const isIdle = (batch.origin === 'hen' || isStarted(batch)) && brooderId !== undefined;
  const planned = isIdle ? rest : batch;
  return planned.slotDate === undefined || planned.processing !== undefined
    ? planned
    : { ...planned, processing: 'hired' };
}

/** Layers that came so much earlier that they rule the coop when these join them. */
function isOlderFlock(other: NamedBatch, batch: NamedBatch, tables: Tables): boolean {
  const before = daysBetween(other.arrivalDate, batch.arrivalDate);
  const { olderFlockDays } = tables.judgements.birds;
  return other.purpose === 'layers' && olderFlockDays.value <= before && before <= FURTHEST_DAYS;
}
const headChangesOf = ({ headChanges }: AnimalPicture, of: string): AnimalPicture['headChanges'] =>
  headChanges.filter(({ batchId }) => batchId === of);

const weighingsOf = ({ weighings }: AnimalPicture, of: string): AnimalPicture['weighings'] =>
  weighings.filter(({ batchId }) => batchId === of);

const openingsOf = ({ feedOpenings = [] }: AnimalPicture, of: string): readonly FeedOpening[] =>
  feedOpenings.filter(({ batchId }) => batchId === of);

const eggCountsOf = ({ eggCounts }: AnimalPicture, of: string): AnimalPicture['eggCounts'] =>
  eggCounts.filter(({ batchId }) => batchId === of);

const around = (
  {
    farm,
    climate,
    facilities,
    products,
    people,
    handovers,
    publicHolidays = [],
    today,
  }: AnimalPicture,
  tables: Tables,
): Omit<
  PlanRequest,
  'batch' | 'occupied' | 'packed' | 'headChanges' | 'weighings' | 'eggCounts' | 'feedOpenings'
> => ({
  farm,
  climate,
  facilities,
  products,
  // A child does not stand in for a grown-up, on the day of processing least of all.
  people: people.filter(isGrownUp),
  handovers,
  publicHolidays,
  today,
  tables,
});

/** What a batch takes from the others, and the day it ends. */
interface Held extends Pick<PlanRequest, 'occupied' | 'packed'> {
  /** Last processing, or the first egg; undefined when it cannot be planned. */
  readonly endDate: PlainDate | undefined;
  /** What its hens lay, where it has some. */
  readonly flock?: OtherFlock | undefined;
}

/** What a batch is by itself: nothing in it hangs on the other batches. */
interface Alone {
  readonly picture: AnimalPicture;
  readonly tables: Tables;
  readonly context: PlanContext;
  readonly flock: OtherFlock | undefined;
}

/** Kept by the batch itself: the plan of each of its neighbors asks for it. */
const aloneOf = new WeakMap<NamedBatch, Alone>();

/** The parts of a picture that a batch's own dates rest on. */
const RESTS_ON = [
  'today',
  'farm',
  'climate',
  'facilities',
  'products',
  'people',
  'handovers',
  'publicHolidays',
  'headChanges',
  'weighings',
  'eggCounts',
  'feedOpenings',
] as const satisfies readonly (keyof AnimalPicture)[];

const isKnownFor = (before: Alone, picture: AnimalPicture, tables: Tables): boolean =>
  before.tables === tables && RESTS_ON.every((part) => before.picture[part] === picture[part]);

/** @throws FieldError when it cannot be planned */
function alone(picture: AnimalPicture, tables: Tables, batch: NamedBatch): Alone {
  const before = aloneOf.get(batch);
  if (before && isKnownFor(before, picture, tables)) return before;
  const context = planContext({
    ...around(picture, tables),
    batch: asPlanned(batch, headChangesOf(picture, batch.id)),
    headChanges: headChangesOf(picture, batch.id),
    weighings: weighingsOf(picture, batch.id),
    eggCounts: eggCountsOf(picture, batch.id),
    feedOpenings: openingsOf(picture, batch.id),
    occupied: [],
    packed: [],
  });
  const found = { picture, tables, context, flock: flockOf(context) };
  aloneOf.set(batch, found);
  return found;
}

/**
 * Chores of all other batches, of herds by date: the hours of a day of processing are what is left
 * of it. A batch that cannot be planned has none.
 */
function choresBeside(picture: AnimalPicture, tables: Tables, batchId: string): ChoreHours {
  const each = [
    herdChores(picture, tables),
    ...picture.batches
      .filter(({ id }) => id !== batchId)
      .flatMap((batch) => {
        try {
          return [careOf(alone(picture, tables, batch).context)];
        } catch {
          return [];
        }
      }),
  ];
  return (date) => each.reduce((sum, hoursOn) => sum + hoursOn(date), 0);
}

/**
 * The day on which each batch ends, as its own plan says it: the last processing, or the first egg.
 * Left out of those that cannot be planned.
 */
export function batchEnds(picture: AnimalPicture, allTables: Tables): Record<string, PlainDate> {
  const tables = tablesIn(picture.farm.units, allTables);
  return Object.fromEntries(
    picture.batches.flatMap((batch) => {
      const today = planningDay(batch, picture.today);
      const { endDate } = heldBy({ ...picture, today }, tables, batch);
      return endDate === undefined ? [] : [[batch.id, endDate]];
    }),
  );
}

/** What all batches of a farm hold on to, and when; nothing of those that cannot be planned. */
export function placesHeld(picture: AnimalPicture, allTables: Tables): Occupancy[] {
  const tables = tablesIn(picture.farm.units, allTables);
  return picture.batches
    .filter((batch) => !isHistory(batch, picture.today))
    .flatMap((batch) => heldBy(picture, tables, batch).occupied);
}

/** Kept by the picture itself: each of its batches asks for all others. */
const heldIn = new WeakMap<AnimalPicture, { tables: Tables; byBatch: Map<string, Held> }>();

function heldBy(picture: AnimalPicture, tables: Tables, batch: NamedBatch): Held {
  let known = heldIn.get(picture);
  if (known?.tables !== tables) heldIn.set(picture, (known = { tables, byBatch: new Map() }));
  let held = known.byBatch.get(batch.id);
  if (!held) known.byBatch.set(batch.id, (held = heldNow(picture, tables, batch)));
  return held;
}

/** What a batch holds on to; nothing when it cannot be planned, rather than blocking the farm. */
function heldNow(picture: AnimalPicture, tables: Tables, batch: NamedBatch): Held {
  try {
    const { context: byItself, flock } = alone(picture, tables, batch);
    const context = {
      ...byItself,
      choresOfOthers: choresBeside(picture, tables, batch.id),
    };
    return {
      occupied: occupanciesOf(context),
      packed: packedOf(context),
      flock,
      endDate: endOf(context),
    };
  } catch {
    return { occupied: [], packed: [], endDate: undefined };
  }
}

/** The last day of processing by the hands there are, or that of the first egg. */
function endOf(context: PlanContext): PlainDate {
  const { life, dateOf } = context;
  return life.firstEggAgeDays === undefined
    ? processingDays(context, birdsToProcess(life)).leaving.at(-1)!.date
    : dateOf(life.firstEggAgeDays - life.arrivalAgeDays);
}

const unknownBatch = ({ batches }: AnimalPicture, given: string): FieldError =>
  new FieldError([
    {
      field: 'batchId',
      code: 'not-allowed',
      given,
      allowed: batches.map(({ id }) => id),
      fix: 'Choose one of the farm’s batches.',
    },
  ]);
