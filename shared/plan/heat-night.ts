import {
  datedFact,
  from,
  fromTable,
  input,
  quantity,
  type NumberQuantity,
  type Quantity,
} from '../explain/quantity.js';
import type { Brooder } from '../farm/facility.js';
import { brooderHeatFormulas } from '../poultry/brooder-heat.js';
import type { PlanContext } from './context.js';
import { surroundingRows, type DayHeat } from './heat-days.js';
import { coldNightRows, weatherFormulas } from './outside-weather.js';

/** The night that asks for most heat, and what it asks for. */
export interface NightFacts {
  readonly coldestNight: Quantity;
  readonly coldestNightLow: NumberQuantity;
  readonly need: NumberQuantity;
}

export interface ColdestNight extends NightFacts {
  readonly worst: DayHeat;
}

export function coldestNightOf(
  context: PlanContext,
  brooder: Brooder,
  days: readonly DayHeat[],
  conduction: NumberQuantity,
): ColdestNight {
  const coldest = days.reduce(
    (best, day, i) => (days[best]!.need.mid < day.need.mid ? i : best),
    0,
  );
  const worst = days[coldest]!;
  const options = { rows: coldNightRows(context) };
  const { heat } = context.tables;
  const around = surroundingRows(brooder, context.tables);
  return {
    worst,
    coldestNight: datedFact(
      'Night of greatest need',
      context.dateOf(coldest),
      weatherFormulas.coldNight,
      [input('Air around the brooder', worst.nightC, 'degC')],
      { rows: [...options.rows, ...around] },
    ),
    coldestNightLow: quantity(
      'Outdoor low that night',
      context.weather.coldMinC[coldest]!,
      'degC',
      weatherFormulas.coldNight,
      [
        input('Expected average low', context.weather.minC[coldest]!, 'degC'),
        ...coldNightRows(context).map((row) =>
          fromTable(row, 'A cold night is colder by', row.value, 'K'),
        ),
        input('Weather used', context.climate.label, 'text'),
      ],
      options,
    ),
    need: quantity(
      'Heat needed on the coldest expected night',
      worst.need.mid,
      'W',
      brooderHeatFormulas.need,
      [
        from(conduction, 'UA'),
        fromTable(heat.zone, 'Air in the brooder, average', worst.insideC, 'degC', 'T_in'),
        input('Air around the brooder', worst.nightC, 'degC', 'T_out'),
        fromTable(heat.ventilation, 'Fresh air', worst.freshAir.mid, 'm3PerH', 'V'),
        fromTable(heat.birds, 'Warmth of the birds', worst.birds.mid, 'W', 'Q_birds'),
        input('Elevation', context.farm.elevationM, 'm'),
      ],
      {
        rows: [
          ...coldNightRows(context),
          ...context.life.weightRows,
          context.life.losses,
          ...around,
        ],
        spread: {
          low: worst.need.low,
          high: worst.need.high,
          because:
            'fresh-air rules differ threefold for small chicks, the birds’ own dry heat is unsettled, and the high end keeps the whole brooder at the temperature under the heat',
        },
      },
    ),
  };
}
