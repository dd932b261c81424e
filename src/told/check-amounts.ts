import type { EntityManager } from 'typeorm';
import { addDays } from '../../shared/calendar/plain-date.js';
import type { FactOf } from '../../shared/farm/told-fact.js';
import { mostMilkL } from '../../shared/plan/most-milk.js';
import { FieldError, type FieldProblem } from '../../shared/problems/field-problem.js';
import type { Tables } from '../../shared/tables/tables.js';
import { formatLongDate } from '../../shared/units/dates.js';
import { BatchEntity, toBatch } from '../batches/batch.entity.js';
import { FarmEntity } from '../farms/farm.entity.js';
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
    const { calves, dead = 0, cowId, notInCalf = 0 } = fact.details;
    const head = toHerd(row).groups.reduce((sum, group) => sum + group.head, 0);
    if (head < notInCalf)
      throw new FieldError([
        above(fieldOf(fact, 'details.notInCalf'), {
          ...{ given: notInCalf, max: head },
          fix: 'The herd has fewer head. Check the number.',
        }),
      ]);
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
    refuseMoreL(fact, { max, fix: 'So few birds do not drink that in a day.' }, fieldOf);
  }
}

/** Boxes come days off their day; by months it is a slip of the year. Common practice, no source. */
const MOST_DAYS_OFF = 60;

/** Refuses birds that came months before or after the day they were planned for. */
export async function refuseStrangeArrivals(
  manager: EntityManager,
  farmId: string,
  arrived: readonly FactOf<'arrived'>[],
  fieldOf: FieldOf<FactOf<'arrived'>>,
): Promise<void> {
  for (const fact of arrived) {
    const row = await manager.findOneBy(BatchEntity, { id: fact.about, farmId });
    if (!row) continue;
    const min = addDays(row.arrivalDate, -MOST_DAYS_OFF);
    const max = addDays(row.arrivalDate, MOST_DAYS_OFF);
    if (min <= fact.on && fact.on <= max) continue;
    const { units } = await manager.findOneByOrFail(FarmEntity, { id: farmId });
    const planned = formatLongDate(row.arrivalDate, { units });
    const wayOut =
      fact.on < min
        ? 'if these are other birds, make a batch of their own'
        : 'if they did come so late, write that day as the arrival of their batch first';
    const fix = `They were planned for ${planned}. Check the day and its year; ${wayOut}.`;
    throw new FieldError([
      { field: fieldOf(fact, 'on'), code: 'out-of-bounds', given: fact.on, min, max, fix },
    ]);
  }
}

/** Refuses more milk of a day than the milk cows of a herd can give: pounds typed for gallons. */
export async function refuseStrangeMilk(
  manager: EntityManager,
  farmId: string,
  { milked, tables }: { readonly milked: readonly FactOf<'milked'>[]; readonly tables: Tables },
  fieldOf: FieldOf<FactOf<'milked'>>,
): Promise<void> {
  for (const fact of milked) {
    const row = await manager.findOneBy(HerdEntity, { id: fact.about, farmId });
    if (!row) continue;
    const max = mostMilkL(toHerd(row).groups, fact.on, tables);
    refuseMoreL(fact, { max, fix: 'So few cows do not give that in a day.' }, fieldOf);
  }
}

function refuseMoreL<Fact extends { readonly details: { readonly liters: number } }>(
  fact: Fact,
  { max, fix }: { readonly max: number; readonly fix: string },
  fieldOf: FieldOf<Fact>,
): void {
  const given = fact.details.liters;
  if (given <= max) return;
  const checked = { given, max, fix: `${fix} Check the number and its unit.` };
  throw new FieldError([{ ...above(fieldOf(fact, 'details.liters'), checked), unit: 'L' }]);
}

const above = (
  field: string,
  { given, max, fix }: { readonly given: number; readonly max: number; readonly fix: string },
): FieldProblem => ({ field, code: 'out-of-bounds', given, min: 0, max, fix });
