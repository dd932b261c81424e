import { addDays, dayOfYear, type PlainDate } from '../../calendar/plain-date.js';
import { input, quantity, type NumberQuantity, type Quantity } from '../../explain/quantity.js';
import type { FarmPicture } from '../../farm/picture.js';
import type { Tables } from '../../tables/tables.js';
import { weatherFormulas } from '../outside-weather.js';
import { groundOn } from '../work/ground-quantities.js';
import type { WorkPlan } from '../work/planned-work.js';
import { todayFormulas } from './today-formulas.js';

export interface TodayWeather {
  /** Whether today and tonight are forecast, or what is usual then. */
  readonly isForecast: boolean;
  readonly tonight: NumberQuantity;
  readonly high: NumberQuantity;
  /** The next wet day of the forecast; left out where it has none. */
  readonly rain?: { readonly on: PlainDate; readonly amount: NumberQuantity };
  /** What is forecast of today, for whoever reads the gauge; left out where it is not. */
  readonly rainTodayMm?: number;
  /** Last day up to which the rain of every day is forecast; left out where today's is not. */
  readonly forecastTo?: PlainDate;
}

export interface TodayGround {
  readonly now: Quantity;
  readonly isWorkable: boolean;
  /** What the household found today; left out until it looked. */
  readonly found?: boolean;
  /** First day within the forecast on which it is the other way round. */
  readonly changesOn?: PlainDate;
}

type Around = Pick<FarmPicture, 'climate' | 'today'> & { readonly tables: Tables };

/** Tonight's low, today's high and the rain that is forecast. */
export function todayWeather({ climate, today, tables }: Around, plan: WorkPlan): TodayWeather {
  const { isForecast, minC, maxC, rainMm, label } = plan.weather;
  const known = rainDays({ climate, today });
  const lows = [minC[0]!, minC[1]!];
  const isNightKnown = isForecast[0] === 1 && isForecast[1] === 1;
  const lowC = Math.min(...lows);
  const coldC = climate.coldMinC[dayOfYear(today) - 1]!;
  const rows = climate.way === 'monthly-means' ? [tables.heat.coldNightMarginK] : [];
  const used = input('Weather used', isForecast[0] === 1 ? 'forecast' : label, 'text');
  const wet = rainMm.findIndex((mm, day) => day < known && plan.ground.wetFromMm <= mm);
  return {
    isForecast: isForecast[0] === 1,
    tonight: quantity(
      'Low tonight',
      lowC,
      'degC',
      todayFormulas.tonight,
      [
        input('Low of today', lows[0]!, 'degC', 'T_today'),
        input('Low of tomorrow', lows[1]!, 'degC', 'T_tomorrow'),
        used,
      ],
      isNightKnown
        ? {}
        : {
            rows,
            spread: {
              low: Math.min(lowC, coldC),
              high: lowC,
              because: 'it is not forecast, and one night in ten is colder',
            },
          },
    ),
    high: quantity('High today', maxC[0]!, 'degC', weatherFormulas.dayHigh, [used]),
    ...(wet < 0
      ? {}
      : {
          rain: {
            on: addDays(today, wet),
            amount: quantity('Rain', rainMm[wet]!, 'rainMm', todayFormulas.rain, [
              input('On', addDays(today, wet), 'date'),
              input('A day is wet from', plan.ground.wetFromMm, 'rainMm', 'P_wet'),
            ]),
          },
        }),
    ...(known === 0 ? {} : { forecastTo: addDays(today, known - 1), rainTodayMm: rainMm[0]! }),
  };
}

/** The ground as it is, as it was found, and when the forecast turns it. */
export function todayGround(
  picture: Pick<FarmPicture, 'climate' | 'today'>,
  plan: WorkPlan,
): TodayGround {
  const { isWorkable } = plan.weather;
  const known = rainDays(picture);
  const turns = isWorkable.findIndex((is, day) => day < known && is !== isWorkable[0]);
  return {
    now: groundOn(plan, 0),
    isWorkable: isWorkable[0] === 1,
    ...(plan.groundToday === undefined ? {} : { found: plan.groundToday }),
    ...(turns < 0 ? {} : { changesOn: addDays(plan.today, turns) }),
  };
}

/** Days from today on whose rain is forecast, without a gap: cold nights that were typed say nothing of it. */
function rainDays({ climate, today }: Pick<FarmPicture, 'climate' | 'today'>): number {
  const known = new Set(
    (climate.forecast ?? [])
      .filter(({ rainMm }) => rainMm !== undefined && rainMm !== null)
      .map(({ date }) => date),
  );
  let days = 0;
  while (known.has(addDays(today, days))) days++;
  return days;
}
