import type { Productivity } from '../../farm/paddock.js';
import { yearCurve } from '../../maths/year-curve.js';
import type { Forage } from '../../tables/pasture-tables.js';

/**
 * Growth by a forage's monthly table, kg/ha on each of some days; months are turned by half a year
 * in the south.
 *
 * @param dayOfYear 1 to 366 for each day
 */
export function tableGrowth(
  forage: Forage,
  productivity: Productivity,
  latitudeDeg: number,
  dayOfYear: Int16Array,
): Float64Array {
  const months = forage.growthKgPerHaDay[productivity];
  const year = latitudeDeg < 0 ? southernYear(months) : northernYear(months);
  return Float64Array.from(dayOfYear, (day) => year[day - 1]!);
}

const northernYear = keptByTable((months) => yearCurve(months, 0));
const southernYear = keptByTable((months) =>
  yearCurve([...months.slice(6), ...months.slice(0, 6)], 0),
);

/** Every season of every what-if asks for the curves of the same few tables. */
function keptByTable(curveOf: (months: readonly number[]) => readonly number[]): typeof curveOf {
  const kept = new WeakMap<readonly number[], readonly number[]>();
  return (months) => {
    let curve = kept.get(months);
    if (!curve) kept.set(months, (curve = curveOf(months)));
    return curve;
  };
}
