import { plainFormulas } from '../explain/plain-formulas.js';
import { weakestMark, type Formula } from '../explain/formula.js';
import {
  datedFact,
  from,
  input,
  quantity,
  type NumberQuantity,
  type Quantity,
} from '../explain/quantity.js';
import { facilityOf, type Brooder } from '../farm/facility.js';
import { costMinor } from '../money/money.js';
import {
  brooderHeatFormulas,
  conductionWPerK,
  lampsByRule,
  totalResistanceM2KPerW,
} from '../poultry/brooder-heat.js';
import { issue } from '../problems/plan-issue.js';
import type { PlanContext } from './context.js';
import { circuitPart, type CircuitPart } from './heat-circuit.js';
import {
  addHeatSeries,
  dayEnergyKWh,
  daysOfHeat,
  heatSeriesFormulas,
  type DayHeat,
} from './heat-days.js';
import {
  addOutsideSeries,
  climateMark,
  climateSources,
  weatherFormulas,
} from './outside-weather.js';

export const heatFormulas = {
  heatOff: {
    id: 'heat-off-date',
    title: 'Last day with heat',
    words:
      'Last day on which a cold night asks for heat: until the move, the end of the schedule, or the day the air around the brooder is warm enough by itself.',
    symbols: 'max{t: Q(t) > 0}',
    sources: ['ARITHMETIC'],
    mark: 'computed',
  },
  energyTotal: {
    id: 'heat-energy-total',
    title: 'Energy for the whole brooding time',
    words: 'Energy of every day with heat, summed.',
    symbols: 'E = Σ E_day',
    sources: ['ARITHMETIC'],
    mark: 'computed',
  },
  meanOfDays: {
    id: 'mean-of-heat-days',
    title: 'Mean of the days with heat',
    words: 'The total divided by the days on which there is heat.',
    symbols: 'Ā = A ÷ D',
    sources: ['ARITHMETIC'],
    mark: 'computed',
  },
  gas: {
    id: 'gas-litres',
    title: 'Propane for the whole brooding time',
    words:
      'Energy divided by what a litre of liquid propane holds; all of its heat stays in an unvented house.',
    symbols: 'V = E·3.6 ÷ H',
    sources: ['UCONN_FUELS'],
    mark: 'published',
  },
  cost: {
    id: 'energy-cost',
    title: 'Cost of the heat',
    words: 'Energy times its price on this farm, rounded once to the smallest coin.',
    symbols: 'C = E·price',
    sources: ['ARITHMETIC'],
    mark: 'computed',
  },
} satisfies Record<string, Formula>;

export interface HeatPart {
  readonly brooderName: string;
  readonly coldestNight: Quantity;
  readonly coldestNightLow: NumberQuantity;
  readonly need: NumberQuantity;
  readonly conduction: NumberQuantity;
  readonly installed: NumberQuantity;
  readonly enough: boolean;
  readonly heatersNeeded: NumberQuantity;
  readonly lampRule: NumberQuantity;
  readonly lastHeatDay: Quantity;
  readonly energyTotal: NumberQuantity;
  readonly energyPerDay: NumberQuantity;
  readonly gasLitres?: NumberQuantity;
  readonly gasPerDay?: NumberQuantity;
  readonly cost: NumberQuantity;
  readonly circuit?: CircuitPart;
}

/**
 * The heat a brooder asks for from arrival until the move, what it uses and costs, whether the
 * heaters there are can give it and the circuit carry them. Undefined, with a note, when no brooder
 * is chosen.
 */
export function planHeat(context: PlanContext): HeatPart | undefined {
  const { batch, facilities, tables } = context;
  addOutsideSeries(context);
  const brooder = facilityOf(facilities, 'brooder', batch.brooderId);
  if (!brooder) {
    context.issues.push(
      issue(
        'note',
        'no-brooder',
        'No brooder is chosen, so heat, floor and bedding are not worked out. Choose one, or add it under Facilities.',
      ),
    );
    return undefined;
  }
  context.cautions.add(brooder.heat.kind === 'gas' ? 'carbon-monoxide' : 'heat-lamp');
  const conduction = conductionOf(context, brooder);
  const days = daysOfHeat(context, brooder, conduction.value);
  const night = coldestNightOf(context, days, conduction);
  const heaters = heatersOf(context, brooder, night);
  const circuit = circuitPart(context, brooder, heaters.heatersNeeded.value);
  return {
    brooderName: brooder.name,
    conduction,
    coldestNight: night.coldestNight,
    coldestNightLow: night.coldestNightLow,
    need: night.need,
    ...heaters,
    lampRule: quantity(
      '250 W lamps by the common rule',
      lampsByRule(tables.heat.lampRule, context.life.placed, night.worst.nightC),
      'count',
      brooderHeatFormulas.lampRule,
      [
        input('Chicks', context.life.placed, 'count', 'N'),
        input('Air around the brooder', night.worst.nightC, 'degC', 'T'),
      ],
      10 < night.worst.nightC
        ? { outside: 'The rule gives no figure above 10 °C (50 °F); 75 chicks a lamp is kept.' }
        : {},
    ),
    ...energyOf(context, brooder, days, {
      need: night.need,
      neededCount: heaters.heatersNeeded.value,
    }),
    ...(circuit ? { circuit } : {}),
  };
}

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
  );
}

interface ColdestNight extends Pick<HeatPart, 'coldestNight' | 'coldestNightLow' | 'need'> {
  readonly worst: DayHeat;
}

function coldestNightOf(
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

type Heaters = Pick<HeatPart, 'installed' | 'enough' | 'heatersNeeded'>;

function heatersOf(context: PlanContext, brooder: Brooder, night: ColdestNight): Heaters {
  const { tables, life } = context;
  const { heat } = brooder;
  const { need } = night;
  const isPlate = heat.kind === 'plate';
  const neededW = isPlate ? life.placed * tables.heat.plate.wattsPerChick : need.value;
  const countFor = (watts: number): number => Math.ceil(watts / heat.wattsEach - 1e-9);
  const each = input('Each', heat.wattsEach, 'W', 'P');
  const heatersNeeded = isPlate
    ? quantity('Plates needed', countFor(neededW), 'count', brooderHeatFormulas.plateRule, [
        input('Chicks', life.placed, 'count', 'N'),
        each,
      ])
    : quantity(
        `${HEATER_NAMES[heat.kind]} needed`,
        countFor(neededW),
        'count',
        brooderHeatFormulas.heatersNeeded,
        [from(need, 'Q', 'Heat needed'), each],
        {
          spread: {
            low: countFor(need.spread!.low),
            high: countFor(need.spread!.high),
            because: 'same range as the heat needed',
          },
        },
      );
  const installed = quantity(
    'Heat installed',
    heat.wattsEach * heat.count,
    'W',
    plainFormulas.measured,
    [each, input('Count', heat.count, 'count', 'n')],
  );
  const enough = neededW <= installed.value;
  if (!enough) warnTooWeak(context, brooder, night, { neededW, neededCount: heatersNeeded.value });
  if (isPlate && night.worst.nightC < tables.heat.plate.warmestRoomFromC) {
    context.issues.push(
      issue(
        'act',
        'plate-room-cold',
        `Plates want a room of ${context.say(tables.heat.plate.warmestRoomFromC, 'degC')} or warmer; on a cold night the air around ${brooder.name} is about ${context.say(night.worst.nightC, 'degC')}. Warm the room, or use lamps on those nights.`,
      ),
    );
  }
  return { installed, enough, heatersNeeded };
}

function warnTooWeak(
  context: PlanContext,
  { name, heat }: Brooder,
  { need }: ColdestNight,
  { neededW, neededCount }: { neededW: number; neededCount: number },
): void {
  const isPlate = heat.kind === 'plate';
  const asks = isPlate
    ? `${context.life.placed} chicks ask for plates of about ${context.say(neededW, 'W')}`
    : `the coldest expected night asks for about ${context.say(need.value, 'W')}`;
  context.issues.push(
    issue(
      // Below even the low end of the range nothing can be hoped for.
      isPlate || need.spread!.low <= heat.wattsEach * heat.count ? 'act' : 'stop',
      'heat-too-weak',
      `${name} has ${heat.count} × ${context.say(heat.wattsEach, 'W')}, but ${asks}. Add ${neededCount - heat.count} more, ${isPlate ? 'or brood fewer at a time' : 'insulate the walls and lid, or order for a warmer week'}. Energy and cost below count the heaters that are needed.`,
    ),
  );
}

type Energy = Pick<
  HeatPart,
  'lastHeatDay' | 'energyTotal' | 'energyPerDay' | 'gasLitres' | 'gasPerDay' | 'cost'
>;

function energyOf(
  context: PlanContext,
  { heat }: Brooder,
  days: readonly DayHeat[],
  { need, neededCount }: { need: NumberQuantity; neededCount: number },
): Energy {
  const { farm } = context;
  const energyKWh = days.map((day) => dayEnergyKWh(day, heat, Math.max(heat.count, neededCount)));
  addHeatSeries(context, days, energyKWh);
  const heatDays = days.findLastIndex((day) => 0 < day.need.mid) + 1;
  const perDay = (total: number): number => (heatDays === 0 ? 0 : total / heatDays);
  const daysWithHeat = input('Days with heat', heatDays, 'day');
  const energyTotal = quantity(
    'Energy in total',
    energyKWh.reduce((a, b) => a + b, 0),
    'kWh',
    heatFormulas.energyTotal,
    [
      daysWithHeat,
      input('Thermostat', heat.thermostat ? 'yes' : 'no: what is on burns day and night', 'text'),
    ],
    { mark: need.mark },
  );
  const gas = heat.kind === 'gas' ? gasOf(context, energyTotal) : undefined;
  const price = gas ? farm.gasPricePerL : farm.electricityPricePerKWh;
  const used = gas ?? energyTotal;
  return {
    lastHeatDay: datedFact(
      'Heat until',
      context.dateOf(Math.max(0, heatDays - 1)),
      heatFormulas.heatOff,
      [input('Last day of the schedule or of the brooder', days.length - 1, 'day')],
    ),
    energyTotal,
    energyPerDay: quantity(
      'Energy a day, mean',
      perDay(energyTotal.value),
      'kWh',
      heatFormulas.meanOfDays,
      [from(energyTotal, 'A'), daysWithHeat],
    ),
    ...(gas
      ? {
          gasLitres: gas,
          gasPerDay: quantity(
            'Propane a day, mean',
            perDay(gas.value),
            'L',
            heatFormulas.meanOfDays,
            [from(gas, 'A'), daysWithHeat],
          ),
        }
      : {}),
    cost: quantity(
      'Cost of the heat',
      costMinor(price, used.value, farm.currency),
      'money',
      heatFormulas.cost,
      [
        from(used, gas ? 'V' : 'E'),
        input(gas ? 'Price of a litre' : 'Price of a kWh', `${price} ${farm.currency}`, 'text'),
      ],
    ),
  };
}

function gasOf({ tables }: PlanContext, energy: NumberQuantity): NumberQuantity {
  const { MJPerL, low, high } = tables.heat.propane;
  const litres = (perL: number): number => (energy.value * MJ_PER_KWH) / perL;
  return quantity(
    'Propane in total',
    litres(MJPerL),
    'L',
    heatFormulas.gas,
    [from(energy, 'E', 'Energy'), input('Heat in a litre', MJPerL, 'MJPerL', 'H')],
    {
      spread: {
        low: litres(high),
        high: litres(low),
        because: 'three conventions for the heat in propane differ by 9 %',
      },
    },
  );
}

const MJ_PER_KWH = 3.6;
const HEATER_NAMES = { lamp: 'Lamps', plate: 'Plates', gas: 'Gas heaters' } as const;
