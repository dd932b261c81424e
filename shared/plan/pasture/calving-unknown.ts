import type { PlannedGroup } from '../../pasture/named-cows.js';
import { calfEatsKg } from '../../pasture/cow-day.js';
import { dueOf } from '../../pasture/herd-demand.js';
import { issue, type PlanIssue } from '../../problems/plan-issue.js';
import { rowById } from '../../tables/tables.js';
import type { PastureContext } from './pasture-context.js';

/** Cows of which nobody told when they calve stay what they are all year: what that leaves out of need and hay. */
export function calvingUnknown({ herds, tables, say }: PastureContext): PlanIssue[] {
  const { cattle, judgements } = tables;
  const { weaningDays } = judgements.grass;
  const calfKg = calfEatsKg(cattle.calfAtFoot.rows, weaningDays.value);
  return herds.flatMap((herd) => {
    const asked = herd.groups.filter(
      (group) =>
        0 < group.head &&
        rowById(cattle.classes, group.classId).asksWhenDue === true &&
        dueOf(group, tables) === undefined,
    );
    const nursing = headOf(asked.filter(({ classId }) => classId === 'cow-calf'));
    const others = headOf(asked) - nursing;
    if (nursing + others === 0) return [];
    const taken = [
      ...(0 < nursing
        ? [
            `${nursing === 1 ? 'the cow with her calf is' : `${nursing} cows with calves are`} fed as for their best milk all year, and what ${nursing === 1 ? 'the calf grazes' : 'the calves graze'} (up to ${say(calfKg, 'kg')} of dry matter a day each before weaning) and ${nursing === 1 ? 'weighs' : 'weigh'} is not counted`,
          ]
        : []),
      ...(0 < others
        ? [
            `${others === 1 ? 'one cow or heifer stays' : `${others} cows and heifers stay`} dry all year, without milk or a calf`,
          ]
        : []),
    ];
    return [
      issue(
        'note',
        'calving-unknown',
        `When does ${herd.name} calve? No date is told, so in this plan ${taken.join(', and ')}. Grass and hay follow once you give “Calving due, if known” or “Bred on” at the herd.`,
        [cattle.calfAtFoot, weaningDays],
      ),
    ];
  });
}

const headOf = (groups: readonly PlannedGroup[]): number =>
  groups.reduce((sum, { head }) => sum + head, 0);
