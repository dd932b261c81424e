import type { DaysOfWork } from './days-of-work.js';
import { suitsOf, unfitDay } from './days-that-suit.js';
import { daysOfSpells } from './dry-spells.js';
import type { WorkNeed } from './work-need.js';

/** Days that suit a piece of work by itself; undefined when it asks nothing of a day. */
export const suitsNeed = (
  need: WorkNeed,
  days: DaysOfWork,
  wetFromMm: number,
): Uint8Array | undefined =>
  asPlanned(need, days, suitsOf(need.conditions, days, wetFromMm, !need.canBeSpread), wetFromMm);

/** As it is planned where none of its days, or its only one, suits in the usual weather. */
const asPlanned = (
  need: WorkNeed,
  days: DaysOfWork,
  suits: Uint8Array | undefined,
  wetFromMm: number,
): Uint8Array | undefined => {
  const planned = withSureDay(need, days, withSetDay(need, days, suits), wetFromMm);
  return planned?.[0] === 1 && isTooWetToday(need, days) ? planned.with(0, 0) : planned;
};

/** How wet the ground is today is reckoned from the days before, and no odds: what is late waits, too. */
const isTooWetToday = ({ conditions }: WorkNeed, { isWorkable }: DaysOfWork): boolean =>
  conditions.dryGround === true && isWorkable[0] === 0;

/**
 * Of days none of which suits in the usual weather, the likeliest is planned for where one of them
 * suits in nearly all years.
 */
function withSureDay(
  need: WorkNeed,
  days: DaysOfWork,
  suits: Uint8Array | undefined,
  wetFromMm: number,
): Uint8Array | undefined {
  const { beside } = days;
  const from = Math.max(0, need.fromDay);
  const until = Math.min(need.dueDay, days.rainMm.length - 1);
  if (!suits || !beside || suits.subarray(from, until + 1).includes(1)) return suits;
  const { share, likeliest } = oddsOfADay(need, days, { from, until, wetFromMm });
  return share < beside.sureShare ? suits : suits.with(likeliest, 1);
}

/** Share of years in which one of some days suits work, and the day that does so most often. */
export function oddsOfADay(
  { conditions }: Pick<WorkNeed, 'conditions'>,
  { beside, isForecast }: DaysOfWork,
  { from, until, wetFromMm }: { from: number; until: number; wetFromMm: number },
): { readonly share: number; readonly likeliest: number } {
  const { years } = beside!;
  const isOpen = isForecast.map((is) => 1 - is);
  const times = new Uint16Array(isForecast.length);
  let hit = 0;
  for (const of of years) {
    const fit = suitsOf(conditions, of, wetFromMm)?.map((is, day) => is * isOpen[day]!) ?? isOpen;
    if (fit.subarray(from, until + 1).includes(1)) hit++;
    for (let day = from; day <= until; day++) times[day]! += fit[day]!;
  }
  let likeliest = from;
  for (let day = from; day <= until; day++) if (times[likeliest]! < times[day]!) likeliest = day;
  return { share: hit / years.length, likeliest };
}

/** Which day beyond the forecast is wet nobody knows: work of one set day is planned for it. */
function withSetDay(
  { conditions, fromDay, untilDay }: WorkNeed,
  days: DaysOfWork,
  suits: Uint8Array | undefined,
): Uint8Array | undefined {
  const isKnown =
    !days.isUsual || days.isForecast[fromDay] === 1 || isFoundWet(conditions, days, fromDay);
  if (!suits || fromDay !== untilDay || isKnown) return suits;
  return suits.with(fromDay, 1);
}

const isFoundWet = (
  { dryGround }: WorkNeed['conditions'],
  { isLookedAt, isWorkable }: DaysOfWork,
  day: number,
): boolean => dryGround === true && isLookedAt[day] === 1 && isWorkable[day] === 0;

/**
 * Days that suit every piece of work; work that asks the same shares one answer. What follows in the dry spell that other work was begun in
 * suits the days of that spell as well, as far as they are not forecast.
 */
export function suitsOfNeeds(
  needs: readonly WorkNeed[],
  days: DaysOfWork,
  wetFromMm: number,
): (Uint8Array | undefined)[] {
  const byKey = new Map(needs.map((need) => [need.key, need]));
  const known = new Map<string, Uint8Array | undefined>();
  const suitsAlone = (need: WorkNeed): Uint8Array | undefined => {
    const { conditions, canBeSpread } = need;
    const key = JSON.stringify([conditions, canBeSpread]);
    if (!known.has(key)) known.set(key, suitsOf(conditions, days, wetFromMm, !canBeSpread));
    return asPlanned(need, days, known.get(key), wetFromMm);
  };
  return needs.map((need) => {
    const suits = suitsAlone(need);
    if (!suits || !days.isUsual) return suits;
    const head = headOf(need, byKey);
    const starts = head && { suits: suitsAlone(head)!, runDays: head.conditions.dryDaysInRow! };
    const isIn = spellDays(need, starts, days, wetFromMm);
    if (!isIn) return suits;
    const { noRain: _dry, dryGround: _ground, ...others } = need.conditions;
    const from = isTooWetToday(need, days) ? 1 : 0;
    return suits.map((is, day) =>
      is === 1 ||
      (from <= day && isIn[day] === 1 && unfitDay(others, days, day, wetFromMm) === undefined)
        ? 1
        : 0,
    );
  });
}

/** Days of the spells that work can follow in: of those to be begun in, or of the one begun already. */
function spellDays(
  { spellUntilDay }: WorkNeed,
  starts: { readonly suits: Uint8Array; readonly runDays: number } | undefined,
  days: DaysOfWork,
  wetFromMm: number,
): Uint8Array | undefined {
  if (starts) return daysOfSpells(starts.suits, days, { runDays: starts.runDays, wetFromMm });
  return spellUntilDay === undefined
    ? undefined
    : days.isForecast.map((is, day) => (is === 0 && day <= spellUntilDay ? 1 : 0));
}

/** The work with which the dry spell begins that a piece of work waits within. */
function headOf(
  need: WorkNeed,
  byKey: ReadonlyMap<string, WorkNeed>,
  depth = 0,
): WorkNeed | undefined {
  if (need.conditions.dryDaysInRow !== undefined || LONGEST_CHAIN < depth) return undefined;
  for (const { key } of need.waitsFor) {
    const before = byKey.get(key);
    if (!before) continue;
    if (before.conditions.dryDaysInRow !== undefined) return before;
    const head = headOf(before, byKey, depth + 1);
    if (head) return head;
  }
  return undefined;
}

/** Work in a circle is refused later, with its names. */
const LONGEST_CHAIN = 20;
