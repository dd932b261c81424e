import type { Quantity } from './quantity.js';

export function isQuantity(value: unknown): value is Quantity {
  return (
    typeof value === 'object' &&
    value !== null &&
    'formula' in value &&
    'value' in value &&
    'inputs' in value
  );
}

/** Every quantity found anywhere in a plan or a part of one, in the order it stands there. */
export function quantitiesIn(part: unknown): Quantity[] {
  if (isQuantity(part)) return [part];
  if (Array.isArray(part)) return part.flatMap(quantitiesIn);
  if (typeof part !== 'object' || part === null) return [];
  return Object.values(part).flatMap(quantitiesIn);
}
