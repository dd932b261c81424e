import type { PlainDate } from '../../calendar/plain-date.js';
import type { Sourced } from '../../explain/formula.js';
import { together } from '../../explain/quantity.js';
import type { Cow } from '../../farm/cow.js';
import { groupsOf } from '../../pasture/named-cows.js';
import { rowById } from '../../tables/tables.js';
import type { PlanEvent } from '../tasks/event.js';
import { fedByHand } from './fed-by-hand.js';
import type { CarriedPart } from './carried-part.js';
import { grassAgainOf } from './grass-again.js';
import type { PastureContext } from './pasture-context.js';
import { needRows, waterRows } from './pasture-support.js';
import { rounded } from './rounded-days.js';
import type { Chosen } from './surplus.js';

/** Head of one group of a herd and what one animal of it needs, by day of the plan. */
export interface GroupPart {
  readonly name: string;
  readonly headByDay: readonly number[];
  readonly eachKgByDay: readonly number[];
}

/** What whoever looks after a named cow should know her by. */
export type NamedCow = Pick<Cow, 'id' | 'name' | 'earTag' | 'notes'>;

const namedCow = ({ id, name, earTag, notes }: Cow): NamedCow => ({
  id,
  name,
  ...(earTag === undefined ? {} : { earTag }),
  ...(notes === undefined ? {} : { notes }),
});

/** A herd over the days of the plan: what it needs, is fed and drinks. */
export interface HerdPart {
  readonly id: string;
  readonly name: string;
  readonly groups: readonly GroupPart[];
  /** Cattle in it that go by a name; left out where none does. */
  readonly cows?: readonly NamedCow[];
  readonly needByDay: readonly number[];
  readonly hayByDay: readonly number[];
  readonly waterByDay: readonly number[];
  /** Its first day on grass after the plan, as in this year; left out of one that stays on hay. */
  readonly grassAgain?: PlainDate;
  /** What its need and its water rest on beside their equations. */
  readonly need: Sourced;
  readonly water: Sourced;
  /** What the grass carries of the milk and gain that is asked of them. */
  readonly carries: readonly CarriedPart[];
  /** The days its tasks hang on. */
  readonly events: readonly PlanEvent[];
}

/** One herd of a plan, by its place among them, with the days its tasks hang on. */
export function herdPart(
  context: PastureContext,
  chosen: Chosen,
  h: number,
  { events, carries }: { events: readonly PlanEvent[]; carries: readonly CarriedPart[] },
): HerdPart {
  const { herds, span, tables } = context;
  const herd = herds[h]!;
  const grassAgain = grassAgainOf(context, chosen, h);
  return {
    id: herd.id,
    name: herd.name,
    groups: groupParts(context, h),
    ...(0 < herd.cows.length ? { cows: herd.cows.map(namedCow) } : {}),
    needByDay: rounded(context.herdDays[h]!.demandKg, span.from, span.to, 10),
    hayByDay: rounded(fedByHand(context, chosen, h), span.from, span.to, 10),
    waterByDay: rounded(context.herdDays[h]!.waterL, span.from, span.to, 10),
    ...(grassAgain === undefined ? {} : { grassAgain }),
    need: together(needRows({ ...context, herds: [herd] })),
    water: together(waterRows(tables, herd)),
    carries,
    events,
  };
}

function groupParts({ herds, herdDays, span, tables }: PastureContext, h: number): GroupPart[] {
  const { groups: planned } = herds[h]!;
  const groups = groupsOf(herds[h]!);
  return herdDays[h]!.groups.map(({ head, eachKg }, g) => {
    const { of, cow } = planned[g]!;
    const { name } = rowById(tables.cattle.classes, of.classId);
    const isOnly = groups.filter(({ classId }) => classId === of.classId).length === 1;
    return {
      name: cow?.name ?? (isOnly ? name : `${name}, group ${groups.indexOf(of) + 1}`),
      headByDay: rounded(head, span.from, span.to, 1),
      eachKgByDay: rounded(eachKg, span.from, span.to, 100),
    };
  });
}
