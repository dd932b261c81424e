import { quantityOfDay } from '../../explain/daily-series.js';
import { isQuantity } from '../../explain/quantities-in.js';
import type { Quantity } from '../../explain/quantity.js';
import type { BatchPlan } from '../batch-plan.js';

/** Where a number stands in a plan: the same names lead to it in a plan with one thing changed. */
export type PlaceInPlan = readonly (string | number)[];

/** The place of a number of a plan, or of one day of its series; undefined when it is not of it. */
export function placeOf(plan: BatchPlan, quantity: Quantity): PlaceInPlan | undefined {
  return placeWithin(plan, quantity, []) ?? placeInSeries(plan, quantity);
}

/** What stands at a place of a plan, if that plan has it. */
export function quantityAt(plan: BatchPlan, place: PlaceInPlan): Quantity | undefined {
  const [part, series, day] = place;
  if (part === 'daily') return quantityOfDay(plan.daily, String(series), Number(day));
  const at: unknown = place.reduce<unknown>(
    (within, name) => (within as Record<string, unknown> | undefined)?.[name],
    plan,
  );
  return isQuantity(at) ? at : undefined;
}

function placeWithin(part: unknown, quantity: Quantity, way: PlaceInPlan): PlaceInPlan | undefined {
  if (part === quantity) return way;
  if (typeof part !== 'object' || part === null || isQuantity(part)) return undefined;
  for (const [name, value] of Object.entries(part)) {
    const found = name === 'daily' ? undefined : placeWithin(value, quantity, [...way, name]);
    if (found) return found;
  }
  return undefined;
}

/** The numbers of days are made when they are shown, so that they are known by what they say. */
function placeInSeries({ daily }: BatchPlan, quantity: Quantity): PlaceInPlan | undefined {
  const series = daily.find(
    ({ label, formula }) => label === quantity.label && formula === quantity.formula,
  );
  if (!series) return undefined;
  const said = JSON.stringify(quantity);
  const day = series.values.findIndex(
    (_, k) => JSON.stringify(quantityOfDay(daily, series.id, k)) === said,
  );
  return day < 0 ? undefined : ['daily', series.id, day];
}
