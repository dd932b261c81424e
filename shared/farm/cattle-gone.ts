import type { PlainDate } from '../calendar/plain-date.js';
import type { CattleGroup } from './herd.js';

/** Head of a class that left a herd on a day, and the fact by which that was told. */
export interface Leaving {
  readonly factId: string;
  readonly classId: string;
  readonly head: number;
  readonly on: PlainDate;
}

/**
 * Groups of a herd after some of its head left on a day. Groups keep their places, because work and
 * calvings are known by these; those that left stand behind them, to be undone by the fact.
 *
 * @returns `short`: head that there was not on that day
 */
export function withoutLeft(
  groups: readonly CattleGroup[],
  { factId, classId, head, on }: Leaving,
): { readonly groups: readonly CattleGroup[]; readonly short: number } {
  let short = head;
  const gone: CattleGroup[] = [];
  const rest = groups.map((group, k): CattleGroup => {
    const taken =
      group.classId === classId && mayLeave(group, on) ? Math.min(short, group.head) : 0;
    short -= taken;
    if (taken === 0) return group;
    if (taken === group.head) return goneOn(group, { factId, on });
    gone.push({
      ...withoutCalving(goneOn(group, { factId, on }), on),
      ...{ head: taken, leftOf: k + 1 },
    });
    return { ...group, head: group.head - taken };
  });
  return { groups: [...rest, ...gone], short };
}

const mayLeave = ({ arrivesOn, leavesOn, leftAs }: CattleGroup, on: PlainDate): boolean =>
  leftAs === undefined &&
  (arrivesOn === undefined || arrivesOn < on) &&
  (leavesOn === undefined || on <= leavesOn);

const goneOn = (
  group: CattleGroup,
  { factId, on }: Pick<Leaving, 'factId' | 'on'>,
): CattleGroup => ({
  ...group,
  ...(group.leavesOn === undefined ? {} : { wouldLeaveOn: group.leavesOn }),
  leavesOn: on,
  leftAs: factId,
});

/** A calving that is still to come is none of a few that left. */
function withoutCalving(group: CattleGroup, on: PlainDate): CattleGroup {
  if (group.calvesOn !== undefined && group.calvesOn <= on) return group;
  const { calvesOn: _calvesOn, bredOn: _bredOn, ...rest } = group;
  return rest;
}

/** Groups of a herd as if a leaving had not been told: whoever left is there again. */
export function withLeftAgain(
  groups: readonly CattleGroup[],
  { factId, classId, head }: Pick<Leaving, 'factId' | 'classId' | 'head'>,
): readonly CattleGroup[] {
  const now: (CattleGroup | undefined)[] = [...groups];
  const gone = groups.flatMap((group, k) => (group.leftAs === factId ? [k] : []));
  if (gone.length === 0) {
    // Somebody has taken them out of the herd's form since: they are there all the same.
    const to = groups.findIndex((each) => isOfClass(each, classId));
    if (to === -1) return [...groups, { classId, head }];
    now[to] = { ...groups[to]!, head: groups[to]!.head + head };
  }
  for (const k of gone) {
    const group = groups[k]!;
    const of = (group.leftOf ?? 0) - 1;
    const base = now[of];
    if (!base || base.classId !== group.classId) {
      now[k] = thereAgain(group);
    } else if (base.leftAs === undefined) {
      now[of] = { ...base, head: base.head + group.head };
      now[k] = undefined;
    } else {
      // The others have left as well: these stand in the place of the group again, those behind it.
      const { leavesOn, leftAs } = base;
      now[of] = { ...thereAgain(base), head: group.head };
      now[k] = { ...group, head: base.head, ...(leavesOn ? { leavesOn } : {}), leftAs };
    }
  }
  return now.filter((group) => group !== undefined);
}

/** Groups as they were to be, with all that were told to have left. */
export const asMeant = (groups: readonly CattleGroup[]): readonly CattleGroup[] =>
  groups.reduce<readonly CattleGroup[]>(
    (all, { leftAs, classId, head }) =>
      leftAs === undefined || !all.some((each) => each.leftAs === leftAs)
        ? all
        : withLeftAgain(all, { factId: leftAs, classId, head }),
    groups,
  );

const isOfClass = (group: CattleGroup, classId: string): boolean =>
  group.classId === classId && group.leftAs === undefined;

function thereAgain(group: CattleGroup): CattleGroup {
  const { leftAs: _leftAs, leftOf: _leftOf, leavesOn: _leavesOn, wouldLeaveOn, ...rest } = group;
  return wouldLeaveOn === undefined ? rest : { ...rest, leavesOn: wouldLeaveOn };
}
