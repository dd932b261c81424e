import { daysBetween } from '../../calendar/plain-date.js';
import type { GrassReading, Paddock } from '../../farm/paddock.js';
import { OLDEST_READING_DAYS } from '../../farm/told-kinds.js';
import { massPerCm } from '../../pasture/forage-mass.js';
import { growthFactor, type GrowthPair } from '../../pasture/recalibrate.js';
import { ratePerDayOfMean, regrown, temperatureFactor } from '../../pasture/regrowth.js';
import { massOn, swardOf, type PlainSward, type Sward } from '../../pasture/sward.js';
import { soilWater, type RootZone } from '../../weather/soil-water.js';
import { rowById, type Tables } from '../../tables/tables.js';
import type { Forage } from '../../tables/pasture-tables.js';
import type { PastureRequest } from './pasture-request.js';
import type { PastureSpan } from './pasture-span.js';
import type { SeasonWeather, WeatherRun } from './season-weather.js';
import { tableGrowth } from './table-growth.js';

/** A paddock with what its season was worked out from. */
export interface SeasonSward {
  readonly paddock: Paddock;
  readonly forage: Forage;
  readonly kgPerHaCm: number;
  readonly sward: Sward;
  /** Growth by the month's table before weather, kg/ha a day. */
  readonly tableGrowth: Float64Array;
  /** Share of it that weather leaves. */
  readonly weatherShare: Float64Array;
  readonly stress: Float64Array | undefined;
  readonly depletionMm: Float64Array | undefined;
  readonly reading: GrassReading | undefined;
  /** What the mass on the first day is grown on from. */
  readonly heightKnown: 'reading' | 'last-grazing' | 'nothing';
  /** Mass that had been expected on the day of the last reading, where an earlier one is known. */
  readonly expectedAtReading: number | undefined;
}

export interface SeasonSwards {
  readonly swards: readonly SeasonSward[];
  readonly farmFactor: number;
  readonly pairs: number;
}

/** Days before the season beyond which it does not matter when a paddock was grazed. */
const LONG_AGO = -1000;

/** Every paddock of a farm over the season, its growth scaled to the farm's own readings. */
export function seasonSwards(
  request: PastureRequest,
  span: PastureSpan,
  weather: SeasonWeather,
): SeasonSwards {
  const growths = new Map<string, Growth>();
  const bases = request.paddocks.map((paddock): Base => {
    const forage = rowById(request.tables.forages, paddock.forageId);
    const key = `${forage.id}/${paddock.productivity}/${paddock.soilId}`;
    let growth = growths.get(key);
    if (!growth) growths.set(key, (growth = growthOf(request, weather, forage, paddock)));
    const readings = request.readings
      .filter(
        (r) =>
          r.paddockId === paddock.id &&
          r.date <= request.today &&
          daysBetween(r.date, request.today) <= OLDEST_READING_DAYS,
      )
      .sort((a, b) => (a.date < b.date ? -1 : 1));
    return {
      paddock,
      forage,
      kgPerHaCm: massPerCm(paddock, forage),
      ceiling:
        (request.tables.pasture.ceilingKgPerHa.value * massPerCm(paddock, forage)) /
        forage.massKgPerHaCm.good.value,
      growth,
      readings,
      heights: {
        readyHeightCm: paddock.readyHeightCm ?? forage.heights.readyHeightCm,
        residualHeightCm: paddock.residualHeightCm ?? forage.heights.residualHeightCm,
      },
    };
  });
  const ratesAt = ({ growth, heights, kgPerHaCm, ceiling }: Base, factor: number): Float64Array => {
    // A very tall turn-in of a dense stand can pass the ceiling that all stands share.
    const to = Math.min(heights.readyHeightCm * kgPerHaCm, 0.9 * ceiling);
    const from = Math.min(heights.residualHeightCm * kgPerHaCm, 0.8 * to);
    const perKg = ratePerDayOfMean(factor, from, to, ceiling);
    return growth.expected.map((kg) => kg * perKg);
  };
  const pairs = bases.flatMap((base) => pairsOf(base, span, ratesAt(base, 1)));
  const { factor, readings } = growthFactor(request.tables.pasture.readingWeight, pairs);
  return {
    farmFactor: factor,
    pairs: readings,
    swards: bases.map((base) => swardOfBase(request, span, base, ratesAt(base, factor))),
  };
}

interface Growth {
  readonly table: Float64Array;
  readonly expected: Float64Array;
  readonly weatherShare: Float64Array;
  readonly stress: Float64Array | undefined;
  readonly depletionMm: Float64Array | undefined;
}

interface Base {
  readonly paddock: Paddock;
  readonly forage: Forage;
  readonly kgPerHaCm: number;
  readonly growth: Growth;
  readonly heights: { readonly readyHeightCm: number; readonly residualHeightCm: number };
  /** A thin stand reaches the same height with less in it. */
  readonly ceiling: number;
  /** In date order, none after today. */
  readonly readings: readonly GrassReading[];
}

function growthOf(
  { tables, farm }: PastureRequest,
  weather: SeasonWeather,
  forage: Forage,
  paddock: Paddock,
): Growth {
  const table = tableGrowth(forage, paddock.productivity, farm.latitudeDeg, weather.dayOfYear);
  const soil = rowById(tables.soils, paddock.soilId);
  const { fieldCapacity, wiltingPoint } = soil;
  const { kc, rootDepthM, depletionShare } = forage.water;
  const zone: RootZone = {
    ...{ fieldCapacity, wiltingPoint },
    ...{ kc, rootDepthM, depletionShare },
  };
  const waterOf = ({ rainMm, referenceMm }: WeatherRun) =>
    rainMm && soilWater(zone, { rainMm, referenceMm });
  const now = waterOf(weather.expected);
  const usual = weather.expected === weather.usual ? now : waterOf(weather.usual);
  const warmth = (run: WeatherRun, i: number): number =>
    temperatureFactor(forage.temperature, (run.minC[i]! + run.maxC[i]!) / 2);
  const { low, high } = tables.pasture.weatherFactor;
  const ease = tables.judgements.grass.ease.value;
  // The table's months already have the usual weather in them, so only the difference counts.
  const weatherShare = Float64Array.from(table, (_, i) => {
    const warm = ratio(warmth(weather.expected, i), warmth(weather.usual, i), ease);
    const wet = now && usual ? ratio(now.stress[i]!, usual.stress[i]!, ease) : 1;
    return Math.min(high, Math.max(low, warm * wet));
  });
  return {
    table,
    weatherShare,
    expected: table.map((kg, i) => kg * weatherShare[i]!),
    stress: now?.stress,
    depletionMm: now?.depletionMm,
  };
}

/** Eased, so that it stays tame where both shares are next to nothing. */
const ratio = (now: number, usual: number, ease: number): number => (now + ease) / (usual + ease);

/** Growth between two readings with no grazing in between, measured and expected. */
function pairsOf(
  { paddock, readings, kgPerHaCm, ceiling }: Base,
  span: PastureSpan,
  rates: Float64Array,
): GrowthPair[] {
  return readings.slice(1).flatMap((later, k) => {
    const earlier = readings[k]!;
    const [from, to] = [dayIn(span, earlier), dayIn(span, later)];
    const grazed = paddock.lastGrazedOn;
    const isGrazed = grazed !== undefined && earlier.date <= grazed && grazed <= later.date;
    if (from < 0 || span.days < to || to <= from || isGrazed) return [];
    const start = earlier.heightCm * kgPerHaCm;
    const sum = rates.subarray(from, to).reduce((a, b) => a + b, 0);
    const measuredKgPerHa = later.heightCm * kgPerHaCm - start;
    // A stand that fell was grazed, mown or trodden: that is no growth.
    return measuredKgPerHa <= 0
      ? []
      : [{ measuredKgPerHa, expectedKgPerHa: regrown(start, sum, ceiling) - start }];
  });
}

const dayIn = (span: PastureSpan, { date }: GrassReading): number => daysBetween(span.first, date);

function swardOfBase(
  request: PastureRequest,
  span: PastureSpan,
  base: Base,
  rate: Float64Array,
): SeasonSward {
  const { paddock, forage, kgPerHaCm, growth, readings, heights, ceiling } = base;
  const { tables, herds } = request;
  const { winterLossPerDay, hay } = tables.pasture;
  const { residualHeightCm, readyHeightCm } = heights;
  const held = herds.find((herd) => herd.inPaddockId === paddock.id);
  const plain: PlainSward = {
    areaHa: paddock.areaM2 / 10_000,
    ceilingKgPerHa: ceiling,
    rate,
    loss: Float64Array.from(growth.table, (kg) => (kg <= 0 ? winterLossPerDay.value : 0)),
    residualKgPerHa: residualHeightCm * kgPerHaCm,
    turnInKgPerHa: readyHeightCm * kgPerHaCm,
    rankKgPerHa:
      Math.max(readyHeightCm * tables.judgements.grass.rankOverReady.value, forage.heights.rankCm) *
      kgPerHaCm,
    minRestDays: restDays(request, forage, growth.expected),
    isClosed: closedDays(paddock, span),
    cutDays: [],
    stubbleKgPerHa: hay.stubbleCm * kgPerHaCm,
    startKgPerHa: 0,
    lastGrazedEnd: held
      ? span.from
      : paddock.lastGrazedOn === undefined
        ? undefined
        : Math.max(LONG_AGO, daysBetween(span.first, paddock.lastGrazedOn) + 1),
  };
  const sward = swardOf(plain);
  const reading = readings.at(-1);
  const before = readings.at(-2);
  return {
    paddock,
    forage,
    kgPerHaCm,
    tableGrowth: growth.table,
    weatherShare: growth.weatherShare,
    stress: growth.stress,
    depletionMm: growth.depletionMm,
    reading,
    expectedAtReading:
      reading &&
      before &&
      0 < before.heightCm &&
      grewUntouched(paddock, before, reading) &&
      0 <= dayIn(span, before)
        ? massOn(sward, before.heightCm * kgPerHaCm, dayIn(span, before), dayIn(span, reading))
        : undefined,
    ...startOf(sward, base, span, tables),
  };
}

const grewUntouched = (paddock: Paddock, a: GrassReading, b: GrassReading): boolean =>
  paddock.lastGrazedOn === undefined ||
  paddock.lastGrazedOn < a.date ||
  b.date < paddock.lastGrazedOn;

/** Mass on the first planned day: the last reading or the last grazing, grown on from there. */
function startOf(
  sward: Sward,
  base: Base,
  span: PastureSpan,
  { pasture, judgements }: Tables,
): Pick<SeasonSward, 'sward' | 'heightKnown'> {
  const { paddock, readings, kgPerHaCm } = base;
  const { unknownHeightCm, winterReadingDays } = judgements.grass;
  const known = readings.map((r) => ({
    ...{ day: dayIn(span, r), mass: r.heightCm * kgPerHaCm },
    heightKnown: 'reading' as SeasonSward['heightKnown'],
  }));
  if (paddock.lastGrazedOn !== undefined) {
    const day = daysBetween(span.first, paddock.lastGrazedOn) + 1;
    const after = readings.at(-1);
    if (!after || after.date <= paddock.lastGrazedOn)
      known.push({ day, mass: sward.residualKgPerHa, heightKnown: 'last-grazing' });
  }
  const unknown: (typeof known)[number] = {
    ...{ day: 0, mass: unknownHeightCm.value * kgPerHaCm },
    heightKnown: 'nothing',
  };
  const recent = known.filter((each) => -winterReadingDays.value <= each.day);
  const last = recent.reduce((a, b) => (a.day <= b.day ? b : a), recent[0] ?? unknown);
  // Read before the season: over winter a part of it dies off.
  if (last.day < 0) last.mass *= (1 - pasture.winterLossPerDay.value) ** -last.day;
  const day = Math.max(0, Math.min(last.day, span.from));
  return {
    sward: { ...sward, startKgPerHa: massOn(sward, last.mass, day, span.from) },
    heightKnown: last.heightKnown,
  };
}

function restDays(
  { tables, choices }: PastureRequest,
  forage: Forage,
  growth: Float64Array,
): Int16Array {
  const { fastKgPerHaDay: fast, slowKgPerHaDay: slow } = tables.pasture.growthPace;
  const factor = choices.restFactor ?? 1;
  return Int16Array.from(growth, (kg) => {
    const days =
      fast <= kg ? forage.restDays.fast : slow <= kg ? forage.restDays.slow : forage.restDays.hot;
    return Math.round(days * factor);
  });
}

function closedDays(paddock: Paddock, span: PastureSpan): Uint8Array {
  const closed = new Uint8Array(span.days);
  for (const { from, to } of paddock.closedDays) {
    const first = Math.max(0, daysBetween(span.first, from));
    const last = Math.min(span.days - 1, daysBetween(span.first, to));
    for (let i = first; i <= last; i++) closed[i] = 1;
  }
  return closed;
}

/** Net energy of the grass, mean over the land. */
export function meanEnergyMcalPerKg(paddocks: readonly Paddock[], tables: Tables): number {
  let area = 0;
  let sum = 0;
  for (const paddock of paddocks) {
    area += paddock.areaM2;
    sum += paddock.areaM2 * rowById(tables.forages, paddock.forageId).energyMcalPerKg.value;
  }
  return sum / area;
}
