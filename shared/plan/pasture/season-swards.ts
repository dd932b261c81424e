import { daysBetween } from '../../calendar/plain-date.js';
import type { GrassReading, Paddock } from '../../farm/paddock.js';
import type { GrassWeather } from '../../pasture/grass-weather.js';
import { growthFactors, type GroupGrowth } from '../../pasture/recalibrate.js';
import type { Sward } from '../../pasture/sward.js';
import type { Forage } from '../../tables/pasture-tables.js';
import {
  baseOf,
  groupOf,
  growths,
  placeOf,
  type GrassPlace,
  type PaddockBase,
  type PaddockGrowth,
} from './paddock-growth.js';
import type { PastureRequest } from './pasture-request.js';
import type { PastureSpan } from './pasture-span.js';
import type { SeasonWeather } from './season-weather.js';
import { expectedAt, leftAloneAt, pairsOf } from './stand-at-reading.js';
import { startOf, type HeightKnown } from './stand-at-start.js';

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
  /** What readings say of the growth of all paddocks like it, which share this. */
  readonly ownGrowth: GroupGrowth;
  readonly heightKnown: HeightKnown;
  /** Mass that had been expected on the day of the last reading, where an earlier one is known. */
  readonly expectedAtReading: number | undefined;
  /** Of a first reading: what stands on its day where nobody grazed or mowed since winter. */
  readonly leftAloneAtReading: number | undefined;
}

export interface SeasonSwards {
  readonly swards: readonly SeasonSward[];
  readonly usualWeather: GrassWeather;
  /** Growth over the model's by the readings of all paddocks. */
  readonly farmGrowth: number;
  readonly pairs: number;
}

/** Days before the season beyond which it does not matter when a paddock was grazed. */
const LONG_AGO = -1000;

/** Every paddock of a farm over the season, its growth scaled to what was read of those like it. */
export function seasonSwards(
  request: PastureRequest,
  span: PastureSpan,
  weather: SeasonWeather,
): SeasonSwards {
  const place = placeOf(request, weather);
  const bases = request.paddocks.map((paddock) => baseOf(request, paddock));
  const grownWith = growths(place);
  const { readingWeight } = request.tables.pasture;
  const kinds = [...new Set(bases.map(groupOf))];
  const pairs = kinds.map((kind) =>
    bases
      .filter((base) => groupOf(base) === kind)
      .flatMap((base) => pairsOf(base, span, place, () => grownWith(base, 1), readingWeight)),
  );
  const { farm, groups } = growthFactors(readingWeight, pairs);
  return {
    farmGrowth: farm,
    usualWeather: place.usual,
    pairs: pairs.flat().length,
    swards: bases.map((base) => {
      const own = groups[kinds.indexOf(groupOf(base))]!;
      return swardOfBase(request, span, place, base, grownWith(base, own.factor), own);
    }),
  };
}

function swardOfBase(
  request: PastureRequest,
  span: PastureSpan,
  place: GrassPlace,
  base: PaddockBase,
  grown: PaddockGrowth,
  ownGrowth: GroupGrowth,
): SeasonSward {
  const { paddock, forage, kgPerHaCm, readings, residualKgPerHa, turnInKgPerHa } = base;
  const { tables, herds } = request;
  const { factor: growthFactor } = ownGrowth;
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
    ownGrowth,
    heightKnown: start.heightKnown,
    leftAloneAtReading:
      reading && !before ? leftAloneAt(base, span, place, grown, reading, request) : undefined,
    expectedAtReading:
      reading && before
        ? expectedAt({ ...base, ground: { ...base.ground, growthFactor } }, span, place, grown, [
            before,
            reading,
          ])
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

function closedDays(paddock: Paddock, span: PastureSpan): Uint8Array {
  const closed = new Uint8Array(span.days);
  for (const { from, to } of paddock.closedDays) {
    const first = Math.max(0, daysBetween(span.first, from));
    const last = Math.min(span.days - 1, daysBetween(span.first, to));
    for (let i = first; i <= last; i++) closed[i] = 1;
  }
  return closed;
}
