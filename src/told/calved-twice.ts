import type { EntityManager } from 'typeorm';
import { daysBetween, type PlainDate } from '../../shared/calendar/plain-date.js';
import type { FieldProblem } from '../../shared/problems/field-problem.js';
import type { Tables } from '../../shared/tables/tables.js';
import { formatLongDate } from '../../shared/units/dates.js';
import { FarmEntity } from '../farms/farm.entity.js';

/** Of calvings those that are no gestation away from a day: of the breed that carries shortest. */
export function tooNearToCalve<F extends { readonly on: PlainDate }>(
  facts: readonly F[],
  on: PlainDate,
  { gestation }: Pick<Tables, 'gestation'>,
): readonly F[] {
  const days = Math.min(...gestation.breeds.map(({ meanDays }) => meanDays));
  return facts.filter((fact) => Math.abs(daysBetween(fact.on, on)) < days);
}

/** A cow that is told to have calved on another day as well, or twice on the same. */
export async function calvedBefore(
  manager: EntityManager,
  farmId: string,
  given: PlainDate,
  before: PlainDate,
): Promise<FieldProblem> {
  const { units } = await manager.findOneOrFail(FarmEntity, {
    where: { id: farmId },
    select: { id: true, units: true },
  });
  const day = formatLongDate(before, { units });
  return {
    ...{ field: 'on', code: 'conflict', given },
    fix: `She is told to have calved on ${day}, and cannot calve again so near that day. Check which cow it was. If it is the same calving, change what was told of ${day}: the day, or how many calves it was.`,
  };
}
