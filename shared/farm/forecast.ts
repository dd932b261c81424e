import { AIR_C, RAIN_MM } from './bounds.js';
import { number, optional, row, type RowRule } from './field.js';
import { date } from './words.js';

const LOW_BELOW_HIGH: RowRule<{ readonly minC: number; readonly maxC: number }> = {
  name: 'low-below-high',
  of: ['minC', 'maxC'],
  find: ({ minC, maxC }, at) =>
    minC <= maxC
      ? []
      : [
          {
            field: `${at}minC`,
            code: 'out-of-bounds',
            given: minC,
            max: maxC,
            unit: 'degC',
            fix: 'The low of a day cannot be above its high: swap the two.',
          },
        ],
};

/** A day of weather as forecast. */
export const forecastDayFields = row(
  'ForecastDay',
  {
    date: date('Day'),
    minC: number('Low', AIR_C),
    maxC: number('High', AIR_C),
    rainMm: optional(number('Rain', RAIN_MM)),
  },
  [LOW_BELOW_HIGH],
);
