import { addDays } from '../../shared/calendar/plain-date.js';
import { row, rows } from '../../shared/farm/field.js';
import { forecastDayFields } from '../../shared/farm/forecast.js';
import { FieldError, type FieldProblem } from '../../shared/problems/field-problem.js';
import { dtoOf } from '../common/dto-of.js';
import { MOST_FORECAST_DAYS, type ImportedDay } from '../weather-files/daily-csv.js';

export class ForecastDto extends dtoOf(
  row('Forecast', { days: rows('Days', forecastDayFields, MOST_FORECAST_DAYS, 'day') }),
) {}

/** @throws FieldError when a day is past or too far off, or comes twice */
export function checkedForecast({ days }: ForecastDto, today: string): ImportedDay[] {
  const last = addDays(today, MOST_FORECAST_DAYS - 1);
  const problems = days.flatMap(({ date }, i): FieldProblem[] => [
    ...(date < today || last < date
      ? [
          {
            field: `days.${i}.date`,
            code: 'out-of-bounds' as const,
            given: date,
            min: today,
            max: last,
            fix: 'A forecast begins today.',
          },
        ]
      : []),
    ...(days.findIndex((day) => day.date === date) < i
      ? [
          {
            field: `days.${i}.date`,
            code: 'conflict' as const,
            given: date,
            fix: 'This day is given twice: remove one.',
          },
        ]
      : []),
  ]);
  if (0 < problems.length) throw new FieldError(problems);
  return days.map((day) => ({ ...day, rainMm: day.rainMm ?? null }));
}
