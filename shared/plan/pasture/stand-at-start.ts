import { addDays, daysBetween } from '../../calendar/plain-date.js';
import type { Paddock } from '../../farm/paddock.js';
import { bittenStand, growOn, type Sward } from '../../pasture/sward.js';
import type { GrassState } from '../../pasture/sward-day.js';
import { leftOn, onHayDay } from './on-hay-day.js';
import type { GrassPlace, PaddockBase, PaddockGrowth } from './paddock-growth.js';
import type { PastureRequest } from './pasture-request.js';
import { dayIn, YEAR, type PastureSpan } from './pasture-span.js';

/** What the mass on the first day is grown on from. */
export type HeightKnown = 'reading' | 'last-grazing' | 'on-hay' | 'nothing';

/** What stands on day 0, and what is known of it from then to the first planned day. */
export function startOf(
  base: PaddockBase,
  span: PastureSpan,
  place: GrassPlace,
  grown: PaddockGrowth,
  request: PastureRequest,
): {
  readonly heightKnown: HeightKnown;
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
    heightKnown: 'reading' as HeightKnown,
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
export const afterAutumn = (
  base: PaddockBase,
  place: GrassPlace,
  grown: PaddockGrowth,
  span: PastureSpan,
  request: PastureRequest,
): GrassState =>
  throughFall(base, place, grown, span, {
    day: leftOn(span, request, base.paddock) - YEAR,
    kgPerHa: base.residualKgPerHa,
  });

/** What is known of a stand before the year, grown on to the end of fall in the usual weather of those days. */
function throughFall(
  { kind, ground }: PaddockBase,
  { usual }: GrassPlace,
  { usual: { open } }: PaddockGrowth,
  span: PastureSpan,
  { day: knownOn, kgPerHa }: { readonly day: number; readonly kgPerHa: number },
): GrassState {
  const state = bittenStand(kgPerHa);
  for (let day = Math.max(0, knownOn + YEAR); day < span.seasonDays; day++)
    growOn({ kind, ground, weather: usual, open }, state, day);
  return state;
}
