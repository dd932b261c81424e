/** A smooth yearly curve through twelve monthly means. Index 0 of the result is 1 January. */

const DAYS = 366;
const MONTH_DAYS = [31, 28.25, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31];
const ROUNDS = 12;

/**
 * Daily values whose monthly means are the given ones.
 *
 * Straight lines between mid-months flatten the peaks; the mid-month values are therefore moved
 * until each month's mean comes out right (a dozen rounds are plenty).
 *
 * @param floor smallest value allowed, such as 0 for growth or rain
 */
export function yearCurve(monthly: readonly number[], floor = -Infinity): number[] {
  const knots = [...monthly];
  let year = interpolateYear(knots, floor);
  for (let round = 0; round < ROUNDS; round++) {
    const means = monthMeans(year);
    knots.forEach((knot, month) => (knots[month] = knot + monthly[month]! - means[month]!));
    year = interpolateYear(knots, floor);
  }
  return year;
}

/** For each day of the year: the two months it lies between, and how far it is from the first. */
const BETWEEN = monthsAroundEachDay();

function interpolateYear(knots: readonly number[], floor: number): number[] {
  return BETWEEN.map(({ before, after, part }) =>
    Math.max(floor, knots[before]! + (knots[after]! - knots[before]!) * part),
  );
}

function monthsAroundEachDay(): { before: number; after: number; part: number }[] {
  const centers: number[] = [];
  let start = 0;
  for (const days of MONTH_DAYS) {
    centers.push(start + days / 2);
    start += days;
  }
  const length = start;
  return Array.from({ length: DAYS }, (_, i) => {
    const day = Math.min(i + 0.5, length);
    let month = centers.findIndex((center) => day < center);
    if (month === -1) month = 12;
    const before = (month + 11) % 12;
    const after = month % 12;
    const from = month === 0 ? centers[11]! - length : centers[before]!;
    const to = month === 12 ? centers[0]! + length : centers[after]!;
    // A half cosine between mid-months keeps the curve smooth at the knots.
    const part = (1 - Math.cos((Math.PI * (day - from)) / (to - from))) / 2;
    return { before, after, part };
  });
}

function monthMeans(year: readonly number[]): number[] {
  let start = 0;
  return MONTH_DAYS.map((days) => {
    const [from, to] = [Math.round(start), Math.round(start + days)];
    start += days;
    let sum = 0;
    for (let i = from; i < to; i++) sum += year[i]!;
    return sum / (to - from);
  });
}
