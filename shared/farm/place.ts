import { within, whole } from './bounds.js';
import { choice, number, optional, row, rows, text, type RowOf } from './field.js';
import { farmFields } from './farm.js';

const { latitudeDeg, longitudeDeg, elevationM, timeZone, units, currency, country, region } =
  farmFields.fields;

/** What follows from where a place lies, whatever it is called. */
const OF_COUNTRY = { country, region, timeZone, units, currency } as const;

/** Height of the town, or of the nearest one: a farm beside it may lie higher or lower. */
const townElevationM = optional(elevationM);

/** A place that was found by its name. */
export const placeFields = row('Place', {
  name: text('Name', 200),
  /** State, county or province, as it is written beside the name. */
  within: optional(text('State or region', 200)),
  countryName: optional(text('Country', 100)),
  latitudeDeg,
  longitudeDeg,
  elevationM: optional(elevationM),
  townElevationM,
  population: optional(number('People', whole(0, 1e8, 'count', 'Give the number of people.'))),
  ...OF_COUNTRY,
});
export type Place = RowOf<typeof placeFields>;

/** Places by a name, and where they were looked up. */
export const placesFoundFields = row('PlacesFound', {
  places: rows('Places', placeFields, 20, 'place'),
  from: choice('Looked up', ['here', 'online']),
  /** Why it was looked up here when it was to be online. */
  note: optional(text('Note', 500)),
});
export type PlacesFound = RowOf<typeof placesFoundFields>;

/** A country that a point near a border may lie in, by its nearest town there. */
export const possibleCountryFields = row('PossibleCountry', {
  countryName: text('Country', 100),
  near: text('Near', 200),
  nearKm: number('Distance', within(0, 20100, 'km', 'Give the distance.')),
  ...OF_COUNTRY,
});
export type PossibleCountry = RowOf<typeof possibleCountryFields>;

/** What is known of a point on the map. */
export const pointFields = row('Point', {
  /** The nearest town, and how far it is. */
  near: text('Near', 200),
  nearKm: number('Distance', within(0, 20100, 'km', 'Give the distance.')),
  elevationM: optional(elevationM),
  townElevationM,
  note: optional(text('Note', 500)),
  /** Where towns of more than one country are near: those it may be, the nearest first. */
  countries: optional(rows('Countries it may be in', possibleCountryFields, 10, 'country')),
  ...OF_COUNTRY,
});
export type Point = RowOf<typeof pointFields>;
