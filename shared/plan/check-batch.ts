import { addDays, daysBetween, isPlainDate } from '../calendar/plain-date.js';
import { problemsOfBound, type BoundName } from '../farm/bounds.js';
import { facilityOf, type FacilityKind } from '../farm/facility.js';
import { isPrice } from '../money/money.js';
import type { FieldProblem } from '../problems/field-problem.js';
import { FieldError } from '../problems/field-problem.js';
import { FURTHEST_DAYS } from './planning-day.js';
import type { PlanRequest } from './request.js';

/**
 * Throws when a batch cannot be planned: unknown strain or facility, a date that contradicts
 * another, a number out of bounds. Collects every problem before it throws.
 */
export function checkBatch(request: PlanRequest): void {
  const problems = [
    ...missing(request),
    ...problemsOfChoices(request),
    ...prices(request),
    ...numbers(request),
    ...dates(request),
    ...facilities(request),
  ];
  if (0 < problems.length) throw new FieldError(problems);
}

const REQUIRED = [
  'strainId',
  'purpose',
  'sex',
  'wantedBirds',
  'arrivalDate',
  'hatchToArrivalDays',
] as const;

function missing({ batch }: PlanRequest): FieldProblem[] {
  return REQUIRED.filter((field) => batch[field] === undefined).map((field) => ({
    field: `batch.${field}`,
    code: 'missing',
    given: undefined,
    fix: 'Give this field.',
  }));
}

function prices({ batch }: PlanRequest): FieldProblem[] {
  const { feedPerBag, ...others } = batch.prices ?? {};
  const named: [string, string | undefined][] = [
    ...Object.entries(others),
    ...Object.entries(feedPerBag ?? {}).map(([phase, price]): [string, string] => [
      `feedPerBag.${phase}`,
      price,
    ]),
  ];
  return named
    .filter(([, price]) => price !== undefined && !isPrice(price))
    .map(([name, given]) => ({
      field: `batch.prices.${name}`,
      code: 'not-a-number',
      given,
      fix: 'Write a price as decimal text, such as "24.50", without a sign or currency.',
    }));
}

/** What is chosen from a table that does not have it. */
export function problemsOfChoices({
  batch,
  tables,
}: Pick<PlanRequest, 'batch' | 'tables'>): FieldProblem[] {
  const strain = tables.strains.find((s) => s.id === batch.strainId);
  const among = (field: string, given: string | undefined, allowed: readonly string[]) =>
    given === undefined || allowed.includes(given) ? [] : [notAllowed(field, given, allowed)];
  const ids = (rows: readonly { readonly id: string }[]) => rows.map((row) => row.id);
  return [
    ...among('batch.strainId', batch.strainId, ids(tables.strains)),
    ...among('batch.sex', batch.sex, ['straight-run', 'cockerels', 'pullets']),
    ...among('batch.growthTableId', batch.growthTableId, strain?.growthTables ?? []),
    ...among('batch.broodingScheduleId', batch.broodingScheduleId, ids(tables.broodingSchedules)),
    ...among('batch.spaceStandardId', batch.spaceStandardId, ids(tables.space.brooder)),
    ...(strain ? among('batch.purpose', batch.purpose, strain.purposes) : []),
    ...(strain && batch.moveOutRuleId !== undefined
      ? among(
          'batch.moveOutRuleId',
          batch.moveOutRuleId,
          ids(tables.moveOut.find((m) => m.id === strain.moveOut)?.rules ?? []),
        )
      : []),
    ...(batch.purpose === 'layers' && batch.sex === 'cockerels'
      ? [
          {
            field: 'batch.sex',
            code: 'conflict' as const,
            given: batch.sex,
            fix: 'Cockerels do not lay: choose pullets or straight run, or plan the batch for meat.',
          },
        ]
      : []),
  ];
}

function numbers({ batch }: PlanRequest): FieldProblem[] {
  const check = (field: keyof typeof batch & string, bound: BoundName): FieldProblem[] =>
    problemsOfBound(`batch.${field}`, batch[field], bound);
  return [
    ...check('wantedBirds', 'wantedBirds'),
    ...check('orderedBirds', 'orderedBirds'),
    ...check('hatchToArrivalDays', 'hatchToArrivalDays'),
    ...check('weightFactor', 'weightFactor'),
    ...check('feedFactor', 'feedFactor'),
    ...check('wastePercent', 'wastePercent'),
    ...check('firstWeekLossPercent', 'lossPercent'),
    ...check('laterLossPercent', 'lossPercent'),
    ...check('leaveAgeDays', 'leaveAgeDays'),
    ...check('targetLiveKg', 'targetLiveKg'),
    ...check('dressingShare', 'dressingShare'),
    ...check('movesPerDay', 'movesPerDay'),
    ...check('medicatedWithdrawalDays', 'withdrawalDays'),
    ...check('bagKg', 'bagKg'),
  ];
}

function dates({ batch, today }: PlanRequest): FieldProblem[] {
  const problems: FieldProblem[] = [];
  for (const field of ['arrivalDate', 'orderDate', 'moveOutDate'] as const) {
    const given = batch[field];
    if (given !== undefined && !isPlainDate(given))
      problems.push(notADate(`batch.${field}`, given));
  }
  if (0 < problems.length) return problems;
  if (batch.orderDate !== undefined && batch.arrivalDate < batch.orderDate) {
    problems.push({
      field: 'batch.arrivalDate',
      code: 'out-of-bounds',
      given: batch.arrivalDate,
      min: batch.orderDate,
      fix: 'The birds cannot arrive before they are ordered: move one of the two dates.',
    });
  }
  if (FURTHEST_DAYS < Math.abs(daysBetween(today, batch.arrivalDate))) {
    problems.push({
      field: 'batch.arrivalDate',
      code: 'out-of-bounds',
      given: batch.arrivalDate,
      min: addDays(today, -FURTHEST_DAYS),
      max: addDays(today, FURTHEST_DAYS),
      fix: 'Plan within three years of today.',
    });
  }
  if (batch.moveOutDate !== undefined && batch.moveOutDate <= batch.arrivalDate) {
    problems.push({
      field: 'batch.moveOutDate',
      code: 'out-of-bounds',
      given: batch.moveOutDate,
      min: addDays(batch.arrivalDate, 1),
      fix: 'Birds leave the brooder after they have arrived.',
    });
  }
  return problems;
}

function facilities({ batch, facilities: all }: PlanRequest): FieldProblem[] {
  const known = (field: string, kind: FacilityKind, id: string | undefined): FieldProblem[] =>
    id === undefined || facilityOf(all, kind, id)
      ? []
      : [
          notAllowed(
            `batch.${field}`,
            id,
            all.filter((f) => f.kind === kind).map((f) => f.id),
          ),
        ];
  return [
    ...known('brooderId', 'brooder', batch.brooderId),
    ...known('penId', 'field-pen', batch.penId),
    ...known('coopId', 'coop', batch.coopId),
    ...known('freezerId', 'freezer', batch.freezerId),
    ...known('feedStoreId', 'feed-store', batch.feedStoreId),
  ];
}

function notAllowed(field: string, given: unknown, allowed: readonly string[]): FieldProblem {
  const fix =
    allowed.length === 0
      ? 'There is none yet: add one first, or leave it out.'
      : 'Choose one of these.';
  return { field, code: 'not-allowed', given, allowed: allowed.slice(0, 20), fix };
}

function notADate(field: string, given: unknown): FieldProblem {
  return { field, code: 'not-a-date', given, fix: 'Write year-month-day, such as 2027-04-21.' };
}
