import { describe, expect, it } from '@jest/globals';
import { workOutlookOf } from '../../shared/plan/work/work-outlook.js';
import { climateFromMonthlyMeans } from '../../shared/weather/climate.js';
import { newWork } from '../support/season-factories.js';

// Monthly means of central Illinois, from memory: lows and highs in °C, rain in mm.
const MIN_C = [-9, -7, -1, 5, 11, 16, 18, 17, 12, 6, 0, -6];
const MAX_C = [0, 2, 9, 17, 23, 28, 30, 29, 25, 18, 10, 2];
const RAIN_MM = [45, 45, 70, 95, 110, 95, 95, 85, 85, 75, 75, 60];

describe('workable days', () => {
  const today = '2027-03-31';
  const season = newWork({
    today,
    farm: { latitudeDeg: 40.5, gardenSoilId: 'silt-loam' },
    climate: climateFromMonthlyMeans(MIN_C, MAX_C, 6, RAIN_MM),
  });
  const { workable } = workOutlookOf({ ...season, history: [] }, 300);
  /** 14 April to 25 May. */
  const spring = workable.filter(({ from }) => '2027-04-13' < from && from < '2027-05-13');
  const sum = (share: 'tenth' | 'half' | 'ninetieth'): number =>
    spring.reduce((days, span) => days + span[share], 0) * (41 / 42);

  // Farmdoc, University of Illinois, on suitable field days 1980 to 2009 (second-hand): in the
  // central district, of the 41 days from 10 April to 20 May, 20 were suitable in the mean, 9.2 in
  // the worst year and 31.7 in the best. A district is not one garden: within a third of the mean.
  it('of 41 days in spring are about 20 in central Illinois', () => {
    expect(spring).toHaveLength(3);
    expect(Math.abs(sum('half') - 20)).toBeLessThanOrEqual(20 / 3);
  });

  it('are about half of an April or May day’s chance', () => {
    expect(sum('half') / 41).toBeGreaterThan(0.35);
    expect(sum('half') / 41).toBeLessThan(0.67);
  });

  it('lie in few and in most years within the worst and the best that were recorded, or close', () => {
    // Tenths of three fortnights added up are further out than the tenth of their sum.
    expect(sum('tenth')).toBeGreaterThan(9.2 - 6);
    expect(sum('ninetieth')).toBeLessThan(31.7 + 6);
  });
});
