import { addDays } from '../../calendar/plain-date.js';
import type { Formula } from '../../explain/formula.js';
import {
  from,
  fromFarm,
  input,
  quantity,
  worded,
  type NumberQuantity,
  type Quantity,
} from '../../explain/quantity.js';
import { isFrozen } from './days-of-work.js';
import type { DryEnough } from './work-ground.js';
import type { WorkPlan } from './planned-work.js';

export const groundFormulas = {
  dryEnough: {
    id: 'dry-enough-from',
    title: 'Dry enough to work',
    words:
      'Water that has to be missing from the top of the soil before it is worked. Your own ground checks move the usual figure as far as most of them ask for, and no further.',
    symbols: 'D* nearest to the usual figure, against the fewest checks',
    sources: ['ARITHMETIC'],
    mark: 'own-record',
  },
  ground: {
    id: 'ground-of-a-day',
    title: 'Ground of a day',
    words:
      'Dry enough when at least so much water is missing from the top of the soil that morning, the day is not wet and its high is above freezing; frozen where it is not. A ground check counts on its own day, and the reckoning of soil water goes on from it.',
    symbols: 'D ≥ D*, P < P_wet, T_max > 0',
    sources: ['ARITHMETIC'],
    mark: 'own-record',
  },
} satisfies Record<string, Formula>;

/** Water that has to be missing from the worked layer, mm, to be opened. */
export function dryEnoughFrom({ fromMm, usualMm, checks, support }: DryEnough): NumberQuantity {
  return quantity(
    'Water missing when ground is dry enough',
    fromMm,
    'rainMm',
    groundFormulas.dryEnough,
    [
      input('The usual figure', usualMm, 'rainMm'),
      fromFarm('Ground checks on days of known rain', checks, 'count'),
    ],
    { rows: [support] },
  );
}

/** The ground of a day: as somebody found it today, else by the reckoning. */
export function groundWord(
  { weather: { isWorkable, maxC }, groundToday }: Pick<WorkPlan, 'weather' | 'groundToday'>,
  day: number,
): string {
  if (isWorkable[day] === 1) return 'dry enough to work';
  const isFoundWet = day === 0 && groundToday === false;
  return isFrozen(maxC[day]!) && !isFoundWet ? 'frozen' : 'too wet';
}

/** Whether the ground of a day of the plan is dry enough to work, to be opened. */
export function groundOn(plan: WorkPlan, day: number): Quantity {
  const { today, ground, groundToday, weather } = plan;
  const on = input('On', addDays(today, day), 'date');
  if (day === 0 && groundToday !== undefined) {
    const word = groundToday ? 'dry enough to work' : 'too wet';
    const found = fromFarm('You found it', word, 'text');
    return worded('Ground', word, groundFormulas.ground, [on, found]);
  }
  const { dryEnough, missingMm, wetFromMm, checkedOn, balance } = ground;
  return worded(
    'Ground',
    groundWord(plan, day),
    groundFormulas.ground,
    [
      on,
      input('Water missing from the top of the soil', missingMm[day]!, 'rainMm', 'D'),
      ...(checkedOn === undefined
        ? []
        : [fromFarm('Reckoned on from your check of', checkedOn, 'date')]),
      from(dryEnoughFrom(dryEnough), 'D*'),
      input('Rain of the day', weather.rainMm[day]!, 'rainMm', 'P'),
      input('A day is wet from', wetFromMm, 'rainMm', 'P_wet'),
      input('High of the day', weather.maxC[day]!, 'degC', 'T_max'),
    ],
    { rows: [balance] },
  );
}
