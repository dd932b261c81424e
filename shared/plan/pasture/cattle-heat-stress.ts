import { fromJudgement, fromTable, input, quantity } from '../../explain/quantity.js';
import type { NumberQuantity } from '../../explain/quantity.js';
import { cattleHeatFormulas, temperatureHumidityIndex } from '../../pasture/cattle-heat.js';
import type { Tables } from '../../tables/tables.js';

/** Heat stress of cattle on a day of that high; undefined where they do not feel it. */
export function cattleHeatStress(
  { cattleHeat, judgements }: Tables,
  maxC: number,
): NumberQuantity | undefined {
  const { moderateFrom, severeFrom } = cattleHeat;
  const { hotHumidityShare } = judgements.grass;
  const thi = temperatureHumidityIndex(maxC, hotHumidityShare.value);
  if (thi < moderateFrom) return undefined;
  return quantity(
    `Heat stress on a hot day: felt from ${moderateFrom}, serious from ${severeFrom}`,
    thi,
    'ratio',
    cattleHeatFormulas.thi,
    [
      input('Hot day', maxC, 'degC', 'T'),
      fromJudgement(hotHumidityShare, 'RH'),
      fromTable(cattleHeat, 'Cattle feel the heat from', moderateFrom, 'ratio'),
      fromTable(cattleHeat, 'Serious from', severeFrom, 'ratio'),
    ],
  );
}
