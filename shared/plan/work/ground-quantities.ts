import { addDays } from '../../calendar/plain-date.js';
import type { Formula, Sourced } from '../../explain/formula.js';
import {
  from,
  fromFarm,
  input,
  quantity,
  worded,
  type NumberQuantity,
  type Quantity,
} from '../../explain/quantity.js';
import { snowFormulas } from '../../weather/snow-cover.js';
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
      'Dry enough when at least so much water is missing from the top of the soil that morning, the day is not wet, no snow lies, and neither its high nor the soil 4 in deep is at freezing. A ground check counts on its own day, and the reckoning of soil water goes on from it.',
    symbols: 'D ≥ D*, P < P_wet, S = 0, T_max > 0, T_soil > 0',
    sources: ['ARITHMETIC'],
    mark: 'own-record',
  },
  usualGround: {
    id: 'ground-of-a-day-beyond-the-forecast',
    title: 'Ground of a day that is not forecast',
    words:
      'Nobody knows which days will be fit. Twenty years of the weather that is usual here stand side by side, each with its own soil water, frost and snow. Of the days that are dry in the usual weather as many count as fit as are on average in those years, the last of a dry spell first; none does where a fortnight has a fit day in fewer years than is nearly always.',
    symbols: 'fit when q > q*',
    sources: ['ARITHMETIC'],
    mark: 'computed',
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
  {
    weather: { isWorkable },
    ground: { isWintry },
    groundToday,
  }: Pick<WorkPlan, 'weather' | 'ground' | 'groundToday'>,
  day: number,
): string {
  if (isWorkable[day] === 1) return 'dry enough to work';
  const isFoundWet = day === 0 && groundToday === false;
  return isWintry[day] === 1 && !isFoundWet ? 'frozen or under snow' : 'too wet';
}

/** Water of the snow that lies on a day, mm, to be opened. */
const snowOn = (snowMm: number, row: Sourced): NumberQuantity =>
  quantity('Water of the snow that lies', snowMm, 'rainMm', snowFormulas.snow, [], { rows: [row] });

/** Whether the ground of a day of the plan is dry enough to work, to be opened. */
export function groundOn(plan: WorkPlan, day: number): Quantity {
  const { today, ground, groundToday, weather } = plan;
  const on = input('On', addDays(today, day), 'date');
  if (day === 0 && groundToday !== undefined) {
    const word = groundToday ? 'dry enough to work' : 'too wet';
    const found = fromFarm('You found it', word, 'text');
    return worded('Ground', word, groundFormulas.ground, [on, found]);
  }
  const { dryEnough, missingMm, wetFromMm, checkedOn, balance, snow, snowMm, soilC } = ground;
  const reckonedOn =
    checkedOn === undefined ? [] : [fromFarm('Reckoned on from your check of', checkedOn, 'date')];
  const [share, fitFrom] = [ground.fitShare[day] ?? null, ground.fitFrom[day] ?? null];
  if (share !== null)
    return worded(
      'Ground',
      groundWord(plan, day),
      groundFormulas.usualGround,
      [
        on,
        input('Years in which it is fit, of those in which it is dry', share, 'share', 'q'),
        fitFrom === null
          ? input('Counted as fit', 'not yet: too seldom so near this day, or a wet day', 'text')
          : input('Counted as fit above', fitFrom, 'share', 'q*'),
        ...reckonedOn,
        from(dryEnoughFrom(dryEnough), 'D*'),
      ],
      { rows: [balance, snow] },
    );
  return worded(
    'Ground',
    groundWord(plan, day),
    groundFormulas.ground,
    [
      on,
      input('Water missing from the top of the soil', missingMm[day]!, 'rainMm', 'D'),
      ...reckonedOn,
      from(dryEnoughFrom(dryEnough), 'D*'),
      input('Rain of the day', weather.rainMm[day]!, 'rainMm', 'P'),
      input('A day is wet from', wetFromMm, 'rainMm', 'P_wet'),
      input('High of the day', weather.maxC[day]!, 'degC', 'T_max'),
      input('Soil 4 in deep', soilC[day]!, 'degC', 'T_soil'),
      from(snowOn(snowMm[day]!, snow), 'S'),
    ],
    { rows: [balance, snow] },
  );
}
