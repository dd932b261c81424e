import { dayLengthH } from '../calendar/day-length.js';
import type { Formula } from '../explain/formula.js';
import {
  fromRow,
  fromJudgement,
  input,
  quantity,
  type NumberQuantity,
} from '../explain/quantity.js';
import { facilityOf } from '../farm/facility.js';
import type { PlanContext } from './context.js';
import { chanceOf } from './move-out.js';
import { rowsOfMove } from './nights-of-move.js';

export const penHeatFormulas = {
  energy: {
    id: 'pen-heat-energy',
    title: 'Heat in the pen',
    words:
      'For those who go out by their age with heat: the heaters of the brooder, all of them, from sunset to sunrise on each night that is too cold for birds of that age; how many such nights to expect is the sum of their chances.',
    symbols: 'E = n·P·Σ p(night)·h(night) ÷ 1000',
    sources: ['ARITHMETIC'],
    mark: 'computed',
  },
} satisfies Record<string, Formula>;

/**
 * Electricity of heat in the pen over the first nights out, kWh; undefined where the household does
 * not go by it, and where its heaters are not electric.
 */
export function penHeat(context: PlanContext, moveOutDay: number): NumberQuantity | undefined {
  const { batch, facilities, farm, life, moveOutRule, nights, nightSurety, dayOfYear } = context;
  if (batch.moveOutDate !== undefined || nightSurety.share !== 0) return undefined;
  const brooder = facilityOf(facilities, 'brooder', batch.brooderId);
  if (!brooder || brooder.heat.kind === 'gas' || brooder.heat.count === 0) return undefined;
  const { heat } = brooder;
  const count = context.tables.judgements.birds.penHeatNights;
  let expected = 0;
  let hours = 0;
  for (let day = moveOutDay; day < Math.min(moveOutDay + count.value, life.days); day++) {
    const chance = chanceOf(life, moveOutRule, nights, day);
    const { latitudeDeg } = farm;
    expected += chance;
    hours += chance * (24 - dayLengthH({ latitudeDeg, dayOfYear: dayOfYear[day]! }));
  }
  return quantity(
    'Heat in the pen',
    (heat.wattsEach * heat.count * hours) / 1000,
    'kWh',
    penHeatFormulas.energy,
    [
      fromRow(brooder, 'heat.wattsEach', 'Each', heat.wattsEach, 'W', 'P'),
      fromRow(brooder, 'heat.count', 'Count', heat.count, 'count', 'n'),
      fromJudgement(count),
      input('Nights too cold among them', expected, 'ratio', 'Σ p'),
      input('Hours of them', hours, 'h', 'Σ p·h'),
    ],
    { rows: rowsOfMove(context, moveOutDay) },
  );
}
