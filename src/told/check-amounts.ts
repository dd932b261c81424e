import type { EntityManager } from 'typeorm';
import type { FactOf } from '../../shared/farm/told-fact.js';
import { FieldError, type FieldProblem } from '../../shared/problems/field-problem.js';
import { BatchEntity, toBatch } from '../batches/batch.entity.js';
import { HerdEntity, toHerd } from '../herds/herd.entity.js';
import { mostThatCame } from './check-eggs.js';

type FieldOf<Fact> = (fact: Fact, field: string) => string;

/** Twins happen, of one cow three: more are a slip of the pen. Common practice, no source. */
const MOST_OF_EACH = 2;
const MOST_OF_ONE = 3;

/** Refuses more calves than the cows of a herd can have had. */
export async function refuseStrangeCalves(
  manager: EntityManager,
  farmId: string,
  calved: readonly FactOf<'calved'>[],
  fieldOf: FieldOf<FactOf<'calved'>>,
): Promise<void> {
  for (const fact of calved) {
    const row = await manager.findOneBy(HerdEntity, { id: fact.about, farmId });
    if (!row) continue;
    const { calves, dead = 0, cowId } = fact.details;
    const head = toHerd(row).groups.reduce((sum, group) => sum + group.head, 0);
    const most = cowId === undefined ? Math.max(MOST_OF_ONE, MOST_OF_EACH * head) : MOST_OF_ONE;
    if (calves + dead <= most) continue;
    const max = Math.max(0, most - dead);
    const field = fieldOf(fact, calves === 0 ? 'details.dead' : 'details.calves');
    const fix =
      'So many cows cannot have so many calves. Check the number, or how many head the herd has.';
    throw new FieldError([above(field, { given: calves === 0 ? dead : calves, max, fix })]);
  }
}

/** What no bird drinks in a day, and a barrel that was filled for a few of them: guesses, no source. */
const MOST_L_A_BIRD = 10;
const BARREL_L = 250;

/** Refuses water that so many birds cannot drink in a day: gallons typed for quarts, or a year's. */
export async function refuseStrangeWater(
  manager: EntityManager,
  farmId: string,
  drunk: readonly FactOf<'water-drunk'>[],
  fieldOf: FieldOf<FactOf<'water-drunk'>>,
): Promise<void> {
  for (const fact of drunk) {
    const row = await manager.findOneBy(BatchEntity, { id: fact.about, farmId });
    if (!row) continue;
    const max = Math.max(BARREL_L, MOST_L_A_BIRD * mostThatCame(toBatch(row)));
    if (fact.details.liters <= max) continue;
    const fix = 'So few birds do not drink that in a day. Check the number and its unit.';
    const given = fact.details.liters;
    throw new FieldError([
      { ...above(fieldOf(fact, 'details.liters'), { given, max, fix }), unit: 'L' },
    ]);
  }
}

const above = (
  field: string,
  { given, max, fix }: { readonly given: number; readonly max: number; readonly fix: string },
): FieldProblem => ({ field, code: 'out-of-bounds', given, min: 0, max, fix });
