import { addDays, weekdayOf, type PlainDate } from '../../calendar/plain-date.js';
import { isGrownUp } from '../../farm/who-is-there.js';
import { costMinor } from '../../money/money.js';
import type { FarmPicture } from '../../farm/picture.js';
import type { Supplier } from '../../farm/supplier.js';
import type { Tables } from '../../tables/tables.js';
import type { SupplierDays } from '../../buying/buying-problem.js';
import { noPostOn } from '../no-post.js';
import { hoursOn, isThere, workPeople } from '../work/work-people.js';

/** Where feed is bought that names no supplier. */
export const ANYWHERE = 'Feed store';

/** A supplier in a plan of buying. */
export interface Source {
  /** Left out where nobody said from whom. */
  readonly supplier?: Supplier;
  readonly name: string;
  readonly leadDays: number;
  readonly tripH: number;
  /** Known of it, smallest coins; trips nobody priced count as nothing in the bill. */
  readonly tripMinor: number | undefined;
  /** The cost of a trip in it counts the hours as well, so that few are made. */
  readonly days: SupplierDays;
  /** The first day from today on which it is open and what is ordered is there, whoever can go. */
  readonly opensOn: number;
  /** Somebody has the hours on no day at all: then any open day counts. */
  readonly hasNoHands: boolean;
}

/**
 * The suppliers of a place with the days on which something can come from each: they are open, it
 * can be ordered in time, and somebody has the hours to go, or is there when it is delivered.
 *
 * @param hourMinor what an hour of a trip counts in the choice of trips, smallest coins
 */
export function whereBought(
  picture: FarmPicture,
  tables: Tables,
  { days, hourMinor }: { readonly days: number; readonly hourMinor: number },
): Source[] {
  const named = (picture.suppliers ?? []).map((supplier) =>
    sourceOf(picture, tables, { supplier, days, hourMinor }),
  );
  return [...named, sourceOf(picture, tables, { days, hourMinor })];
}

function sourceOf(
  picture: FarmPicture,
  tables: Tables,
  { supplier, days, hourMinor }: { supplier?: Supplier; days: number; hourMinor: number },
): Source {
  const { currency } = picture.farm;
  const tripH = supplier?.tripH ?? tables.judgements.buying.tripH.value;
  const leadDays = supplier?.leadDays ?? 0;
  const price = supplier?.tripCost ?? (isDelivered(supplier) ? undefined : tripOf(picture));
  const tripMinor = price === undefined ? undefined : costMinor(price, 1, currency);
  const hours = isDelivered(supplier) ? 0 : tripH;
  const dates = Array.from({ length: days }, (_, day) => addDays(picture.today, day));
  const first = firstOrdered(picture, supplier, leadDays);
  const isOpen = (date: PlainDate, day: number): boolean =>
    first <= day && isOpenOn(picture, supplier, date);
  const canGo = dates.map(
    (date, day) => isOpen(date, day) && hasHands(picture, tables, date, hours),
  );
  const hasNoHands = !canGo.includes(true);
  return {
    ...(supplier ? { supplier } : {}),
    name: supplier?.name ?? ANYWHERE,
    ...{ leadDays, tripH, tripMinor, hasNoHands },
    opensOn: dates.findIndex(isOpen),
    days: {
      ...(supplier?.countsTogether ? { countsTogether: true } : {}),
      tripCost: (tripMinor ?? 0) + Math.round(hours * hourMinor),
      days: Uint8Array.from(dates, (date, day) =>
        (hasNoHands ? isOpen(date, day) : canGo[day]) ? 1 : 0,
      ),
    },
  };
}

/**
 * Whether a seller is open on a day: on the weekdays that were said, else on all that shops are open;
 * none is on a public holiday.
 */
export function isOpenOn(
  { farm, publicHolidays = [] }: FarmPicture,
  supplier: Supplier | undefined,
  date: PlainDate,
): boolean {
  const said = supplier?.openWeekdays;
  if (said === undefined) return noPostOn(date, { farm, publicHolidays }) === undefined;
  return said.includes(weekdayOf(date)) && !publicHolidays.some((each) => each.date === date);
}

/** Days from today from which on something can come that is ordered while they are open. */
function firstOrdered(picture: FarmPicture, supplier: Supplier | undefined, leadDays: number) {
  if (leadDays === 0) return 0;
  const call = Array.from({ length: 2 * 7 }, (_, day) => day).find((day) =>
    isOpenOn(picture, supplier, addDays(picture.today, day)),
  );
  return (call ?? 0) + leadDays;
}

const isDelivered = (supplier: Supplier | undefined): boolean => supplier?.comes === 'delivered';

/** What the place says that a drive costs, wherever it goes. */
const tripOf = ({ products }: FarmPicture): string | undefined =>
  products.find(({ kind }) => kind === 'trip')?.price;

/** Whether a grown-up of the household is there and has so many hours; nobody typed is no bar. */
function hasHands(picture: FarmPicture, tables: Tables, date: PlainDate, hours: number): boolean {
  const { handovers, people } = picture;
  const grown = workPeople(people, handovers).filter(
    (person) => isGrownUp(person) && !person.comesInFor,
  );
  if (grown.length === 0) return true;
  return grown.some(
    (person) =>
      isThere(person, date, { handovers }) && hours <= hoursOn(person, date, { handovers, tables }),
  );
}
