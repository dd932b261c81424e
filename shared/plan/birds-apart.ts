import { addDays, type PlainDate } from '../calendar/plain-date.js';
import { hatchesHere, isStarted } from '../farm/batch-origin.js';
import { facilityOf } from '../farm/facility.js';
import { issue, type PlanIssue } from '../problems/plan-issue.js';
import { holds } from './batch-events.js';
import type { PlanContext } from './context.js';

/** Said where birds from elsewhere would come to older ones before their days apart are over. */
export function birdsApart(context: PlanContext): PlanIssue[] {
  const { batch, moveOutDay, dateOf, facilities, tables, say } = context;
  const { apartDays } = tables.judgements.birds;
  if (hatchesHere(batch) || moveOutDay === undefined || apartDays.value <= moveOutDay) return [];
  if (!holds(context, 'older-flock')) return [];
  const coop = facilityOf(facilities, 'coop', batch.coopId);
  const until = addDays(batch.arrivalDate, apartDays.value);
  if (isStarted(batch)) return [apartFirst(context, until, coop?.name)];
  return [
    issue(
      'act',
      'birds-apart',
      `They come from elsewhere and go ${coop ? `into ${coop.name} ` : ''}to the older birds on ${say(dateOf(moveOutDay), 'date')}, ${say(moveOutDay, 'day')} after they came. Keep them apart until ${say(until, 'date')}, ${say(apartDays.value, 'day')}: a shed or pen of their own, fed and watered last, in boots of their own. Or let them out later.`,
      [apartDays],
    ),
  ];
}

/** Grown birds go to older ones only after days in a place of their own. */
const apartFirst = (
  { occupied, batch, tables, say }: PlanContext,
  until: PlainDate,
  coop: string | undefined,
): PlanIssue => {
  const { apartDays } = tables.judgements.birds;
  const isShared = occupied.some(
    ({ facilityId, to }) => facilityId === batch.coopId && batch.arrivalDate <= to,
  );
  return issue(
    'act',
    'keep-apart',
    `They come from another flock. Keep them apart from your own birds until ${say(until, 'date')}, ${say(apartDays.value, 'day')}: fed and watered last, in boots of their own.${
      isShared && coop !== undefined
        ? ` ${coop} has hens in it: put the new ones into a shed or pen of their own until then.`
        : ''
    }`,
    [apartDays],
  );
};
