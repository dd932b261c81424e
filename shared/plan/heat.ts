import { plainFormulas } from '../explain/plain-formulas.js';
import type { Formula } from '../explain/formula.js';
import {
  datedFact,
  input,
  quantity,
  type NumberQuantity,
  type Quantity,
} from '../explain/quantity.js';
import { facilityOf } from '../farm/facility.js';
import { costMinor } from '../money/money.js';
import { brooderHeatFormulas, conductionWPerK, lampsByRule } from '../poultry/brooder-heat.js';
import { issue } from '../problems/plan-issue.js';
import type { PlanContext } from './context.js';
import { circuitPart, type CircuitPart } from './heat-circuit.js';
import { addHeatSeries, dayEnergyKWh, daysOfHeat } from './heat-days.js';
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
    sources: ['FLOOR_PLAN'],
    mark: 'computed',
  },
  energyTotal: {
    id: 'heat-energy-total',
    title: 'Energy for the whole brooding time',
    words: 'Energy of every day with heat, summed.',
    symbols: 'E = Σ E_day',
    sources: ['FLOOR_PLAN'],
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
    sources: ['FLOOR_PLAN'],
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

export function planHeat(context: PlanContext): HeatPart | undefined {
  const { batch, facilities, tables, farm, life, issues } = context;
  addOutsideSeries(context);
  const brooder = facilityOf(facilities, 'brooder', batch.brooderId);
  if (!brooder) {
    issues.push(
      issue(
        'note',
        'no-brooder',
        'No brooder is chosen, so heat, floor and bedding are not worked out. Choose one, or add it under Facilities.',
      ),
    );
    return undefined;
  }
  const { heat } = brooder;
  const wPerK = conductionWPerK(brooder, tables.materials, tables.heat.films);
  const days = daysOfHeat(context, brooder, wPerK);
  const coldest = days.reduce(
    (best, day, i) => (days[best]!.need.mid < day.need.mid ? i : best),
    0,
  );
  const worst = days[coldest]!;
  const lastHeat = days.findLastIndex((day) => 0 < day.need.mid);
  const installedW = heat.wattsEach * heat.count;
  const energyKWh = days.map((day) => dayEnergyKWh(day, heat, installedW));
  const totalKWh = energyKWh.reduce((a, b) => a + b, 0);

  addHeatSeries(context, days, energyKWh);
  context.cautions.add(heat.kind === 'gas' ? 'carbon-monoxide' : 'heat-lamp');
  const need = quantity(
    'Heat needed on the coldest expected night',
    worst.need.mid,
    'W',
    brooderHeatFormulas.need,
    [
      input('Walls and lid, per degree', wPerK, 'WPerK', 'UA'),
      input('Air in the brooder, mean', worst.insideC, 'degC', 'T_in'),
      input('Air around the brooder', worst.nightC, 'degC', 'T_out'),
      input('Fresh air', worst.freshAir.mid, 'm3PerH', 'V'),
      input('Warmth of the birds', worst.birds.mid, 'W', 'Q_birds'),
      input('Elevation', farm.elevationM, 'm'),
    ],
    {
      spread: {
        low: worst.need.low,
        high: worst.need.high,
        because:
          'fresh-air rules differ threefold for small chicks, the birds’ own dry heat is unsettled, and the high end keeps the whole brooder at the temperature under the heat',
      },
    },
  );
  const isPlate = heat.kind === 'plate';
  const neededW = isPlate ? life.placed * tables.heat.plate.wattsPerChick : worst.need.mid;
  const neededCount = Math.ceil(neededW / heat.wattsEach - 1e-9);
  const enough = neededW <= installedW;
  const isElectric = heat.kind !== 'gas';
  const price = isElectric ? farm.electricityPricePerKWh : farm.gasPricePerL;
  const litres = (totalKWh * 3.6) / tables.heat.propane.MJPerL;
  if (!enough) {
    const asks = isPlate
      ? `${life.placed} chicks ask for plates of about ${context.say(neededW, 'W')}`
      : `the coldest expected night asks for about ${context.say(worst.need.mid, 'W')}`;
    issues.push(
      issue(
        // Below even the low end of the range nothing can be hoped for.
        isPlate || worst.need.low <= installedW ? 'act' : 'stop',
        'heat-too-weak',
        `${brooder.name} has ${heat.count} × ${context.say(heat.wattsEach, 'W')}, but ${asks}. Add ${neededCount - heat.count} more, ${isPlate ? 'or brood fewer at a time' : 'insulate the walls and lid, or order for a warmer week'}.`,
      ),
    );
  }
  if (isPlate && worst.nightC < tables.heat.plate.warmestRoomFromC) {
    issues.push(
      issue(
        'act',
        'plate-room-cold',
        `Plates want a room of ${context.say(tables.heat.plate.warmestRoomFromC, 'degC')} or warmer; on a cold night the air around ${brooder.name} is about ${context.say(worst.nightC, 'degC')}. Warm the room, or use lamps on those nights.`,
      ),
    );
  }
  const circuit = circuitPart(context, brooder, neededCount);
  return {
    brooderName: brooder.name,
    coldestNight: datedFact(
      'Night of greatest need',
      context.dateOf(coldest),
      weatherFormulas.coldNight,
      [input('Air around the brooder', worst.nightC, 'degC')],
      { sources: climateSources(context), mark: climateMark(context) },
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
      { sources: climateSources(context), mark: climateMark(context) },
    ),
    need,
    conduction: quantity(
      'Walls and lid, per degree',
      wPerK,
      'WPerK',
      brooderHeatFormulas.conduction,
      [
        input('Length', brooder.lengthM, 'm'),
        input('Width', brooder.widthM, 'm'),
        input('Height', brooder.heightM, 'm'),
      ],
    ),
    installed: quantity('Heat installed', installedW, 'W', plainFormulas.measured, [
      input('Each', heat.wattsEach, 'W', 'P'),
      input('Count', heat.count, 'count', 'n'),
    ]),
    enough,
    heatersNeeded: isPlate
      ? quantity('Plates needed', neededCount, 'count', brooderHeatFormulas.plateRule, [
          input('Chicks', life.placed, 'count', 'N'),
          input('Each', heat.wattsEach, 'W', 'P'),
        ])
      : quantity(
          `${HEATER_NAMES[heat.kind]} needed`,
          neededCount,
          'count',
          brooderHeatFormulas.heatersNeeded,
          [input('Heat needed', worst.need.mid, 'W', 'Q'), input('Each', heat.wattsEach, 'W', 'P')],
          {
            spread: {
              low: Math.ceil(worst.need.low / heat.wattsEach - 1e-9),
              high: Math.ceil(worst.need.high / heat.wattsEach - 1e-9),
              because: 'same range as the heat needed',
            },
          },
        ),
    lampRule: quantity(
      '250 W lamps by the common rule',
      lampsByRule(tables.heat.lampRule, life.placed, worst.nightC),
      'count',
      brooderHeatFormulas.lampRule,
      [
        input('Chicks', life.placed, 'count', 'N'),
        input('Air around the brooder', worst.nightC, 'degC', 'T'),
      ],
      10 < worst.nightC
        ? { outside: 'The rule gives no figure above 10 °C (50 °F); 75 chicks a lamp is kept.' }
        : {},
    ),
    lastHeatDay: datedFact(
      'Heat until',
      context.dateOf(Math.max(0, lastHeat)),
      heatFormulas.heatOff,
      [input('Last day of the schedule or of the brooder', days.length - 1, 'day')],
    ),
    energyTotal: quantity('Energy in total', totalKWh, 'kWh', heatFormulas.energyTotal, [
      input('Days with heat', lastHeat + 1, 'day'),
      input('Thermostat', heat.thermostat ? 'yes' : 'no: what is on burns day and night', 'text'),
    ]),
    energyPerDay: quantity(
      'Energy a day, mean',
      lastHeat < 0 ? 0 : totalKWh / (lastHeat + 1),
      'kWh',
      brooderHeatFormulas.energy,
      [input('Energy in total', totalKWh, 'kWh'), input('Days with heat', lastHeat + 1, 'day')],
    ),
    ...(isElectric
      ? {}
      : {
          gasPerDay: quantity(
            'Propane a day, mean',
            lastHeat < 0 ? 0 : litres / (lastHeat + 1),
            'L',
            heatFormulas.gas,
            [input('Propane in total', litres, 'L'), input('Days with heat', lastHeat + 1, 'day')],
          ),
          gasLitres: quantity(
            'Propane in total',
            litres,
            'L',
            heatFormulas.gas,
            [
              input('Energy', totalKWh, 'kWh', 'E'),
              input('Heat in a litre', tables.heat.propane.MJPerL, 'MJPerL', 'H'),
            ],
            {
              spread: {
                low: (totalKWh * 3.6) / tables.heat.propane.high,
                high: (totalKWh * 3.6) / tables.heat.propane.low,
                because: 'three conventions for the heat in propane differ by 9 %',
              },
            },
          ),
        }),
    cost: quantity(
      'Cost of the heat',
      costMinor(price, isElectric ? totalKWh : litres, farm.currency),
      'money',
      heatFormulas.cost,
      [
        isElectric ? input('Energy', totalKWh, 'kWh', 'E') : input('Propane', litres, 'L', 'V'),
        input(
          isElectric ? 'Price of a kWh' : 'Price of a litre',
          `${price} ${farm.currency}`,
          'text',
        ),
      ],
    ),
    ...(circuit ? { circuit } : {}),
  };
}

const HEATER_NAMES = { lamp: 'Lamps', plate: 'Plates', gas: 'Gas heaters' } as const;
