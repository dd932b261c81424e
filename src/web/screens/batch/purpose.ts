import { hatchesHere, isStarted } from '../../../../shared/farm/batch-origin.js';
import type { Batch, Purpose, Sex } from '../../../../shared/farm/batch.js';
import { freeName } from '../../../../shared/farm/batch-names.js';
import { capital } from '../../../../shared/plan/bird-words.js';
import type { Strain } from '../../../../shared/tables/bird-tables.js';
import { NO_PROCESSING } from './no-processing.js';
import { NO_EGGS } from './own-eggs.js';
import type { BatchDraft } from './use-plan.js';

const SEXES: Record<Purpose, readonly Sex[]> = {
  meat: ['straight-run', 'cockerels', 'pullets'],
  layers: ['pullets', 'straight-run'],
};

/**
 * The sexes to choose from, as they are called of that kind of bird; eggs hatch both, and of grown
 * birds only pullets come.
 */
export function sexesOf(
  purpose: Purpose,
  from: Pick<BatchDraft, 'origin'>,
  { male, female } = { male: 'cockerel', female: 'pullet' },
): { id: Sex; name: string }[] {
  const names: Record<Sex, string> = {
    'straight-run': 'Straight run (both sexes)',
    cockerels: `${capital(male)}s`,
    pullets: `${capital(female)}s`,
  };
  return SEXES[purpose]
    .filter((sex) => !hatchesHere(from) || sex === 'straight-run')
    .filter((sex) => !isStarted(from) || sex === 'pullets')
    .map((id) => ({ id, name: names[id] }));
}

/** Choices that belong to a strain of hens. */
const NO_HENS = { layCurveId: undefined, feedProgramId: undefined } as const;

/** Name of a batch until the household gives it one of its own. */
const FIRST_NAMES: Record<Purpose, string> = { meat: 'Meat birds', layers: 'Layers' };

const isFirstName = (
  name: string,
  arrivalDate: string | undefined,
  others: readonly string[],
): boolean =>
  Object.values(FIRST_NAMES).some((first) => freeName(first, arrivalDate, others) === name);

/** The name of a new batch with its month, which follows its date until it is given another. */
export function namedByDate(
  { name = '', purpose = 'meat', arrivalDate: before }: BatchDraft,
  arrivalDate: string | undefined,
  others: readonly string[],
): Pick<BatchDraft, 'name'> {
  return isFirstName(name, before, others)
    ? { name: freeName(FIRST_NAMES[purpose], arrivalDate, others) }
    : {};
}

/**
 * What changes with the purpose: a strain bred for it, the name while it is still the first one, and
 * nothing that no longer applies.
 */
export function forPurpose(
  purpose: Purpose,
  strains: readonly Strain[],
  {
    name,
    arrivalDate,
    others,
  }: Pick<BatchDraft, 'name' | 'arrivalDate'> & { readonly others: readonly string[] },
): BatchDraft {
  const fitting = strains.filter((s) => s.purposes.includes(purpose));
  const strain = fitting.find((s) => s.defaultFor?.includes(purpose)) ?? fitting[0]!;
  const isUntouched = !name?.trim() || isFirstName(name, arrivalDate, others);
  return {
    purpose,
    ...(isUntouched ? { name: freeName(FIRST_NAMES[purpose], arrivalDate, others) } : {}),
    strainId: strain.id,
    sex: SEXES[purpose][0]!,
    origin: undefined,
    arrivalAgeWeeks: undefined,
    hatchToArrivalDays: 1,
    ...NO_EGGS,
    growthTableId: undefined,
    moveOutRuleId: undefined,
    leaveAgeDays: undefined,
    targetLiveKg: undefined,
    ...NO_HENS,
    processingWeekday: undefined,
    ...NO_PROCESSING,
  };
}

/** What changes with the breed or cross: nothing stays that was chosen for another. */
export const forStrain = (strainId: Batch['strainId'] | undefined): BatchDraft => ({
  strainId,
  growthTableId: undefined,
  moveOutRuleId: undefined,
  broodingScheduleId: undefined,
  spaceStandardId: undefined,
  leaveAgeDays: undefined,
  ...NO_HENS,
});
