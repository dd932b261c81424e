import type { FarmPicture } from './picture.js';
import {
  eggCountsOf,
  feedOpeningsOf,
  headChangesOf,
  heatOutsOf,
  weighingsOf,
  type BirdsWeighed,
  type EggsWereCounted,
  type FactOf,
  type HeadsChanged,
  type ToldFact,
  type ToldKind,
} from './told-fact.js';

const HEADS = ['arrived', 'died', 'processed', 'gone'] as const;
const isOneOf = (kinds: readonly ToldKind[], kind: ToldKind): boolean => kinds.includes(kind);

/** Kinds of facts that a plan of their batch goes by. */
export const MOVES_BATCH = [
  ...HEADS,
  ...(['weighed', 'eggs-counted', 'feed-opened', 'heat-works'] as const),
] as const satisfies readonly ToldKind[];

export type FactOfBatch =
  | HeadsChanged
  | BirdsWeighed
  | EggsWereCounted
  | FactOf<'feed-opened'>
  | FactOf<'heat-works'>;
export type ToldOfBatch = readonly FactOfBatch[];

const isOfBatch = (fact: ToldFact): fact is FactOfBatch => isOneOf(MOVES_BATCH, fact.kind);

/** The batch whose plan goes by a fact; undefined where none does. */
export const batchOfFact = (fact: ToldFact): string | undefined =>
  isOfBatch(fact) ? fact.about : undefined;

/**
 * A picture as if one fact of a batch had not been told: what it took the place of holds again.
 *
 * @param facts of that batch, of the kinds that its plan goes by, none of them taken back
 */
export function pictureWithout(
  picture: FarmPicture,
  facts: ToldOfBatch,
  { id, about }: Pick<ToldFact, 'id' | 'about'>,
): FarmPicture {
  const rest = facts.filter((fact) => fact.id !== id);
  const isOther = ({ batchId }: { readonly batchId: string }): boolean => batchId !== about;
  const weighed = rest.filter((fact): fact is BirdsWeighed => fact.kind === 'weighed');
  const counted = rest.filter((fact): fact is EggsWereCounted => fact.kind === 'eggs-counted');
  const opened = rest.filter((fact): fact is FactOf<'feed-opened'> => fact.kind === 'feed-opened');
  const heat = rest.filter((fact): fact is FactOf<'heat-works'> => fact.kind === 'heat-works');
  const heads = rest.filter((fact): fact is HeadsChanged => isOneOf(HEADS, fact.kind));
  return {
    ...picture,
    headChanges: [...picture.headChanges.filter(isOther), ...headChangesOf(heads)],
    weighings: [...picture.weighings.filter(isOther), ...weighingsOf(weighed)],
    eggCounts: [...picture.eggCounts.filter(isOther), ...eggCountsOf(counted)],
    feedOpenings: [...(picture.feedOpenings ?? []).filter(isOther), ...feedOpeningsOf(opened)],
    heatOuts: [...(picture.heatOuts ?? []).filter(isOther), ...heatOutsOf(heat)],
  };
}
