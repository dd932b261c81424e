import { Injectable } from '@nestjs/common';
import { InjectDataSource } from '@nestjs/typeorm';
import { randomUUID } from 'node:crypto';
import { DataSource } from 'typeorm';
import { MAX_LIST } from '../../shared/farm/bounds.js';
import type { Herd } from '../../shared/farm/herd.js';
import { paddockFields, type Paddock } from '../../shared/farm/paddock.js';
import { paddockProblems } from '../../shared/plan/pasture/check-pasture.js';
import { FieldError } from '../../shared/problems/field-problem.js';
import { checkDto } from '../common/check-dto.js';
import { OwnedRows, raiseRevision } from '../common/owned-rows.js';
import { GrassReadingEntity } from '../grass-readings/grass-reading.entity.js';
import { HerdEntity } from '../herds/herd.entity.js';
import { TablesService } from '../reference/tables.service.js';
import { cutOutline } from './cut-outline.js';
import { outlinesOfGeoJson, type NamedOutline } from './geojson.js';
import { groundIn, USUAL_GROUND, type Ground, type OwnGround } from './ground.js';
import { joinOutlines, type Joined } from './join-outlines.js';
import { checkedCorners, outlineAreaM2 } from './outline.js';
import { GroundDto, type PaddockDto, type SplitDto } from './paddock.dto.js';
import { PaddockEntity, toPaddock } from './paddock.entity.js';
import { sharesOf } from './shares.js';

/** A paddock after splitting or joining; when its outline was lost, why. */
export type Reshaped = Paddock & { readonly noOutlineBecause?: string };

/** What an import would add. */
export interface FoundInGeoJson {
  readonly paddocks: readonly ({ readonly name: string; readonly areaM2: number } & OwnGround)[];
  readonly leftOut: readonly string[];
}

type Details = PaddockEntity['details'];

@Injectable()
export class PaddocksService {
  private readonly rows: OwnedRows<PaddockEntity>;

  constructor(
    @InjectDataSource() private readonly source: DataSource,
    private readonly tables: TablesService,
  ) {
    this.rows = new OwnedRows(source, PaddockEntity, 'paddock', { name: 'ASC', id: 'ASC' });
  }

  async create(farmId: string, dto: PaddockDto): Promise<Paddock> {
    return toPaddock(await this.rows.create(farmId, this.valuesOf(dto)));
  }

  async findAll(farmId: string): Promise<Paddock[]> {
    return (await this.rows.findAll(farmId)).map(toPaddock);
  }

  async findOne(farmId: string, id: string): Promise<Paddock> {
    return toPaddock(await this.rows.findOne(farmId, id));
  }

  async update(farmId: string, id: string, dto: PaddockDto): Promise<Paddock> {
    return toPaddock(await this.rows.update(farmId, id, this.valuesOf(dto)));
  }

  /** Deletes a paddock with its readings; herds that stood in it stand nowhere. */
  remove(farmId: string, id: string): Promise<void> {
    return this.rows.remove(farmId, id, (manager) => forget(manager, farmId, [id]));
  }

  /** Cuts a paddock into strips. The strips carry its readings on; the whole is gone. */
  async split(farmId: string, id: string, dto: SplitDto): Promise<Reshaped[]> {
    const shares = sharesOf(dto);
    return this.source.transaction(async (manager) => {
      await raiseRevision(manager, farmId);
      const whole = await this.rows.findOne(farmId, id);
      await checkRoom(manager, farmId, shares.length - 1);
      const { outline, ...details } = whole.details;
      const outlines = outline && cutOutline(outline, shares);
      const strips = shares.map((share, k) => ({
        id: randomUUID(),
        farmId,
        name: `${whole.name.slice(0, 76)} ${k + 1}`,
        details: {
          ...details,
          areaM2: details.areaM2 * share,
          ...(outlines ? { outline: outlines[k]! } : {}),
        },
      }));
      for (const strip of strips) this.check({ ...strip.details, id, name: whole.name });
      const readings = await manager.findBy(GrassReadingEntity, { farmId, paddockId: id });
      await manager.delete(PaddockEntity, { id, farmId });
      await forget(manager, farmId, [id]);
      const saved = await manager.save(PaddockEntity, strips);
      await manager.insert(
        GrassReadingEntity,
        strips.flatMap((strip) =>
          readings.map(({ date, heightCm }) => ({
            id: randomUUID(),
            farmId,
            paddockId: strip.id,
            date,
            heightCm,
          })),
        ),
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
    return this.source.transaction(async (manager) => {
      await raiseRevision(manager, farmId);
      const rows: PaddockEntity[] = [];
      for (const id of ids) rows.push(await this.rows.findOne(farmId, id));
      const { outline: _outline, ...rest } = rows[0]!.details;
      const joined = outlineAround(rows);
      const details: Details = {
        ...rest,
        areaM2: rows.reduce((sum, row) => sum + row.details.areaM2, 0),
        ...('outline' in joined ? { outline: joined.outline } : {}),
      };
      this.check({ ...details, id: rows[0]!.id, name });
      for (const row of rows) await manager.delete(PaddockEntity, { id: row.id, farmId });
      await forget(
        manager,
        farmId,
        rows.map((row) => row.id),
      );
      const row = { id: randomUUID(), farmId, name, details };
      return reshaped(
        await manager.save(PaddockEntity, row),
        'because' in joined ? joined.because : undefined,
      );
    });
  }

  /** What an import of a GeoJSON document would add; saves nothing. */
  async findInGeoJson(farmId: string, document: unknown): Promise<FoundInGeoJson> {
    await this.rows.findAll(farmId);
    const { outlines, leftOut } = outlinesOfGeoJson(document);
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
  async importGeoJson(farmId: string, document: object): Promise<Paddock[]> {
    const { outlines } = outlinesOfGeoJson(document);
    const given = Object.entries(document).filter(([name]) => Object.hasOwn(USUAL_GROUND, name));
    const chosen = { ...checkDto(GroundDto, Object.fromEntries(given)) };
    const rows = this.rowsOf(farmId, outlines, { ...USUAL_GROUND, ...chosen });
    return this.source.transaction(async (manager) => {
      await raiseRevision(manager, farmId);
      await checkRoom(manager, farmId, rows.length);
      return (await manager.save(PaddockEntity, rows)).map(toPaddock);
    });
  }

  private rowsOf(
    farmId: string,
    outlines: readonly NamedOutline[],
    ground: Ground,
  ): PaddockEntity[] {
    const { tables } = this.tables;
    // A choice for all is checked by itself, so that it is named once and not for every polygon.
    this.check({
      id: 'new',
      name: 'new',
      areaM2: paddockFields.fields.areaM2.bounds.min,
      closed: [],
      ...ground,
    });
    const rows = outlines.map(({ name, outline, areaM2, properties }): PaddockEntity => {
      const own = groundIn(properties, tables).own;
      return {
        id: randomUUID(),
        farmId,
        name,
        details: { areaM2, ...ground, ...own, closed: [], outline },
      };
    });
    const problems = rows.flatMap((row, i) =>
      paddockProblems(toPaddock(row), tables, `${outlines[i]!.at}.`),
    );
    if (0 < problems.length) throw new FieldError(problems);
    return rows;
  }

  private valuesOf({ id: _id, name, areaM2, outline, ...rest }: PaddockDto): {
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

/** The outline around paddocks, or why there is none; neither when none of them has one. */
function outlineAround(rows: readonly PaddockEntity[]): Joined | Record<string, never> {
  const without = rows.filter(({ details }) => !details.outline);
  if (without.length === rows.length) return {};
  if (0 < without.length) {
    return { because: `${without.map((row) => row.name).join(', ')} had none` };
  }
  return joinOutlines(rows.map(({ details }) => details.outline!));
}

async function checkRoom(
  manager: DataSource['manager'],
  farmId: string,
  more: number,
): Promise<void> {
  const count = (await manager.countBy(PaddockEntity, { farmId })) + more;
  if (count <= MAX_LIST) return;
  throw new FieldError([
    {
      field: 'paddocks',
      code: 'out-of-bounds',
      given: count,
      max: MAX_LIST,
      fix: 'Delete paddocks that are no longer needed first.',
    },
  ]);
}

/** Readings of paddocks that are gone go too, and herds no longer stand in them. */
async function forget(
  manager: DataSource['manager'],
  farmId: string,
  ids: readonly string[],
): Promise<void> {
  for (const paddockId of ids) await manager.delete(GrassReadingEntity, { farmId, paddockId });
  const herds = await manager.findBy(HerdEntity, { farmId });
  const changed = herds.filter(
    ({ details }) => details.inPaddockId !== undefined && ids.includes(details.inPaddockId),
  );
  for (const herd of changed) {
    const {
      inPaddockId: _in,
      inSince: _since,
      ...details
    } = herd.details as Omit<Herd, 'id' | 'name'>;
    herd.details = details;
  }
  if (0 < changed.length) await manager.save(changed);
}
