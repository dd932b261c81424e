import { randomUUID } from 'node:crypto';
import type { EntityManager } from 'typeorm';
import { plainDateAt } from '../../shared/calendar/plain-date.js';
import { changedFields, type RowChanged, type RowOfRecord } from '../../shared/farm/row-changed.js';
import { askerNow } from '../common/asker.js';
import { FarmEntity } from '../farms/farm.entity.js';
import { ToldFactEntity } from '../told/told-fact.entity.js';
import { nextMoment } from './next-moment.js';

/** How rows of one kind are told of. */
export interface TellsOf<Row> {
  readonly of: RowOfRecord | ((row: Row) => RowOfRecord);
  /** The fields of a row, as its form has them. */
  readonly fields: (row: Row) => Readonly<Record<string, unknown>>;
  readonly name: (row: Row) => string;
  /** What is said of a row that is new or deleted; left out, a new one is no news, and all of one that is gone. */
  readonly ofNew?: readonly string[];
}

interface OfFarm {
  readonly id: string;
  readonly farmId: string;
}

/** A row before and after a write; none of one of them where it was made or deleted. */
interface Change<Row> {
  readonly before?: Row;
  readonly after?: Row;
}

/** What it was before stands in the record, within the write that changes it. */
export async function tellRow<Row extends OfFarm>(
  manager: EntityManager,
  { of: kindOf, fields, name, ofNew }: TellsOf<Row>,
  { before, after }: Change<Row>,
): Promise<void> {
  const row = (before ?? after)!;
  if (!before && !ofNew) return;
  const of = typeof kindOf === 'function' ? kindOf(row) : kindOf;
  const [was, is] = [before, after].map((each) => (each ? fields(each) : {}));
  const isChange = before !== undefined && after !== undefined;
  const changed = changedFields(of, was!, is!).filter(
    ({ field }) => isChange || !ofNew || ofNew.includes(field),
  );
  if (isChange && changed.length === 0) return;
  const { farmId, id: about } = row;
  const details: RowChanged = {
    of,
    name: name(after ?? row),
    how: isChange ? 'changed' : before ? 'deleted' : 'added',
    ...(0 < changed.length ? { fields: changed } : {}),
  };
  const farm = await manager.findOneByOrFail(FarmEntity, { id: farmId });
  const now = await nextMoment(manager, farmId);
  const id = randomUUID();
  await manager.insert(ToldFactEntity, {
    ...{ id, farmId, kind: 'row-changed', about, details, key: id },
    on: plainDateAt(Date.now(), farm.timeZone),
    saidBy: askerNow().saidBy ?? null,
    toldAt: new Date(now).toISOString(),
    replaces: null,
    takenBackAt: null,
  } as object);
}
