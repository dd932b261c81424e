import type { PlainDate } from '../../calendar/plain-date.js';
import type { CattleGroup } from '../../farm/herd.js';
import { calvingsOf } from '../../pasture/herd-demand.js';
import { groupsOf, type PlannedHerd } from '../../pasture/named-cows.js';
import { apartOf, type Apart } from '../../pasture/quarantine.js';
import { issue, type PlanIssue } from '../../problems/plan-issue.js';
import type { PastureContext } from './pasture-context.js';
import type { Chosen } from './surplus.js';

/** Cattle that will stand apart, from today on. */
interface Standing extends Apart {
  readonly herd: PlannedHerd;
  readonly group: CattleGroup;
  readonly words: string;
}

/**
 * What bought-in cattle ask for while they stand apart: a place of their own that is free then, and
 * nothing in those days that ends or lengthens them.
 */
export function quarantineIssues(context: PastureContext, { books }: Chosen): PlanIssue[] {
  const all = standingApart(context);
  return all.flatMap((each) => [
    ...placeMissing(context, each),
    ...placeGrazed(context, each, books),
    ...placeShared(context, each, all),
    ...calvesApart(context, each),
  ]);
}

function standingApart({ herds, tables, today }: PastureContext): Standing[] {
  return herds.flatMap((herd) => {
    const groups = groupsOf(herd);
    return groups.flatMap((group) => {
      const apart = apartOf(groups, group, tables);
      if (!apart || apart.out <= today) return [];
      const kind = tables.cattle.classes.find(({ id }) => id === group.classId)!.name;
      return [{ ...apart, herd, group, words: `${group.head} × ${kind.toLowerCase()}` }];
    });
  });
}

function placeMissing({ say, tables }: PastureContext, each: Standing): PlanIssue[] {
  const { group, herd, from, out, words } = each;
  if (group.apartIn !== undefined) return [];
  const { value, low, high } = tables.pasture.quarantineDays;
  const days = group.apartDays ?? value;
  return [
    issue(
      'act',
      'quarantine-place',
      `${words} come to ${herd.name} on ${say(from, 'date')} and stand apart until ${say(out, 'date')}: ${say(days, 'day')} here, advice runs from ${low} to ${high}. Say under the herd where: a pen or paddock with its own water, where no nose reaches another.`,
      [tables.pasture.quarantineDays],
    ),
  ];
}

const isSame = (a: string | undefined, b: string): boolean =>
  a !== undefined && a.trim().toLowerCase() === b.trim().toLowerCase();

/** A paddock in which a herd grazes is no place apart. */
function placeGrazed(
  { paddocks, herds, dateOf, say }: PastureContext,
  { group, from, out }: Standing,
  books: Chosen['books'],
): PlanIssue[] {
  const at = paddocks.findIndex(({ name }) => isSame(group.apartIn, name));
  const stay =
    at < 0
      ? undefined
      : books.stays.find(
          ({ paddock, from: first, days }) =>
            paddock === at && dateOf(first) < out && from < dateOf(first + days),
        );
  if (!stay) return [];
  return [
    issue(
      'act',
      'quarantine-grazed',
      `${paddocks[at]!.name} is to hold the new cattle from ${say(from, 'date')} to ${say(out, 'date')}, and ${herds[stay.herd]!.name} graze it from ${say(dateOf(stay.from), 'date')}. Close it for those days, or keep the new ones elsewhere.`,
    ),
  ];
}

/** Cattle that come into the pen of others begin the days of those again. */
function placeShared(
  { say }: PastureContext,
  each: Standing,
  all: readonly Standing[],
): PlanIssue[] {
  const { apartIn } = each.group;
  if (apartIn === undefined) return [];
  return all
    .filter(
      ({ group, from }) => isSame(group.apartIn, apartIn) && each.from < from && from < each.out,
    )
    .map((later) =>
      issue(
        'act',
        'quarantine-shared',
        `${apartIn} holds ${each.words} until ${say(each.out, 'date')}, and ${later.words} come into it on ${say(later.from, 'date')}: that begins the days of the first again, to ${say(later.out, 'date')}. Have them come by ${say(each.from, 'date')} or from ${say(each.out, 'date')} on, or keep them in another place.`,
      ),
    );
}

/** A cow that was bought pregnant brings a calf whose health nobody knows. */
function calvesApart(
  { say, tables }: PastureContext,
  { herd, group, from, out, words }: Standing,
): PlanIssue[] {
  const due = dueApart(herd, group, { from, out }, tables);
  if (due === undefined) return [];
  return [
    issue(
      'act',
      'quarantine-calving',
      `${words} come on ${say(from, 'date')} and a calf is due on ${say(due, 'date')}, while they stand apart. Keep them apart until it is born and its tests are clear, and have a dry calving place there.`,
      [tables.pasture.quarantineDays],
    ),
  ];
}

function dueApart(
  herd: PlannedHerd,
  group: CattleGroup,
  { from, out }: Apart,
  tables: PastureContext['tables'],
): PlainDate | undefined {
  return calvingsOf(herd, tables)
    .filter((calving) => calving.group.of === group)
    .map(({ due }) => due.due)
    .find((due) => from <= due && due < out);
}
