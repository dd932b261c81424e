import { describe, expect, it } from '@jest/globals';
import { seededRandom } from '../../shared/schedule/random.js';
import { randomRain } from '../../shared/weather/rain-days.js';
import { tables } from '../support/factories.js';

// Counted in the daily record of Fort Collins, Colorado, 1970 to 1999 (Colorado Climate Center;
// dry below 0.01 in): share of dry days, and of days that begin three dry ones in a row.
const ROWS = [
  ['1 to 15 April', 0.7489, 0.4933],
  ['16 to 30 April', 0.6889, 0.4133],
  ['1 to 15 May', 0.6867, 0.4],
  ['16 to 31 May', 0.6, 0.3187],
  ['1 to 15 June', 0.6667, 0.3933],
] as const;
const { wetDay } = tables.work;
const DAYS = 200_000;

describe('randomRain with the habit of seeds/work.json', () => {
  it.each(ROWS)(
    'has in %s %d of its days dry and %d of them begin three dry ones',
    (_, dry, threeDry) => {
      const mean = new Float64Array(DAYS).fill((1 - dry) * wetDay.meanRainMm);
      const isDry = Array.from(randomRain(mean, wetDay, seededRandom(11)), (mm) => mm === 0);
      const share = (count: number): number => count / DAYS;
      const three = isDry.filter((each, i) => each && isDry[i + 1] && isDry[i + 2]).length;
      expect(Math.abs(share(isDry.filter(Boolean).length) - dry)).toBeLessThan(0.01);
      // One share of wet days after wet ones for all seasons cannot hit every row: within 0.06.
      expect(Math.abs(share(three) - threeDry)).toBeLessThan(0.06);
      // Independent days would have fewer: windows would be understated.
      expect(dry ** 3).toBeLessThan(share(three));
    },
  );
});
