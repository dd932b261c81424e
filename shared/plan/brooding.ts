import type { PlainDate } from '../calendar/plain-date.js';
import { dailySeries } from '../explain/daily-series.js';
import { from, fromTable, input, quantity, type NumberQuantity } from '../explain/quantity.js';
import { broodingFormulas, coolEndC, scheduleSpreadC, underHeaterC } from '../poultry/brooding.js';
import type { Batch } from '../farm/batch.js';
import { facilityOf, type HeatSourceKind } from '../farm/facility.js';
import type { BroodingSchedule } from '../tables/bird-tables.js';
import { defaultRow, ofSpecies, rowById, type Tables } from '../tables/tables.js';
import { inOwnUnits } from '../units/own-units.js';
import type { PlanContext } from './context.js';
import { found, type Found } from './found.js';
import { coldNightRows, weatherFormulas, weatherUsed } from './outside-weather.js';

export interface BroodingStep {
  readonly from: PlainDate;
  readonly to: PlainDate;
  readonly fromAgeDays: number;
  readonly toAgeDays: number;
  readonly underHeater: NumberQuantity;
  readonly floor: NumberQuantity;
  readonly coolEnd: NumberQuantity;
  /** Outdoors at the hottest noon, where that is warmer than the cool end is to be. */
  readonly hotNoon?: NumberQuantity;
  readonly room: NumberQuantity;
}

export interface BroodingPart {
  readonly scheduleId: string;
  readonly scheduleName: string;
  readonly measuredAt: string;
  readonly steps: readonly BroodingStep[];
  readonly lookFor: readonly string[];
}

const TOO_COLD: Readonly<Record<HeatSourceKind, string>> = {
  lamp: 'Hang the lamps lower, but a lamp never nearer than 46 cm (18 in) to the bedding or than its maker says; rather add one.',
  plate: 'Lower the plate until it touches their backs; rather add one.',
  gas: 'Turn the heater up, or hang it lower, but never nearer to the bedding than its maker says; rather close a part off.',
};
const TOO_HOT: Readonly<Record<HeatSourceKind, string>> = {
  lamp: 'Hang the lamps higher, switch some off, take the lid off.',
  plate: 'Raise the plate, take the lid off, let in air.',
  gas: 'Turn the heater down or hang it higher, let in fresh air.',
};

/** What birds show of their heat, and what to do with the kind of heater there is. */
const lookForOf = (kind: HeatSourceKind): readonly string[] => [
  'Spread evenly, quiet, eating and drinking: right.',
  `Huddled under the heat, loud: too cold. ${TOO_COLD[kind]}`,
  `Pressed to the edge, panting, drowsy: too hot. ${TOO_HOT[kind]}`,
  'All in one corner away from a side: a draft from that side.',
];

/** The schedules for a batch's kind of bird. */
const schedulesFor = ({ strainId }: Batch, { strains, broodingSchedules }: Tables) =>
  ofSpecies(broodingSchedules, rowById(strains, strainId).species);

export function scheduleOf({
  batch,
  tables,
}: Pick<PlanContext, 'batch' | 'tables'>): BroodingSchedule {
  return batch.broodingScheduleId === undefined
    ? defaultRow(schedulesFor(batch, tables))
    : rowById(tables.broodingSchedules, batch.broodingScheduleId);
}

/** Smallest change that makes a new step of the card, °C: a thermometer shows no less. */
const STEP_C = 0.9;

/** Temperatures of the brooder by age; undefined for chicks that a hen keeps warm, and for grown birds. */
export function planBrooding(context: PlanContext): Found<BroodingPart | undefined> {
  if (!context.life.hasBrooder) return found(undefined);
  const heaters =
    facilityOf(context.facilities, 'brooder', context.batch.brooderId)?.heat.kind ?? 'lamp';
  const { life, tables, brooderDays, dateOf, words } = context;
  const schedule = scheduleOf(context);
  const steps: BroodingStep[] = [];
  let first = 0;
  let current: number | undefined;
  const targets: number[] = [];
  const close = (to: number): void => {
    if (current === undefined) return;
    steps.push(stepOf(current, first, to));
  };
  for (let i = 0; i < brooderDays; i++) {
    const heaterC = underHeaterC(schedule, life.arrivalAgeDays + i);
    targets.push(heaterC ?? Number.NaN);
    const changed =
      heaterC === undefined
        ? current !== undefined
        : current === undefined || STEP_C <= Math.abs(heaterC - current);
    if (!changed) continue;
    close(i - 1);
    first = i;
    current = heaterC;
  }
  close(brooderDays - 1);

  const heated = targets.filter((c) => !Number.isNaN(c));
  const underHeater = dailySeries(
    'under-heater',
    `Under the heat, ${words.youngOne} height`,
    'degC',
    broodingFormulas.underHeater,
    heated,
    [input('Schedule', schedule.name, 'text'), input('Measured at', schedule.where, 'text')],
    { rows: [schedule] },
  );
  const part: BroodingPart = {
    scheduleId: schedule.id,
    scheduleName: schedule.name,
    measuredAt: schedule.where,
    steps,
    lookFor: lookForOf(heaters).map((line) => inOwnUnits(line, context.farm.units)),
  };
  return found(part, { series: [underHeater] });

  function stepOf(heaterC: number, start: number, last: number): BroodingStep {
    const age = life.arrivalAgeDays + start;
    const spread = scheduleSpreadC(schedulesFor(context.batch, tables), age, schedule.measures);
    const zone = tables.heat.zone;
    const underHeater = quantity(
      `Under the heat, ${words.youngOne} height`,
      heaterC,
      'degC',
      broodingFormulas.underHeater,
      [input('Schedule', schedule.name, 'text'), input('Age', age, 'day')],
      {
        rows: [schedule],
        spread: spread && {
          ...spread,
          because: 'the published schedules differ; much of it is where the thermometer hangs',
        },
      },
    );
    const heaterInput = [from(underHeater, 'T_h', 'Under the heat')];
    const coolEndNow = schedule.measures === 'air' ? heaterC : coolEndC(zone, heaterC);
    return {
      from: dateOf(start),
      to: dateOf(last),
      fromAgeDays: age,
      toAgeDays: life.arrivalAgeDays + last,
      underHeater,
      floor: quantity('Floor under the heat', heaterC, 'degC', broodingFormulas.floor, heaterInput),
      coolEnd: quantity('Cool end', coolEndNow, 'degC', broodingFormulas.coolEnd, [
        ...heaterInput,
        fromTable(zone, 'Cooler at the far end by', zone.coolEndBelowHeaterK, 'K'),
        fromTable(zone, 'Never below', zone.coolEndMinC, 'degC'),
      ]),
      ...hotNoonOf(coolEndNow, start, last),
      room: quantity(
        'Room air when the whole room is heated',
        schedule.measures === 'air' ? heaterC : heaterC - zone.roomBelowHeaterK,
        'degC',
        broodingFormulas.room,
        [...heaterInput, fromTable(zone, 'Floor warmer than the air', zone.roomBelowHeaterK, 'K')],
      ),
    };
  }

  /** A cool end cannot be cooler than the day. */
  function hotNoonOf(coolC: number, start: number, last: number): Pick<BroodingStep, 'hotNoon'> {
    const { hotMaxC } = context.weather;
    const hottest = Math.max(...hotMaxC.subarray(start, last + 1));
    if (hottest <= coolC) return {};
    const used = [weatherUsed(context.climate)];
    const options = { rows: coldNightRows(context) };
    const { dayHot } = weatherFormulas;
    return { hotNoon: quantity('Hot noon outdoors', hottest, 'degC', dayHot, used, options) };
  }
}
