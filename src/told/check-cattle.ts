import type { EntityManager } from 'typeorm';
import { withLeftAgain, withoutLeft } from '../../shared/farm/cattle-gone.js';
import type { CattleGroup } from '../../shared/farm/herd.js';
import { holding, type CattleWent } from '../../shared/farm/told-fact.js';
import { FieldError, type FieldProblem } from '../../shared/problems/field-problem.js';
import { formatLongDate } from '../../shared/units/dates.js';
import { FarmEntity } from '../farms/farm.entity.js';
import { CowEntity } from '../herds/cow.entity.js';
import { HerdEntity } from '../herds/herd.entity.js';

type FieldOf = (fact: CattleWent, field: string) => string;

interface Left {
  /** Told now; each may take the place of another. */
  readonly told: readonly CattleWent[];
  /** Taken back now. */
  readonly back: readonly CattleWent[];
  /** All of the farm that were not taken back before, replaced ones as well. */
  readonly all: readonly CattleWent[];
}

/**
 * After cattle are told to have left, or that was taken back: their herds have as many head as there
 * are, so that everything goes by that. Refuses more than there were, and cows that are not of the herd.
 */
export async function settleCattle(
  manager: EntityManager,
  farmId: string,
  { told, back, all }: Left,
  fieldOf: FieldOf,
): Promise<void> {
  for (const herdId of new Set([...told, ...back].map(({ about }) => about))) {
    const row = await manager.findOneBy(HerdEntity, { id: herdId, farmId });
    if (!row) continue;
    const cows = await manager.findBy(CowEntity, { farmId, herdId });
    const own = all.filter(({ about }) => about === herdId);
    const classOf = ({ details: { cowId, classId } }: CattleWent): string | undefined =>
      cows.find(({ id }) => id === cowId)?.classId ?? classId ?? onlyOf(row.details.groups);
    let { groups } = row.details;
    const again = (fact: CattleWent | undefined): void => {
      const classId = fact && classOf(fact);
      if (classId !== undefined)
        groups = [
          ...withLeftAgain(groups, { factId: fact!.id, classId, head: fact!.details.head }),
        ];
    };
    for (const fact of back.filter(({ about }) => about === herdId)) {
      if (own.some(({ replaces }) => replaces === fact.id)) continue;
      again(fact);
      // What it had taken the place of holds again.
      const before = own.find(({ id }) => id === fact.replaces);
      const classId = before && classOf(before);
      if (classId === undefined) continue;
      groups = [...withoutLeft(groups, leavingOf(before!, classId)).groups];
    }
    for (const fact of told.filter(({ about }) => about === herdId)) {
      again(own.find(({ id }) => id === fact.replaces));
      refuseStrangeCow(fact, { cows, own, fieldOf });
      const classId = classOf(fact);
      const ids = [...new Set(groups.map((group) => group.classId))];
      if (classId === undefined || !ids.includes(classId))
        throw new FieldError([notOf(fieldOf(fact, 'details.classId'), classId, ids)]);
      const left = withoutLeft(groups, leavingOf(fact, classId));
      if (0 < left.short) {
        const { units } = await manager.findOneByOrFail(FarmEntity, { id: farmId });
        const there = fact.details.head - left.short;
        const day = formatLongDate(fact.on, { units });
        throw new FieldError([tooMany(fieldOf(fact, 'details.head'), fact, { there, day })]);
      }
      groups = [...left.groups];
    }
    row.details = { ...row.details, groups: withinMost(groups) };
    row.version += 1;
    await manager.save(row);
  }
}

const leavingOf = ({ id: factId, on, details: { head } }: CattleWent, classId: string) => ({
  ...{ factId, classId, head, on },
});

const onlyOf = (groups: readonly CattleGroup[]): string | undefined => {
  const ids = new Set(groups.map(({ classId }) => classId));
  return ids.size === 1 ? [...ids][0] : undefined;
};

/** Most groups that a herd has: of the head that left first the herd no longer speaks. */
const MOST_GROUPS = 20;

function withinMost(groups: readonly CattleGroup[]): CattleGroup[] {
  const over = groups.length - MOST_GROUPS;
  if (over <= 0) return [...groups];
  const first = groups
    .filter(({ leftOf }) => leftOf !== undefined)
    .sort((a, b) => a.leavesOn!.localeCompare(b.leavesOn!))
    .slice(0, over);
  return groups.filter((group) => !first.includes(group));
}

function refuseStrangeCow(
  fact: CattleWent,
  {
    cows,
    own,
    fieldOf,
  }: { cows: readonly CowEntity[]; own: readonly CattleWent[]; fieldOf: FieldOf },
): void {
  const { cowId } = fact.details;
  if (cowId === undefined) return;
  const field = fieldOf(fact, 'details.cowId');
  const ids = cows.map(({ id }) => id);
  if (!ids.includes(cowId)) throw new FieldError([notOf(field, cowId, ids)]);
  const isTwice = holding(own).some(({ id, details }) => details.cowId === cowId && id !== fact.id);
  if (isTwice) throw new FieldError([goneAlready(field, cowId)]);
}

const notOf = (
  field: string,
  given: string | undefined,
  allowed: readonly string[],
): FieldProblem => ({
  field,
  code: given === undefined ? 'missing' : 'not-allowed',
  given,
  allowed,
  fix: 'Name one that this herd has.',
});

const goneAlready = (field: string, given: string): FieldProblem => ({
  field,
  code: 'conflict',
  given,
  fix: 'It is told already that she is gone: change that, or take it back first.',
});

const tooMany = (
  field: string,
  { details }: CattleWent,
  { there, day }: { readonly there: number; readonly day: string },
): FieldProblem => ({
  field,
  code: 'out-of-bounds',
  given: details.head,
  min: 0,
  max: there,
  fix: `No more of that class were in the herd on ${day}. Check the number and the day, or the head of the herd.`,
});
