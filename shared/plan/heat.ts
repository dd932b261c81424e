import { from, fromTable, input, quantity, type NumberQuantity } from '../explain/quantity.js';
import { facilityOf, type Brooder } from '../farm/facility.js';
import {
  brooderHeatFormulas,
  conductionWPerK,
  lampsByRule,
  totalResistanceM2KPerW,
} from '../poultry/brooder-heat.js';
import { issue } from '../problems/plan-issue.js';
import type { PlanContext } from './context.js';
import { found, joined, type Found } from './found.js';
import { circuitPart, type CircuitPart } from './heat-circuit.js';
import { daysOfHeat, shellRows } from './heat-days.js';
import { energyOf, type HeatEnergy } from './heat-energy.js';
import { heatersOf, type Heaters } from './heat-heaters.js';
import { coldestNightOf, type NightFacts } from './heat-night.js';
import { outsideSeries } from './outside-weather.js';

export interface HeatPart extends NightFacts, Heaters, HeatEnergy {
  readonly brooderName: string;
  readonly conduction: NumberQuantity;
  readonly lampRule: NumberQuantity;
  readonly circuit?: CircuitPart;
}

/**
 * The heat a brooder asks for from arrival until the move, what it uses and costs, whether the
 * heaters there are can give it and the circuit carry them. Undefined, with a note, when no brooder
 * is chosen.
 */
export function planHeat(context: PlanContext): Found<HeatPart | undefined> {
  const { batch, facilities, tables } = context;
  const outdoors = { series: outsideSeries(context) };
  const brooder = facilityOf(facilities, 'brooder', batch.brooderId);
  if (!brooder) {
    return found(undefined, { ...outdoors, issues: context.life.isUnderHen ? [] : [NO_BROODER] });
  }
  const rule = tables.heat.lampRule;
  const conduction = conductionOf(context, brooder);
  const days = daysOfHeat(context, brooder, conduction.value);
  const night = coldestNightOf(context, brooder, days, conduction);
  const heaters = heatersOf(context, brooder, night);
  const { heatersNeeded } = heaters.part;
  const circuit = circuitPart(context, brooder, heatersNeeded);
  const energy = energyOf(context, brooder, days, {
    need: night.need,
    neededCount: heatersNeeded.value,
  });
  const part: HeatPart = {
    brooderName: brooder.name,
    conduction,
    coldestNight: night.coldestNight,
    coldestNightLow: night.coldestNightLow,
    need: night.need,
    ...heaters.part,
    lampRule: quantity(
      `${rule.lampW} W lamps by the common rule`,
      lampsByRule(rule, context.life.placed, night.worst.nightC),
      'count',
      brooderHeatFormulas.lampRule,
      [
        input('Chicks', context.life.placed, 'count', 'N'),
        {
          ...from(night.coldestNight),
          ...input('Air around the brooder', night.worst.nightC, 'degC', 'T'),
        },
        fromTable(rule, 'Chicks a lamp warms at most', rule.chicks, 'count'),
      ],
      10 < night.worst.nightC
        ? { outside: 'The rule gives no figure above 10 °C (50 °F); 75 chicks a lamp is kept.' }
        : {},
    ),
    ...energy.part,
    ...(circuit.part ? { circuit: circuit.part } : {}),
  };
  const caution = brooder.heat.kind === 'gas' ? 'carbon-monoxide' : 'heat-lamp';
  return found(part, joined([outdoors, { cautions: [caution] }, heaters, circuit, energy]));
}

const NO_BROODER = issue(
  'note',
  'no-brooder',
  'No brooder is chosen, so heat, floor and bedding are not worked out. Choose one, or add it under Buildings and gear.',
);

function conductionOf({ tables }: PlanContext, brooder: Brooder): NumberQuantity {
  const isInWind = brooder.standsIn === 'outdoors';
  const layers = [
    ['Walls', brooder.walls],
    ['Lid', brooder.roof],
  ] as const;
  return quantity(
    'Walls and lid, per degree',
    conductionWPerK(brooder, tables.materials, tables.heat.films),
    'WPerK',
    brooderHeatFormulas.conduction,
    [
      input('Length', brooder.lengthM, 'm'),
      input('Width', brooder.widthM, 'm'),
      input('Height', brooder.heightM, 'm'),
      ...layers.map(([label, buildUp]) =>
        input(
          `${label}, R-value with air films`,
          totalResistanceM2KPerW(buildUp, tables.materials, tables.heat.films, isInWind),
          'm2KPerW',
          'R',
        ),
      ),
    ],
    { rows: [tables.heat.films, ...shellRows(brooder, tables)] },
  );
}
