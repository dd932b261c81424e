import { besides, problemsOfRow } from '../../farm/check-row.js';
import { cowFields, cowsByGroup, type Cow } from '../../farm/cow.js';
import type { Herd } from '../../farm/herd.js';
import type { FieldProblem } from '../../problems/field-problem.js';
import type { Tables } from '../../tables/tables.js';
import { ids, later, oneOf } from './check-values.js';
import type { PastureRequest } from './pasture-request.js';

/**
 * What is wrong with one named cow by herself, by the tables, and in the herd she is said to be in.
 *
 * @param of `cows` are all of the farm, herself among them
 */
export function cowProblems(
  cow: Cow,
  of: Pick<PastureRequest, 'tables' | 'herds' | 'cows' | 'today'>,
  at = '',
): FieldProblem[] {
  const { tables, herds, cows, today } = of;
  const herd = herds.find(({ id }) => id === cow.herdId);
  const unknownClass = oneOf(`${at}classId`, cow.classId, ids(tables.cattle.classes));
  return besides(problemsOfRow(cowFields, cow, at, 'passed'), [
    ...unknownClass,
    ...(cow.breedId === undefined
      ? []
      : oneOf(`${at}breedId`, cow.breedId, ids(tables.gestation.breeds))),
    ...later(today, `${at}bornOn`, cow.bornOn),
    ...oneOf(`${at}herdId`, cow.herdId, ids(herds)),
    ...(herd && unknownClass.length === 0 ? placeProblems(cow, { herd, cows, tables }, at) : []),
  ]);
}

/** A named cow is one of the head of a group of her class: there must be one that is she. */
function placeProblems(
  cow: Cow,
  { herd, cows, tables }: { herd: Herd; cows: readonly Cow[]; tables: Tables },
  at: string,
): FieldProblem[] {
  const { without } = cowsByGroup(herd, cows);
  if (!without.some(({ id }) => id === cow.id)) return [];
  const groups = herd.groups.filter(({ classId }) => classId === cow.classId);
  const name = classNameOf(tables, cow.classId);
  if (groups.length === 0) {
    return [
      {
        field: `${at}classId`,
        code: 'conflict',
        given: cow.classId,
        fix: `${herd.name} has no group of the class “${name}”. Add one to the herd first, or choose another class.`,
      },
    ];
  }
  const head = groups.reduce((sum, group) => sum + group.head, 0);
  return [
    {
      field: `${at}herdId`,
      code: 'out-of-bounds',
      given: named(herd, cows, cow.classId),
      max: head,
      unit: 'named cows',
      fix: `All ${head} head of the class “${name}” in ${herd.name} have a name. Raise the head of that group first, as a named cow is one of them.`,
    },
  ];
}

/** What a change of a herd would do to its named cows: each stays one of the head of her class. */
export const herdCowProblems = (
  herd: Herd,
  cows: readonly Cow[],
  tables: Tables,
): FieldProblem[] => {
  const classIds = new Set(cowsByGroup(herd, cows).without.map(({ classId }) => classId));
  return [...classIds].map((classId): FieldProblem => {
    const k = herd.groups.findIndex((group) => group.classId === classId);
    const names = cows.filter((cow) => cow.herdId === herd.id && cow.classId === classId);
    const list = names.map(({ name }) => name).join(', ');
    const what = classNameOf(tables, classId);
    return k === -1
      ? {
          field: 'groups',
          code: 'conflict',
          given: herd.groups.length,
          fix: `Keep a group of the class “${what}”: ${list} ${names.length === 1 ? 'is' : 'are'} of it. Give them another class or herd, or delete them, first.`,
        }
      : {
          field: `groups.${k}.head`,
          code: 'out-of-bounds',
          given: herd.groups[k]!.head,
          min: names.length,
          unit: 'count',
          fix: `${list} are of that class and have a name of their own. Move or delete one of them first.`,
        };
  });
};

const named = ({ id }: Herd, cows: readonly Cow[], classId: string): number =>
  cows.filter((cow) => cow.herdId === id && cow.classId === classId).length;

const classNameOf = (tables: Tables, id: string): string =>
  tables.cattle.classes.find((each) => each.id === id)?.name ?? id;
