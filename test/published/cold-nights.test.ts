import { describe, expect, it } from '@jest/globals';
import { dayOfYear, daysOfYear } from '../../shared/calendar/plain-date.js';
import { expectedNights, nightsOfPlace } from '../../shared/plan/expected-nights.js';
import { fToC } from '../../shared/units/convert.js';
import { climateFromMonthlyMeans } from '../../shared/weather/climate.js';
import { chanceBelow, chanceOfColdNight } from '../../shared/weather/night-chances.js';
import { spreadOfLows } from '../../shared/weather/night-spread.js';
import { tables } from '../support/factories.js';

const { likeness, spread } = tables.nights;

// Fort Collins, Colorado, 1970 to 1999, from the century of daily weather of the Colorado Climate
// Center (data set FCwx of the R package extRemes): averages by month as a household would type
// them, usual frost dates, standard deviations within the month and shares of nights that were
// counted. The fit of the spread holds other years and many stations, this town as one of 2,463.
const MIN_C = [-9.2, -6.6, -2.9, 1.2, 6.4, 11.1, 14.1, 13.1, 8.1, 2.0, -4.1, -8.4];
const MAX_C = [5.5, 8.0, 11.8, 16.0, 21.1, 26.8, 29.6, 28.5, 24.0, 17.8, 10.2, 6.0];
const SD_C = [6.06, 5.77, 4.46, 4.17, 3.29, 3.03, 2.23, 2.35, 3.92, 4.04, 4.82, 5.87];
const climate = climateFromMonthlyMeans(MIN_C, MAX_C, 6);
const place = nightsOfPlace(
  climate,
  { latitudeDeg: 40.5, lastFrost: '05-03', firstFrost: '10-05' },
  tables,
);

describe('nights of Fort Collins', () => {
  it.each([
    ['05-01', 15, 45, 0.707],
    ['05-16', 16, 45, 0.4],
    ['06-01', 15, 45, 0.171],
    ['06-16', 15, 45, 0.024],
    ['09-16', 15, 45, 0.544],
    ['05-16', 16, 40, 0.088],
    ['09-16', 15, 40, 0.28],
  ])('from %s on, %d nights: below %d °F in %d of them', (from, count, limitF, share) => {
    const nights = expectedNights(place, daysOfYear(`2027-${from}`, count));
    const chances = Array.from({ length: count }, (_, k) => chanceBelow(nights, k, fToC(limitF)));
    const ours = chances.reduce((sum, chance) => sum + chance, 0) / count;
    // Most of what is allowed is the error of the fit: 1.2 °C of spread either way in 9 of 10 places.
    expect(Math.abs(ours - share)).toBeLessThan(0.13);
  });

  // Counted in 30 years: a share of 0.5 is known to 0.09 (one standard error).
  it.each([
    ['06-01', 7, 45, 21 / 30],
    ['06-15', 7, 45, 7 / 30],
    ['05-15', 7, 40, 16 / 30],
    ['09-15', 7, 45, 27 / 30],
    ['07-01', 7, 45, 2 / 30],
  ])('from %s on, %d nights: one below %d °F in %d of the years', (from, count, limitF, share) => {
    const nights = expectedNights(place, daysOfYear(`2027-${from}`, count));
    const ours = chanceOfColdNight(
      nights,
      { from: 0, to: count },
      () => fToC(limitF),
      likeness.value,
    );
    expect(Math.abs(ours - share)).toBeLessThan(0.19);
  });

  it.each(SD_C.map((sd, month) => [month + 1, sd]))(
    'in month %d differ from their average by about %d °C',
    (month, sd) => {
      const ours = spreadOfLows(climate, 40.5, spread)[
        dayOfYear(`2027-${String(month).padStart(2, '0')}-15`) - 1
      ]!;
      // Residuals of the fit: 5 to 95 % from −1.2 to +1.1 °C.
      expect(Math.abs(ours - sd)).toBeLessThan(1.6);
    },
  );
});

describe('a night below a limit in seven', () => {
  // Share of 7-night windows in 25 real daily records (8 stations of GHCN-Daily, 17 Daymet points,
  // 1980 to 2023), by the limit's distance from the average in standard deviations.
  it.each([
    [-2, 0.106],
    [-1.5, 0.243],
    [-1, 0.449],
    [-0.5, 0.672],
    [0, 0.847],
    [0.5, 0.95],
  ])('%d standard deviations from the average comes in %d of weeks', (z, share) => {
    const nights = { lowC: new Float64Array(7), sdC: new Float64Array(7).fill(1) };
    const ours = chanceOfColdNight(nights, { from: 0, to: 7 }, () => z, likeness.value);
    expect(Math.abs(ours - share)).toBeLessThan(0.065);
  });
});
