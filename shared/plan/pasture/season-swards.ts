import { addDays, daysBetween } from '../../calendar/plain-date.js';
import type { GrassReading, Paddock } from '../../farm/paddock.js';
import { OLDEST_READING_DAYS } from '../../farm/told-kinds.js';
import { metabolizableMcalPerKg, upkeepMcalPerKg } from '../../pasture/forage-energy.js';
import { massPerCm } from '../../pasture/forage-mass.js';
import { boughtHay } from '../../pasture/hay.js';
import { kindOf } from '../../pasture/grass-kind.js';
import { grassWeather, type GrassWeather } from '../../pasture/grass-weather.js';
import { PlotGround, openFrom, type OpenGrowth } from '../../pasture/open-growth.js';
import { growthFactor, type GrowthPair } from '../../pasture/recalibrate.js';
import { PHASES, referenceGrowth, type ReferenceGrowth } from '../../pasture/reference-growth.js';
import { bittenStand, growOn, massOf, winterStand, type Sward } from '../../pasture/sward.js';
import type { GrassGround, GrassKind, GrassState } from '../../pasture/sward-day.js';
import { soilWater, totalAvailableWaterMm, type RootZone } from '../../weather/soil-water.js';
import { rowById, type Tables } from '../../tables/tables.js';
import type { Forage } from '../../tables/pasture-tables.js';
import type { PastureRequest } from './pasture-request.js';
import type { PastureSpan } from './pasture-span.js';
import type { SeasonWeather, WeatherRun } from './season-weather.js';

/** A paddock with what its season was worked out from. */
export interface SeasonSward {
  readonly paddock: Paddock;
  readonly forage: Forage;
  readonly kgPerHaCm: number;
  readonly sward: Sward;
  /** Growth by day in the weather of the plan, as trials measure it, kg/ha. */
  readonly growth: Float64Array;
  /** Of grass that is grazed in time, by day: the share that can be digested. */
  readonly digestibleShare: Float64Array;
  /** It in the usual weather from a day on, as wet as its ground is then: what is known of days to come. */
  readonly usualFrom: (day: number) => Sward;
  /** Growth in the usual weather. */
  readonly usualGrowth: Float64Array;
  readonly depletionMm: Float64Array | undefined;
  readonly reading: GrassReading | undefined;
  /** What the mass on the first day is grown on from. */
  readonly heightKnown: 'reading' | 'last-grazing' | 'on-hay' | 'nothing';
  /** Mass that had been expected on the day of the last reading, where an earlier one is known. */
  readonly expectedAtReading: number | undefined;
  /** Of a first reading: what stands on its day where nobody grazed or mowed since winter. */
  readonly leftAloneAtReading: number | undefined;
}

export interface SeasonSwards {
  readonly swards: readonly SeasonSward[];
  readonly usualWeather: GrassWeather;
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
  const place = placeOf(request, weather);
  const bases = request.paddocks.map((paddock) => baseOf(request, paddock));
  const grownWith = growths(place);
  const pairs = bases.flatMap((base) => pairsOf(base, span, place, () => grownWith(base, 1)));
  const { factor, readings } = growthFactor(request.tables.pasture.readingWeight, pairs);
  return {
    farmFactor: factor,
    usualWeather: place.usual,
    pairs: readings,
    swards: bases.map((base) =>
      swardOfBase(request, span, place, base, grownWith(base, factor), factor),
    ),
  };
}

/** Paddocks of the same grass and ground grow alike: what that comes to is worked out once. */
function growths(place: Place): (base: Base, factor: number) => Grown {
  const known = new Map<string, Grown>();
  return (base, factor) => {
    const { forageId, productivity, soilId, stand } = base.paddock;
    const key = [forageId, productivity, soilId, stand, factor].join();
    let grown = known.get(key);
    if (!grown) known.set(key, (grown = grownOf(place, base, factor)));
    return grown;
  };
}

/** Weather of the place as grass meets it: that of the plan, and the usual. */
interface Place {
  readonly weather: SeasonWeather;
  readonly expected: GrassWeather;
  readonly usual: GrassWeather;
}

function placeOf({ farm }: PastureRequest, weather: SeasonWeather): Place {
  const of = (run: WeatherRun): GrassWeather => {
    let known = knownWeather.get(run);
    if (!known) {
      known = grassWeather(farm.latitudeDeg, { dayOfYear: weather.dayOfYear, ...run });
      knownWeather.set(run, known);
    }
    return known;
  };
  return { weather, expected: of(weather.expected), usual: of(weather.usual) };
}

/** What the usual weather is to grass is kept with it. */
const knownWeather = new WeakMap<WeatherRun, GrassWeather>();

interface Base {
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
  /** Its last grazing is among the stays that are played. */
  readonly isPlayed: boolean;
}

function baseOf(
  { tables, readings, today, grazings = [] }: PastureRequest,
  paddock: Paddock,
): Base {
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

interface Grown {
  readonly expected: ReferenceGrowth;
  readonly usual: ReferenceGrowth;
  readonly usualFrom: (day: number) => OpenGrowth;
  readonly depletionMm: Float64Array | undefined;
}

function grownOf(
  { weather, expected, usual }: Place,
  { kind, ground, zone }: Base,
  growthFactor: number,
): Grown {
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

/** Growth between two readings with no grazing in between, measured and expected. */
function pairsOf(base: Base, span: PastureSpan, place: Place, grown: () => Grown): GrowthPair[] {
  return base.readings.slice(1).flatMap((later, k) => {
    const earlier = base.readings[k]!;
    const expected = expectedAt(base, span, place, grown(), earlier, later);
    if (expected === undefined) return [];
    const start = earlier.heightCm * base.kgPerHaCm;
    const measuredKgPerHa = later.heightCm * base.kgPerHaCm - start;
    // A stand that fell was grazed, mown or trodden: that is no growth.
    return measuredKgPerHa <= 0 ? [] : [{ measuredKgPerHa, expectedKgPerHa: expected - start }];
  });
}

/** Mass on the day of a reading of a stand left alone since another; undefined where it was not. */
function expectedAt(
  { paddock, kind, ground, kgPerHaCm }: Base,
  span: PastureSpan,
  { expected: weather }: Place,
  { expected: { open } }: Grown,
  earlier: GrassReading,
  later: GrassReading,
): number | undefined {
  const [from, to] = [dayIn(span, earlier), dayIn(span, later)];
  const grazed = paddock.lastGrazedOn;
  const isGrazed = grazed !== undefined && earlier.date <= grazed && grazed <= later.date;
  if (from < 0 || span.days < to || to <= from || isGrazed || earlier.heightCm <= 0)
    return undefined;
  const state = winterStand(earlier.heightCm * kgPerHaCm);
  for (let day = from; day < to; day++) growOn({ kind, ground, weather, open }, state, day);
  return massOf(state);
}

const dayIn = (span: PastureSpan, { date }: GrassReading): number => daysBetween(span.first, date);

function swardOfBase(
  request: PastureRequest,
  span: PastureSpan,
  place: Place,
  base: Base,
  grown: Grown,
  growthFactor: number,
): SeasonSward {
  const { paddock, forage, kgPerHaCm, readings, residualKgPerHa, turnInKgPerHa } = base;
  const { tables, herds } = request;
  const { hay } = tables.pasture;
  const { grass } = tables.judgements;
  const held = herds.some((herd) => herd.inPaddockId === paddock.id);
  const start = startOf(base, span, place, grown, request);
  const { firstPassCm, readyFromCm } = leastHeightsCm(paddock, forage);
  const reading = readings.at(-1);
  const before = readings.at(-2);
  const sward: Sward = {
    areaHa: paddock.areaM2 / 10_000,
    kind: base.kind,
    ground: { ...base.ground, growthFactor },
    weather: place.expected,
    open: grown.expected.open,
    residualKgPerHa,
    turnInKgPerHa,
    firstPassKgPerHa: firstPassCm * kgPerHaCm,
    leastEntryKgPerHa: readyFromCm * kgPerHaCm,
    rankKgPerHa: Math.max(
      turnInKgPerHa * grass.rankOverReady.value,
      forage.heights.rankCm * kgPerHaCm,
    ),
    leastRestDays: Math.round(forage.restDays.fast * (request.choices.restFactor ?? 1)),
    isClosed: closedDays(paddock, span),
    stubbleKgPerHa: hay.stubbleCm * kgPerHaCm,
    start: start.state,
    readings: start.readings,
    lastGrazedEnd:
      held || paddock.lastGrazedOn === undefined || span.first <= paddock.lastGrazedOn
        ? undefined
        : Math.max(LONG_AGO, daysBetween(span.first, paddock.lastGrazedOn) + 1),
  };
  const { expected, usual } = place;
  return {
    paddock,
    forage,
    kgPerHaCm,
    sward,
    usualFrom: (day) =>
      usual === expected ? sward : { ...sward, weather: usual, open: grown.usualFrom(day) },
    growth: grown.expected.kgPerHa,
    digestibleShare: grown.expected.digestibleShare,
    usualGrowth: grown.usual.kgPerHa,
    depletionMm: grown.depletionMm,
    reading,
    heightKnown: start.heightKnown,
    leftAloneAtReading:
      reading && !before ? leftAloneAt(base, span, place, grown, reading, request) : undefined,
    expectedAtReading:
      reading && before
        ? expectedAt(
            { ...base, ground: { ...base.ground, growthFactor } },
            span,
            place,
            grown,
            before,
            reading,
          )
        : undefined,
  };
}

/** Least heights to go in at, on the same part of the way for a household's own heights. */
function leastHeightsCm(
  { readyHeightCm, residualHeightCm }: Paddock,
  { heights }: Forage,
): { firstPassCm: number; readyFromCm: number } {
  const residual = residualHeightCm ?? heights.residualHeightCm;
  const own =
    ((readyHeightCm ?? heights.readyHeightCm) - residual) /
    (heights.readyHeightCm - heights.residualHeightCm);
  const put = (cm: number): number => residual + own * (cm - heights.residualHeightCm);
  return { firstPassCm: put(heights.firstPassCm), readyFromCm: put(heights.readyFromCm) };
}

/** What stands on day 0, and what is known of it from then to the first planned day. */
function startOf(
  base: Base,
  span: PastureSpan,
  place: Place,
  grown: Grown,
  request: PastureRequest,
): Pick<SeasonSward, 'heightKnown'> & {
  readonly state: GrassState;
  readonly readings: Sward['readings'];
} {
  const { paddock, readings, kgPerHaCm, residualKgPerHa, isPlayed } = base;
  const { winterReadingDays } = request.tables.judgements.grass;
  const onHay = onHayDay(span, request, paddock);
  // Two years of readings are kept of each paddock, of which a winter's few count here.
  const earliest = addDays(span.first, -winterReadingDays.value);
  const ofWinter = readings.filter(({ date }) => earliest <= date);
  const known = ofWinter.map((r) => ({
    ...{ day: dayIn(span, r), kgPerHa: r.heightCm * kgPerHaCm, isGrazed: false },
    heightKnown: 'reading' as SeasonSward['heightKnown'],
  }));
  if (paddock.lastGrazedOn !== undefined && !isPlayed) {
    const day = daysBetween(span.first, paddock.lastGrazedOn) + 1;
    const after = readings.at(-1);
    if (!after || after.date <= paddock.lastGrazedOn)
      known.push({
        ...{ day, kgPerHa: residualKgPerHa, isGrazed: true },
        heightKnown: 'last-grazing',
      });
  }
  const recent = known
    .filter(({ day }) => -winterReadingDays.value <= day)
    .sort((a, b) => a.day - b.day);
  const before = recent.findLast(({ day }) => day <= 0);
  const stay = lastStay(request, span, paddock);
  const isEaten = stay !== undefined && (before === undefined || before.day < stay.knownAfter);
  // What was told of a summer says nothing of who grazed after it.
  const isLate = isEaten && leftOn(span, request, paddock) - YEAR <= stay.day;
  const grazed = { kgPerHa: residualKgPerHa, heightKnown: 'last-grazing' as const };
  const start = !isEaten ? before : isLate ? { ...grazed, day: stay.day } : undefined;
  const last = recent.findLast(({ day }) => 0 < day) ?? start;
  return {
    state:
      start && (onHay === undefined || onHay <= start.day)
        ? throughFall(base, place, grown, span, start)
        : afterAutumn(base, place, grown, span, request),
    readings: recent.filter(({ day }) => 0 < day && day <= span.from),
    heightKnown:
      onHay !== undefined && (last === undefined || last.day < onHay)
        ? 'on-hay'
        : (last?.heightKnown ?? 'nothing'),
  };
}

/**
 * The last stay that was told of before day 0, whose days are not played: when the stand was at its residual,
 * and from when on a reading is later than it. A herd that is still in had eaten it down by day 0.
 */
function lastStay(
  { grazings = [] }: PastureRequest,
  { first }: PastureSpan,
  { id }: Paddock,
): { readonly day: number; readonly knownAfter: number } | undefined {
  return grazings
    .filter(({ paddockId, from }) => paddockId === id && from < first)
    .map(({ from, to }) => {
      const isIn = to === undefined || first <= to;
      const day = isIn ? 0 : daysBetween(first, to) + 1;
      return { day, knownAfter: isIn ? daysBetween(first, from) : day };
    })
    .sort((a, b) => a.day - b.day)
    .at(-1);
}

/** A stand that nobody read: grazed to its residual some weeks before the year ended. */
const afterAutumn = (
  base: Base,
  place: Place,
  grown: Grown,
  span: PastureSpan,
  request: PastureRequest,
): GrassState =>
  throughFall(base, place, grown, span, {
    day: leftOn(span, request, base.paddock) - YEAR,
    kgPerHa: base.residualKgPerHa,
  });

/** What is known of a stand before the year, grown on to the end of fall in the usual weather of those days. */
function throughFall(
  { kind, ground }: Base,
  { usual }: Place,
  { usual: { open } }: Grown,
  span: PastureSpan,
  { day: knownOn, kgPerHa }: { readonly day: number; readonly kgPerHa: number },
): GrassState {
  const state = bittenStand(kgPerHa);
  for (let day = Math.max(0, knownOn + YEAR); day < span.seasonDays; day++)
    growOn({ kind, ground, weather: usual, open }, state, day);
  return state;
}

const YEAR = 365;

/**
 * Day of a year on which a paddock is left, grazed to its residual: that on which the herds went on hay,
 * else some days before the season is over.
 */
export function leftOn(
  span: PastureSpan,
  request: Pick<PastureRequest, 'choices' | 'tables'>,
  paddock: Pick<Paddock, 'closedDays'>,
): number {
  const onHay = onHayDay(span, request, paddock);
  const { leftBeforeWinterDays } = request.tables.judgements.grass;
  return onHay === undefined
    ? Math.max(0, span.seasonDays - leftBeforeWinterDays.value)
    : YEAR + onHay;
}

/** Day on which herds went on hay in the winter before a season; undefined where a paddock was kept from them. */
export function onHayDay(
  { first, opens }: Pick<PastureSpan, 'first' | 'opens'>,
  { choices: { onHaySince: on }, tables }: Pick<PastureRequest, 'choices' | 'tables'>,
  { closedDays }: Pick<Paddock, 'closedDays'>,
): number | undefined {
  if (on === undefined || opens <= on) return undefined;
  const day = daysBetween(first, on);
  const isKept = closedDays.some(({ from, to }) => from <= on && on <= to);
  return isKept || day < -tables.judgements.grass.winterReadingDays.value ? undefined : day;
}

/** What stands on the day of a reading of this year where nothing was taken since winter, kg/ha. */
function leftAloneAt(
  base: Base,
  span: PastureSpan,
  place: Place,
  grown: Grown,
  reading: GrassReading,
  request: PastureRequest,
): number | undefined {
  const to = dayIn(span, reading);
  if (to < 0 || span.days < to) return undefined;
  const { kind, ground } = base;
  const state = afterAutumn(base, place, grown, span, request);
  const own = { kind, ground, weather: place.expected, open: grown.expected.open };
  for (let day = 0; day < to; day++) growOn(own, state, day);
  return massOf(state);
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

/**
 * Net energy for upkeep of what cattle eat on each day, Mcal a kg of dry matter, mean over the land:
 * of grass by how digestible it is while it grows, else of hay. Without land they eat hay all year.
 */
export function energyByDay(
  swards: readonly SeasonSward[],
  days: number,
  tables: Tables,
): Float64Array {
  const energy = new Float64Array(days);
  if (swards.length === 0) return energy.fill(boughtHay(tables).energyMcalPerKg.value);
  const { judgements } = tables;
  const areaM2 = swards.reduce((sum, { paddock }) => sum + paddock.areaM2, 0);
  const grows = judgements.grass.growsKgPerHa.value;
  // Paddocks that grow alike share what they grow.
  const alike = new Map<Float64Array, { first: SeasonSward; areaM2: number }>();
  for (const sward of swards) {
    const group = alike.get(sward.growth);
    if (group) group.areaM2 += sward.paddock.areaM2;
    else alike.set(sward.growth, { first: sward, areaM2: sward.paddock.areaM2 });
  }
  for (const { first, areaM2: groupM2 } of alike.values()) {
    const { forage, growth, digestibleShare } = first;
    const share = groupM2 / areaM2;
    for (let day = 0; day < days; day++)
      energy[day]! +=
        share *
        (grows <= growth[day]!
          ? upkeepMcalPerKg(metabolizableMcalPerKg(digestibleShare[day]!))
          : forage.energyMcalPerKg.value);
  }
  return energy;
}
