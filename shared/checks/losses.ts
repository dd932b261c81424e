import { orderChances } from '../poultry/losses.js';
import type { Topic } from './given.js';

/** How many chicks to order, as the plan works it out from the loss and how it varies. */
export const lossChecks: Topic = {
  title: 'How many chicks to order',
  by: {
    'chicks-to-order': ({ number, numberOr }) =>
      orderChances({
        wanted: number('wanted'),
        survivingShare: 1 - number('lossPercent') / 100,
        togetherness: number('togetherness'),
        sexShare: numberOr('sexShare', 1),
      }).toOrder(number('chance')),
  },
};
