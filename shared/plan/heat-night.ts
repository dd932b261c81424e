import {
  datedFact,
  from,
  fromRow,
  fromTable,
  input,
  quantity,
  together,
  type NumberQuantity,
  type Quantity,
} from '../explain/quantity.js';
import type { Brooder } from '../farm/facility.js';
import { brooderHeatFormulas } from '../poultry/brooder-heat.js';
import type { PlanContext } from './context.js';
import {
  coldestOf,
  heaterRows,
  surroundingRows,
  type BroodingHeat,
  type DayHeat,
} from './heat-days.js';
import { coldNightRows, weatherFormulas, weatherUsed } from './outside-weather.js';

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
  { heat, days }: { heat: BroodingHeat; days: readonly DayHeat[] },
  conduction: NumberQuantity,
): ColdestNight {
  const coldest = coldestOf(days);
  const worst = days[coldest]!;
  const options = { rows: coldNightRows(context) };
  const { heat: table } = context.tables;
  const around = surroundingRows(brooder, context.tables);
  return {
    worst,
    coldestNight: datedFact(
      'Night of greatest need',
      context.dateOf(coldest),
      weatherFormulas.coldNight,
      [input('Air around the brooder', worst.asked.nightC, 'degC')],
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
        weatherUsed(context.climate),
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
        fromTable(together(heaterRows(heat)), 'Air needed in it', worst.insideC, 'degC', 'T_in'),
        input('Air around the brooder', worst.asked.nightC, 'degC', 'T_out'),
        fromTable(table.ventilation, 'Fresh air', worst.asked.freshAir.mid, 'm3PerH', 'V'),
        fromTable(table.birds, 'Warmth of the birds', worst.asked.birds.mid, 'W', 'Q_birds'),
        fromRow(context.farm, 'elevationM', 'Height above sea level', context.farm.elevationM, 'm'),
        input('Wanted under the heat', worst.asked.targetC, 'degC', 'T_h'),
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
            'fresh-air rules differ threefold for small birds, the birds’ own dry heat is unsettled, and so is the share of a lamp’s power that reaches birds as rays',
        },
      },
    ),
  };
}
