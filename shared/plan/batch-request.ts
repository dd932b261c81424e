import { addDays, daysBetween, type PlainDate } from '../calendar/plain-date.js';
import type { Occupancy } from '../farm/occupancy.js';
import { expectedBirds, lastLeft } from '../farm/head-count.js';
import type { AnimalPicture, NamedBatch } from '../farm/picture.js';
import { FieldError } from '../problems/field-problem.js';
import { tablesForStrain } from '../tables/for-kind.js';
import { tablesIn } from '../tables/in-own-units.js';
import type { Tables } from '../tables/tables.js';
import { alone, around, asPlanned } from './batch-alone.js';
import { careOf, herdChores } from './chore-hours.js';
import type { PlanContext } from './context.js';
import { packedOf } from './leaving-freezer.js';
import { birdsToProcess } from './leaving-weights.js';
import { occupanciesOf } from './occupancy.js';
import { daysBackOf, FURTHEST_DAYS, isHistory, planningDay } from './planning-day.js';
import { processingDays } from './processing-days.js';
import type { ChoreHours, OtherFlock, PlanRequest } from './request.js';
import { toldOfBatch } from './told-of-batch.js';

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
  const others = besides(picture, batch).map((other) => heldBy(picture, tables, other));
  const told = toldOfBatch(picture, batchId);
  return {
    ...around(picture, tablesForStrain(tables, batch.strainId), batch),
    batch: asPlanned(batch, told.headChanges),
    choresOfOthers: choresBeside(picture, tables, batch),
    hasOlderFlock: olderFlockOf(batch, picture, tables) !== undefined,
    usedBefore: usedBefore(picture, batch),
    ...told,
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
  const context = contextAlone(picture, allTables, row);
  return { ...context, ...request, tables: context.tables };
}

/** The same without what its neighbors hold: for whoever goes by nothing but its own life. */
export const contextAlone = (
  picture: AnimalPicture,
  allTables: Tables,
  batch: NamedBatch,
): PlanContext => alone(picture, tablesIn(picture.farm.units, allTables), batch).context;

type JoinsFlock = Pick<NamedBatch, 'arrivalDate' | 'purpose' | 'coopId' | 'penId'>;

/** The flock that a batch joins unless somebody says otherwise. */
export const olderFlockOf = (
  batch: JoinsFlock,
  { batches }: Pick<AnimalPicture, 'batches'>,
  tables: Tables,
): NamedBatch | undefined => batches.find((other) => isOlderFlock(other, batch, tables));

/**
 * Layers that came so much earlier that they rule the coop when these join them: not birds that go
 * to a pen or coop of their own.
 */
function isOlderFlock(other: NamedBatch, batch: JoinsFlock, tables: Tables): boolean {
  const before = daysBetween(other.arrivalDate, batch.arrivalDate);
  const { olderFlockDays } = tables.judgements.birds;
  if (other.purpose !== 'layers' || before < olderFlockDays.value || FURTHEST_DAYS < before) {
    return false;
  }
  if (batch.purpose === 'meat' && batch.penId !== undefined) return false;
  return [batch.coopId, other.coopId].includes(undefined) || batch.coopId === other.coopId;
}

/** Days for which meat of birds that were processed may still lie in a freezer. */
const PACKED_DAYS = 400;

/**
 * Other batches that a batch can meet in its places, its freezer or the household's hours: not those
 * that were all gone long before it came, however many years a farm has kept birds.
 */
function besides(picture: AnimalPicture, batch: NamedBatch): NamedBatch[] {
  return picture.batches.filter((other) => {
    const { id, arrivalDate } = other;
    if (id === batch.id) return false;
    const before = daysBetween(arrivalDate, batch.arrivalDate);
    if (daysBackOf(other) < before || daysBackOf(batch) < -before) return false;
    const { headChanges } = toldOfBatch(picture, id);
    const left = lastLeft(headChanges, expectedBirds(other));
    const isPacked = headChanges.some(({ change }) => change === 'processed');
    return left === undefined || batch.arrivalDate <= addDays(left, isPacked ? PACKED_DAYS : 0);
  });
}

/** What a batch takes from the others, and the day it ends. */
interface Held extends Pick<PlanRequest, 'occupied' | 'packed'> {
  /** Last processing, or the first egg; undefined when it cannot be planned. */
  readonly endDate: PlainDate | undefined;
  /** What its hens lay, where it has some. */
  readonly flock?: OtherFlock | undefined;
}

/** What stands when a batch comes, because an earlier one was to be in it, gone or not. */
const usedBefore = ({ batches }: AnimalPicture, batch: NamedBatch): string[] =>
  batches
    .filter(({ id, arrivalDate }) => id !== batch.id && arrivalDate < batch.arrivalDate)
    .flatMap(({ brooderId, penId }) => [brooderId, penId])
    .filter((id) => id !== undefined);

/**
 * Chores of all other batches, of herds by date: the hours of a day of processing are what is left
 * of it. A batch that cannot be planned has none.
 */
function choresBeside(picture: AnimalPicture, tables: Tables, batch: NamedBatch): ChoreHours {
  const each = [
    herdChores(picture, tables),
    ...besides(picture, batch).flatMap((other) => {
      try {
        return [careOf(alone(picture, tables, other).context)];
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
      choresOfOthers: choresBeside(picture, tables, batch),
    };
    const endDate = endOf(context);
    return {
      occupied: occupanciesOf(context),
      packed: isSilentPast(picture, context, endDate) ? [] : packedOf(context),
      flock,
      endDate,
    };
  } catch {
    return { occupied: [], packed: [], endDate: undefined };
  }
}

/** Whether nobody told of meat birds since long before that they came: none of them are in a freezer. */
const isSilentPast = (
  { today, weighings }: AnimalPicture,
  { batch, life, tables }: PlanContext,
  endDate: PlainDate,
): boolean =>
  batch.purpose === 'meat' &&
  life.told === undefined &&
  !weighings.some(({ batchId }) => batchId === batch.id) &&
  addDays(endDate, tables.judgements.alarms.leavingAskedDays.value) < today;

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
