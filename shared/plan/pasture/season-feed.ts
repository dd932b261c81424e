import type { SeasonBooks } from '../../pasture/season-books.js';
import type { PastureContext } from './pasture-context.js';

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
    }
  });
  return { inSeasonKg, outsideKg, allKg, firstShort, shortDays };
}
