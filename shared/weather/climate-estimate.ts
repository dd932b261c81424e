/** A place on the globe, north and east positive. */
export interface Spot {
  readonly latitudeDeg: number;
  readonly longitudeDeg: number;
}

/** Quantities behind an estimate, each a yearly curve of a mean and three harmonics. */
export const ESTIMATED = ['tmax', 'tmin', 'lnsd', 'sqrtrain'] as const;
export const HARMONICS = ['m', 'c1', 's1', 'c2', 's2', 'c3', 's3'] as const;

/** Shares of position and height in the surface; `elev` is in kilometers. */
export const TERMS = ['const', 'y', 'x', 'yy', 'xy', 'xx', 'elev'] as const;
export type Term = (typeof TERMS)[number];

/** What the figures nearest to a place rest on: stations, corrected reanalysis, a downscaled model. */
export const GRADES = ['observed', 'reanalysis', 'derived'] as const;
export type EstimateGrade = (typeof GRADES)[number];

/** A bump of the surface, and how far off the estimate is near it. */
export interface EstimateCenter extends Spot {
  readonly widthKm: number;
  readonly grade: EstimateGrade;
  readonly nightErrorC: number;
  readonly rainErrorPercent: number;
  readonly coefficients: ArrayLike<number>;
}

/** A part of the world that the coefficients were fitted to; each row holds 28 of them. */
export interface EstimateRegion {
  readonly id: string;
  readonly latitude0: number;
  readonly longitude0: number;
  readonly latitudeScale: number;
  readonly longitudeScale: number;
  readonly mostElevationM: number;
  readonly reachKm: number;
  readonly box: {
    readonly south: number;
    readonly north: number;
    readonly west: number;
    readonly east: number;
  };
  readonly terms: Readonly<Record<Term, ArrayLike<number>>>;
  readonly centers: readonly EstimateCenter[];
}

/** A first guess at a place's climate, months January first, not rounded. */
export interface ClimateEstimate {
  readonly region: string;
  readonly grade: EstimateGrade;
  readonly nearestKm: number;
  /** Typical error of a month's average low, °C, and of the year's rain, percent. */
  readonly nightErrorC: number;
  readonly rainErrorPercent: number;
  readonly maxC: readonly number[];
  readonly minC: readonly number[];
  /** Standard deviation of single lows about the month's average. */
  readonly sdMinC: readonly number[];
  readonly rainMm: readonly number[];
}

const EARTH_KM = 6371;
const radians = (degrees: number): number => (degrees * Math.PI) / 180;
const clamp = (value: number, low: number, high: number): number =>
  Math.min(high, Math.max(low, value));

/** Great-circle distance, km, on a sphere. */
export function distanceKm(a: Spot, b: Spot): number {
  const [from, to] = [radians(a.latitudeDeg), radians(b.latitudeDeg)];
  const north = Math.sin((to - from) / 2) ** 2;
  const east = Math.sin(radians(b.longitudeDeg - a.longitudeDeg) / 2) ** 2;
  const haversine = north + Math.cos(from) * Math.cos(to) * east;
  return 2 * EARTH_KM * Math.asin(Math.sqrt(Math.min(1, haversine)));
}

/**
 * Twelve months of lows, highs, spread of lows and rain from coordinates and height alone, or
 * undefined where the coefficients do not reach: latitude alone would be wrong by 1 to 2.4 °C.
 *
 * Range: the lower 48 states and southern Canada, Europe west of 40° E, Australia, New Zealand,
 * South America and Africa south of about 20° S. With whole blocks of 2° left out, a month's low
 * is right to 0.9 °C and its high to 0.7 °C in the lower 48 states; rain to 10 mm a month.
 *
 * Source: regression of station climates on position and height; see the credits.
 *
 * @param elevationM height above sea level; above a region's highest stations it counts as theirs
 */
export function estimateClimate(
  regions: readonly EstimateRegion[],
  place: Spot & { readonly elevationM: number },
): ClimateEstimate | undefined {
  const near = nearestCenter(regions, place);
  if (near === undefined || !isWithin(near.region, place, near.km)) return undefined;
  const { grade, nightErrorC, rainErrorPercent } = near.center;
  const [maxC, minC, logSd, rootRain] = monthsOf(surfaceAt(near.region, place));
  const days = maxC!.map((high, month) => apart(minC![month]!, high));
  return {
    ...{ region: near.region.id, grade, nearestKm: near.km, nightErrorC, rainErrorPercent },
    minC: days.map(([low]) => low),
    maxC: days.map(([, high]) => high),
    sdMinC: logSd!.map((log) => clamp(Math.exp(log), 0.8, 12)),
    rainMm: rootRain!.map((root) => Math.max(0, root) ** 2),
  };
}

/** A low and a high are never nearer to each other than 3 °C. */
function apart(low: number, high: number): readonly [number, number] {
  if (3 <= high - low) return [low, high];
  const middle = (high + low) / 2;
  return [middle - 1.5, middle + 1.5];
}

function nearestCenter(regions: readonly EstimateRegion[], place: Spot) {
  let near: { region: EstimateRegion; center: EstimateCenter; km: number } | undefined;
  for (const region of regions)
    for (const center of region.centers) {
      const km = distanceKm(place, center);
      if (near === undefined || km < near.km) near = { region, center, km };
    }
  return near;
}

const isWithin = (
  { reachKm, box }: EstimateRegion,
  { latitudeDeg, longitudeDeg }: Spot,
  km: number,
): boolean =>
  km <= reachKm &&
  box.south <= latitudeDeg &&
  latitudeDeg <= box.north &&
  box.west <= longitudeDeg &&
  longitudeDeg <= box.east;

/** Every coefficient of the yearly curves at a place: the surface's terms and bumps added up. */
function surfaceAt(
  region: EstimateRegion,
  place: Spot & { readonly elevationM: number },
): Float64Array {
  const y = (place.latitudeDeg - region.latitude0) / region.latitudeScale;
  const x = (place.longitudeDeg - region.longitude0) / region.longitudeScale;
  const elev = Math.min(place.elevationM, region.mostElevationM) / 1000;
  const shares: Record<Term, number> = { const: 1, y, x, yy: y * y, xy: x * y, xx: x * x, elev };
  const sums = new Float64Array(ESTIMATED.length * HARMONICS.length);
  const add = (weight: number, row: ArrayLike<number>): void => {
    for (let i = 0; i < sums.length; i++) sums[i]! += weight * row[i]!;
  };
  for (const term of TERMS) add(shares[term], region.terms[term]);
  for (const center of region.centers)
    add(Math.exp(-((distanceKm(place, center) / center.widthKm) ** 2)), center.coefficients);
  return sums;
}

/** The yearly curves at the middle of each month, quantity by quantity. */
const monthsOf = (sums: Float64Array): number[][] =>
  ESTIMATED.map((_, quantity) => {
    const [mean, ...waves] = sums.subarray(
      quantity * HARMONICS.length,
      (quantity + 1) * HARMONICS.length,
    );
    return Array.from({ length: 12 }, (_month, month) => {
      const turn = (2 * Math.PI * (month + 0.5)) / 12;
      return [1, 2, 3].reduce(
        (value, k) =>
          value + waves[2 * k - 2]! * Math.cos(k * turn) + waves[2 * k - 1]! * Math.sin(k * turn),
        mean!,
      );
    });
  });
