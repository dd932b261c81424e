import { isSame } from './merge-row.js';
import { holding, type ToldFact } from './told-fact.js';
import type { Bought, Calved } from './season-facts.js';
import type { Seen } from './seen.js';

type Fact = Pick<ToldFact, 'id' | 'kind' | 'about' | 'on' | 'toldAt' | 'key'> & {
  readonly details: object;
  readonly replaces?: string;
  readonly takenBackAt?: string;
};

/** What is told, as far as its place among what was told before goes by it. */
interface Said {
  readonly on: string;
  readonly details: object;
  readonly replaces?: string | undefined;
  readonly seen?: Seen | undefined;
  readonly isBeside?: boolean | undefined;
}

/** A fact takes the place of another, or of none; or somebody told another that was not seen. */
export type Place<F> = { readonly replaces?: F } | { readonly clashesWith: F } | 'not-there';

/** Which facts of its kind about the same a new one takes the place of. */
export type ReplacesRule =
  | 'the-last'
  | 'the-one-of-that-day'
  /** What the tick of a piece of work tells: two people who tick it off mean the same thing. */
  | 'the-same-of-its-work'
  /** Births of one cow with a name, as far as they lie too near each other to be two calvings. */
  | 'the-calving-of-its-cow'
  | 'none';

/** Whether a new fact takes the place of another of its kind about the same. */
export function takesPlaceOf(
  rule: ReplacesRule,
  said: Pick<Said, 'on' | 'details'>,
  other: Pick<Said, 'on' | 'details'>,
): boolean {
  if (rule === 'the-last') return true;
  if (rule === 'the-one-of-that-day') return said.on === other.on;
  if (rule === 'the-calving-of-its-cow') {
    const cow = cowThatCalved(said.details);
    return cow !== undefined && cow === cowThatCalved(other.details);
  }
  const purchase = purchaseOf(said.details);
  return rule !== 'none' && purchase !== undefined && isSame(purchase, purchaseOf(other.details));
}

/** What a tick told as brought home, but for how much of it and what it cost. */
function purchaseOf(details: object): readonly unknown[] | undefined {
  const { work, what, name, eachKg } = details as Partial<Bought>;
  return work === undefined ? undefined : [work, what, name, eachKg];
}

/** Which cow a calf was born of; undefined where none was, or of a cow without a name. */
export function cowThatCalved(details: object): string | undefined {
  const { cowId, calves = 0, dead = 0 } = details as Partial<Calved>;
  return 0 < calves + dead ? cowId : undefined;
}

/** Whether a fact was not known to somebody. Who does not say what was seen has seen all. */
export const isUnseen = (
  { toldAt, key }: Pick<Fact, 'toldAt' | 'key'>,
  seen: Seen | undefined,
): boolean => seen !== undefined && seen.until < toldAt && seen.ownKeys?.includes(key) !== true;

/**
 * The place of a new fact among those of its kind about the same. It clashes with the one that it
 * would replace when that one says something else and was not known to whoever tells the new one.
 *
 * @param facts all of that kind about the same, with those that were replaced and taken back
 * @returns 'not-there' when it names a fact to replace that does not hold
 */
export function placeAmong<F extends Fact>(
  facts: readonly F[],
  said: Said,
  rule: ReplacesRule,
): Place<F> {
  const held = holding(facts as never) as unknown as readonly F[];
  const { replaces, seen } = said;
  if (replaces !== undefined) {
    const named = held.find((fact) => fact.id === replaces);
    if (named) return { replaces: named };
    const after = lastAfter(facts, held, replaces);
    return after && isUnseen(after, seen) ? { clashesWith: after } : 'not-there';
  }
  if (rule === 'none' || said.isBeside) return {};
  const last = held.filter((fact) => takesPlaceOf(rule, said, fact)).at(-1);
  if (!last) return {};
  const isOtherDay = rule !== 'the-last' && last.on !== said.on;
  const saysOther = isOtherDay || !isSame(last.details, said.details);
  const isClash = isUnseen(last, seen) && saysOther;
  return isClash ? { clashesWith: last } : { replaces: last };
}

/** The fact that holds now in the place of one that was replaced. */
function lastAfter<F extends Fact>(
  facts: readonly F[],
  held: readonly F[],
  id: string,
): F | undefined {
  const told = facts.filter(({ takenBackAt }) => takenBackAt === undefined);
  for (let at = id; ;) {
    const next = told.find(({ replaces }) => replaces === at);
    if (!next) return held.find((fact) => fact.id === at);
    at = next.id;
  }
}
