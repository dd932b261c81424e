import type { PlainDate } from '../calendar/plain-date.js';
import type { CattleGroup } from '../farm/herd.js';
import { isThere } from '../pasture/herd-demand.js';
import { rowById, type Tables } from '../tables/tables.js';

/** As the bound of one cow's milk in the form of a herd. A liter weighs a little more than 1 kg. */
const MOST_L_A_COW = 70;

/** What the milk cows of a herd cannot give more of in a day; without any a beef cow can be milked too. */
export function mostMilkL(groups: readonly CattleGroup[], on: PlainDate, tables: Tables): number {
  const there = groups.filter((group) => isThere(group, on));
  const ofMilk = there.filter(
    ({ classId }) => rowById(tables.cattle.classes, classId).equation === 'nrc-dairy',
  );
  const cows = 0 < ofMilk.length ? ofMilk : there;
  const head = cows.reduce((sum, group) => sum + group.head, 0);
  return MOST_L_A_COW * Math.max(1, head);
}
