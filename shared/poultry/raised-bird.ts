import type { BirdGrowth } from './growth.js';
import type { AirFactors } from './growth-in-air.js';

/** How birds are raised: what sets them apart from those of the table. */
export interface Raising {
  /** Growth since hatch over the table's. */
  readonly weightFactor: number;
  /** Feed over the table's. */
  readonly feedFactor: number;
  /** How fast they run through the table; 1 is the table's own pace. */
  readonly speed: number;
  /** What the air of each age leaves of gain and feed; undefined where it suits them. */
  readonly airAt?: (ageDays: number) => AirFactors | undefined;
}

/** One bird by age in days. */
export interface RaisedBird {
  readonly weightKg: Float64Array;
  /** Eaten on that day, nothing spilled. */
  readonly feedKg: Float64Array;
  /** What it would eat but for the heat: its water goes with that. */
  readonly coolFeedKg: Float64Array;
}

/** Live weights of one bird of a table as it is raised, kg, ages 0 to `lastAge`. */
export function raisedWeights(
  { weightKg: table }: BirdGrowth,
  { weightFactor, speed, airAt }: Raising,
  lastAge: number,
): Float64Array {
  const weightKg = new Float64Array(lastAge + 1);
  const hatchKg = table[0]!;
  // Growth that the air cost so far: taken off the curve, so that mild air leaves it untouched.
  let lostKg = 0;
  let onTable = hatchKg;
  for (let age = 0; age <= lastAge; age++) {
    const next = hatchKg + weightFactor * (read(table, speed * (age + 1)) - hatchKg);
    weightKg[age] = onTable - lostKg;
    const air = airAt?.(age);
    if (air) lostKg += (1 - air.gain) * (next - onTable);
    onTable = next;
  }
  return weightKg;
}

/**
 * Weight and feed of one bird of a table as it is raised. Birds slower than the table eat what the
 * table's ate to the same weight, and live on feed for the days more that it takes them; faster
 * ones never convert feed better than the table's.
 */
export function raisedBird(growth: BirdGrowth, raising: Raising, lastAge: number): RaisedBird {
  const { feedFactor, speed, airAt } = raising;
  const weightKg = raisedWeights(growth, raising, lastAge);
  const feedKg = new Float64Array(lastAge + 1);
  const coolFeedKg = airAt ? new Float64Array(lastAge + 1) : feedKg;
  const idle = Math.max(0, 1 - speed) * growth.maintenanceKgPerKg075Day;
  let eaten = 0;
  for (let age = 0; age <= lastAge; age++) {
    const next = read(growth.cumulativeFeedKg, speed * (age + 1));
    const step = next - eaten;
    const air = airAt?.(age)?.feed ?? 1;
    const living = 0 < idle ? idle * weightKg[age]! ** 0.75 : 0;
    coolFeedKg[age] = (step * Math.max(1, air) + living) * feedFactor;
    feedKg[age] = (step * air + living) * feedFactor;
    eaten = next;
  }
  return { weightKg, feedKg, coolFeedKg };
}

/** A daily curve at any age, straight between days; its last value past its end. */
function read(curve: Float64Array, age: number): number {
  const day = Math.floor(age);
  const last = curve.length - 1;
  if (last <= day) return curve[last]!;
  const part = age - day;
  return part === 0 ? curve[day]! : curve[day]! + part * (curve[day + 1]! - curve[day]!);
}
