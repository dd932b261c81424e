import type { Mark } from './formula.js';
import { formatValue, type Reader } from '../units/format.js';
import { toShown, type Unit } from '../units/unit.js';

/** From so many on an estimate has no use for a finer step, as shown to the reader: eggs by the hundred. */
const STEPS: Partial<Record<Unit, readonly { readonly from: number; readonly step: number }[]>> = {
  eggs: [{ from: 1000, step: 100 }],
  share: [{ from: 10, step: 1 }],
  kg: [{ from: 1, step: 0.1 }],
  // Fence and lanes.
  m: [
    { from: 100, step: 10 },
    { from: 1000, step: 100 },
  ],
  // Hours of light or work of one day stay to the minute.
  h: [{ from: 24, step: 1 }],
};

/**
 * A computed number as a neighbor says it where it is read first: 5,300 eggs, 83 %, 5.9 lb, 135 h.
 * What the household told itself stays as it told it; the opened number shows every digit.
 */
export function formatHeadline(
  { value, unit, mark }: { value: number | string; unit: Unit; mark: Mark },
  reader: Reader,
): string {
  const text = formatValue(value, unit, reader);
  if (typeof value === 'string' || mark === 'own-record') return text;
  const shown = toShown(value, unit, reader.units);
  const step = STEPS[unit]?.filter(({ from }) => from <= Math.abs(shown)).at(-1)?.step;
  // Nearly all is not all.
  if (step === undefined || (unit === 'share' && 99 < shown)) return text;
  // Steps under one are divided by, so that no float noise is shown.
  const rounded = step < 1 ? Math.round(shown * 10) / 10 : Math.round(shown / step) * step;
  return formatValue((value * rounded) / shown, unit, reader);
}
