import type { Formula } from '../explain/formula.js';

export const soilTemperatureFormulas = {
  soil: {
    id: 'soil-temperature',
    title: 'Warmth of the soil',
    words:
      'The soil of a seedbed follows the mean temperature of the air, a tenth of the way each day: a cold night or a warm afternoon hardly shows. Bare dark soil in the sun is a little warmer, wet soil or soil under straw colder: a thermometer at 4 in, read in the morning, knows better.',
    symbols: 'T_soil = T_soil₋₁ + (T_air − T_soil₋₁) ÷ 10',
    sources: ['LINGRA_1998'],
    mark: 'published',
  },
} satisfies Record<string, Formula>;

/** Days over which the soil follows the air: ten, as in Schapendonk et al. 1998. */
const LAG_DAYS = 10;

/** Temperature of the top soil after a day, °C, from that of the day before and the day’s mean. */
export const soilAfter = (soilC: number, meanC: number): number =>
  soilC + (meanC - soilC) / LAG_DAYS;

/**
 * Temperature of the top soil on each of some days, °C: the air of the days before, the nearest
 * counting most. Right from about a month after the first day on, which it begins with.
 */
export function soilTemperatureC(minC: ArrayLike<number>, maxC: ArrayLike<number>): Float64Array {
  const soil = new Float64Array(minC.length);
  for (let day = 0; day < soil.length; day++) {
    const meanC = (minC[day]! + maxC[day]!) / 2;
    soil[day] = day === 0 ? meanC : soilAfter(soil[day - 1]!, meanC);
  }
  return soil;
}
