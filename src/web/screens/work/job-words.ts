import { jobFields, workConditionFields, type OwnJob } from '../../../../shared/farm/job.js';
import type { KeyDate } from '../../../../shared/plan/tasks/event.js';
import { formatValue } from '../../../../shared/units/format.js';
import type { SavedFarm } from '../../api/queries.js';

export const CONDITIONS = ['dryGround', 'noRain', 'daylight', 'shopsOpen'] as const;
export const AMOUNTS = [
  'dryDaysInRow',
  'soilAtLeastC',
  'dayMaxAtLeastC',
  'dayMaxAtMostC',
  'nightMinAtLeastC',
  'nextNightMinAtLeastC',
] as const;
const CONDITION = workConditionFields.fields;
const FIELDS = jobFields.fields;
const PRIORITY: Record<OwnJob['priority'], string> = {
  must: 'must be done',
  should: 'should be done',
  could: 'could be done',
};

type Draft = { readonly [K in keyof OwnJob]?: OwnJob[K] | undefined };

/** What a day must be like for a job, in one line. */
export function conditionsInWords(
  conditions: OwnJob['conditions'],
  harmedAtOrBelowC: number | undefined,
  farm: SavedFarm,
): string {
  const asked = [
    ...CONDITIONS.filter((key) => conditions[key]).map((key) => CONDITION[key].label),
    ...AMOUNTS.flatMap((key) => {
      const value = conditions[key];
      const { label, bounds } = CONDITION[key];
      return value === undefined ? [] : [`${label} ${formatValue(value, bounds.unit, farm)}`];
    }),
    ...(harmedAtOrBelowC === undefined
      ? []
      : [`${FIELDS.harmedAtOrBelowC.label} ${formatValue(harmedAtOrBelowC, 'degC', farm)}`]),
  ];
  return asked.length === 0
    ? 'Any ground, any weather, any day. Touch to ask for dry ground, no rain, warmth, open shops'
    : asked.join('; ');
}

/** What else is said of a job, in one line. */
export function moreInWords(
  { priority, tiedTo, waitsForId, mostWaitDays, canBeSpread, noUseAfter, ifLate }: Draft,
  events: readonly KeyDate[],
  jobs: readonly OwnJob[],
): string {
  const event = events.find(({ id }) => id === tiedTo?.eventId);
  const before = jobs.find(({ id }) => id === waitsForId);
  return [
    priority && PRIORITY[priority],
    canBeSpread ? 'may be spread over days' : 'in one go',
    event && `moves with ${event.name}`,
    before &&
      `after “${before.name}”${mostWaitDays === undefined ? '' : `, within ${mostWaitDays} ${mostWaitDays === 1 ? 'day' : 'days'}`}`,
    noUseAfter && 'has a last day',
    ifLate,
  ]
    .filter((each) => typeof each === 'string' && each !== '')
    .join('; ');
}
