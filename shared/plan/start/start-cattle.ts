import { addDays, daysBetween, type PlainDate } from '../../calendar/plain-date.js';
import type { Herd } from '../../farm/herd.js';
import type { Paddock } from '../../farm/paddock.js';
import { equalPaddocksFields, type CattleToCome, type Start } from '../../farm/start.js';
import { FieldError } from '../../problems/field-problem.js';
import type { StartSetting } from './start-setting.js';

/** The herd that is there or to come: whatever grazes, together until the household parts it. */
export function startHerd(
  cattle: readonly CattleToCome[],
  { newId, tables }: Pick<StartSetting, 'newId' | 'tables'>,
): Herd {
  return {
    id: newId(),
    name: 'Herd',
    groups: cattle.flatMap((each, at) => {
      const { classId, head, arrivesOn } = each;
      classOf(classId, at, tables);
      const group = { classId, ...(arrivesOn === undefined ? {} : { arrivesOn }) };
      const calvings = calvingsOf(each);
      if (calvings.length === 0) return [{ ...group, head }];
      return calvings.map((calving) => ({ ...group, ...calving }));
    }),
    assumed: ['name'],
  };
}

/** Calves of one group are taken to come within about a month: a longer season is one of several. */
const PART_DAYS = 31;
const MOST_PARTS = 3;

/**
 * The cattle of a calving season by when they are due, the first part not the smaller: who calves when
 * is not known of any of them yet.
 */
function calvingsOf({
  head,
  calvesOn,
  calvesUntil,
}: CattleToCome): { head: number; calvesOn: PlainDate }[] {
  if (calvesOn === undefined) return [];
  if (calvesUntil === undefined) return [{ head, calvesOn }];
  const days = daysBetween(calvesOn, calvesUntil) + 1;
  const parts = Math.min(head, MOST_PARTS, Math.ceil(days / PART_DAYS));
  return Array.from({ length: parts }, (_, k) => ({
    head: Math.ceil((head - k) / parts),
    calvesOn: addDays(calvesOn, Math.floor(((k + 0.5) * days) / parts)),
  }));
}

/**
 * So many equal paddocks, of the size that was said or else of as much grass as the cattle ask for;
 * none without cattle, unless paddocks were counted.
 */
export function startPaddocks(
  { cattle = [], paddocks, units = 'metric' }: Pick<Start, 'cattle' | 'paddocks' | 'units'>,
  { defaults, tables, newId }: StartSetting,
): Paddock[] {
  if (cattle.length === 0 && !paddocks) return [];
  const count = paddocks?.count ?? defaults.paddocks;
  const weightKg = cattle.reduce(
    (sum, { classId, head }, at) => sum + head * classOf(classId, at, tables).weightKg,
    0,
  );
  const step = defaults[units].paddockStepM2;
  const share = (weightKg * defaults.grassM2PerKg) / count;
  const saidM2 = paddocks?.areaM2 ?? shareOf(paddocks?.allM2, count);
  const areaM2 = saidM2 ?? Number((Math.max(1, Math.round(share / step)) * step).toFixed(2));
  return Array.from({ length: count }, (_, k) => ({
    id: newId(),
    name: `Paddock ${k + 1}`,
    areaM2,
    ...defaults.paddock,
    closedDays: [],
    assumed: [
      'name',
      ...(saidM2 === undefined ? ['areaM2'] : []),
      ...Object.keys(defaults.paddock),
    ],
  }));
}

/** @throws FieldError when too little is left for each */
function shareOf(allM2: number | undefined, count: number): number | undefined {
  if (allM2 === undefined) return undefined;
  const { min, max } = equalPaddocksFields.fields.areaM2.bounds;
  if (min * count <= allM2 && allM2 <= max * count) return Number((allM2 / count).toFixed(2));
  throw new FieldError([
    {
      ...{ field: 'paddocks.allM2', code: 'out-of-bounds', given: allM2 },
      ...{ min: min * count, max: max * count, unit: 'm²' },
      fix: `Give the area of all ${count} paddocks together, or another number of paddocks.`,
    },
  ]);
}

/** @throws FieldError when the tables know no such class of cattle */
function classOf(id: string, at: number, { cattle }: StartSetting['tables']) {
  const found = cattle.classes.find((each) => each.id === id);
  if (found) return found;
  throw new FieldError([
    {
      field: `cattle.${at}.classId`,
      code: 'not-allowed',
      given: id,
      allowed: cattle.classes.map((each) => each.id),
      fix: 'Choose one of the classes of cattle.',
    },
  ]);
}
