import type { Farm } from '../farm/farm.js';
import type { Tables } from './tables.js';

/** A bag of the size that is sold where the farm lies, kg. */
export const usualBagKg = (
  { feedKeeping: { usualBag } }: Pick<Tables, 'feedKeeping'>,
  { units }: Pick<Farm, 'units'>,
): number => (units === 'metric' ? usualBag.metricKg : usualBag.kg);
