import { daysBetween, type PlainDate } from '../calendar/plain-date.js';
import type { Occupancy } from '../farm/batch.js';
import type { FarmPicture, NamedBatch } from '../farm/picture.js';
import { FieldError } from '../problems/field-problem.js';
import type { Tables } from '../tables/tables.js';
import type { Climate } from '../weather/climate.js';
import { planContext } from './context.js';
import { occupanciesOf } from './occupancy.js';
import { FURTHEST_DAYS } from './planning-day.js';
import type { PlanRequest } from './request.js';

/**
 * A batch in the picture of its farm, with what the other batches hold on to.
 *
 * @param previousArrivalDate when given, the plan says which tasks moved since
 * @throws FieldError when the picture has no such batch
 */
export function batchRequest(
  picture: FarmPicture,
  tables: Tables,
  batchId: string,
  previousArrivalDate?: PlainDate,
): PlanRequest {
  const batch = picture.batches.find(({ id }) => id === batchId);
  if (!batch) throw unknownBatch(picture, batchId);
  return {
    ...around(picture, tables),
    batch,
    hasOlderFlock: picture.batches.some((other) => isOlderFlock(other, batch, tables)),
    weighings: weighingsOf(picture, batchId),
    occupied: picture.batches
      .filter(({ id }) => id !== batchId)
      .flatMap((other) => heldBy(picture, tables, other)),
    ...(previousArrivalDate === undefined ? {} : { previousArrivalDate }),
  };
}

/** Layers that came so much earlier that they rule the coop when these join them. */
function isOlderFlock(other: NamedBatch, batch: NamedBatch, tables: Tables): boolean {
  const before = daysBetween(other.arrivalDate, batch.arrivalDate);
  const { olderFlockDays } = tables.judgements.birds;
  return other.purpose === 'layers' && olderFlockDays.value <= before && before <= FURTHEST_DAYS;
}
const weighingsOf = ({ weighings }: FarmPicture, of: string): FarmPicture['weighings'] =>
  weighings.filter(({ batchId }) => batchId === of);

const around = (
  { farm, climate, facilities, products, people, today }: FarmPicture,
  tables: Tables,
): Omit<PlanRequest, 'batch' | 'occupied' | 'weighings'> => ({
  farm,
  climate,
  facilities,
  products,
  people,
  today,
  tables,
});

interface Held {
  readonly weighings: FarmPicture['weighings'];
  readonly climate: Climate;
  readonly tables: Tables;
  readonly occupancies: readonly Occupancy[];
}

/** Kept by the batch itself: the plan of each of its neighbors asks for it. */
const known = new WeakMap<NamedBatch, Held>();

/** What a batch holds on to; nothing when it cannot be planned, rather than blocking the farm. */
function heldBy(picture: FarmPicture, tables: Tables, batch: NamedBatch): readonly Occupancy[] {
  const before = known.get(batch);
  if (
    before?.climate === picture.climate &&
    before.weighings === picture.weighings &&
    before.tables === tables
  ) {
    return before.occupancies;
  }
  const occupancies = heldOrNothing(() =>
    occupanciesOf(
      planContext({
        ...around(picture, tables),
        batch,
        weighings: weighingsOf(picture, batch.id),
        occupied: [],
      }),
    ),
  );
  const { climate, weighings } = picture;
  known.set(batch, { climate, weighings, tables, occupancies });
  return occupancies;
}

function heldOrNothing(hold: () => readonly Occupancy[]): readonly Occupancy[] {
  try {
    return hold();
  } catch {
    return [];
  }
}

const unknownBatch = ({ batches }: FarmPicture, given: string): FieldError =>
  new FieldError([
    {
      field: 'batchId',
      code: 'not-allowed',
      given,
      allowed: batches.map(({ id }) => id),
      fix: 'Choose one of the farm’s batches.',
    },
  ]);
