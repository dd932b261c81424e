import { dateIn } from '../../calendar/month-day.js';
import { addDays, yearOf, type PlainDate } from '../../calendar/plain-date.js';
import type { Formula, Sourced } from '../../explain/formula.js';
import {
  datedFact,
  fromRow,
  fromJudgement,
  input,
  type Quantity,
  type QuantityInput,
} from '../../explain/quantity.js';
import type { Farm } from '../../farm/farm.js';
import type { FarmPicture } from '../../farm/picture.js';
import type { Tables } from '../../tables/tables.js';
import type { FrostYear } from '../../weather/frost-year.js';
import type { PlaceFrost } from '../place-frost.js';
import type { YearSpan } from './year-span.js';

export const yearFrostFormulas = {
  frost: {
    id: 'frost-of-the-year',
    title: 'Last and first frost',
    words:
      'Usual: in half of the years frost ends later, or begins earlier. Safe: in one year of ten. By the farm’s own dates (yours, or estimated for its place), its daily record of ten years or more, or the chance of one night after the other.',
    symbols: 'P(frost on D or later) = 1 ÷ 2; 1 ÷ 10',
    sources: ['ARITHMETIC'],
    mark: 'computed',
  },
} satisfies Record<string, Formula>;

/** A winter of the strip. */
export interface Frost {
  readonly from: PlainDate;
  readonly until: PlainDate;
  /** Frost in most years, rather than in some. */
  readonly isUsual: boolean;
}

/** Every winter that reaches into the strip, from fall to spring, usual within safe. */
export function frostsOf({ last, first }: FrostYear, { from, until }: YearSpan): Frost[] {
  if (!last || !first) return [];
  const years = [yearOf(from) - 1, yearOf(from), yearOf(until)];
  return (['safe', 'usual'] as const).flatMap((kind) =>
    years
      .map((year) => {
        const begins = dateIn(year, first[kind]);
        const ends = dateIn(first[kind] < last[kind] ? year : year + 1, last[kind]);
        return { from: begins, until: addDays(ends, 1), isUsual: kind === 'usual' };
      })
      .filter((winter) => winter.from < until && from < winter.until),
  );
}
export function turnsOf(
  { farm, climate }: Pick<FarmPicture, 'farm' | 'climate'>,
  tables: Tables,
  frost: PlaceFrost,
  span: YearSpan,
): Quantity[] {
  const { ownFrostC, sureShare } = tables.judgements.work;
  const isSafe = farm.frostDatesAre === 'safe';
  const of = (which: 'last' | 'first', kind: 'usual' | 'safe', label: string): Quantity[] => {
    const day = frost[which]?.[kind];
    if (day === undefined) return [];
    const isOwn = frost.basis === 'nights' && isSafe === (kind === 'safe');
    return [yearOf(span.from), yearOf(span.until)]
      .map((year) => dateIn(year, day))
      .filter((date) => span.from <= date && date < span.until)
      .map((date) =>
        datedFact(
          label,
          date,
          yearFrostFormulas.frost,
          isOwn
            ? [ownDate(farm, which, date)]
            : [
                fromJudgement(ownFrostC),
                fromJudgement(sureShare),
                input('Weather used', climate.label, 'text'),
              ],
          isOwn ? {} : { rows: nightRows(tables) },
        ),
      );
  };
  return [
    ...of('last', 'usual', 'Usual last frost'),
    ...of('last', 'safe', 'Safe from frost after'),
    ...of('first', 'safe', 'Safe from frost until'),
    ...of('first', 'usual', 'Usual first frost'),
  ].sort((a, b) => (a.value < b.value ? -1 : 1));
}

/** The date of the farm itself, which may be an estimate for its place. */
function ownDate(farm: Farm, which: 'last' | 'first', date: PlainDate): QuantityInput {
  const field = which === 'last' ? 'lastFrost' : 'firstFrost';
  const isEstimate = farm.estimated?.includes(field) ?? false;
  return fromRow(
    farm,
    field,
    isEstimate ? 'Estimated for your place' : 'Your own date',
    date,
    'date',
  );
}

/** What single nights rest on. */
export const nightRows = ({ nights }: Tables): Sourced[] => [nights.spread, nights.likeness];
