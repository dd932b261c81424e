import { fromRow, type QuantityInput } from '../explain/quantity.js';
import type { Brooder, Coop, FieldPen } from '../farm/facility.js';

/** A place with a floor for birds. */
export type Floored = Brooder | Coop | FieldPen;

/** Floor of a brooder, a coop or all pens of a size, m². */
export function floorHadM2(place: Floored): number {
  if (place.kind === 'brooder') return place.lengthM * place.widthM;
  return place.kind === 'field-pen' ? place.count * place.floorM2 : place.floorM2;
}

/** That floor as an input: measured by the household, or assumed as the place says. */
export function floorHad(place: Floored, label: string, symbol?: string): QuantityInput {
  const m2 = floorHadM2(place);
  if (place.kind === 'brooder')
    return fromRow(place, ['lengthM', 'widthM'], label, m2, 'm2', symbol);
  return place.kind === 'field-pen'
    ? fromRow(place, ['count', 'floorM2'], label, m2, 'm2', symbol)
    : fromRow(place, 'floorM2', label, m2, 'm2', symbol);
}
