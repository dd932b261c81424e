import { seededRandom } from '../../schedule/random.js';
import type { Climate } from '../../weather/climate.js';
import type { DayRun } from '../../weather/day-run.js';
import { WHOLE_YEAR, type DayHabit } from '../../weather/drawn-year.js';
import { usualYears } from '../../weather/usual-years.js';

const YEARS = 20;
const SEED = 1981;

const known = new WeakMap<Climate, Map<string, readonly DayRun[]>>();

/**
 * Years that stand side by side for what is usual on the days of a plan. They are the same on every
 * date, so that a plan made tomorrow finds the weather of the one made today.
 */
export function yearsBeside(climate: Climate, dayOfYear: Int16Array, habit: DayHabit): DayRun[] {
  let ofClimate = known.get(climate);
  if (!ofClimate) known.set(climate, (ofClimate = new Map()));
  const asked = JSON.stringify(habit);
  let years = ofClimate.get(asked);
  if (!years) {
    years = usualYears(climate, WHOLE_YEAR, habit, seededRandom(SEED), YEARS);
    ofClimate.set(asked, years);
  }
  // Sixty lists of a plan's days: made by `from`, which goes through an iterator, they take ten times as long.
  const pick = (year: Float64Array): Float64Array => {
    const picked = new Float64Array(dayOfYear.length);
    for (let day = 0; day < picked.length; day++) picked[day] = year[dayOfYear[day]! - 1]!;
    return picked;
  };
  return years.map(({ minC, maxC, rainMm }) => ({
    minC: pick(minC),
    maxC: pick(maxC),
    rainMm: pick(rainMm),
  }));
}

/** Evenly spread over 0 to 1, alone and two together: powers of the inverse plastic number. */
const STEPS = [0.7548776662466927, 0.5698402909980532] as const;
/** In longer dry weather the ground is fit for some days of each so many. */
const MOST_TOGETHER = 7;

/**
 * The odds from which each day of the year is taken to suit, where it suits in some years and not in
 * others: of any days in a row as many are as come on average, always the same dates, and what suits
 * work that asks more suits what asks less. Which days it will be nobody knows.
 *
 * Source: a low-discrepancy sequence of two dimensions (R2 of M. Roberts, 2018, second-hand).
 */
export const fitFromOdds = (): Float64Array =>
  Float64Array.from(WHOLE_YEAR, (day) => (day * STEPS[0]) % 1);

/**
 * The same for the ground: the last days of a dry spell suit first, as it dries. On wet days none does.
 *
 * @param rainMm rain of each day of the year as it usually comes
 */
export function groundFromOdds(rainMm: ArrayLike<number>, wetFromMm: number): Float64Array {
  const from = new Float64Array(rainMm.length).fill(Infinity);
  for (let end = rainMm.length - 1; 0 <= end; end--) {
    if (wetFromMm <= rainMm[end]!) continue;
    let first = end;
    const isDry = (day: number): boolean => 0 <= day && rainMm[day]! < wetFromMm;
    while (end - first + 1 < MOST_TOGETHER && isDry(first - 1)) first--;
    const days = end - first + 1;
    for (let day = first; day <= end; day++)
      from[day] = (end - day + ((end * STEPS[1]) % 1)) / days;
    end = first;
  }
  return from;
}
