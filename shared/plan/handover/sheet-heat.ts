import type { PlainDate } from '../../calendar/plain-date.js';
import type { NumberQuantity } from '../../explain/quantity.js';
import { formatDate } from '../../units/dates.js';
import { formatValue, type Reader } from '../../units/format.js';
import type { BatchPlan } from '../batch-plan.js';
import type { HeatInstruction, HeatWeekPart } from '../heat-instructions.js';

/**
 * How the heaters are set that day, how high lamps hang, and when they are raised next.
 *
 * @param usualNight where a night as they usually are wants them otherwise than the coldest of the week
 */
export function heatActions(
  { heat, brooding }: BatchPlan,
  date: PlainDate,
  reader: Reader,
  usualNight?: HeatInstruction,
): string[] {
  const index = heat?.weeks.findIndex(({ from, to }) => from <= date && date <= to) ?? -1;
  const week = heat?.weeks[index];
  if (!week) return heat || !brooding ? [] : [LOOK_AT_HEAT];
  const { night, day, noon } = week;
  const say = ({ value, unit }: NumberQuantity): string => formatValue(value, unit, reader);
  const at = ({ around }: HeatInstruction): string => `${say(around)} around them`;
  const set = ({ words, raisedTo, underHeat }: HeatInstruction): string =>
    [
      words,
      ...(raisedTo ? [`raised to ${say(raisedTo)}`] : []),
      ...(underHeat ? [`spot under the heat about ${say(underHeat)}`] : []),
    ].join(', ');
  return [
    ...heightWords(heat!.weeks, index, date, reader),
    `Heat on a cold night, ${at(night)}: ${set(night)}.`,
    ...(usualNight && usualNight.words !== night.words
      ? [`On a usual night, ${at(usualNight)}: ${set(usualNight)}.`]
      : []),
    `Heat on a usual day, ${at(day)}: ${set(day)}; on a hot one, ${at(noon)}: ${set(noon)}. Look at the birds first. ${SWITCHED}`,
    LOOK_AT_HEAT,
  ];
}

/** “At night the lamps hang 18 in above the bedding; from Thu, May 6 at 21 in.” */
function heightWords(
  weeks: readonly HeatWeekPart[],
  index: number,
  date: PlainDate,
  reader: Reader,
): string[] {
  const heightIn = (week: HeatWeekPart | undefined): string | undefined =>
    week?.lampHeight && formatValue(week.lampHeight.value, 'cm', reader);
  const [before, now, next] = [-1, 0, 1].map((k) => heightIn(weeks[index + k]));
  const { from } = weeks[index]!;
  if (now === undefined) return [];
  const isNew = from === date && before !== undefined && before !== now;
  const first = isNew
    ? `At night the lamps hang ${now} above the bedding from today (${before} until now)`
    : `At night the lamps hang ${now} above the bedding`;
  const then = weeks[index + 1];
  const later =
    then === undefined || next === now
      ? ''
      : next === undefined
        ? `; from ${formatDate(then.from, reader)} none are on at night`
        : `; from ${formatDate(then.from, reader)} at ${next}`;
  return [`${first}${later}. Measure it after topping up.`];
}

/** One time for each change, so that nobody comes for it alone. */
const SWITCHED = 'For the night it is set at the last round, for the day at the morning one.';

const LOOK_AT_HEAT =
  'See that the heat works, hangs fast and is clear of the litter: morning, noon and last thing.';
