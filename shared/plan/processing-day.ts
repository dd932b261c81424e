import {
  from,
  fromTable,
  input,
  quantity,
  type NumberQuantity,
  type QuantityInput,
} from '../explain/quantity.js';
import { formatHour } from '../units/dates.js';
import { addDays, type PlainDate } from '../calendar/plain-date.js';
import type { Sourced } from '../explain/formula.js';
import {
  chillingLimitH,
  chillingTimeH,
  iceShare,
  processingFormulas,
} from '../poultry/processing.js';
import type { PlanContext } from './context.js';
import { found, type Found } from './found.js';
import { birdsToProcess, type DressedWeights } from './leaving-weights.js';
import { killingOf, workOfDay, type ProcessingDays } from './processing-days.js';
import { processingIssues, processingWays, type ProcessingWay } from './processing-ways.js';

/** One day on which birds are processed. */
export interface ProcessingDayPart {
  readonly on: PlainDate;
  readonly birds: number;
}

export interface ProcessingDayWork {
  readonly feedOff: NumberQuantity;
  readonly feedOffAt: string;
  readonly ice: NumberQuantity;
  readonly iceBags: NumberQuantity;
  /** Until a carcass is cold, in ice and water. */
  readonly chillTime: NumberQuantity;
  /** Until when the law wants it cold: a limit. */
  readonly chillLimit: NumberQuantity;
  /** Other ways than the planned one, where that day is too short for all of it. */
  readonly processingWays: readonly ProcessingWay[];
  /** From the first to the last; one, where the day is long enough. */
  readonly processingDays: readonly ProcessingDayPart[];
  /** At home only. */
  readonly birdsAnHour?: NumberQuantity;
  readonly chillingAtOnce?: NumberQuantity;
  readonly birdsADay?: NumberQuantity;
  readonly dayHours?: NumberQuantity;
  readonly freezerBags?: NumberQuantity;
  readonly scaldGas?: NumberQuantity;
}

/** Feed withdrawal, hands and hours, chilling and ice; more than a day of it, where one is short. */
export function planProcessingDay(
  context: PlanContext,
  weights: DressedWeights,
  days: ProcessingDays,
): Found<ProcessingDayWork> {
  const { batch, life } = context;
  const birds = birdsToProcess(life);
  const chillTime = chillTimeOf(context, weights.dressedEach);
  const ice = iceOf(context, weights, days, birds);
  const { iceBag } = context.tables.processing;
  const part: ProcessingDayWork = {
    ...feedOffOf(context, days.days[0]!.date),
    ice,
    iceBags: quantity(
      'Bags of ice',
      Math.ceil(ice.value / iceBag.kg - 1e-9),
      'bags',
      processingFormulas.iceBags,
      [from(ice, 'I'), fromTable(iceBag, 'One bag', iceBag.kg, 'kg', 'b')],
    ),
    chillTime,
    chillLimit: chillLimitOf(context, weights.dressedEach),
    processingWays: processingWays(context, days, birds),
    processingDays: days.days.map(({ date, birds: n }) => ({ on: date, birds: n })),
    ...(batch.processing === 'hired' ? {} : atHome(context, days, birds, chillTime)),
  };
  return found(part, {
    issues: batch.processing === 'hired' ? [] : processingIssues(context, days, birds),
  });
}

function feedOffOf(
  { tables, farm }: PlanContext,
  on: PlainDate,
): Pick<ProcessingDayWork, 'feedOff' | 'feedOffAt'> {
  const { withdrawalH } = tables.processing;
  const startH = tables.judgements.birds.processingStartH.value;
  const offHour = (24 + startH - withdrawalH.value) % 24;
  return {
    feedOff: quantity(
      'Hours without feed',
      withdrawalH.value,
      'h',
      processingFormulas.withdrawal,
      [fromTable(withdrawalH, 'Planned', withdrawalH.value, 'h', 'h')],
      {
        spread: {
          low: withdrawalH.low,
          high: withdrawalH.high,
          because: 'published advice runs from 8 to 12 hours',
        },
      },
    ),
    feedOffAt: `${addDays(on, withdrawalH.value > startH ? -1 : 0)} ${formatHour(offHour, farm.units)}`,
  };
}

function iceOf(
  { tables, weather }: PlanContext,
  { dressedEach, dressedAll }: DressedWeights,
  { days }: ProcessingDays,
  birds: number,
): NumberQuantity {
  const { ice, iceWeather } = tables.processing;
  const shareOn = (index: number): number => iceShare(ice, iceWeather, weather.maxC[index]!);
  const kg = days.reduce((sum, day) => sum + day.birds * dressedEach.value * shareOn(day.index), 0);
  const hottest = Math.max(...days.map(({ index }) => weather.maxC[index]!));
  return quantity(
    'Ice',
    kg,
    'kg',
    processingFormulas.ice,
    [
      from(dressedAll, 'N·W_d', 'Dressed, all birds'),
      input('Expected high', hottest, 'degC'),
      fromTable(ice, 'Share of it', kg / (birds * dressedEach.value), 'share'),
      fromTable(iceWeather, 'The most from a high of', iceWeather.hotC, 'degC'),
      fromTable(iceWeather, 'The least up to a high of', iceWeather.coolC, 'degC'),
    ],
    {
      spread: {
        low: dressedAll.value * ice.low,
        high: dressedAll.value * ice.high,
        because: ice.because ?? 'common practice',
      },
    },
  );
}

function chillTimeOf({ tables }: PlanContext, dressedEach: NumberQuantity): NumberQuantity {
  const { iceWater, targetC } = tables.processing.chilling;
  const { usual, low, high } = chillingTimeH(iceWater, dressedEach.value);
  const isMeasured = iceWater.fromKg <= dressedEach.value && dressedEach.value <= iceWater.toKg;
  return quantity(
    'Time in ice water until cold',
    usual,
    'h',
    processingFormulas.chillTime,
    [
      from(dressedEach, 'W_d', 'Carcass'),
      fromTable(iceWater, 'Measured at', (iceWater.fromKg + iceWater.toKg) / 2, 'kg', 'W₀'),
      fromTable(iceWater, 'Measured time', iceWater.minutes / 60, 'h', 't₀'),
      fromTable(tables.processing.chilling, 'Chilled to', targetC, 'degC'),
    ],
    {
      spread: { low, high, because: 'carcasses differed by that much in the trial' },
      ...(isMeasured
        ? {}
        : { outside: 'Measured on lighter birds: look with a thermometer before you trust it.' }),
    },
  );
}

function chillLimitOf({ tables, say }: PlanContext, dressedEach: NumberQuantity): NumberQuantity {
  const { chilling } = tables.processing;
  return quantity(
    `Legal limit to be below ${say(chilling.targetC, 'degC')}`,
    chillingLimitH(chilling.rows, dressedEach.value),
    'h',
    processingFormulas.chillLimit,
    [
      from(dressedEach, 'W_d', 'Carcass'),
      fromTable(chilling, 'Chilled to', chilling.targetC, 'degC'),
    ],
  );
}

type AtHome = Pick<
  ProcessingDayWork,
  'birdsAnHour' | 'chillingAtOnce' | 'birdsADay' | 'dayHours' | 'freezerBags' | 'scaldGas'
>;

function atHome(
  context: PlanContext,
  { days }: ProcessingDays,
  birds: number,
  chillTime: NumberQuantity,
): AtHome {
  const { tables } = context;
  const { freezerBags, scalding } = tables.processing;
  const killing = killingOf(tables.taskTemplates);
  const { fixedH, birdH, rows } = workOfDay(tables.taskTemplates);
  const longest = days.reduce((best, day) => (best.most < day.most ? day : best));
  const { hands } = longest;
  const judged = judgedHands(context);
  // How far the trial reaches is said beside the time itself.
  const { outside: _outside, ...timeInput } = from(chillTime, 't');
  const birdsInput: QuantityInput = {
    ...input('Birds', birds, 'count', 'N'),
    mark: context.life.losses.mark,
  };
  const birdsAnHour = quantity(
    'Birds an hour',
    (100 * hands) / killing.hoursPerUnit,
    'ratio',
    processingFormulas.birdsAnHour,
    [
      input('Hands', hands, 'count'),
      fromTable(killing, 'Hours of one for a bird', killing.hoursPerUnit / 100, 'h', 'h_bird'),
    ],
    { rows: judged },
  );
  const fixed = input('To set up and clean down', fixedH, 'h', 'h₀');
  const each = input('A bird on the day', birdH, 'h', 'h_bird');
  return {
    birdsAnHour,
    chillingAtOnce: quantity(
      'Birds in the ice at once',
      Math.min(birds, Math.ceil(birdsAnHour.value * chillTime.value - 1e-9)),
      'count',
      processingFormulas.chillingAtOnce,
      [from(birdsAnHour, 'r'), timeInput],
    ),
    birdsADay: quantity(
      'Birds a day, at most',
      longest.most,
      'count',
      processingFormulas.birdsADay,
      [input('Hours of all hands', longest.hours, 'h', 'Σ h'), fixed, each],
      { rows: [...rows, ...judged] },
    ),
    dayHours: quantity(
      'Own hours on the days of processing',
      days.length * fixedH + birds * birdH,
      'h',
      processingFormulas.dayHours,
      [input('Days', days.length, 'count', 'd'), fixed, birdsInput, each],
      { rows },
    ),
    freezerBags: quantity(
      'Freezer bags',
      birds * freezerBags.perBird,
      'count',
      processingFormulas.bags,
      [birdsInput, fromTable(freezerBags, 'Bags a bird', freezerBags.perBird, 'ratio', 'b')],
    ),
    scaldGas: quantity(
      'Propane to scald',
      days.length * scalding.gasLPerDay + birds * scalding.gasLPerBird,
      'L',
      processingFormulas.scaldGas,
      [
        input('Days', days.length, 'count', 'd'),
        fromTable(scalding, 'To heat the water', scalding.gasLPerDay, 'L', 'v₀'),
        birdsInput,
        fromTable(scalding, 'For each bird', scalding.gasLPerBird, 'L', 'v'),
      ],
    ),
  };
}

/** What hands and their hours rest on, where the household has not said them. */
function judgedHands({ people, batch, tables }: PlanContext): readonly Sourced[] {
  const { handHours, handsUnknown } = tables.judgements.birds;
  if (people.length === 0) return [handHours, handsUnknown];
  const isJudged =
    0 < (batch.processingHelpers ?? 0) || people.some(({ hoursByWeekday }) => !hoursByWeekday);
  return isJudged ? [handHours] : [];
}
