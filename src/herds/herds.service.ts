import { Injectable } from '@nestjs/common';
import { plainDateAt } from '../../shared/calendar/plain-date.js';
import type { Herd } from '../../shared/farm/herd.js';
import { byHerd, placeOf, type HerdPlace } from '../../shared/farm/herd-places.js';
import { isSame } from '../../shared/farm/merge-row.js';
import type { HerdMove } from '../../shared/farm/told-fact.js';
import type { Saved } from '../../shared/farm/saved.js';
import { herdCowProblems } from '../../shared/plan/pasture/check-cows.js';
import { herdProblems } from '../../shared/plan/pasture/check-pasture.js';
import { FieldError } from '../../shared/problems/field-problem.js';
import type { Expected } from '../common/expected-version.js';
import { OwnedRows } from '../rows/owned-rows.js';
import { tellRow } from '../rows/tell-row.js';
import { Database } from '../database/database.js';
import { FarmsService } from '../farms/farms.service.js';
import { PaddocksService } from '../paddocks/paddocks.service.js';
import { TablesService } from '../reference/tables.service.js';
import { ToldService } from '../told/told.service.js';
import { CowEntity, toCow } from './cow.entity.js';
import { COWS_TELL } from './cows-tell.js';
import type { HerdDto, MovedDto } from './herd.dto.js';
import { HerdEntity, toHerd } from './herd.entity.js';

/** What says where herds stand. */
interface KnownPlaces {
  readonly moves: readonly HerdMove[];
  readonly paddockIds: readonly string[];
}

/** Herds. Deleting one deletes its named cows with it. Where each stands is not a field of its row: it follows from the moves that were told. */
@Injectable()
export class HerdsService {
  private readonly rows: OwnedRows<HerdEntity>;

  constructor(
    private readonly database: Database,
    private readonly farms: FarmsService,
    private readonly paddocks: PaddocksService,
    private readonly told: ToldService,
    private readonly tables: TablesService,
  ) {
    this.rows = new OwnedRows(database, HerdEntity, {
      noun: 'herd',
      order: ['name', 'id'],
      tells: { of: 'herd', fields: (row) => ({ ...toHerd(row) }), name: (row) => row.name },
      view: async (row) => this.withPlace(row, await this.placesOn(row.farmId)),
    });
  }

  create(farmId: string, dto: HerdDto): Promise<Saved<Herd>> {
    return this.database.write(farmId, async () => {
      const { id } = await this.rows.create(farmId, await this.valuesOf(farmId, dto));
      await this.typePlace(farmId, id, dto, {});
      return this.findOne(farmId, id);
    });
  }

  /** @param known moves of the farm and ids of its paddocks, where these are read already */
  async findAll(farmId: string, known?: KnownPlaces): Promise<Saved<Herd>[]> {
    const rows = await this.rows.findAll(farmId);
    const places = await this.placesOn(farmId, known);
    return rows.map((row) => this.withPlace(row, places));
  }

  async findOne(farmId: string, id: string): Promise<Saved<Herd>> {
    const row = await this.rows.findOne(farmId, id);
    return this.withPlace(row, await this.placesOn(farmId));
  }

  update(farmId: string, id: string, dto: HerdDto, expected?: Expected): Promise<Saved<Herd>> {
    return this.database.write(farmId, async () => {
      const values = await this.valuesOf(farmId, dto, id);
      const before = await this.findOne(farmId, id);
      const { inPaddockId, inSince } = before;
      await this.rows.update(farmId, id, values, expected);
      await this.settleCows(farmId, before, { ...values.details, id, name: values.name });
      await this.typePlace(farmId, id, dto, { inPaddockId, inSince });
      return this.findOne(farmId, id);
    });
  }

  remove(farmId: string, id: string, expected?: Expected): Promise<void> {
    return this.rows.remove(farmId, id, expected, async (manager) => {
      for (const before of await manager.findBy(CowEntity, { farmId, herdId: id }))
        await tellRow(manager, COWS_TELL, { before });
      await manager.delete(CowEntity, { farmId, herdId: id });
    });
  }

  /**
   * After a herd has changed: named cows of a group that is now of another class go along with it,
   * and a change that leaves no head for one is refused.
   */
  private async settleCows(farmId: string, before: Herd, herd: Herd): Promise<void> {
    const { manager } = this.database;
    const rows = await manager.find(CowEntity, {
      where: { farmId, herdId: herd.id },
      order: { name: 'ASC', id: 'ASC' },
    });
    const now = newClasses(before, herd);
    const moved = rows.filter(({ classId }) => now.has(classId));
    for (const row of moved) {
      const before = manager.create(CowEntity, { ...row });
      row.classId = now.get(row.classId)!;
      await tellRow(manager, COWS_TELL, { before, after: row });
    }
    const problems = herdCowProblems(herd, rows.map(toCow), this.tables.tables);
    if (0 < problems.length) throw new FieldError(problems);
    if (0 < moved.length) await manager.save(moved);
  }

  /** Notes where a herd really went: it stands there now, and the paddock it left starts to rest. */
  moved(
    farmId: string,
    id: string,
    { paddockId, on, leftHeightCm }: MovedDto,
  ): Promise<Saved<Herd>> {
    return this.told.telling(farmId, async () => {
      const today = await this.todayOn(farmId);
      if (today < on) {
        throw new FieldError([
          {
            field: 'on',
            code: 'out-of-bounds',
            given: on,
            max: today,
            fix: 'Give the day on which they were moved; a move to come is in the plan.',
          },
        ]);
      }
      await this.paddocks.findOne(farmId, paddockId);
      await this.rows.findOne(farmId, id);
      const left = leftHeightCm === undefined ? {} : { leftHeightCm };
      const move = { kind: 'herd-move', about: id, on, details: { paddockId, ...left } } as const;
      await this.told.tell(farmId, [move], fieldOfMove('paddockId'));
      return this.findOne(farmId, id);
    });
  }

  /** A place that is typed in a form and differs from where the herd was is told as a fact. */
  private async typePlace(
    farmId: string,
    id: string,
    { inPaddockId, inSince }: Pick<HerdDto, 'inPaddockId' | 'inSince'>,
    before: { inPaddockId?: string | undefined; inSince?: string | undefined },
  ): Promise<void> {
    const since = inPaddockId === undefined ? undefined : inSince;
    if (isSame(before, { inPaddockId, inSince: since })) return;
    const details = {
      isTyped: true,
      ...(inPaddockId === undefined ? {} : { paddockId: inPaddockId }),
      ...(since === undefined ? { isSinceUnknown: true } : {}),
    };
    const on = since ?? (await this.todayOn(farmId));
    const place = { kind: 'herd-move', about: id, on, details } as const;
    await this.told.tell(farmId, [place], fieldOfMove('inPaddockId', 'inSince'));
  }

  private async placesOn(
    farmId: string,
    known?: KnownPlaces,
  ): Promise<ReadonlyMap<string, HerdPlace>> {
    const moves = byHerd(known?.moves ?? (await this.told.movesOf(farmId)));
    const paddockIds = new Set(known?.paddockIds ?? (await this.paddocks.idsOf(farmId)));
    return new Map([...moves].map(([id, own]) => [id, placeOf(own, paddockIds)]));
  }

  private withPlace(row: HerdEntity, places: ReadonlyMap<string, HerdPlace>): Saved<Herd> {
    return { ...toHerd(row), ...places.get(row.id) };
  }

  private async valuesOf(
    farmId: string,
    { id: _id, version: _version, name, inPaddockId, inSince, ...details }: HerdDto,
    ownId?: string,
  ): Promise<{ name: string; details: HerdEntity['details'] }> {
    const problems = herdProblems(
      { ...details, id: 'new', name, ...(inSince === undefined ? {} : { inSince }) },
      this.tables.tables,
    );
    if (0 < problems.length) throw new FieldError(problems);
    if (inPaddockId !== undefined) {
      await this.paddocks.findOne(farmId, inPaddockId);
      await this.checkPlace(farmId, inPaddockId, ownId);
    }
    return { name, details };
  }

  private async checkPlace(
    farmId: string,
    paddockId: string,
    ownId: string | undefined,
  ): Promise<void> {
    const other = (await this.findAll(farmId)).find(
      (herd) => herd.inPaddockId === paddockId && herd.id !== ownId,
    );
    if (!other) return;
    throw new FieldError([
      {
        field: 'inPaddockId',
        code: 'conflict',
        given: paddockId,
        fix: `${other.name} stands there. Move it first, or join the herds.`,
      },
    ]);
  }

  private async todayOn(farmId: string): Promise<string> {
    return plainDateAt(Date.now(), (await this.farms.findOne(farmId)).timeZone);
  }
}

/** Classes that are gone from a herd because their group is of another now, such as cows that calved. */
function newClasses(before: Herd, after: Herd): ReadonlyMap<string, string> {
  if (before.groups.length !== after.groups.length) return new Map();
  const there = new Set(after.groups.map(({ classId }) => classId));
  return new Map(
    before.groups.flatMap(({ classId }, k): [string, string][] =>
      there.has(classId) ? [] : [[classId, after.groups[k]!.classId]],
    ),
  );
}

/** What the fields of a move are called where it is sent. */
const fieldOfMove =
  (place: string, on = 'on') =>
  (_k: number, field: string): string =>
    field === 'details.paddockId' ? place : field === 'on' ? on : field.replace('details.', '');
