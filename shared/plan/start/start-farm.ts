import type { PlainDate } from '../../calendar/plain-date.js';
import {
  ESTIMATED_FIELDS,
  NO_ESTIMATE,
  type EstimatedClimate,
  type EstimatedField,
} from '../../farm/estimated-climate.js';
import type { Farm } from '../../farm/farm.js';
import type { FeedStore } from '../../farm/facility.js';
import type { FarmPicture, PublicHoliday } from '../../farm/picture.js';
import type { PastureChoices } from '../../farm/pasture-choices.js';
import type { BirdsToCome, Start } from '../../farm/start.js';
import { FieldError } from '../../problems/field-problem.js';
import { climateFromMonthlyMeans } from '../../weather/climate.js';
import { isWinter } from '../pasture/pasture-span.js';
import { withBirds } from './start-birds.js';
import { startHerd, startPaddocks } from './start-cattle.js';
import type { StartDefaults } from './start-defaults.js';
import { startPeople } from './start-people.js';
import type { StartSetting } from './start-setting.js';

/** What a start is made from. */
export interface StartAsked {
  readonly start: Start;
  readonly today: PlainDate;
  /** Left out where there is none, or where the household knows better. */
  readonly estimate?: EstimatedClimate;
  readonly publicHolidays: readonly PublicHoliday[];
  readonly defaults: StartDefaults;
  /** Fields of the start that nobody said: they follow from where it lies. */
  readonly assumed?: readonly string[];
}

/** The rows of a farm that has just begun. */
export type StartedFarm = Pick<
  FarmPicture,
  | 'farm'
  | 'people'
  | 'facilities'
  | 'batches'
  | 'headChanges'
  | 'herds'
  | 'paddocks'
  | 'pastureChoices'
>;

/**
 * A whole farm from the three things a household says of it: where, who, and what is coming. What
 * nobody said is filled in by sensible defaults and named in the rows' `assumed`.
 *
 * @throws FieldError where the climate is neither estimated nor given
 */
export function startFarm(
  { start, today, estimate, publicHolidays, defaults, assumed = [] }: StartAsked,
  { tables, newId }: Pick<StartSetting, 'tables' | 'newId'>,
): StartedFarm {
  const setting: StartSetting = { defaults, tables, newId };
  const begunFarm = farmOf(start, estimate, defaults);
  const farm = { ...begunFarm, assumed: [...(begunFarm.assumed ?? []), ...assumed] };
  const meat = meatOf(start);
  const begun: FarmPicture = {
    ...{ today, farm, publicHolidays },
    climate: climateFromMonthlyMeans(
      farm.monthlyMinC,
      farm.monthlyMaxC,
      tables.heat.coldNightMarginK.value,
      farm.monthlyRainMm,
    ),
    facilities: 0 < meat.length || start.layers ? [feedStoreOf(farm, setting)] : [],
    people: startPeople(start.people, defaults, newId),
    herds: start.cattle?.length ? [startHerd(start.cattle, setting)] : [],
    paddocks: startPaddocks({ ...start, units: farm.units }, setting),
    ...{
      products: [],
      batches: [],
      headChanges: [],
      brooderLooks: [],
      weighings: [],
      cows: [],
      readings: [],
    },
    pastureChoices: choicesOf(start, isWinter({ farm, today }) ? today : undefined),
    ...{ jobs: [], handovers: [], progress: [], groundChecks: [], keptPlans: [], eggCounts: [] },
  };
  const withMeat = 0 < meat.length ? withBirds(begun, 'meat', meat, setting) : begun;
  const all = start.layers ? withBirds(withMeat, 'layers', [start.layers], setting) : withMeat;
  const { people, facilities, batches, headChanges, herds, paddocks, pastureChoices } = all;
  return { farm, people, facilities, batches, headChanges, herds, paddocks, pastureChoices };
}

/** Batches of meat birds as they come; one without a month comes after the one said before it. */
function meatOf({ meat, moreMeat = [] }: Start): BirdsToCome[] {
  const said = [...(meat ? [meat] : []), ...moreMeat];
  return said.every(({ from }) => from !== undefined)
    ? said.toSorted((a, b) => (a.from! < b.from! ? -1 : 1))
    : said;
}

/**
 * Few small farms have the gear for hay; who does, says so. Cattle that are there in winter are on hay,
 * and have grazed what stood: what a mild fall grew is no grass to turn out to.
 */
function choicesOf(
  { cattle = [], makesHay }: Start,
  winterDay: PlainDate | undefined,
): PastureChoices {
  if (cattle.length === 0) return {};
  const isThere = cattle.some(({ arrivesOn }) => arrivesOn === undefined);
  const onHaySince = isThere ? winterDay : undefined;
  return {
    makesHay: makesHay ?? false,
    ...(onHaySince === undefined ? {} : { onHaySince }),
    assumed: [
      ...(makesHay === undefined ? ['makesHay'] : []),
      ...(onHaySince === undefined ? [] : ['onHaySince']),
    ],
  };
}

function farmOf(
  start: Start,
  estimate: EstimatedClimate | undefined,
  defaults: StartDefaults,
): Farm {
  const { latitudeDeg, longitudeDeg, timeZone, country, region, name, place } = start;
  const { units = 'metric', currency = 'USD' } = start;
  const prices = defaults.prices[currency] ?? {
    electricityPricePerKWh: '0',
    gasPricePerL: '0',
  };
  return {
    name: name ?? (place === undefined ? 'Our farm' : `Farm at ${place}`.slice(0, 80)),
    ...{ latitudeDeg, longitudeDeg, timeZone, units, currency },
    elevationM: start.elevationM ?? defaults.elevationM,
    ...(country === undefined ? {} : { country }),
    ...(region === undefined ? {} : { region }),
    ...prices,
    ...climateOf(start, estimate),
    noDeliveryDates: [],
    assumed: [
      ...(name === undefined ? ['name'] : []),
      ...(start.elevationM === undefined ? ['elevationM'] : []),
      ...Object.keys(prices),
    ],
  };
}

type ClimateOfFarm = Pick<Farm, EstimatedField | 'frostDatesAre' | 'estimated'>;

/** The fields of a farm that each figure to be confirmed stands for. */
const CONFIRMS: Readonly<Record<EstimatedClimate['toConfirm'][number], readonly EstimatedField[]>> =
  { nights: ['monthlyMinC'], rain: ['monthlyRainMm'], frost: ['lastFrost', 'firstFrost'] };

function climateOf(
  { climate, hasConfirmedClimate = false }: Start,
  estimate: EstimatedClimate | undefined,
): ClimateOfFarm {
  if (climate) return climate;
  if (!estimate)
    throw new FieldError([
      { field: 'climate', code: 'missing', given: undefined, fix: NO_ESTIMATE },
    ]);
  const { monthlyMinC, monthlyMaxC, monthlyRainMm, lastFrost, firstFrost } = estimate;
  const confirmed = hasConfirmedClimate ? estimate.toConfirm.flatMap((each) => CONFIRMS[each]) : [];
  return {
    ...{ monthlyMinC, monthlyMaxC, monthlyRainMm, lastFrost, firstFrost },
    frostDatesAre: estimate.frostDatesAre,
    estimated: ESTIMATED_FIELDS.filter((field) => !confirmed.includes(field)),
  };
}

const feedStoreOf = (farm: Farm, { defaults, newId }: StartSetting): FeedStore => ({
  ...{ id: newId(), kind: 'feed-store', name: 'Feed bins' },
  capacityKg: defaults[farm.units].feedStoreKg,
  assumed: ['name', 'capacityKg'],
});
