import type { Formula } from '../explain/formula.js';

export const chickBoxFormulas = {
  chickBox: {
    id: 'air-in-chick-box',
    title: 'Air in a full chick box',
    words:
      'Newly hatched chicks packed as they came (88 to a box) warmed the air of their box by 4 °C over the air around them. Kept two days in air of 20 °C about 1.1 in 100 died, in air of 30 °C about 0.3 in 100.',
    symbols: 'T = T_room + 4 °C',
    sources: ['CHICK_BOX_AIR', 'CHICK_BOX_HEAT'],
    mark: 'published',
  },
} satisfies Record<string, Formula>;
