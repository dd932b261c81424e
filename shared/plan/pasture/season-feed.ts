import type { Formula } from '../../explain/formula.js';
import type { SeasonBooks } from '../../pasture/season-books.js';
import type { PastureContext } from './pasture-context.js';

export const seasonFeedFormulas = {
  short: {
    id: 'grass-short',
    title: 'Feed the grass does not give',
    words:
      'What the herds need between their first and last day on grass, less what they eat of it, summed over those days.',
    symbols: 'F = Σ max(0, need − eaten)',
    sources: ['ARITHMETIC'],
    mark: 'computed',
  },
} satisfies Record<string, Formula>;

interface Grazing {
  readonly first: number;
  readonly last: number;
}

/** First and last day a herd grazes, or undefined when it never does. */
export function grazingOf(books: SeasonBooks, herd: number): Grazing | undefined {
  const stays = books.stays.filter((s) => s.herd === herd);
  if (stays.length === 0) return undefined;
  const last = stays.at(-1)!;
  return { first: stays[0]!.from, last: last.from + last.days - 1 };
}

/** Feed beside grass over the plan, kg of dry matter. */
export interface SeasonFeed {
  readonly inSeasonKg: number;
  readonly outsideKg: number;
  /** Both together. */
  readonly allKg: number;
  readonly firstShort: number | undefined;
  readonly lastShort: number | undefined;
  readonly shortDays: number;
}

/** What the herds are fed beside grass, between their first and last day on it and outside of them. */
export function seasonFeed(
  { span, herdDays, tables }: PastureContext,
  books: SeasonBooks,
  headShare = 1,
): SeasonFeed {
  const { shortShare } = tables.judgements.grazing;
  let inSeasonKg = 0;
  let outsideKg = 0;
  let allKg = 0;
  let firstShort: number | undefined;
  let lastShort: number | undefined;
  let shortDays = 0;
  books.hayKg.forEach((hay, h) => {
    const { demandKg, grassKg } = herdDays[h]!;
    const grazing = grazingOf(books, h);
    for (let i = span.from; i < span.to; i++) {
      const inQuarantine = (demandKg[i]! - grassKg[i]!) * headShare;
      outsideKg += inQuarantine;
      allKg += inQuarantine + hay[i]!;
      const isIn = grazing !== undefined && grazing.first <= i && i <= grazing.last;
      if (!isIn) {
        outsideKg += hay[i]!;
        continue;
      }
      inSeasonKg += hay[i]!;
      if (hay[i]! <= shortShare.value * headShare * demandKg[i]!) continue;
      shortDays++;
      if (firstShort === undefined || i < firstShort) firstShort = i;
      if (lastShort === undefined || lastShort < i) lastShort = i;
    }
  });
  return { inSeasonKg, outsideKg, allKg, firstShort, lastShort, shortDays };
}

/** What all herds need over the plan, kg of dry matter. */
export function needKg({ herdDays, span }: PastureContext): number {
  return sumFrom(
    herdDays.map((days) => days.demandKg),
    span.from,
    span.to,
  );
}

/** Days of a plan summed over herds. */
export function sumFrom(series: readonly Float64Array[], from: number, to: number): number {
  let sum = 0;
  for (const values of series) for (let i = from; i < to; i++) sum += values[i]!;
  return sum;
}
