import { dailySeries } from '../explain/daily-series.js';
import type { Formula } from '../explain/formula.js';
import {
  datedFact,
  input,
  quantity,
  type NumberQuantity,
  type Quantity,
} from '../explain/quantity.js';
import { facilityOf, type Brooder } from '../farm/facility.js';
import {
  birdSensibleHeatW,
  brooderHeatFormulas,
  conductionWPerK,
  continuousCapacityW,
  freshAirM3PerH,
  lampsByRule,
  ventilationWPerK,
  type LowMidHigh,
} from '../poultry/brooder-heat.js';
import { meanBrooderAirC, underHeaterC } from '../poultry/brooding.js';
import { issue } from '../problems/plan-issue.js';
import { costMinor } from '../money/money.js';
import { scheduleOf } from './brooding.js';
import type { PlanContext } from './context.js';

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
  outsideNight: {
    id: 'cold-night',
    title: 'Coldest night to expect',
    words:
      'The low that one night in ten falls below, at that time of year in the years on record; or the mean low less 6 °C when only monthly means are known.',
    symbols: 'T = P10(lows), or T_mean − 6 °C',
    sources: ['PLANNING_GUESS'],
    mark: 'estimate',
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
  readonly cost: NumberQuantity;
  readonly circuit?: {
    readonly name: string;
    readonly capacity: NumberQuantity;
    readonly load: NumberQuantity;
    readonly carries: boolean;
  };
}

interface DayHeat {
  readonly need: LowMidHigh;
  readonly meanNeedW: number;
  readonly insideC: number;
  readonly nightC: number;
  readonly freshAir: LowMidHigh;
  readonly birds: LowMidHigh;
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
  const neededCount = Math.ceil(worst.need.mid / heat.wattsEach - 1e-9);
  const enough = worst.need.mid <= installedW;
  const isElectric = heat.kind !== 'gas';
  const price = isElectric ? farm.electricityPricePerKWh : farm.gasPricePerL;
  const litres = (totalKWh * 3.6) / tables.heat.propane.MJPerL;
  if (!enough) {
    issues.push(
      issue(
        'stop',
        'heat-too-weak',
        `${brooder.name} has ${heat.count} × ${context.say(heat.wattsEach, 'W')}, but the coldest expected night asks for about ${context.say(worst.need.mid, 'W')}. Add ${neededCount - heat.count} more, insulate the walls and lid, or order for a warmer week.`,
      ),
    );
  }
  const circuit = circuitPart(context, brooder, neededCount);
  return {
    brooderName: brooder.name,
    coldestNight: datedFact(
      'Coldest expected night',
      context.dateOf(coldest),
      heatFormulas.outsideNight,
      [input('Air around the brooder', worst.nightC, 'degC')],
      { sources: climateSources(context), mark: climateMark(context) },
    ),
    coldestNightLow: quantity(
      'Outdoor low that night',
      context.weather.coldMinC[coldest]!,
      'degC',
      heatFormulas.outsideNight,
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
    installed: quantity('Heat installed', installedW, 'W', brooderHeatFormulas.heatersNeeded, [
      input('Each', heat.wattsEach, 'W', 'P'),
      input('Count', heat.count, 'count', 'n'),
    ]),
    enough,
    heatersNeeded: quantity(
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

function daysOfHeat(context: PlanContext, brooder: Brooder, wPerK: number): DayHeat[] {
  const { life, tables, farm, weather, brooderDays } = context;
  const { heat: table } = tables;
  const schedule = scheduleOf(context);
  const result: DayHeat[] = [];
  for (let i = 0; i < brooderDays; i++) {
    const age = life.arrivalAgeDays + i;
    const heaterC = underHeaterC(schedule, age);
    if (heaterC === undefined) break;
    const insideC = meanBrooderAirC(table.zone, heaterC, brooder.heat.kind);
    const around = (outsideC: number): number =>
      surroundingsC(brooder, outsideC, table.building.warmerThanOutsideK);
    const nightC = around(weather.coldMinC[i]!);
    const meanC = around((weather.minC[i]! + weather.maxC[i]!) / 2);
    const weightKg = life.meanWeightKg[i]!;
    const birdsAlive = life.aliveAll[i]!;
    const freshAir = freshAirM3PerH(table.ventilation, {
      birds: birdsAlive,
      weightKg,
      unventedGas: brooder.heat.kind === 'gas',
    });
    const birds =
      table.birds.creditFromDay <= age
        ? times(birdSensibleHeatW(table.birds, weightKg, insideC), birdsAlive)
        : NO_HEAT;
    const loss = (airM3PerH: number, inC: number, outC: number): number =>
      Math.max(0, inC - outC) * (wPerK + ventilationWPerK(airM3PerH, farm.elevationM));
    result.push({
      insideC,
      nightC,
      freshAir,
      birds,
      meanNeedW: Math.max(0, loss(freshAir.mid, insideC, meanC) - birds.mid),
      need: {
        low: Math.max(0, loss(freshAir.low, insideC, nightC) - birds.high),
        mid: Math.max(0, loss(freshAir.mid, insideC, nightC) - birds.mid),
        high: Math.max(0, loss(freshAir.high, heaterC, nightC) - birds.low),
      },
    });
  }
  return result;
}

const NO_HEAT: LowMidHigh = { low: 0, mid: 0, high: 0 };
const times = (range: LowMidHigh, factor: number): LowMidHigh => ({
  low: range.low * factor,
  mid: range.mid * factor,
  high: range.high * factor,
});

function surroundingsC(brooder: Brooder, outsideC: number, warmerK: number): number {
  if (brooder.standsIn === 'heated-room') return brooder.roomC ?? 20;
  return brooder.standsIn === 'outdoors' ? outsideC : outsideC + warmerK;
}

function dayEnergyKWh(day: DayHeat, heat: Brooder['heat'], installedW: number): number {
  if (heat.thermostat) return (24 * Math.min(day.meanNeedW, installedW)) / 1000;
  const on = Math.min(heat.count, Math.ceil(day.need.mid / heat.wattsEach - 1e-9));
  return (24 * on * heat.wattsEach) / 1000;
}

function addHeatSeries(
  { series }: PlanContext,
  days: readonly DayHeat[],
  energyKWh: readonly number[],
): void {
  const nightInputs = [
    { label: 'Air in the brooder, mean', symbol: 'T_in', series: 'brooder-air' },
    { label: 'Air around the brooder on a cold night', symbol: 'T_out', series: 'around-brooder' },
  ];
  series.push(
    dailySeries(
      'brooder-air',
      'Air in the brooder, mean',
      'degC',
      BROODER_AIR,
      days.map((d) => d.insideC),
      [{ label: 'Under the heat', symbol: 'T_h', series: 'under-heater' }],
    ),
    dailySeries(
      'around-brooder',
      'Air around the brooder, cold night',
      'degC',
      AROUND,
      days.map((d) => d.nightC),
      [{ label: 'Outdoor cold night', series: 'night-cold' }],
    ),
    dailySeries(
      'heat-need',
      'Heat needed on a cold night',
      'W',
      brooderHeatFormulas.need,
      days.map((d) => d.need.mid),
      nightInputs,
    ),
    dailySeries('energy-day', 'Energy in the day', 'kWh', brooderHeatFormulas.energy, energyKWh, [
      { label: 'Heat needed on a cold night', symbol: 'Q', series: 'heat-need' },
    ]),
  );
}

const BROODER_AIR: Formula = {
  id: 'brooder-air',
  title: 'Mean air in the brooder',
  words:
    'Three tenths of the brooder at the temperature under the heat, the rest at the cool end; with a gas hover the air of the heated room.',
  symbols: 'T_in = T_c + 0.3·(T_h − T_c)',
  sources: ['PLANNING_GUESS'],
  mark: 'estimate',
};
const AROUND: Formula = {
  id: 'around-brooder',
  title: 'Air around the brooder',
  words:
    'Outdoors: the outdoor low. In an unheated building: 3 °C warmer. In a heated room: the room.',
  symbols: 'T_out = T_night + 3 °C',
  sources: ['PLANNING_GUESS'],
  mark: 'estimate',
};
export const heatSeriesFormulas = { brooderAir: BROODER_AIR, around: AROUND };

export const weatherFormulas = {
  nightLow: {
    id: 'expected-night-low',
    title: 'Expected night low',
    words: 'Mean of the lows at that time of year; the forecast where there is one.',
    symbols: 'T = mean(T_min)',
    sources: ['FLOOR_PLAN'],
    mark: 'computed',
  },
  dayHigh: {
    id: 'expected-day-high',
    title: 'Expected day high',
    words: 'Mean of the highs at that time of year; the forecast where there is one.',
    symbols: 'T = mean(T_max)',
    sources: ['FLOOR_PLAN'],
    mark: 'computed',
  },
} satisfies Record<string, Formula>;

function addOutsideSeries(context: PlanContext): void {
  const { series, weather, climate } = context;
  const used = [
    input('Weather used', climate.label, 'text'),
    input('Years on record', climate.years, 'count'),
  ];
  series.push(
    dailySeries(
      'night-low',
      'Expected night low',
      'degC',
      weatherFormulas.nightLow,
      weather.minC,
      used,
    ),
    dailySeries(
      'night-cold',
      'Cold night',
      'degC',
      heatFormulas.outsideNight,
      weather.coldMinC,
      used,
      {
        sources: climateSources(context),
        mark: climateMark(context),
      },
    ),
    dailySeries(
      'day-high',
      'Expected day high',
      'degC',
      weatherFormulas.dayHigh,
      weather.maxC,
      used,
    ),
  );
}

const climateSources = ({ climate }: PlanContext): string[] =>
  climate.way === 'monthly-means' ? ['PLANNING_GUESS'] : ['FLOOR_PLAN'];
const climateMark = ({ climate }: PlanContext) =>
  climate.way === 'monthly-means' ? ('estimate' as const) : ('computed' as const);

function circuitPart(
  context: PlanContext,
  brooder: Brooder,
  neededCount: number,
): HeatPart['circuit'] {
  const { facilities, tables, issues, cautions } = context;
  const circuit = facilityOf(facilities, 'circuit', brooder.circuitId);
  if (!circuit || brooder.heat.kind === 'gas') return undefined;
  cautions.add('circuit');
  const count = Math.max(brooder.heat.count, neededCount);
  const loadW = count * brooder.heat.wattsEach + circuit.otherLoadW;
  const capacityW = continuousCapacityW(tables.heat.circuit.share, circuit);
  const carries = loadW <= capacityW;
  if (!carries) {
    issues.push(
      issue(
        'stop',
        'circuit-overloaded',
        `${circuit.name} may carry ${context.say(capacityW, 'W')} for hours on end, but ${count} heaters and what else is on it draw ${context.say(loadW, 'W')}. Split them over two circuits or use fewer watts.`,
      ),
    );
  }
  return {
    name: circuit.name,
    carries,
    capacity: quantity('Circuit carries all day', capacityW, 'W', brooderHeatFormulas.circuit, [
      input('Volts', circuit.volts, 'V', 'V'),
      input('Amps', circuit.amps, 'A', 'A'),
    ]),
    load: quantity('Load on the circuit', loadW, 'W', brooderHeatFormulas.circuit, [
      input('Heaters', count * brooder.heat.wattsEach, 'W'),
      input('What else is on it', circuit.otherLoadW, 'W'),
    ]),
  };
}
