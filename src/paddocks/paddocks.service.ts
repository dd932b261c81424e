import { Injectable } from '@nestjs/common';
import { randomUUID } from 'node:crypto';
import type { EntityManager } from 'typeorm';
import { paddockFields, type Paddock } from '../../shared/farm/paddock.js';
import { partNames } from '../../shared/farm/part-names.js';
import type { HerdMove } from '../../shared/farm/told-fact.js';
import type { Saved } from '../../shared/farm/saved.js';
import { paddockProblems } from '../../shared/plan/pasture/check-pasture.js';
import { FieldError } from '../../shared/problems/field-problem.js';
import { checkDto } from '../common/check-dto.js';
import type { Expected } from '../common/expected-version.js';
import { OwnedRows, refuseTooMany } from '../rows/owned-rows.js';
import { Database } from '../database/database.js';
import { TablesService } from '../reference/tables.service.js';
import { WorkPool } from '../work-pool/work-pool.service.js';
import { ToldService } from '../told/told.service.js';
import type { NamedOutline } from '../outlines/geojson.js';
import { moveBirds } from './birds-ground.js';
import { GrazingDays, viewOf, withTypedDay } from './grazing-days.js';
import { groundIn, USUAL_GROUND, type Ground, type OwnGround } from './ground.js';
import type { Joined } from '../outlines/join-outlines.js';
import { checkedCorners, outlineAreaM2 } from '../outlines/outline.js';
import { GroundDto, type PaddockDto, type SplitDto } from './paddock.dto.js';
import { PaddockEntity, toPaddock } from './paddock.entity.js';
import { sharesOf } from './shares.js';

/** A paddock after splitting or joining; when its outline was lost, why. */
export type Reshaped = Saved<Paddock> & { readonly noOutlineBecause?: string };

/** What an import would add. */
export interface FoundInGeoJson {
  readonly paddocks: readonly ({ readonly name: string; readonly areaM2: number } & OwnGround)[];
  readonly leftOut: readonly string[];
}

type Details = PaddockEntity['details'];
type NewPaddock = Pick<PaddockEntity, 'id' | 'farmId' | 'name' | 'details'>;

@Injectable()
export class PaddocksService {
  private readonly rows: OwnedRows<PaddockEntity>;

  constructor(
    private readonly database: Database,
    private readonly told: ToldService,
    private readonly grazing: GrazingDays,
    private readonly tables: TablesService,
    private readonly pool: WorkPool,
  ) {
    this.rows = new OwnedRows(database, PaddockEntity, {
      noun: 'paddock',
      order: ['name', 'id'],
      tells: { of: 'paddock', fields: (row) => ({ ...toPaddock(row) }), name: (row) => row.name },
      view: async (row) => viewOf(row, await this.grazing.on(row.farmId)),
    });
  }

  create(farmId: string, dto: PaddockDto): Promise<Saved<Paddock>> {
    const values = this.valuesOf(dto);
    return this.database.write(farmId, async () => {
      await this.grazing.refuseFuture(farmId, dto);
      return toPaddock(await this.rows.create(farmId, values));
    });
  }

  async findAll(farmId: string, moves?: readonly HerdMove[]): Promise<Saved<Paddock>[]> {
    const rows = await this.rows.findAll(farmId);
    const grazed = await this.grazing.on(farmId, moves);
    return rows.map((row) => viewOf(row, grazed));
  }

  async findOne(farmId: string, id: string): Promise<Saved<Paddock>> {
    return viewOf(await this.rows.findOne(farmId, id), await this.grazing.on(farmId));
  }

  async idsOf(farmId: string): Promise<string[]> {
    const rows = await this.database.manager.find(PaddockEntity, {
      where: { farmId },
      select: { id: true },
    });
    return rows.map(({ id }) => id);
  }

  update(
    farmId: string,
    id: string,
    dto: PaddockDto,
    expected?: Expected,
  ): Promise<Saved<Paddock>> {
    const { name, details } = this.valuesOf(dto);
    return this.database.write(farmId, async () => {
      await this.grazing.refuseFuture(farmId, dto);
      const before = await this.rows.findOne(farmId, id);
      const grazed = await this.grazing.on(farmId);
      const values = withTypedDay(details, before, grazed);
      const row = await this.rows.update(farmId, id, { name, details: values }, expected);
      return viewOf(row, grazed);
    });
  }

  /** Deletes a paddock; what was told of it is history. Herds and birds in it stand nowhere. */
  remove(farmId: string, id: string, expected?: Expected): Promise<void> {
    return this.rows.remove(farmId, id, expected, async (manager) => {
      await this.grazing.leave(farmId, [id]);
      await moveBirds(manager, farmId, { from: [id] });
    });
  }

  /** Cuts a paddock into strips. The strips carry its readings on; the whole is gone. */
  async split(farmId: string, id: string, dto: SplitDto): Promise<Reshaped[]> {
    const shares = sharesOf(dto);
    const cut = async ([whole]: readonly PaddockEntity[]) => {
      const { outline } = whole!.details;
      return outline && this.pool.run('cutOutline', { outline, shares });
    };
    return this.rows.workThenWrite(farmId, [id], cut, async (manager, [row], outlines) => {
      const whole = row!;
      const { lastGrazedOn } = viewOf(whole, await this.grazing.on(farmId));
      await checkRoom(manager, farmId, shares.length - 1);
      const { outline, ...details } = { ...whole.details, ...(lastGrazedOn && { lastGrazedOn }) };
      const all = await manager.findBy(PaddockEntity, { farmId });
      const names = partNames(
        whole.name,
        all.flatMap((each) => (each.id === id ? [] : [each.name])),
        shares.length,
      );
      const strips = shares.map((share, k) => ({
        id: randomUUID(),
        farmId,
        name: names[k]!,
        details: {
          ...details,
          areaM2: details.areaM2 * share,
          ...(outlines ? { outline: outlines[k]! } : {}),
        },
      }));
      for (const strip of strips) this.check({ ...strip.details, id, name: whole.name });
      // While the whole is still there: herds that stood in it then stand nowhere.
      await this.grazing.leave(farmId, [id]);
      await moveBirds(manager, farmId, { from: [id] });
      await manager.delete(PaddockEntity, { id, farmId });
      const saved = await manager.save(manager.create(PaddockEntity, strips));
      await this.told.carryOver(
        farmId,
        id,
        strips.map((strip) => strip.id),
      );
      const because =
        outline && !outlines ? 'straight lines would leave strips in several pieces' : undefined;
      return saved.map((strip) => reshaped(strip, because));
    });
  }

  /** Makes one paddock of several: areas add up, the rest is as in the first. */
  async join(farmId: string, given: readonly unknown[], name: string): Promise<Reshaped> {
    const ids = [...new Set(given.map(String))];
    if (ids.length < 2) {
      throw new FieldError([
        {
          field: 'ids',
          code: 'out-of-bounds',
          given: ids.length,
          min: 2,
          fix: 'Name at least two different paddocks to join.',
        },
      ]);
    }
    const join = (rows: readonly PaddockEntity[]) => this.outlineAround(rows);
    return this.rows.workThenWrite(farmId, ids, join, async (manager, rows, joined) => {
      const { lastGrazedOn } = viewOf(rows[0]!, await this.grazing.on(farmId));
      const { outline: _outline, ...rest } = rows[0]!.details;
      const details: Details = {
        ...rest,
        ...(lastGrazedOn && { lastGrazedOn }),
        areaM2: rows.reduce((sum, row) => sum + row.details.areaM2, 0),
        ...('outline' in joined ? { outline: joined.outline } : {}),
      };
      this.check({ ...details, id: rows[0]!.id, name });
      await this.grazing.leave(farmId, ids);
      for (const row of rows) await manager.delete(PaddockEntity, { id: row.id, farmId });
      const row = { id: randomUUID(), farmId, name, details };
      await moveBirds(manager, farmId, { from: ids, to: row.id });
      return reshaped(
        await manager.save(manager.create(PaddockEntity, row)),
        'because' in joined ? joined.because : undefined,
      );
    });
  }

  /** The outline around paddocks, or why there is none; neither when none of them has one. */
  private async outlineAround(
    rows: readonly PaddockEntity[],
  ): Promise<Joined | Record<string, never>> {
    const without = rows.filter(({ details }) => !details.outline);
    if (without.length === rows.length) return {};
    if (0 < without.length) {
      return { because: `${without.map((row) => row.name).join(', ')} had none` };
    }
    return this.pool.run(
      'joinOutlines',
      rows.map(({ details }) => details.outline!),
    );
  }

  /** What an import of a GeoJSON document would add; saves nothing. */
  async findInGeoJson(farmId: string, document: unknown): Promise<FoundInGeoJson> {
    await this.rows.findAll(farmId);
    const { outlines, leftOut } = await this.pool.run('outlinesOfGeoJson', document);
    const paddocks = outlines.map(({ name, areaM2, properties }) => ({
      name,
      areaM2,
      ...groundIn(properties, this.tables.tables),
    }));
    this.rowsOf(farmId, outlines, USUAL_GROUND);
    return { paddocks, leftOut };
  }

  /**
   * Adds a paddock for every polygon of a GeoJSON document; all of them or none. The ground is what
   * a polygon's properties say, else what stands beside the document's own members, else the usual.
   */
  async importGeoJson(farmId: string, document: object): Promise<Saved<Paddock>[]> {
    const { outlines } = await this.pool.run('outlinesOfGeoJson', document);
    const given = Object.entries(document).filter(([name]) => Object.hasOwn(USUAL_GROUND, name));
    const chosen = { ...checkDto(GroundDto, Object.fromEntries(given)) };
    const rows = this.rowsOf(farmId, outlines, { ...USUAL_GROUND, ...chosen });
    return this.database.write(farmId, async (manager) => {
      await checkRoom(manager, farmId, rows.length);
      return (await manager.save(manager.create(PaddockEntity, rows))).map(toPaddock);
    });
  }

  private rowsOf(farmId: string, outlines: readonly NamedOutline[], ground: Ground): NewPaddock[] {
    const { tables } = this.tables;
    // A choice for all is checked by itself, so that it is named once and not for every polygon.
    this.check({
      id: 'new',
      name: 'new',
      areaM2: paddockFields.fields.areaM2.bounds.min,
      closedDays: [],
      ...ground,
    });
    const rows = outlines.map(({ name, outline, areaM2, properties }): NewPaddock => {
      const own = groundIn(properties, tables).own;
      return {
        id: randomUUID(),
        farmId,
        name,
        details: { areaM2, ...ground, ...own, closedDays: [], outline },
      };
    });
    const problems = rows.flatMap((row, i) =>
      paddockProblems(
        { ...row.details, id: row.id, name: row.name },
        tables,
        `${outlines[i]!.at}.`,
      ),
    );
    if (0 < problems.length) throw new FieldError(problems);
    return rows;
  }

  private valuesOf({ id: _id, version: _version, name, areaM2, outline, ...rest }: PaddockDto): {
    name: string;
    details: Details;
  } {
    if (areaM2 === undefined && outline === undefined) {
      throw new FieldError([
        {
          field: 'areaM2',
          code: 'missing',
          given: undefined,
          fix: 'Give the area, or the outline it is worked out from.',
        },
      ]);
    }
    const details: Details = {
      ...rest,
      areaM2: areaM2 ?? outlineAreaM2(outline),
      ...(outline === undefined ? {} : { outline: checkedCorners(outline) }),
    };
    this.check({ ...details, id: 'new', name });
    return { name, details };
  }

  private check(paddock: Paddock): void {
    const problems = paddockProblems(paddock, this.tables.tables);
    if (0 < problems.length) throw new FieldError(problems);
  }
}

const reshaped = (row: PaddockEntity, because: string | undefined): Reshaped => ({
  ...toPaddock(row),
  ...(because === undefined ? {} : { noOutlineBecause: because }),
});

async function checkRoom(manager: EntityManager, farmId: string, more: number): Promise<void> {
  refuseTooMany('paddock', (await manager.countBy(PaddockEntity, { farmId })) + more);
}
