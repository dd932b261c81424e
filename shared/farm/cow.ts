import type { PlainDate } from '../calendar/plain-date.js';
import { longText, optional, row, text, type RowRule, type SavedRowOf } from './field.js';
import { cattleGroupFields, type Herd } from './herd.js';
import { date, id, OWN } from './words.js';

const GROUP = cattleGroupFields.fields;

const BORN_FIRST: RowRule<{
  readonly bornOn?: PlainDate;
  readonly bredOn?: PlainDate;
  readonly calvesOn?: PlainDate;
}> = {
  name: 'born-first',
  of: ['bornOn', 'bredOn', 'calvesOn'],
  find: ({ bornOn, bredOn, calvesOn }, at) => {
    const first = [bredOn, calvesOn].filter((each) => each !== undefined).sort()[0];
    return bornOn !== undefined && first !== undefined && first <= bornOn
      ? [
          {
            field: `${at}bornOn`,
            code: 'out-of-bounds',
            given: bornOn,
            max: first,
            fix: 'She is born before she is bred and calves: check the year.',
          },
        ]
      : [];
  },
};

/**
 * One animal that goes by a name. She is one of the head of the group of her class in her herd, and
 * is not counted again. What is given of her takes the place of what her group says.
 */
export const cowFields = row(
  'Cow',
  {
    ...OWN,
    name: text('Name'),
    herdId: id('Herd'),
    classId: GROUP.classId,
    earTag: optional(text('Ear tag', 40)),
    bornOn: optional(date('Born on')),
    weightKg: { ...GROUP.weightKg, label: 'Weight' },
    gainKgPerDay: GROUP.gainKgPerDay,
    milkKgPerDay: GROUP.milkKgPerDay,
    /** With either date she has a calving of her own, and the group's is for the others. */
    bredOn: GROUP.bredOn,
    calvesOn: GROUP.calvesOn,
    breedId: GROUP.breedId,
    /** For whoever looks after her. */
    notes: optional(longText('What to know')),
  },
  [BORN_FIRST],
);
export type Cow = SavedRowOf<typeof cowFields>;

/**
 * The named cows of a herd by its groups: each belongs to the first group of her class with head
 * that no other named cow is.
 *
 * @returns cows in the order of the groups, and those for whom there is no head
 */
export function cowsByGroup(
  { id, groups }: Pick<Herd, 'id' | 'groups'>,
  cows: readonly Cow[],
): { readonly groups: readonly (readonly Cow[])[]; readonly without: readonly Cow[] } {
  let left = cows.filter(({ herdId }) => herdId === id);
  const taken = groups.map(({ classId, head }) => {
    const own = left.filter((cow) => cow.classId === classId).slice(0, head);
    left = left.filter((cow) => !own.includes(cow));
    return own;
  });
  return { groups: taken, without: left };
}

/** The named cows for whom there is head in their herds; those of a herd that is not there go too. */
export const cowsWithHead = (herds: readonly Herd[], cows: readonly Cow[]): Cow[] =>
  cows.filter((cow) => herds.some((herd) => cowsByGroup(herd, cows).groups.flat().includes(cow)));
