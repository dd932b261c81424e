import type { GrassReading } from '../../farm/paddock.js';
import type { GrowthPair } from '../../pasture/recalibrate.js';
import { growOn, massOf, winterStand } from '../../pasture/sward.js';
import type { GrassPlace, PaddockBase, PaddockGrowth } from './paddock-growth.js';
import type { PastureRequest } from './pasture-request.js';
import { dayIn, type PastureSpan } from './pasture-span.js';
import { afterAutumn } from './stand-at-start.js';

/** Growth between two readings with no grazing in between, measured and expected. */
export function pairsOf(
  base: PaddockBase,
  span: PastureSpan,
  place: GrassPlace,
  grown: () => PaddockGrowth,
): GrowthPair[] {
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
export function expectedAt(
  { taken, kind, ground, kgPerHaCm }: PaddockBase,
  span: PastureSpan,
  { expected: weather }: GrassPlace,
  { expected: { open } }: PaddockGrowth,
  earlier: GrassReading,
  later: GrassReading,
): number | undefined {
  const [from, to] = [dayIn(span, earlier), dayIn(span, later)];
  const isTaken = taken.some((each) => earlier.date <= each.to && each.from <= later.date);
  if (from < 0 || span.days < to || to <= from || isTaken || earlier.heightCm <= 0)
    return undefined;
  const state = winterStand(earlier.heightCm * kgPerHaCm);
  for (let day = from; day < to; day++) growOn({ kind, ground, weather, open }, state, day);
  return massOf(state);
}

/** What stands on the day of a reading of this year where nothing was taken since winter, kg/ha. */
export function leftAloneAt(
  base: PaddockBase,
  span: PastureSpan,
  place: GrassPlace,
  grown: PaddockGrowth,
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
