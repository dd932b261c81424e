import { fromShown, toShown, type Unit, type UnitSystem } from './unit.js';

interface Step {
  readonly from: number;
  readonly step: number;
}

/** A pail has quarters, a jug halves; of a tank only whole ones are read. */
const GALLONS: readonly Step[] = [
  { from: 20, step: 1 },
  { from: 5, step: 0.5 },
  { from: 0, step: 0.25 },
];
const LITERS: readonly Step[] = [
  { from: 20, step: 1 },
  { from: 0, step: 0.5 },
];
const WHOLE: readonly Step[] = [{ from: 0, step: 1 }];

/** In which steps somebody reads it, as shown; what is not here is not rounded. */
const STEPS: Readonly<Record<UnitSystem, Partial<Record<Unit, readonly Step[]>>>> = {
  metric: { L: LITERS, degC: WHOLE, count: WHOLE, eggs: WHOLE, mm: WHOLE },
  us: {
    ...{ L: GALLONS, degC: WHOLE, count: WHOLE, eggs: WHOLE },
    mm: [{ from: 0, step: 0.05 }],
  },
};

/**
 * A computed number as somebody would read it off a thermometer, a pail or a gauge, or count it: what
 * is filled in to be told. Of something there is at least one step, never
 * nothing; but rain that no gauge shows is none.
 */
export function asRead(value: number, unit: Unit, units: UnitSystem): number {
  const shown = toShown(value, unit, units);
  const step = STEPS[units][unit]?.find(({ from }) => from <= Math.abs(shown))?.step;
  if (step === undefined) return value;
  const steps = Math.round(shown / step);
  const least = unit !== 'degC' && unit !== 'mm' && 0 < shown ? 1 : steps;
  return fromShown(Math.max(steps, least) * step, unit, units);
}
