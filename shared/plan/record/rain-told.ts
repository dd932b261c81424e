import { addDays, dayOfYear, daysBetween, type PlainDate } from '../../calendar/plain-date.js';
import type { FactOf } from '../../farm/told-fact.js';

/** Rain that the gauge held in a year, and the days of the first and last reading. */
export interface RainTold {
  readonly mm: number;
  readonly from: PlainDate;
  readonly to: PlainDate;
}

/** Over fewer days a single shower makes or breaks the comparison: a guess, no source. */
const COMPARED_DAYS = 28;

/** What was told of the gauge in a year; undefined where nothing was. */
export function rainTold(rained: readonly FactOf<'rained'>[]): RainTold | undefined {
  const days = rained.map(({ on }) => on).sort();
  const [from, to] = [days[0], days.at(-1)];
  if (from === undefined || to === undefined) return undefined;
  const mm = rained.reduce((sum, { details }) => sum + details.mm, 0);
  return { mm: Math.round(10 * mm) / 10, from, to };
}

/** Rain that is usual from the first to the last reading, mm; undefined where none is known, or for few days. */
export function usualRainMm(
  { from, to }: RainTold,
  { meanRainMm }: { readonly meanRainMm?: readonly number[] },
): number | undefined {
  const days = daysBetween(from, to) + 1;
  if (!meanRainMm || days < COMPARED_DAYS) return undefined;
  let mm = 0;
  for (let k = 0; k < days; k++) mm += meanRainMm[dayOfYear(addDays(from, k)) - 1]!;
  return Math.round(mm);
}
