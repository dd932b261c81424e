import { KG_PER_LB } from './convert.js';
import type { UnitSystem } from './unit.js';

/** From how much on a weight is read in which steps, kg: a floor or hanging scale, then a kitchen scale. */
const STEPS: Readonly<Record<UnitSystem, readonly { fromKg: number; stepKg: number }[]>> = {
  metric: [
    { fromKg: 5, stepKg: 0.1 },
    { fromKg: 0.5, stepKg: 0.01 },
    { fromKg: 0, stepKg: 0.001 },
  ],
  us: [
    { fromKg: 10 * KG_PER_LB, stepKg: KG_PER_LB / 2 },
    { fromKg: KG_PER_LB, stepKg: KG_PER_LB / 16 },
    { fromKg: 0, stepKg: KG_PER_LB / 160 },
  ],
};

const stepOf = (kg: number, units: UnitSystem): number =>
  STEPS[units].find(({ fromKg }) => fromKg - 1e-9 <= kg)!.stepKg;

/** A weight as a household's scales can read it, kg. @param round how: to the nearest, or up */
export function onScale(kg: number, units: UnitSystem, round: 'near' | 'up' = 'near'): number {
  const step = stepOf(kg, units);
  const steps = kg / step;
  return step * (round === 'up' ? Math.ceil(steps - 1e-6) : Math.round(steps));
}

/** The same in words: 58.5 lb, 6 lb 3 oz, 2.4 oz; 26.5 kg, 1.25 kg, 45 g. */
export function sayOnScale(kg: number, units: UnitSystem): string {
  const read = onScale(kg, units);
  if (units === 'metric') {
    return read < 0.4995 ? `${Math.round(read * 1000)} g` : `${Number(read.toFixed(2))} kg`;
  }
  const ounces = (16 * read) / KG_PER_LB;
  if (ounces < 15.95) return `${Number(ounces.toFixed(1))} oz`;
  if (159.9 < ounces) return `${Number((ounces / 16).toFixed(1))} lb`;
  const whole = Math.round(ounces);
  const rest = whole % 16;
  const pounds = `${Math.floor(whole / 16)} lb`;
  return rest === 0 ? pounds : `${pounds} ${rest} oz`;
}
