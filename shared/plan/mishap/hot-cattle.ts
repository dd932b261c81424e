import type { FarmPicture } from '../../farm/picture.js';
import { hasCattle } from '../../pasture/herd-demand.js';
import type { Tables } from '../../tables/tables.js';
import { cattleHeatStress } from '../pasture/cattle-heat-stress.js';
import { cautionsSaid } from './cautions-said.js';
import type { Spell } from './typed-weather.js';
import type { Mishap } from './way-on.js';

/**
 * What hot days mean for cattle that are there; nothing where they do not feel them.
 *
 * Left out: sun, wind and warm nights, and how much more they drink.
 */
export function cattleInHeat(picture: FarmPicture, tables: Tables, spell: Spell): Mishap[] {
  const herds = picture.herds.filter((herd) => hasCattle(herd, picture.today));
  const stress = cattleHeatStress(tables, spell.airC);
  if (herds.length === 0 || !stress) return [];
  const isSerious = tables.cattleHeat.severeFrom <= stress.value;
  return [
    {
      name: `Cattle: ${herds.map(({ name }) => name).join(', ')}`,
      follows: [isSerious ? 'Such days are serious for them.' : 'They feel such days.'],
      numbers: [stress],
      ways: [
        {
          id: 'shade-and-water',
          words: 'Shade and far more water',
          follows: [
            'Shade where they lie at noon, water in reach of all of them at once. Do not drive or handle them in the heat.',
          ],
        },
      ],
      cautions: cautionsSaid(tables, picture.farm, ['cattle-heat']),
    },
  ];
}
