import { holding, type FactOf, type ToldKind } from '../../farm/told-fact.js';

/** Kinds of which the last time says most of what the next one is like. */
const TOLD_ALIKE = ['bought', 'milked', 'eggs-gone', 'gone'] as const;
export type Alike = FactOf<(typeof TOLD_ALIKE)[number]>;

export const isToldAlike = (kind: ToldKind): kind is Alike['kind'] =>
  (TOLD_ALIKE as readonly ToldKind[]).includes(kind);

type AsTold<Fact> = Fact extends Alike ? Pick<Fact, 'kind' | 'about' | 'on' | 'details'> : never;
/** Something as it was told last. */
export type LastTold = AsTold<Alike>;

/**
 * What was told last of each herd's milk, of each thing that is bought, and of eggs and birds
 * that were sold for money: what is proposed to whoever tells the next one.
 *
 * @param facts of those kinds, in the order in which they were told
 */
export function lastTold(facts: readonly Alike[]): LastTold[] {
  const last = new Map<string, Alike>();
  for (const fact of holding(facts)) {
    const key = keyOf(fact);
    const before = key === undefined ? undefined : last.get(key);
    if (key !== undefined && (before === undefined || before.on <= fact.on)) last.set(key, fact);
  }
  return [...last.values()].map(
    ({ kind, about, on, details }) => ({ kind, about, on, details }) as LastTold,
  );
}

/** Of what is told under one key only the last is proposed; undefined where it proposes nothing. */
function keyOf({ kind, about, details }: Alike): string | undefined {
  switch (kind) {
    case 'milked':
      return `${kind} ${about}`;
    case 'bought':
      return `${kind} ${details.what} ${details.name ?? ''}`;
    case 'eggs-gone':
      return details.money === undefined ? undefined : kind;
    case 'gone':
      return details.money === undefined ? undefined : `${kind} ${about}`;
  }
}
