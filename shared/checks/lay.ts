import { eggWeightG, henDayShare, layerEnergyKcalNrc1994 } from '../poultry/lay.js';
import { rowById } from '../tables/tables.js';
import type { Given, Topic } from './given.js';

const curveOf = ({ tables, text }: Given) => rowById(tables.layCurves, text('curve'));

/** Lay and feed of hens by age, as a plan's weeks are made of them. */
export const layChecks: Topic = {
  title: 'How hens lay and eat',
  by: {
    'lay-mean': (given) => {
      const [from, to] = [given.number('fromWeek'), given.number('toWeek') + 1];
      const days = 7 * (to - from);
      let laid = 0;
      for (let i = 0; i < days; i++) laid += henDayShare(curveOf(given), from + (i + 0.5) / 7);
      return laid / days;
    },
    'lay-at': (given) => henDayShare(curveOf(given), given.number('week')),
    'lay-peak': (given) => {
      const curve = curveOf(given);
      return Math.max(...Array.from({ length: 520 }, (_, day) => henDayShare(curve, day / 7)));
    },
    'weekly-fall': (given) => {
      const [from, to] = [given.number('fromWeek'), given.number('toWeek')];
      const curve = curveOf(given);
      return (henDayShare(curve, from) - henDayShare(curve, to)) / (to - from);
    },
    'egg-weight': (given) => eggWeightG(curveOf(given), given.number('week')),
    'hen-energy': ({ number }) =>
      layerEnergyKcalNrc1994({
        weightKg: number('weightKg'),
        gainGPerDay: 0,
        eggMassGPerDay: number('layShare') * number('eggG'),
        airC: number('airC'),
      }),
    'hen-feed': ({ number }) =>
      layerEnergyKcalNrc1994({
        weightKg: number('weightKg'),
        gainGPerDay: number('gainGPerDay'),
        eggMassGPerDay: number('layShare') * number('eggG'),
        airC: number('airC'),
      }) / number('feedKcalPerKg'),
    'hen-energy-fall': ({ number }) => {
      const at = (airC: number, eggG: number): number =>
        layerEnergyKcalNrc1994({
          weightKg: number('weightKg'),
          gainGPerDay: 0,
          eggMassGPerDay: number('layShare') * eggG,
          airC,
        });
      return at(number('coolC'), number('coolEggG')) - at(number('warmC'), number('warmEggG'));
    },
  },
};
