import type Holidays from 'date-holidays';
import { LRUCache } from 'lru-cache';
import { createRequire } from 'node:module';
import { yearOf, type PlainDate } from '../../shared/calendar/plain-date.js';
import type { Farm } from '../../shared/farm/farm.js';
import type { PublicHoliday } from '../../shared/farm/picture.js';
import { FieldError } from '../../shared/problems/field-problem.js';

/** Loaded when first asked for: it takes a tenth of a second, which a start need not wait for. */
const calendar = (): typeof Holidays =>
  createRequire(import.meta.url)('date-holidays') as typeof Holidays;

/** Years after the one it is in which batches can be planned. */
const YEARS_AHEAD = 3;
/** Names of countries, regions and holidays are in the language of the page. */
const LANGUAGE = 'en';

const known = new LRUCache<string, readonly PublicHoliday[]>({ max: 100 });

/** Public holidays of a farm's country and region, of the year it is and those planned after it. */
export function publicHolidays(
  { country, region }: Pick<Farm, 'country' | 'region'>,
  today: PlainDate,
): readonly PublicHoliday[] {
  if (country === undefined) return [];
  const first = yearOf(today);
  const key = `${country}/${region ?? ''}/${first}`;
  let holidays = known.get(key);
  if (!holidays) {
    const ofPlace = new (calendar())(country, region ?? '');
    holidays = Array.from({ length: 1 + YEARS_AHEAD }, (_, k) => first + k)
      .flatMap((year) => ofPlace.getHolidays(year, LANGUAGE))
      .filter(({ type }) => type === 'public')
      .map(({ date, name }) => ({ date: date.slice(0, 10), name: inWordsOf(country, name) }));
    known.set(key, holidays);
  }
  return holidays;
}

/** The English of the United States; other countries keep the words that came. */
const inWordsOf = (country: string, name: string): string =>
  country === 'US'
    ? name.replace('Labour', 'Labor').replace('(substitute day)', '(observed)')
    : name;

/** A country whose holidays are known, with its regions where these have some of their own. */
export interface HolidayCountry {
  readonly id: string;
  readonly name: string;
  readonly regions: readonly { readonly id: string; readonly name: string }[];
}

/** Every country whose holidays are known, by name. */
export function holidayCountries(): HolidayCountry[] {
  const holidays = new (calendar())();
  return rowsOf(holidays.getCountries(LANGUAGE)).map((country) => ({
    ...country,
    regions: rowsOf(holidays.getStates(country.id, LANGUAGE)),
  }));
}

const rowsOf = (names: Readonly<Record<string, string>> | undefined) =>
  Object.entries(names ?? {})
    .map(([id, name]) => ({ id, name }))
    .sort((a, b) => a.name.localeCompare(b.name, LANGUAGE));

/** Throws when a farm names a country, or a region of it, whose holidays are not known. */
export function checkCountry(
  { country, region }: Pick<Farm, 'country' | 'region'>,
  path = '',
): void {
  if (country === undefined) return;
  const countries = holidayCountries();
  const found = countries.find(({ id }) => id === country);
  if (!found)
    throw notAllowed(`${path}country`, country, countries, 'Choose one of the countries.');
  if (region === undefined || found.regions.some(({ id }) => id === region)) return;
  throw notAllowed(
    `${path}region`,
    region,
    found.regions,
    `Choose a region of ${found.name}, or leave it out.`,
  );
}

const notAllowed = (
  field: string,
  given: string,
  allowed: readonly { readonly id: string }[],
  fix: string,
): FieldError =>
  new FieldError([
    { field, code: 'not-allowed', given, allowed: allowed.slice(0, 20).map(({ id }) => id), fix },
  ]);
