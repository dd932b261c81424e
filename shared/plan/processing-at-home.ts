import {
  from,
  fromFarm,
  fromTable,
  input,
  quantity,
  type NumberQuantity,
  type QuantityInput,
} from '../explain/quantity.js';
import type { Sourced } from '../explain/formula.js';
import { processingFormulas } from '../poultry/processing.js';
import { stationFormulas } from '../poultry/stations.js';
import type { PlanContext } from './context.js';
import type { ProcessingDays } from './processing-days.js';
import { paceOf, workOfDay } from './processing-work.js';

/** What a household that processes at home wants to know besides. */
export interface AtHome {
  readonly birdsAnHour: NumberQuantity;
  /** The station that holds the hands up, in words; left out where none does. */
  readonly slowest?: string;
  readonly chillingAtOnce: NumberQuantity;
  readonly birdsADay: NumberQuantity;
  readonly dayHours: NumberQuantity;
  readonly freezerBags: NumberQuantity;
  readonly scaldGas: NumberQuantity;
}

export function planAtHome(
  context: PlanContext,
  { days }: ProcessingDays,
  birds: number,
  chillTime: NumberQuantity,
): AtHome {
  const { tables } = context;
  const { freezerBags, scalding } = tables.processing;
  const { fixedH, birdH, killH, rows, killRows } = workOfDay(context);
  const longest = days.reduce((best, day) => (best.most < day.most ? day : best));
  const { hands } = longest;
  const judged = judgedHands(context);
  // How far the trial reaches is said beside the time itself.
  const { outside: _outside, ...timeInput } = from(chillTime, 't');
  const birdsInput: QuantityInput = {
    ...input('Birds', birds, 'count', 'N'),
    mark: context.life.losses.mark,
  };
  const { perHour, slowest } = paceOf(context, hands);
  const birdsAnHour = quantity(
    'Birds an hour',
    perHour,
    'ratio',
    stationFormulas.birdsAnHour,
    [
      input('Hands', hands, 'count'),
      input('Hours of one for a bird', killH, 'h', 'h_bird'),
      ...(slowest
        ? [
            fromFarm(`Birds at once in ${slowest.name}`, slowest.places, 'count', 'n'),
            fromTable(slowest.row, 'Each time', slowest.row.minutes / 60, 'h', 't'),
          ]
        : []),
    ],
    { rows: [...killRows, ...judged] },
  );
  const fixed = input('To set up and clean down', fixedH, 'h', 'h₀');
  const each = input('A bird on the day', birdH, 'h', 'h_bird');
  return {
    birdsAnHour,
    ...(slowest ? { slowest: slowest.name } : {}),
    chillingAtOnce: quantity(
      'Birds in the ice at once',
      Math.min(birds, Math.ceil(birdsAnHour.value * chillTime.value - 1e-9)),
      'count',
      processingFormulas.chillingAtOnce,
      [from(birdsAnHour, 'r'), timeInput],
    ),
    birdsADay: quantity(
      // Who has named nobody gave no hours.
      context.people.length === 0 ? 'Birds a day, at most' : 'Birds a day, in the hours you gave',
      longest.most,
      'count',
      processingFormulas.birdsADay,
      [input('Hours of all hands, chores taken off', longest.hours, 'h', 'Σ h'), fixed, each],
      { rows: [...rows, ...judged] },
    ),
    dayHours: quantity(
      'Hours of all on the days of processing',
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
