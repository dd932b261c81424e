import type { PlainDate } from '../calendar/plain-date.js';
import { whole } from './bounds.js';
import { number, optional, row, yesNo, type RowOf } from './field.js';
import { workKey } from './words.js';

/** What a household says of a paddock that was mown. */
export const paddockMownFields = row('PaddockMown', {
  /** Topped: what was cut is left lying. */
  isLeftLying: optional(yesNo('Left lying')),
  bales: optional(
    number('Made of it', whole(0, 100_000, 'bales', 'Count the bales that came off this paddock.')),
  ),
  /** Key of the work whose tick told it. */
  work: optional(workKey('Work that was ticked')),
});
export type PaddockMown = RowOf<typeof paddockMownFields>;

/** A paddock that was mown on a day, as it was told. */
export interface Mowing extends PaddockMown {
  readonly id: string;
  readonly paddockId: string;
  readonly date: PlainDate;
}

/** The work that a paddock is mown or topped by. */
export interface MowingWork {
  readonly key: string;
  /** First of its days; of what was ticked, the day it was done. */
  readonly from: PlainDate;
  readonly paddockIds: readonly string[];
  readonly isLeftLying: boolean;
}

/** Marks of goes of mowing and topping in keys of work, before their numbers. */
export const GO_LETTERS = { mowing: 'h', topping: 't' } as const;

/** Which go of a kind, from 0, a key of work mows or tops; undefined for all other work. */
export function goInKey(key: string, kind: keyof typeof GO_LETTERS): number | undefined {
  const found = /\.([ht])(\d+)\.(?:hay\.mow|grass\.top)$/.exec(key);
  return found?.[1] === GO_LETTERS[kind] ? Number(found[2]) : undefined;
}

/** Whether a key of work is of mowing or topping. */
export const isMowingWork = (key: string): boolean =>
  goInKey(key, 'mowing') !== undefined || goInKey(key, 'topping') !== undefined;
