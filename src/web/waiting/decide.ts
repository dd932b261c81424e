import type { ToldFact } from '../../../shared/farm/told-fact.js';
import { TOLD_KINDS } from '../../../shared/farm/told-kinds.js';
import { takesPlaceOf } from '../../../shared/farm/told-seen.js';
import { sendAgain, throwAway } from '../api/outbox.js';
import type { Entry, SaidFact } from '../kept/entry.js';

/** Which of two that clash holds. */
export type Holds = 'theirs' | 'mine' | 'both';

/** What of an entry clashes with a fact that somebody else told. */
export const mineBeside = ({ message }: Entry, theirs: ToldFact): SaidFact | undefined =>
  message.does === 'tell' ? message.facts.find((fact) => isOfSame(fact, theirs)) : undefined;

const isOfSame = (fact: SaidFact, other: ToldFact): boolean =>
  fact.kind === other.kind &&
  fact.about === other.about &&
  (fact.replaces !== undefined || takesPlaceOf(TOLD_KINDS[other.kind].replaces, fact, other));

/** Whether two of the kind can both be so. */
export const canBothHold = ({ message }: Entry, { kind }: ToldFact): boolean =>
  message.does === 'tell' && TOLD_KINDS[kind].canStandBeside === true;

/** A cow calved once: the day that holds is said in the place of the other, not beside it. */
function inPlaceOf(fact: SaidFact, theirs: readonly ToldFact[]): SaidFact {
  if (TOLD_KINDS[fact.kind].replaces !== 'the-calving-of-its-cow') return fact;
  const other = theirs.find((each) => isOfSame(fact, each));
  return other ? { ...fact, replaces: other.id } : fact;
}

/** Does as somebody decided, one answer for each fact that was asked about. */
export async function decide(entry: Entry, answers: readonly Holds[]): Promise<void> {
  const { message, seen, theirs = [] } = entry;
  const isTheirs = (fact: SaidFact): boolean =>
    theirs.some((other, k) => answers[k] === 'theirs' && isOfSame(fact, other));
  const isBeside = (fact: SaidFact): boolean =>
    theirs.some((other, k) => answers[k] === 'both' && isOfSame(fact, other));
  const until = theirs
    .map(({ toldAt }) => toldAt)
    .sort()
    .at(-1);
  const known = until === undefined ? {} : { seen: { ...seen, until } };
  if (message.does !== 'tell') {
    return answers.includes('theirs') ? throwAway(entry) : sendAgain(entry, known);
  }
  const facts = message.facts
    .filter((fact) => !isTheirs(fact))
    .map((fact) => (isBeside(fact) ? { ...fact, isBeside: true } : fact))
    .map((fact) => inPlaceOf(fact, theirs));
  if (facts.length === 0) return throwAway(entry);
  return sendAgain(entry, { ...known, message: { does: 'tell', facts } });
}
