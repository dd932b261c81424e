import { weakestMark } from '../explain/formula.js';
import {
  datedFact,
  from,
  input,
  quantity,
  type NumberQuantity,
  type Quantity,
} from '../explain/quantity.js';
import { brooderHeatFormulas } from '../poultry/brooder-heat.js';
import type { PlanContext } from './context.js';
import { heatSeriesFormulas, type DayHeat } from './heat-days.js';
import { climateMark, climateSources, weatherFormulas } from './outside-weather.js';

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
  days: readonly DayHeat[],
  conduction: NumberQuantity,
): ColdestNight {
  const coldest = days.reduce(
    (best, day, i) => (days[best]!.need.mid < day.need.mid ? i : best),
    0,
  );
  const worst = days[coldest]!;
  const options = { sources: climateSources(context), mark: climateMark(context) };
  return {
    worst,
    coldestNight: datedFact(
      'Night of greatest need',
      context.dateOf(coldest),
      weatherFormulas.coldNight,
      [input('Air around the brooder', worst.nightC, 'degC')],
      options,
    ),
    coldestNightLow: quantity(
      'Outdoor low that night',
      context.weather.coldMinC[coldest]!,
      'degC',
      weatherFormulas.coldNight,
      [
        input('Expected mean low', context.weather.minC[coldest]!, 'degC'),
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
        input('Air in the brooder, mean', worst.insideC, 'degC', 'T_in'),
        input('Air around the brooder', worst.nightC, 'degC', 'T_out'),
        input('Fresh air', worst.freshAir.mid, 'm3PerH', 'V'),
        input('Warmth of the birds', worst.birds.mid, 'W', 'Q_birds'),
        input('Elevation', context.farm.elevationM, 'm'),
      ],
      {
        mark: weakestMark(brooderHeatFormulas.need.mark, heatSeriesFormulas.brooderAir.mark),
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
