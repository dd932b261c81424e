import { Injectable, NotFoundException } from '@nestjs/common';
import { randomUUID } from 'node:crypto';
import { IsNull, type EntityManager } from 'typeorm';
import { plainDateAt } from '../../shared/calendar/plain-date.js';
import { isSame } from '../../shared/farm/merge-row.js';
import {
  holding,
  type FactOf,
  type HerdMove,
  type ToldFact,
  type ToldKind,
} from '../../shared/farm/told-fact.js';
import { TOLD_KINDS, toldProblems, type ToldOn } from '../../shared/farm/told-kinds.js';
import { FieldError, type FieldProblem } from '../../shared/problems/field-problem.js';
import { isId } from '../database/ids.js';
import { Database } from '../database/database.js';
import { FarmEntity } from '../farms/farm.entity.js';
import { HerdEntity } from '../herds/herd.entity.js';
import { PaddockEntity } from '../paddocks/paddock.entity.js';
import { settlePlaces } from './check-places.js';
import { toFact, ToldFactEntity } from './told-fact.entity.js';
import type { SaidDto, ToldQueryDto } from './told.dto.js';

/** Facts of one farm: twenty years of a household that tells ten a day, and more. */
const MOST_FACTS = 100_000;
const PAGE = 200;
const ROWS_AT_ONCE = 200;

/** Some of a farm's facts, the newest first, and how many there are. */
export interface ToldPage {
  readonly facts: readonly ToldFact[];
  readonly total: number;
  readonly skip: number;
}

/** What is said, by a client or by one of the program's own forms. */
export type Said = Omit<SaidDto, 'details'> & { readonly details: object };

/** Keeps what is told of a farm. Nothing is ever overwritten or deleted: it is taken back. */
@Injectable()
export class ToldService {
  constructor(private readonly database: Database) {}

  /**
   * Keeps facts, all or none. One that was told before under the same key is given back as it is.
   *
   * @param fieldOf the path of a field of the k-th fact in what the client sent
   */
  tell(
    farmId: string,
    all: readonly Said[],
    fieldOf = (k: number, field: string): string => `facts.${k}.${field}`,
  ): Promise<ToldFact[]> {
    return this.database.write(farmId, async (manager) => {
      const farm = await knownOf(manager, farmId);
      const told: ToldFact[] = [];
      for (const [k, said] of all.entries()) {
        const at = (problem: FieldProblem): FieldProblem => ({
          ...problem,
          field: fieldOf(k, problem.field),
        });
        told.push(await keepOne(manager, farmId, said, { farm, at }));
      }
      await this.settle(manager, farmId, told, fieldOf(0, 'details.paddockId'));
      return told;
    });
  }

  /** Takes a fact back: what it had replaced holds again. Taking it back twice is the same. */
  async takeBack(farmId: string, id: string): Promise<void> {
    await this.database.write(farmId, async (manager) => {
      const row = isId(id) ? await manager.findOneBy(ToldFactEntity, { id, farmId }) : null;
      if (!row) {
        throw new NotFoundException(`This farm was told nothing with the id "${id.slice(0, 64)}".`);
      }
      await this.takeBackAll(farmId, [id]);
      await this.settle(manager, farmId, [toFact(row)], 'id');
    });
  }

  /** Takes facts back, whatever they had replaced as well. */
  async takeBackAbout<Kind extends ToldKind>(
    farmId: string,
    kind: Kind,
    isMeant: (fact: FactOf<Kind>) => boolean,
  ): Promise<number> {
    return this.database.write(farmId, async () => {
      const meant = (await this.factsOf(farmId, kind)).filter(isMeant);
      await this.takeBackAll(
        farmId,
        meant.map(({ id }) => id),
      );
      return meant.length;
    });
  }

  /** Gives the readings of a paddock to those it was cut into; they stay told of the whole as well. */
  async carryOver(farmId: string, from: string, to: readonly string[]): Promise<void> {
    await this.database.write(farmId, async (manager) => {
      const held = holding(await this.factsOf(farmId, 'grass-reading')).filter(
        ({ about }) => about === from,
      );
      const rows = to.flatMap((about) =>
        held.map(({ replaces: _replaces, ...fact }) => {
          const id = randomUUID();
          return { ...fact, farmId, about, id, key: id };
        }),
      );
      await manager.save(manager.create(ToldFactEntity, rows), { chunk: ROWS_AT_ONCE });
    });
  }

  /** Every fact of a kind that was not taken back, in the order in which they were told. */
  async factsOf<Kind extends ToldKind>(
    farmId: string,
    kind: Kind,
    from?: string,
  ): Promise<FactOf<Kind>[]> {
    // Ten years of a farm are thousands of facts: rows are read raw, without a class for each.
    const query = this.rows(farmId).andWhere('f.kind = :kind', { kind });
    if (from !== undefined) query.andWhere('f.on >= :from', { from });
    query.andWhere('f.takenBackAt IS NULL').orderBy('f.toldAt', 'ASC').addOrderBy('f.id', 'ASC');
    return (await query.getRawMany<RawFact>()).map(factOfRaw) as FactOf<Kind>[];
  }

  async find(farmId: string, asked: ToldQueryDto): Promise<ToldPage> {
    const { kind, about, from, history = false, skip = 0, take = PAGE } = asked;
    const query = this.rows(farmId);
    if (kind !== undefined) query.andWhere('f.kind = :kind', { kind });
    if (about !== undefined) query.andWhere('f.about = :about', { about });
    if (from !== undefined) query.andWhere('f.on >= :from', { from });
    if (!history) {
      query
        .andWhere('f.takenBackAt IS NULL')
        .andWhere(
          `NOT EXISTS ${query
            .subQuery()
            .select('1')
            .from(ToldFactEntity, 'later')
            .where('later.farmId = f.farmId AND later.replaces = f.id')
            .andWhere('later.takenBackAt IS NULL')
            .getQuery()}`,
        );
    }
    const total = await query.getCount();
    const rows = await query
      .orderBy('f.on', 'DESC')
      .addOrderBy('f.toldAt', 'DESC')
      .addOrderBy('f.id', 'DESC')
      .offset(skip)
      .limit(take)
      .getRawMany<RawFact>();
    return { facts: rows.map(factOfRaw), total, skip };
  }

  private async settle(
    manager: EntityManager,
    farmId: string,
    told: readonly ToldFact[],
    field: string,
  ): Promise<void> {
    const changed = told.filter((fact): fact is HerdMove => fact.kind === 'herd-move');
    if (changed.length === 0) return;
    const all = await this.factsOf(farmId, 'herd-move');
    await settlePlaces(manager, farmId, { changed, all }, field);
  }

  private rows(farmId: string) {
    const query = this.database.manager.createQueryBuilder(ToldFactEntity, 'f').select([]);
    for (const name of COLUMNS) query.addSelect(`f.${name}`, name);
    return query.where('f.farmId = :farmId', { farmId });
  }

  private async takeBackAll(farmId: string, ids: readonly string[]): Promise<void> {
    const takenBackAt = new Date().toISOString();
    await this.database.write(farmId, async (manager) => {
      for (const id of ids) {
        await manager.update(
          ToldFactEntity,
          { id, farmId, takenBackAt: IsNull() },
          { takenBackAt },
        );
      }
    });
  }
}

const COLUMNS = [
  'id',
  'kind',
  'about',
  'on',
  'details',
  'saidBy',
  'toldAt',
  'key',
  'replaces',
  'takenBackAt',
] as const;

type RawFact = Record<(typeof COLUMNS)[number], string | null>;

const factOfRaw = (raw: RawFact): ToldFact =>
  toFact({ ...raw, details: JSON.parse(raw.details!) as object } as unknown as ToldFactEntity);

async function knownOf(manager: EntityManager, farmId: string): Promise<ToldOn> {
  const { timeZone } = await manager.findOneByOrFail(FarmEntity, { id: farmId });
  const idsOf = async (target: typeof HerdEntity | typeof PaddockEntity): Promise<string[]> =>
    (await manager.find(target, { where: { farmId }, select: { id: true } })).map(({ id }) => id);
  return {
    today: plainDateAt(Date.now(), timeZone),
    herdIds: await idsOf(HerdEntity),
    paddockIds: await idsOf(PaddockEntity),
  };
}

interface Around {
  readonly farm: ToldOn;
  readonly at: (problem: FieldProblem) => FieldProblem;
}

async function keepOne(
  manager: EntityManager,
  farmId: string,
  said: Said,
  { farm, at }: Around,
): Promise<ToldFact> {
  const details = { ...said.details } as Record<string, unknown>;
  const before = said.key && (await manager.findOneBy(ToldFactEntity, { farmId, key: said.key }));
  if (before) {
    if (isSaidAgain(before, said)) return toFact(before);
    throw new FieldError([at(otherUnderKey(said.key!))]);
  }
  const problems = toldProblems({ ...said, details } as Parameters<typeof toldProblems>[0], farm);
  if (0 < problems.length) throw new FieldError(problems.map(at));
  await refuseFull(manager, farmId, at);
  const replaces = await replacedBy(manager, farmId, said, at);
  const id = randomUUID();
  const { kind, about, on, saidBy, key = id } = said;
  const toldAt = await nextMoment(manager, farmId);
  const row = {
    ...{ id, farmId, kind, about, on, details, toldAt, key },
    saidBy: saidBy ?? null,
    replaces: replaces ?? null,
    takenBackAt: null,
  };
  await manager.save(manager.create(ToldFactEntity, row));
  return toFact(row);
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

async function refuseFull(manager: EntityManager, farmId: string, at: Around['at']): Promise<void> {
  const given = (await manager.countBy(ToldFactEntity, { farmId })) + 1;
  if (given <= MOST_FACTS) return;
  throw new FieldError([
    at({
      field: 'kind',
      code: 'out-of-bounds',
      given,
      max: MOST_FACTS,
      fix: 'This farm is full of facts. Save it as an archive and go on with a new farm.',
    }),
  ]);
}

/** The fact that a new one replaces: the one it names, else the one whose place its kind takes. */
async function replacedBy(
  manager: EntityManager,
  farmId: string,
  { kind, about, on, replaces }: Said,
  at: Around['at'],
): Promise<string | undefined> {
  const rule = TOLD_KINDS[kind].replaces;
  if (replaces === undefined && rule === 'none') return undefined;
  const rows = await manager.findBy(ToldFactEntity, { farmId, kind, about });
  const held = holding(rows.map(toFact));
  if (replaces === undefined) {
    return held.filter((fact) => rule === 'the-last' || fact.on === on).at(-1)?.id;
  }
  if (held.some(({ id }) => id === replaces)) return replaces;
  throw new FieldError([
    at({
      field: 'replaces',
      code: 'not-allowed',
      given: replaces,
      allowed: held.slice(-20).map(({ id }) => id),
      fix: 'Name a fact of the same kind, about the same, that still holds.',
    }),
  ]);
}

/** Now, but after everything that was told before, so that the order is never in doubt. */
async function nextMoment(manager: EntityManager, farmId: string): Promise<string> {
  const [newest] = await manager.find(ToldFactEntity, {
    where: { farmId },
    select: { id: true, toldAt: true },
    order: { toldAt: 'DESC' },
    take: 1,
  });
  return new Date(Math.max(Date.now(), newest ? Date.parse(newest.toldAt) + 1 : 0)).toISOString();
}
