import { dayLengthH, extraterrestrialRadiationMJPerM2Day } from '../calendar/day-length.js';
import { seededRandom } from '../schedule/random.js';
import { hargreavesMm } from '../weather/evapotranspiration.js';
import { randomRain } from '../weather/rain-days.js';
import type { Given, Topic } from './given.js';

/** Days that are drawn for a share of them to be known to a quarter of a point. */
const DAYS = 100_000;

const dayOf = ({ number }: Given) => ({
  latitudeDeg: number('latitudeDeg'),
  dayOfYear: number('dayOfYear'),
});

/** Days that begin a run of dry ones, in weather drawn with as many dry days as were counted. */
function shareOfDryRuns({ tables, number }: Given): number {
  const { wetDay } = tables.work;
  const meanMm = new Float64Array(DAYS).fill((1 - number('dryShare')) * wetDay.meanRainMm);
  const rain = randomRain(meanMm, wetDay, seededRandom(11));
  const run = number('run');
  let runs = 0;
  for (let i = 0; i + run <= DAYS; i++) {
    let k = 0;
    while (k < run && rain[i + k] === 0) k++;
    if (k === run) runs++;
  }
  return runs / DAYS;
}

/** Daylight, drying power of the air and dry spells, as plans of grass, work and hens use them. */
export const skyChecks: Topic = {
  title: 'Sun, drying and dry spells',
  by: {
    'day-length': (given) => dayLengthH(dayOf(given)),
    'sun-above-the-air': (given) => extraterrestrialRadiationMJPerM2Day(dayOf(given)),
    'drying-of-a-day': ({ number }) =>
      hargreavesMm({
        minC: number('minC'),
        maxC: number('maxC'),
        extraterrestrialMJ: number('sunMJ'),
      }),
    'dry-runs': shareOfDryRuns,
  },
};
