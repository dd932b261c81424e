import {
  airDensityShare,
  birdSensibleHeatW,
  conductionWPerK,
  continuousCapacityW,
  totalResistanceM2KPerW,
  ventilationWPerK,
} from '../poultry/brooder-heat.js';
import { L_PER_US_GAL } from '../units/convert.js';
import type { Given, Topic } from './given.js';

/** Pressure of the air at sea level, kPa. */
const SEA_LEVEL_KPA = 101.3;
const W_PER_BTU_H = 0.29307107;

/** A box without a floor, of plywood or whatever R-value the source gives. */
const boxWPerK = ({ tables, number }: Given): number => {
  const r = { rM2KPerW: number('wallM2KPerW') };
  const { materials, heat } = tables;
  const sides = {
    lengthM: number('lengthM'),
    widthM: number('widthM'),
    heightM: number('heightM'),
  };
  return conductionWPerK({ ...sides, walls: r, roof: r }, materials, heat.films);
};

/** What a brooder loses and what chicks give, by the formulas that a plan's heat is made of. */
export const heatChecks: Topic = {
  title: 'Heat of a brooder',
  by: {
    'wall-resistance': ({ tables, number }) =>
      totalResistanceM2KPerW(
        { rM2KPerW: number('ownM2KPerW') },
        tables.materials,
        tables.heat.films,
      ),
    'layer-resistance': ({ tables, number, text }) => {
      const layer = { materialId: text('material'), thicknessMm: number('thicknessMm') };
      const bare = { ...tables.heat.films, insideM2KPerW: 0, outsideM2KPerW: 0 };
      return totalResistanceM2KPerW({ layers: [layer] }, tables.materials, bare);
    },
    'box-loss': (given) => boxWPerK(given) * given.number('differenceK'),
    'fresh-air-loss': ({ number }) =>
      ventilationWPerK(number('airM3PerH'), 0) * number('differenceK'),
    'propane-per-day': ({ tables, number }) => {
      const warmingW = ventilationWPerK(number('airM3PerH'), 0) * number('differenceK');
      return (warmingW * 24 * 3600) / 1e6 / tables.heat.propane.MJPerL;
    },
    'propane-million-btu': ({ tables, number }) =>
      (1e6 * W_PER_BTU_H * 3600) /
      (tables.heat.propane.MJPerL * 1e6 * L_PER_US_GAL * number('efficiency')),
    'chick-dry-heat': ({ tables, number }) =>
      birdSensibleHeatW(tables.heat.birds, number('weightKg'), number('airC')).mid /
      number('weightKg'),
    'air-pressure': ({ number }) => SEA_LEVEL_KPA * airDensityShare(number('elevationM')),
    'circuit-watts': ({ tables, number }) =>
      continuousCapacityW(tables.heat.circuit.share, {
        volts: number('volts'),
        amps: number('amps'),
      }),
  },
};
