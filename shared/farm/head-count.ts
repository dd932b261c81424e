import type { PlainDate } from '../calendar/plain-date.js';
import { whole, within } from './bounds.js';
import { choice, number, optional, row, text, yesNo, type RowOf } from './field.js';
import { date, id, price } from './words.js';

const birds = (label: string, fix: string) => number(label, whole(1, 6000, 'count', fix));

/** A box was opened, or eggs hatched: what was in it, and what of that was dead. */
export const arrivedFields = row('Arrived', {
  birds: birds('Birds in the box', 'Count the birds in the box, the dead ones too.'),
  dead: optional(
    number(
      'Dead in the box',
      whole(0, 6000, 'count', 'Count the birds that were dead when they came.'),
    ),
  ),
});
export type Arrived = RowOf<typeof arrivedFields>;

/** Why birds died, as far as the household can tell. */
export const CAUSES = [
  'not-known',
  'chilled',
  'heat',
  'piled-up',
  'predator',
  'sick',
  'hurt',
  'weak-legs',
  'other',
] as const;
export type CauseOfDeath = (typeof CAUSES)[number];

/** Birds that were found dead, or were put down. */
export const diedFields = row('Died', {
  birds: birds('Birds that died', 'Count the birds that died.'),
  cause: optional(choice('What it was', CAUSES)),
  isCulled: optional(yesNo('Put down')),
});
export type Died = RowOf<typeof diedFields>;

/** Whoever is missing then was lost without a word. */
const isLast = optional(yesNo('The last of them'));

/** Birds that were processed, with what they weighed and gave as far as it was weighed. */
export const processedFields = row('Processed', {
  birds: birds('Birds processed', 'Count the birds that were processed.'),
  liveKg: optional(
    number(
      'Live weight, all together',
      within(0.1, 60_000, 'kg', 'Give the weight of all birds alive.'),
    ),
  ),
  dressedKg: optional(
    number(
      'Dressed weight, all together',
      within(0.1, 60_000, 'kg', 'Give what all birds weigh when dressed.'),
    ),
  ),
  packs: optional(
    number(
      'Packs in the freezer',
      whole(0, 60_000, 'count', 'Count the packs that went into the freezer.'),
    ),
  ),
});
export type Processed = RowOf<typeof processedFields>;

/** Live birds that went to somebody else. */
export const goneFields = row('Gone', {
  birds: birds('Birds that went', 'Count the birds that went.'),
  how: choice('How', ['sold', 'given']),
  isLast,
  /** For all of them together. */
  money: optional(price('What they brought, all together')),
  to: optional(text('To whom', 80)),
});
export type Gone = RowOf<typeof goneFields>;

/** What can change how many birds there are: kinds of facts that a farm is told, too. */
export const HEAD_CHANGES = ['arrived', 'died', 'processed', 'gone'] as const;

/** What changed how many birds of a batch there are, on a day. */
export const headChangeFields = row('HeadChange', {
  id: optional(id()),
  batchId: id('Batch'),
  date: date('Day'),
  change: choice('What happened', HEAD_CHANGES),
  /** Of an arrival, those that were alive. */
  birds: number('Birds', whole(0, 6000, 'count', 'Count the birds.')),
  isLast,
});
export type HeadChange = RowOf<typeof headChangeFields>;

/**
 * The first day on which more birds had died or gone than there were; undefined when none.
 *
 * @param placed birds that came, where no arrival was told
 * @param changes of one batch, in any order
 */
export function shortOn(
  changes: readonly HeadChange[],
  placed = Infinity,
): { readonly date: PlainDate; readonly there: number; readonly took: number } | undefined {
  const came = changes.findLast(({ change }) => change === 'arrived')?.birds ?? placed;
  const byDay = new Map<PlainDate, number>();
  for (const { change, date: on, birds: n } of changes)
    if (change !== 'arrived') byDay.set(on, (byDay.get(on) ?? 0) + n);
  let there = came;
  for (const on of [...byDay.keys()].sort()) {
    const took = byDay.get(on)!;
    if (there < took) return { date: on, there, took };
    there -= took;
  }
  return undefined;
}

/** Birds of a batch that are taken to have come while nobody tells how many did. */
export const expectedBirds = ({
  orderedBirds,
  wantedBirds,
}: {
  readonly orderedBirds?: number | undefined;
  readonly wantedBirds: number;
}): number => orderedBirds ?? wantedBirds;

/**
 * The day on which the last of a batch died or went, as it was told: the day of those that were said
 * to be the last, else the first on which no more were there. Undefined while some are.
 *
 * @param changes of one batch, in any order
 * @param expected birds that came, where no arrival was told
 */
export function lastLeft(changes: readonly HeadChange[], expected: number): PlainDate | undefined {
  const saidLast = changes.find((each) => each.isLast);
  if (saidLast) return saidLast.date;
  let there = Math.max(
    1,
    changes.findLast(({ change }) => change === 'arrived')?.birds ?? expected,
  );
  const ends = changes.filter(({ change }) => change !== 'arrived');
  for (const { date: on, birds: n } of ends.sort((a, b) => (a.date < b.date ? -1 : 1))) {
    there -= n;
    if (there <= 0) return on;
  }
  return undefined;
}
