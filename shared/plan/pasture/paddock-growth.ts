import { daysBetween, type PlainDate } from '../../calendar/plain-date.js';
import type { GrassReading, Paddock } from '../../farm/paddock.js';
import { OLDEST_READING_DAYS } from '../../farm/told-kinds.js';
import { massPerCm } from '../../pasture/forage-mass.js';
import { kindOf } from '../../pasture/grass-kind.js';
import { grassWeather, type GrassWeather } from '../../pasture/grass-weather.js';
import { PlotGround, openFrom, type OpenGrowth } from '../../pasture/open-growth.js';
import { PHASES, referenceGrowth, type ReferenceGrowth } from '../../pasture/reference-growth.js';
import type { GrassGround, GrassKind } from '../../pasture/sward-day.js';
import type { Forage } from '../../tables/pasture-tables.js';
import { rowById } from '../../tables/tables.js';
import { soilWater, totalAvailableWaterMm, type RootZone } from '../../weather/soil-water.js';
import type { PastureRequest } from './pasture-request.js';
import type { SeasonWeather, WeatherRun } from './season-weather.js';

/** Paddocks of the same grass and ground grow alike: what that comes to is worked out once. */
export function growths(place: GrassPlace): (base: PaddockBase, factor: number) => PaddockGrowth {
  const known = new Map<string, PaddockGrowth>();
  return (base, factor) => {
    const key = `${groupOf(base)},${factor}`;
    let grown = known.get(key);
    if (!grown) known.set(key, (grown = grownOf(place, base, factor)));
    return grown;
  };
}

/** Those of one group are of the same grass on the same ground. */
export const groupOf = ({
  paddock: { forageId, productivity, soilId, stand },
}: Pick<PaddockBase, 'paddock'>): string => [forageId, productivity, soilId, stand].join();

/** Weather of the place as grass meets it: that of the plan, and the usual. */
export interface GrassPlace {
  readonly weather: SeasonWeather;
  readonly expected: GrassWeather;
  readonly usual: GrassWeather;
}

export function placeOf({ farm, tables }: PastureRequest, weather: SeasonWeather): GrassPlace {
  const of = (run: WeatherRun): GrassWeather => {
    let known = knownWeather.get(run);
    if (!known) {
      known = grassWeather(
        farm.latitudeDeg,
        { dayOfYear: weather.dayOfYear, ...run },
        tables.pasture.deadGrass,
      );
      knownWeather.set(run, known);
    }
    return known;
  };
  return { weather, expected: of(weather.expected), usual: of(weather.usual) };
}

/** What the usual weather is to grass is kept with it. */
const knownWeather = new WeakMap<WeatherRun, GrassWeather>();

export interface PaddockBase {
  readonly paddock: Paddock;
  readonly forage: Forage;
  readonly kind: GrassKind;
  readonly ground: GrassGround;
  readonly zone: RootZone;
  readonly kgPerHaCm: number;
  readonly residualKgPerHa: number;
  readonly turnInKgPerHa: number;
  /** In date order, none after today. */
  readonly readings: readonly GrassReading[];
  /** Days on which grass was eaten or mown, of all that was told. */
  readonly taken: readonly { readonly from: PlainDate; readonly to: PlainDate }[];
  /** Its last grazing is among the stays that are played. */
  readonly isPlayed: boolean;
}

export function baseOf(
  { tables, readings, today, grazings = [], mowings = [] }: PastureRequest,
  paddock: Paddock,
): PaddockBase {
  const forage = rowById(tables.forages, paddock.forageId);
  const { fieldCapacity, wiltingPoint } = rowById(tables.soils, paddock.soilId);
  const { kc, rootDepthM, depletionShare } = forage.water;
  const zone = { fieldCapacity, wiltingPoint, kc, rootDepthM, depletionShare };
  const kgPerHaCm = massPerCm(paddock, forage);
  return {
    paddock,
    forage,
    zone,
    kgPerHaCm,
    kind: kindOf(forage, tables.grassGroups),
    ground: {
      nitrogenIndex: tables.pasture.nitrogenIndex[paddock.productivity],
      waterHeldMm: totalAvailableWaterMm(zone),
      growthFactor: 1,
      coverShare: tables.pasture.coverShare[paddock.stand],
    },
    residualKgPerHa: (paddock.residualHeightCm ?? forage.heights.residualHeightCm) * kgPerHaCm,
    turnInKgPerHa: (paddock.readyHeightCm ?? forage.heights.readyHeightCm) * kgPerHaCm,
    taken: [
      ...grazings.flatMap(({ paddockId, from, to = today }) =>
        paddockId === paddock.id ? [{ from, to }] : [],
      ),
      ...[
        ...mowings.flatMap(({ paddockId, date }) => (paddockId === paddock.id ? [date] : [])),
        ...(paddock.lastGrazedOn === undefined ? [] : [paddock.lastGrazedOn]),
      ].map((day) => ({ from: day, to: day })),
    ],
    isPlayed: grazings.some(
      ({ paddockId, to }) => paddockId === paddock.id && to === paddock.lastGrazedOn,
    ),
    readings: readings
      .filter(
        (r) =>
          r.paddockId === paddock.id &&
          r.date <= today &&
          daysBetween(r.date, today) <= OLDEST_READING_DAYS,
      )
      .sort((a, b) => (a.date < b.date ? -1 : 1)),
  };
}

export interface PaddockGrowth {
  readonly expected: ReferenceGrowth;
  readonly usual: ReferenceGrowth;
  readonly usualFrom: (day: number) => OpenGrowth;
  readonly depletionMm: Float64Array | undefined;
}

function grownOf(
  { weather, expected, usual }: GrassPlace,
  { kind, ground, zone }: PaddockBase,
  growthFactor: number,
): PaddockGrowth {
  const own = { ...ground, growthFactor };
  const inPlan = referenceGrowth(kind, own, expected);
  const inUsual = usual === expected ? inPlan : referenceGrowth(kind, own, usual);
  const { rainMm, referenceMm } = weather.expected;
  const known = new Map<number, OpenGrowth>();
  const usualFrom = (day: number): OpenGrowth => {
    let open = known.get(day);
    if (!open) {
      const plots = Math.max(PHASES, usual.years.length);
      const years = new PlotGround(kind, own.waterHeldMm, usual, plots, inPlan.waterBefore(day));
      known.set(day, (open = openFrom(day, years, inUsual.open, inUsual.drawsShare)));
    }
    return open;
  };
  return {
    expected: inPlan,
    usual: inUsual,
    usualFrom: usual === expected ? () => inPlan.open : usualFrom,
    depletionMm: rainMm && soilWater(zone, { rainMm, referenceMm }).depletionMm,
  };
}
