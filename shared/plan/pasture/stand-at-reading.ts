import type { GrassReading } from '../../farm/paddock.js';
import { isGrowth, type GrowthPair } from '../../pasture/recalibrate.js';
import { growOn, massOf, winterStand, type Sward } from '../../pasture/sward.js';
import type { PastureTable } from '../../tables/pasture-tables.js';
import type { GrassPlace, PaddockBase, PaddockGrowth } from './paddock-growth.js';
import type { PastureRequest } from './pasture-request.js';
import { dayIn, YEAR, type PastureSpan } from './pasture-span.js';
import { afterAutumn } from './stand-at-start.js';

/** Growth between two readings with no grazing in between, measured and expected. */
export function pairsOf(
  base: PaddockBase,
  span: PastureSpan,
  place: GrassPlace,
  grown: () => PaddockGrowth,
  readingWeight: PastureTable['readingWeight'],
): GrowthPair[] {
  return base.readings.slice(1).flatMap((later, k) => {
    const earlier = base.readings[k]!;
    // Of a day before this year only the usual weather is known.
    const years = Math.max(0, Math.ceil(-dayIn(span, earlier) / YEAR));
    const weather = 0 < years ? place.usual : place.expected;
    const { open } = 0 < years ? grown().usual : grown().expected;
    const expected = grownTo(base, span, { weather, open }, [earlier, later], YEAR * years);
    if (expected === undefined) return [];
    const start = earlier.heightCm * base.kgPerHaCm;
    const pair = {
      measuredKgPerHa: later.heightCm * base.kgPerHaCm - start,
      expectedKgPerHa: Math.max(0, expected - start),
    };
    return isGrowth(readingWeight, pair) ? [pair] : [];
  });
}

/** Mass on the day of a reading of a stand left alone since another of this year; undefined where it was not. */
export const expectedAt = (
  base: PaddockBase,
  span: PastureSpan,
  { expected: weather }: GrassPlace,
  { expected: { open } }: PaddockGrowth,
  between: readonly [GrassReading, GrassReading],
): number | undefined => grownTo(base, span, { weather, open }, between, 0);

/** @param later days on which the same days of the year come in this one */
function grownTo(
  { taken, kind, ground, kgPerHaCm }: PaddockBase,
  span: PastureSpan,
  { weather, open }: Pick<Sward, 'weather' | 'open'>,
  [before, after]: readonly [GrassReading, GrassReading],
  later: number,
): number | undefined {
  const [from, to] = [dayIn(span, before) + later, dayIn(span, after) + later];
  const isTaken = taken.some((each) => before.date <= each.to && each.from <= after.date);
  if (from < 0 || span.days < to || to <= from || isTaken || before.heightCm <= 0) return undefined;
  const state = winterStand(before.heightCm * kgPerHaCm);
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
