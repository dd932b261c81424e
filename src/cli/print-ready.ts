import type { ReadyBy } from '../../shared/plan/ready-by.js';
import { gradeOf } from '../../shared/plan/week-in-words.js';
import { formatDate } from '../../shared/units/dates.js';
import { formatValue, type Reader } from '../../shared/units/format.js';
import { paragraph, tablesFor, title } from './text.js';

/** When birds would have to come for a slot, or to be ready by a day. */
export function printReady(ready: ReadyBy, reader: Reader): string {
  const say = (date: unknown): string => formatDate(String(date), reader);
  const kg = (value: number): string => formatValue(value, 'kg', reader);
  const { slot, betterSlot, processBy, none, largest } = ready;
  const isLate = ready.arrivals.every((each) => each.isTooLate || each.isLateToOrder);
  return [
    title(
      ready.goal === 'slot'
        ? `A slot on ${say(ready.on)}${ready.head === undefined ? '' : ` for ${ready.head} birds`}`
        : `Ready by ${say(ready.on)}`,
    ),
    slot &&
      paragraph(
        `Wanted are about ${kg(slot.wanted.value)} live. For that they come about ${say(slot.arrivals.best.value)}; from ${say(slot.arrivals.from.value)} to ${say(slot.arrivals.to.value)} they are near enough.`,
      ),
    slot || !processBy ? '' : paragraph(`Process by ${say(processBy.value)}.`),
    none === undefined ? '' : paragraph(none),
    isLate && none === undefined ? paragraph('It is late to order for all of these.') : '',
    betterSlot && paragraph(`A slot about ${say(betterSlot.value)} would suit better.`),
    arrivalTable(ready, reader),
    largest && paragraph(`Largest batch: ${largest.birds.value}.`),
  ]
    .filter((part) => part !== undefined && part !== '')
    .join('\n');
}

function arrivalTable({ arrivals }: ReadyBy, reader: Reader): string {
  const say = (date: unknown): string => formatDate(String(date), reader);
  return tablesFor(reader).table(
    ['arrival', 'order by', 'end', 'age', 'live', 'against wanted', 'week', ''],
    arrivals.map((each) => [
      say(each.arrivalDate),
      each.orderBy ? say(each.orderBy.value) : '–',
      say(each.endDate),
      each.leaveAgeDays === undefined ? '–' : `${each.leaveAgeDays} d`,
      each.liveEach ?? '–',
      each.over ?? '–',
      gradeOf(each.score),
      each.isTooLate ? 'too late' : each.isLateToOrder ? 'late to order' : '',
    ]),
  );
}
