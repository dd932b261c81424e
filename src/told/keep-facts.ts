import { randomUUID } from 'node:crypto';
import type { EntityManager } from 'typeorm';
import type { HeldBy } from '../../shared/farm/field.js';
import { isSame } from '../../shared/farm/merge-row.js';
import { holding, type ToldFact, type ToldKind } from '../../shared/farm/told-fact.js';
import {
  TOLD_KINDS,
  toldProblems,
  type anySaid,
  type ToldOn,
} from '../../shared/farm/told-kinds.js';
import { isUnseen, placeAmong, type Place } from '../../shared/farm/told-seen.js';
import { FieldError, type FieldProblem } from '../../shared/problems/field-problem.js';
import type { Tables } from '../../shared/tables/tables.js';
import { ConflictError } from '../common/expected-version.js';
import { nextMoment } from '../rows/next-moment.js';
import { calvedBefore, tooNearToCalve } from './calved-twice.js';
import { toFact, ToldFactEntity } from './told-fact.entity.js';

/** What is said, by a client or by one of the program's own forms. */
export type Said = Omit<HeldBy<typeof anySaid>, 'details' | 'kind'> & {
  readonly kind: ToldKind;
  readonly details: object;
};

export interface Around {
  readonly farm: ToldOn;
  readonly tables: Tables;
  /** The path of a field of the k-th fact in what the client sent. */
  readonly fieldOf: (k: number, field: string) => string;
}

/** A fact as it is kept, and whether it was not known before. */
export interface Kept {
  readonly fact: ToldFact;
  readonly isNew: boolean;
}

/** Keeps facts within a write: one that was told before under its key is given back as it is. */
export async function keepFacts(
  manager: EntityManager,
  farmId: string,
  all: readonly Said[],
  { farm, tables, fieldOf }: Around,
): Promise<Kept[]> {
  const refuse = (k: number, problems: readonly FieldProblem[]): void => {
    if (problems.length === 0) return;
    throw new FieldError(problems.map((each) => ({ ...each, field: fieldOf(k, each.field) })));
  };
  const first = await nextMoment(manager, farmId);
  const kept: Kept[] = [];
  const clashes: Clash[] = [];
  for (const [k, said] of all.entries()) {
    const before = said.key
      ? await manager.findOneBy(ToldFactEntity, { farmId, key: said.key })
      : undefined;
    if (before) {
      refuse(k, isSaidAgain(before, said) ? [] : [otherUnderKey(said.key!)]);
      kept.push({ fact: toFact(before), isNew: false });
      continue;
    }
    const details = { ...said.details } as Record<string, unknown>;
    refuse(k, toldProblems({ ...said, details } as Parameters<typeof toldProblems>[0], farm));
    const together = kept.filter(({ isNew }) => isNew).map(({ fact }) => fact.id);
    const place = await placeOf(manager, farmId, withOwn(said, all), { together, tables });
    refuse(k, 'problem' in place ? [place.problem] : []);
    if ('clashesWith' in place) {
      clashes.push({ theirs: place.clashesWith, yours: said });
      continue;
    }
    const id = randomUUID();
    const { kind, about, on, saidBy = null, key = id } = said;
    const row = {
      ...{ id, farmId, kind, about, on, details, saidBy, key, takenBackAt: null },
      toldAt: new Date(first + k).toISOString(),
      replaces: ('replaces' in place ? place.replaces?.id : undefined) ?? null,
    };
    // Not `save`, which would first ask whether the new id is there.
    await manager.insert(ToldFactEntity, row as object);
    kept.push({ fact: toFact(row), isNew: true });
  }
  if (0 < clashes.length) throw toldOtherwise(clashes);
  return kept;
}

const isSaidAgain = (before: ToldFactEntity, { kind, about, on, details, saidBy }: Said): boolean =>
  isSame(
    [before.kind, before.about, before.on, before.details, before.saidBy ?? undefined],
    [kind, about, on, details, saidBy],
  );

const otherUnderKey = (given: string): FieldProblem => ({
  field: 'key',
  code: 'conflict',
  given,
  fix: 'Something else was told under this key. Give what is new a key of its own.',
});

/** The place of a new fact among those of its kind about the same. */
async function placeOf(
  manager: EntityManager,
  farmId: string,
  said: Said,
  { together, tables }: { readonly together: readonly string[]; readonly tables: Tables },
): Promise<Exclude<Place<ToldFact>, 'not-there'> | { problem: FieldProblem }> {
  const { kind, about, on, replaces } = said;
  const { replaces: rule, canStandBeside = false } = TOLD_KINDS[kind];
  if (said.isBeside && !canStandBeside && rule !== 'none') return { problem: notBeside };
  if (replaces === undefined && rule === 'none') return {};
  const isOfDay = replaces === undefined && rule === 'the-one-of-that-day';
  const where = { farmId, kind, about, ...(isOfDay ? { on } : {}) };
  const all = (await manager.findBy(ToldFactEntity, where)).map(toFact);
  const isOfCow = rule === 'the-calving-of-its-cow' && replaces === undefined;
  // Two lines of one trip are told together: neither takes the place of the other.
  const facts =
    rule === 'the-same-of-its-work'
      ? all.filter(({ id }) => !together.includes(id))
      : isOfCow
        ? tooNearToCalve(all, on, tables)
        : all;
  const place = placeAmong(facts, said, rule);
  if (isOfCow && typeof place === 'object' && 'replaces' in place && place.replaces) {
    const { replaces: before } = place;
    // Whoever had seen it tells of a second calf; on another phone it is the same calving told again.
    const isSaidTwice = before.on === on && isSame(before.details, said.details);
    const isAgain = isSaidTwice && isUnseen(before, said.seen);
    if (!isAgain) return { problem: await calvedBefore(manager, farmId, on, before.on) };
  }
  if (place !== 'not-there') return place;
  return {
    problem: {
      field: 'replaces',
      code: 'not-allowed',
      given: replaces,
      allowed: holding(facts)
        .slice(-20)
        .map(({ id }) => id),
      fix: 'Name a fact of the same kind, about the same, that still holds.',
    },
  };
}

/** Facts that are told together know of each other. */
function withOwn(said: Said, all: readonly Said[]): Said {
  if (!said.seen) return said;
  const together = all.flatMap(({ key }) => key ?? []);
  return { ...said, seen: { ...said.seen, ownKeys: [...(said.seen.ownKeys ?? []), ...together] } };
}

const notBeside: FieldProblem = {
  field: 'isBeside',
  code: 'not-allowed',
  given: true,
  allowed: ['false'],
  fix: 'Of this only one can be so at a time: leave it out.',
};

/** A fact that holds, and another that would take its place unseen. */
interface Clash {
  readonly theirs: ToldFact;
  readonly yours: object;
}

/** Somebody told something else of the same meanwhile: both are given, one for one. */
export const toldOtherwise = (clashes: readonly Clash[]): ConflictError =>
  new ConflictError(
    clashes.map(({ theirs }) => theirs),
    clashes.map(({ yours }) => yours),
    'Somebody else told something else of the same meanwhile. Nothing was saved: say which holds.',
  );
