import { addDays, daysBetween } from '../calendar/plain-date.js';
import { batchFields } from '../farm/batch.js';
import { besides, problemsOfRow } from '../farm/check-row.js';
import { facilityOf, type FacilityKind } from '../farm/facility.js';
import type { FieldProblem } from '../problems/field-problem.js';
import { FieldError } from '../problems/field-problem.js';
import type { Strain } from '../tables/bird-tables.js';
import { choicesFor, rowById, type Tables } from '../tables/tables.js';
import { daysBackOf, FURTHEST_DAYS } from './planning-day.js';
import type { PlanRequest } from './request.js';

/**
 * Throws when a batch cannot be planned: a field that is out of its bounds, a strain or facility
 * that is not there, a date too far off. Collects every problem before it throws.
 */
export function checkBatch(request: PlanRequest): void {
  const own = problemsOfRow(batchFields, request.batch, 'batch.', 'passed');
  const problems = besides(own, [
    ...problemsOfChoices(request),
    ...(own.some(({ field }) => field === 'batch.arrivalDate') ? [] : farOff(request)),
    ...facilities(request),
  ]);
  if (0 < problems.length) throw new FieldError(problems);
}

/** A paddock for birds to stand in that the farm does not have. */
export const unknownPaddock = (
  { grassPaddockId: given }: Pick<PlanRequest['batch'], 'grassPaddockId'>,
  paddockIds: readonly string[],
  at = '',
): FieldProblem[] =>
  given === undefined || paddockIds.includes(given)
    ? []
    : [notAllowed(`${at}grassPaddockId`, given, paddockIds)];

/** What is chosen from a table that does not have it. */
export function problemsOfChoices({
  batch,
  tables,
}: Pick<PlanRequest, 'batch' | 'tables'>): FieldProblem[] {
  const strain = tables.strains.find((s) => s.id === batch.strainId);
  const among = (field: string, given: string | undefined, allowed: readonly string[]) =>
    given === undefined || allowed.includes(given) ? [] : [notAllowed(field, given, allowed)];
  const ids = (rows: readonly { readonly id: string }[]) => rows.map((row) => row.id);
  const ofPurpose = ({ feedProgram, layCurve }: Strain) => [
    ...among(
      'batch.feedProgramId',
      batch.feedProgramId,
      ids(choicesFor(tables.feedPrograms, feedProgram[batch.purpose]!)),
    ),
    ...among(
      'batch.layCurveId',
      batch.layCurveId,
      layCurve === undefined ? [] : ids(choicesFor(tables.layCurves, layCurve)),
    ),
  ];
  return [
    ...among('batch.strainId', batch.strainId, ids(tables.strains)),
    ...among('batch.growthTableId', batch.growthTableId, strain?.growthTables ?? []),
    ...among('batch.broodingScheduleId', batch.broodingScheduleId, ids(tables.broodingSchedules)),
    ...among('batch.incubatorKindId', batch.incubatorKindId, ids(tables.hatching.incubators)),
    ...(strain && batch.origin === 'hen' ? underNoHen(strain, tables) : []),
    ...among('batch.spaceStandardId', batch.spaceStandardId, ids(tables.space.brooder)),
    ...(strain && strain.purposes.includes(batch.purpose) ? ofPurpose(strain) : []),
    ...(strain ? among('batch.purpose', batch.purpose, strain.purposes) : []),
    ...(strain && batch.moveOutRuleId !== undefined
      ? among(
          'batch.moveOutRuleId',
          batch.moveOutRuleId,
          ids(tables.moveOut.find((m) => m.id === strain.moveOut)?.rules ?? []),
        )
      : []),
    ...among('batch.nightSuretyId', batch.nightSuretyId, ids(tables.nights.surety.choices)),
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

/** Eggs that no hen should sit on. */
function underNoHen({ species }: Strain, { hatching }: Tables): FieldProblem[] {
  const kind = rowById(hatching.species, species);
  return kind.hen
    ? []
    : [
        {
          field: 'batch.origin',
          code: 'conflict',
          given: 'hen',
          fix: `${kind.name} eggs are not planned under a chicken hen, which can carry blackhead to ${kind.young}: choose an incubator.`,
        },
      ];
}

function farOff({ batch, today }: PlanRequest): FieldProblem[] {
  const { arrivalDate } = batch;
  const off = daysBetween(today, arrivalDate);
  return -daysBackOf(batch) <= off && off <= FURTHEST_DAYS
    ? []
    : [
        {
          field: 'batch.arrivalDate',
          code: 'out-of-bounds',
          given: arrivalDate,
          min: addDays(today, -daysBackOf(batch)),
          max: addDays(today, FURTHEST_DAYS),
          fix:
            batch.purpose === 'layers'
              ? 'Plan within three years ahead; hens may have come up to six years ago.'
              : 'Plan within three years of today.',
        },
      ];
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
