import { speedRange, type Growing } from './how-they-grow.js';

/** Oldest age at which a target weight is still looked for, days. */
const LATEST_TARGET_AGE_DAYS = 365;
/** A target is for birds that are worth processing. */
const FIRST_TARGET_AGE_DAYS = 7;

export function firstAgeOf(growing: Growing, targetKg: number, speed?: number): number | undefined {
  const meanKg = growing.meanWeightsTo(LATEST_TARGET_AGE_DAYS, speed);
  const age = meanKg.findIndex((kg, day) => FIRST_TARGET_AGE_DAYS <= day && targetKg <= kg);
  return age < 0 ? undefined : age;
}

/** Ages between which a target is reached. It is not before a weighing that lay under it. */
export function reachedBetween(
  growing: Growing,
  targetKg: number,
): readonly [soonest: number, latest: number] | undefined {
  const { own } = growing;
  if (own?.speed === undefined) return undefined;
  const [slow, fast] = speedRange(own.speed);
  const lighter = own.weighings.filter(({ isUsed, kg }) => isUsed && kg < targetKg);
  const notBefore = Math.max(0, ...lighter.map(({ ageDays }) => ageDays + 1));
  const soonest = Math.max(notBefore, firstAgeOf(growing, targetKg, fast) ?? 0);
  const latest = firstAgeOf(growing, targetKg, slow) ?? LATEST_TARGET_AGE_DAYS;
  return [soonest, Math.max(soonest, latest)];
}

/** How far the average at the end may lie off, by what the weighings leave open. */
export function endWeight(
  { own, meanWeightsTo }: Growing,
  lastAgeDays: number,
): { readonly low: number; readonly high: number } | undefined {
  if (own?.speed === undefined) return undefined;
  const [slow, fast] = speedRange(own.speed);
  const at = (speed: number): number => meanWeightsTo(lastAgeDays, speed)[lastAgeDays]!;
  return { low: at(slow), high: at(fast) };
}
