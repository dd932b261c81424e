import type { Farm } from '../../shared/farm/farm.js';
import type { BatchCost } from '../../shared/plan/cost/batch-cost.js';
import type { WhatMoves } from '../../shared/plan/compare/what-moves.js';
import type { StopPart } from '../../shared/plan/cost/stop-feeding.js';
import type { LayAges } from '../../shared/plan/cost/lay-ages.js';
import { formatDayWithoutWeekday } from '../../shared/units/dates.js';
import { formatValue, type Reader } from '../../shared/units/format.js';
import { paragraph, rangeText, section, tablesFor, title } from './text.js';

/** What a batch must bring, and when to stop feeding it. */
export function printCost(
  cost: BatchCost & { readonly moves: WhatMoves },
  farm: Farm,
  today: string,
): string {
  const reader: Reader = { ...farm, today };
  const { table, facts } = tablesFor(reader);
  const { breakEven, stop, layAges, moves } = cost;
  return [
    title(`${cost.name}: what it must bring`),
    ...breakEven.said.map((line) => paragraph(line)),
    facts(
      ...breakEven.mustBring.flatMap(({ withoutHours, withHours }) => [withoutHours, withHours]),
      breakEven.priceWanted,
      breakEven.left,
      breakEven.hourBrings,
      breakEven.withoutHours,
      breakEven.withHours,
      ...breakEven.beside.map((each) => each.cost),
      breakEven.hours,
    ),
    ...(stop ? [stopText(stop, table, reader)] : []),
    ...(layAges ? [agesText(layAges, table, reader)] : []),
    ...(0 < moves.inputs.length ? [movesText(moves, table, reader)] : []),
    'Every number opens with --explain, to its formula, inputs and source.',
  ].join('\n');
}

const stopText = (
  { said, weeks }: StopPart,
  table: ReturnType<typeof tablesFor>['table'],
  reader: Reader,
): string =>
  section(
    'When to stop feeding',
    [
      ...said.map((line) => paragraph(line)),
      table(
        ['age', 'day', 'live', 'dressed', 'feed', 'a gain', 'cost', 'so far', 'the next'],
        weeks.map((w) => [
          `${formatValue(w.ageDays, 'day', reader)}${w.isPlanned ? ', planned' : ''}`,
          formatDayWithoutWeekday(String(w.on.value), reader),
          ...[w.liveEach, w.dressedEach, w.feed, w.conversion, w.cost, w.soFar, w.next],
        ]),
      ),
    ].join('\n'),
  );

const agesText = (
  { said, quarters }: LayAges,
  table: ReturnType<typeof tablesFor>['table'],
  reader: Reader,
): string =>
  section(
    'What a dozen costs as they grow old',
    [
      ...said.map((line) => paragraph(line)),
      table(
        ['quarter from', 'weeks old', 'eggs', 'feed', 'feed a dozen', 'so far, raising them too'],
        quarters.map((q) => [
          formatDayWithoutWeekday(String(q.from.value), reader),
          ...[q.ageWeeks, q.eggs, q.feed, q.feedCost, q.soFar],
        ]),
      ),
    ].join('\n'),
  );

const movesText = (
  { inputs, bill, each }: WhatMoves,
  table: ReturnType<typeof tablesFor>['table'],
  reader: Reader,
): string =>
  section(
    'What moves it most, by what sources leave open',
    [
      table(
        ['', each ? 'at best' : 'the bill, at best', 'at worst', 'because'],
        [
          ...inputs.map(({ what, low, high, because }) => [
            what,
            low.each ?? low.bill,
            high.each ?? high.bill,
            because,
          ]),
        ],
      ),
      paragraph(
        `All together: ${[...(each ? [each] : []), bill]
          .map((of) => `${formatValue(of.value, of.unit, reader)} (${rangeText(of, reader)})`)
          .join('; ')}. They are taken to have nothing to do with one another.`,
      ),
    ].join('\n'),
  );
