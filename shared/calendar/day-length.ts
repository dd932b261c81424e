import type { Formula } from '../explain/formula.js';

export const dayLengthFormulas = {
  dayLength: {
    id: 'day-length',
    title: 'Length of the day, sunrise to sunset',
    words:
      'From the latitude and the day of the year: the sun’s declination gives the hour angle of sunrise; twice that angle at 15° an hour is the day. Refraction and the sun’s disc are counted (zenith 90.833°).',
    symbols: 'N = 2·arccos(cos 90.833° ÷ (cos φ · cos δ) − tan φ · tan δ) ÷ 15',
    sources: ['NOAA_SOLAR'],
    mark: 'published',
  },
} satisfies Record<string, Formula>;

const RAD = Math.PI / 180;

/**
 * Day length from sunrise to sunset, with refraction and the sun's disc.
 *
 * Left out: elevation, horizon. Source: NOAA, General solar position calculations.
 *
 * @returns hours, 0 in polar night and 24 on a polar day
 */
export function dayLengthH(input: { latitudeDeg: number; dayOfYear: number }): number {
  const yearAngle = ((2 * Math.PI) / 365) * (input.dayOfYear - 1); // at noon
  const declination =
    0.006918 -
    0.399912 * Math.cos(yearAngle) +
    0.070257 * Math.sin(yearAngle) -
    0.006758 * Math.cos(2 * yearAngle) +
    0.000907 * Math.sin(2 * yearAngle) -
    0.002697 * Math.cos(3 * yearAngle) +
    0.00148 * Math.sin(3 * yearAngle);
  const latitude = input.latitudeDeg * RAD;
  const cosHourAngle =
    Math.cos(90.833 * RAD) / (Math.cos(latitude) * Math.cos(declination)) -
    Math.tan(latitude) * Math.tan(declination);
  return (2 * arccosDeg(cosHourAngle)) / 15;
}

/** Sun geometry of FAO-56 (Allen et al. 1998): eq. 23 to 25. Angles in radians. */
function fao56Sun({ latitudeDeg, dayOfYear }: { latitudeDeg: number; dayOfYear: number }) {
  const j = (2 * Math.PI * dayOfYear) / 365;
  const inverseDistance = 1 + 0.033 * Math.cos(j); // eq. 23
  const declination = 0.409 * Math.sin(j - 1.39); // eq. 24
  const latitude = latitudeDeg * RAD;
  const sunsetHourAngle = arccosDeg(-Math.tan(latitude) * Math.tan(declination)) * RAD; // eq. 25
  return { inverseDistance, declination, latitude, sunsetHourAngle };
}

/** Extraterrestrial radiation, MJ/m² a day. FAO-56 eq. 21. Any latitude, day 1 to 366. */
export function extraterrestrialRadiationMJPerM2Day(input: {
  latitudeDeg: number;
  dayOfYear: number;
}): number {
  const { latitudeDeg, dayOfYear } = input;
  if (latest.latitudeDeg !== latitudeDeg)
    latest = { latitudeDeg, byDay: new Float64Array(LAST_DAY + 1).fill(NaN) };
  const known = latest.byDay[dayOfYear];
  if (known !== undefined && !Number.isNaN(known)) return known;
  const radiation = radiationMJPerM2Day(input);
  latest.byDay[dayOfYear] = radiation;
  return radiation;
}

const LAST_DAY = 366;
/** Radiation at the latitude that was asked for last: a plan asks for each day of its year a hundred times. */
let latest = { latitudeDeg: NaN, byDay: new Float64Array() };

function radiationMJPerM2Day(input: { latitudeDeg: number; dayOfYear: number }): number {
  const { inverseDistance, declination, latitude, sunsetHourAngle } = fao56Sun(input);
  const SOLAR_CONSTANT_MJ_PER_M2_MIN = 0.082;
  return (
    ((24 * 60) / Math.PI) *
    SOLAR_CONSTANT_MJ_PER_M2_MIN *
    inverseDistance *
    (sunsetHourAngle * Math.sin(latitude) * Math.sin(declination) +
      Math.cos(latitude) * Math.cos(declination) * Math.sin(sunsetHourAngle))
  );
}

/** Beyond the polar circles the sun does not rise or set: the angle is then 0° or 180°. */
const arccosDeg = (cosine: number): number => Math.acos(Math.max(-1, Math.min(1, cosine))) / RAD;
