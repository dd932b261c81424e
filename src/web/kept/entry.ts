import type { Progress } from '../../../shared/farm/job.js';
import type { Seen } from '../../../shared/farm/seen.js';
import type { FieldProblem } from '../../../shared/problems/field-problem.js';
import type { ToldFact, ToldKind } from '../../../shared/farm/told-fact.js';

/** What is said of a piece of work, or that the last of it is taken back. */
export type SaidOfWork = Progress & { readonly undo?: boolean };

/** A fact as a form says it. */
export interface SaidFact {
  readonly kind: ToldKind;
  readonly about: string;
  readonly on: string;
  readonly details: object;
  readonly replaces?: string;
  /** Both are so: the service keeps it beside what somebody else told. */
  readonly isBeside?: boolean;
}

/** What is taken back: a fact by its id, or what was told of something, of one day or the last. */
export type TakenBack =
  | { readonly id: string }
  | { readonly kind: ToldKind; readonly about: string; readonly on?: string };

/** Something that somebody told this phone, and that the service is to know. */
export type Message =
  | { readonly does: 'tell'; readonly facts: readonly SaidFact[] }
  | { readonly does: 'work'; readonly said: SaidOfWork }
  | { readonly does: 'take-back'; readonly of: TakenBack };

/** What an answer was that stands in the way. */
export interface Refusal {
  readonly title: string;
  readonly status: number;
  readonly detail: string;
  readonly problems?: readonly (FieldProblem & { readonly text: string })[];
}

/** A message on its way. It is kept on the phone until the service has it. */
export interface Entry {
  /** Its place in the order in which things were told. */
  readonly n: number;
  /** Under which the service keeps it once, however often it is sent. */
  readonly key: string;
  readonly farmId: string;
  /** By the service's clock. */
  readonly madeAt: string;
  readonly message: Message;
  /** What it is called on the screen where it was told. */
  readonly name?: string;
  /** What a tick shows until the day was read again. */
  readonly shows?: boolean;
  readonly seen?: Seen;
  readonly saidBy?: string;
  readonly state: 'waiting' | 'sent' | 'asked' | 'refused';
  /** It was sent and no answer came: the service may have it. */
  readonly mayBeThere?: boolean;
  /** By the service's clock: what was read later holds it. */
  readonly sentAt?: string;
  /** Ids of the facts that it became. */
  readonly ids?: readonly string[];
  /** What somebody else told meanwhile, where it is asked which holds. */
  readonly theirs?: readonly ToldFact[];
  readonly refusal?: Refusal;
}

/** What an entry is about: those about the same go one after another. */
export function subjectsOf({ farmId, message }: Entry): readonly string[] {
  const of = (about: string): string => `${farmId} ${about}`;
  if (message.does === 'tell') return message.facts.map(({ about }) => of(about));
  if (message.does === 'work') return [of(message.said.key)];
  return 'id' in message.of ? [] : [of(message.of.about)];
}

/** Those that wait until one that is asked about or refused before them is settled. */
export function heldBack(entries: readonly Entry[]): ReadonlySet<Entry> {
  const stopped = new Set<string>();
  const held = new Set<Entry>();
  for (const entry of entries.filter(isUnsent)) {
    const subjects = subjectsOf(entry);
    if (entry.state === 'waiting' && subjects.some((each) => stopped.has(each))) held.add(entry);
    if (entry.state !== 'waiting' || held.has(entry))
      for (const each of subjects) stopped.add(each);
  }
  return held;
}

/** Not with the service yet. */
export const isUnsent = ({ state }: Entry): boolean => state !== 'sent';
