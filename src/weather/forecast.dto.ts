import { addDays } from '../../shared/calendar/plain-date.js';
import { FieldError, type FieldProblem } from '../../shared/problems/field-problem.js';
import type { DailyWeather } from '../../shared/weather/climate.js';
import { DateOnly, NestedList, Optional, Within } from '../common/field-rules.js';
import { MOST_FORECAST_DAYS, type ImportedDay } from './daily-csv.js';

/** A day of weather as forecast. */
export class ForecastDayDto implements DailyWeather {
  @DateOnly() date!: string;
  @Within('airC') minC!: number;
  @Within('airC') maxC!: number;
  @Optional() @Within('rainMm') rainMm?: number;
}

export class ForecastDto {
  @NestedList(() => ForecastDayDto, MOST_FORECAST_DAYS) days!: ForecastDayDto[];
}

/** @throws FieldError when a day is past or too far off, comes twice, or is colder by day than by night */
export function checkedForecast({ days }: ForecastDto, today: string): ImportedDay[] {
  const last = addDays(today, MOST_FORECAST_DAYS - 1);
  const problems = days.flatMap(({ date, minC, maxC }, i): FieldProblem[] => [
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
    ...(maxC < minC
      ? [
          {
            field: `days.${i}.minC`,
            code: 'out-of-bounds' as const,
            given: minC,
            max: maxC,
            fix: 'The low of a day cannot be above its high: swap the two.',
          },
        ]
      : []),
  ]);
  if (0 < problems.length) throw new FieldError(problems);
  return days.map((day) => ({ ...day, rainMm: day.rainMm ?? null }));
}
