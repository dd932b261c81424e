import { cowsByGroup, type Cow } from '../farm/cow.js';
import type { CattleGroup, Herd } from '../farm/herd.js';

/** Cattle that are planned alike: those of a group, or one named cow that differs from them. */
export interface PlannedGroup extends CattleGroup {
  /** The group of the herd that they are of. */
  readonly of: CattleGroup;
  readonly cow?: Cow;
}

/** A herd with each named cow that differs from her group as a group of one. */
export type PlannedHerd = Omit<Herd, 'groups'> & {
  readonly groups: readonly PlannedGroup[];
  /** All of its named cows, alike or not. */
  readonly cows: readonly Cow[];
};

/** Whether she calves by a date of her own, not by her group's. */
export const hasOwnDates = ({ bredOn, calvesOn }: Cow): boolean =>
  bredOn !== undefined || calvesOn !== undefined;

/** Takes the named cows of whom something of their own is known out of their groups. */
export function withNamedCows(herd: Herd, cows: readonly Cow[]): PlannedHerd {
  const { groups } = cowsByGroup(herd, cows);
  return {
    ...herd,
    cows: groups.flat(),
    groups: herd.groups.flatMap((of, g): PlannedGroup[] => {
      const apart = groups[g]!.filter(differs);
      const head = of.head - apart.length;
      return [
        ...(0 < head ? [{ ...of, head, of }] : []),
        ...apart.map((cow) => ({ ...asGiven(of, cow), head: 1, of, cow })),
      ];
    }),
  };
}

/** The groups of a herd as they are kept. */
export const groupsOf = ({ groups }: PlannedHerd): CattleGroup[] => [
  ...new Set(groups.map(({ of }) => of)),
];

const FIGURES = ['weightKg', 'gainKgPerDay', 'milkKgPerDay'] as const;

const differs = (cow: Cow): boolean =>
  hasOwnDates(cow) || FIGURES.some((name) => cow[name] !== undefined);

/** Her group as it is for her. */
function asGiven(group: CattleGroup, cow: Cow): CattleGroup {
  const { bredOn, calvesOn, breedId, ...rest } = group;
  const dates = hasOwnDates(cow) ? cow : { bredOn, calvesOn };
  const given = {
    ...Object.fromEntries(FIGURES.map((name) => [name, cow[name]])),
    bredOn: dates.bredOn,
    calvesOn: dates.calvesOn,
    breedId: (hasOwnDates(cow) ? cow.breedId : undefined) ?? breedId,
  };
  return {
    ...rest,
    ...Object.fromEntries(Object.entries(given).filter(([, value]) => value !== undefined)),
  };
}
