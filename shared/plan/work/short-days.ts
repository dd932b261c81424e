import { addDays, type PlainDate } from '../../calendar/plain-date.js';
import { isGrownUp } from '../../farm/who-is-there.js';
import { formatDate } from '../../units/dates.js';
import { formatHours } from '../../units/format.js';
import { listed } from '../../units/listed.js';
import { takingOf, type DayTaken, type Hands } from './hands-on-day.js';
import { mostMinutesOf } from './most-of-day.js';
import type { ShortDay } from './short-day.js';
import type { WorkHours } from './work-hours.js';
import type { WorkNeed } from './work-need.js';
import { canDo, type WorkPerson } from './work-people.js';
import type { WorkRequest } from './work-request.js';
import { isWorthTelling } from './worth-telling.js';

type Hours = Pick<WorkHours, 'onItsDay' | 'given' | 'hands'>;

/**
 * Days on which work of that one day asks for more hours than people have, with what is enough. Chores
 * take theirs first: where they lack some too, more is wanted than the work itself lacks. Each amount
 * is tried, and with it nothing of the day is short.
 */
export function shortDays(request: WorkRequest, hours: Hours): ShortDay[] {
  const days = [...hours.onItsDay.values()].flatMap(({ piece, shortMinutes }) =>
    isWorthTelling(shortMinutes / 60) ? [piece.day] : [],
  );
  return [...new Set(days)].sort((a, b) => a - b).map((day) => shortDay(request, hours, day));
}

function shortDay(request: WorkRequest, { given, hands }: Hours, day: number): ShortDay {
  const { farm, today } = request;
  const minutes = given.map((list) => list[day]!);
  const take = takingOf(hands);
  const { onItsDay, chores } = takenOn({ take, day }, minutes);
  const lacking = onItsDay.filter(({ taken }) => isWorthTelling(taken.shortMinutes / 60));
  const needs = lacking.map(({ need }) => need);
  const date = addDays(today, day);
  const on = formatDate(date, { units: farm.units, today });
  const isOfChores = isWorthTelling(lackOf(chores) / 60);
  const named = new Set([...needs.map(({ key }) => key), ...(isOfChores ? [CHORES] : [])]);
  const most = mostOn(request, hands.people, date);
  const asked = { hands, take, day, named, most };
  const names = listed([
    ...(isOfChores ? ['the chores'] : []),
    ...needs.map(({ name }) => `“${name}”`),
  ]);
  const more = longerDay(asked, minutes, needs);
  const helper = helperFor(asked, minutes);
  const lack = Math.max(...lacking.map(({ taken }) => taken.shortMinutes));
  const find = (who: string, of: string): string =>
    more
      ? `find ${formatHours(more.minutes / 60)} more${who} for ${of}`
      : helper !== undefined
        ? `find a helper with ${formatHours(helper / 60)} for ${of}`
        : `it takes up to ${formatHours(lack / 60)} more than anyone has for ${of}`;
  const [first] = needs;
  const fewNames = [
    ...(isOfChores ? ['the chores'] : []),
    needs.length === 1 ? `“${first!.name}”` : `${needs.length} tasks`,
  ];
  // Who helps with birds that are processed would have more of them done on that day.
  const alone = needs.some(({ key }) => key.includes(PROCESSING)) ? ' who does nothing else' : '';
  const or =
    more && helper !== undefined ? `, or a helper with ${formatHours(helper / 60)}${alone}` : '';
  return {
    date,
    keys: needs.map(({ key }) => key),
    of: [...new Set(needs.flatMap(({ belongsTo }) => belongsTo?.name ?? []))],
    words: find(
      1 < (more?.count ?? 1) ? ` from each of ${more!.count} people` : '',
      listed(fewNames),
    ),
    said: `On ${on} ${find(more?.from ?? '', names)}${or}.`,
  };
}

/** In the keys of work around a day of processing. */
const PROCESSING = '/processing.';

/** Stands for all chores of a day among what is named. */
const CHORES = '';

/** A day, and what of it shall have its hours: keys of work, and all chores. */
interface Asked {
  readonly hands: Hands;
  readonly take: ReturnType<typeof takingOf>;
  readonly day: number;
  readonly named: ReadonlySet<string>;
  readonly most: MostOnDay;
}

/** The most that is asked for on a day, what they have included. */
interface MostOnDay {
  readonly each: readonly number[];
  readonly helper: number;
  /** Of many people so many are asked, the first of them. */
  readonly people: number;
}

function mostOn(
  { tables }: Pick<WorkRequest, 'tables'>,
  people: readonly WorkPerson[],
  date: PlainDate,
): MostOnDay {
  const { longestDayH, mostAsked } = tables.judgements.work;
  const each = people.map((person) => mostMinutesOf(person, date, tables));
  return { each, helper: 60 * longestDayH.value, people: mostAsked.value };
}

/** What of a day is taken of so many minutes of each. */
function takenOn({ take, day }: Pick<Asked, 'take' | 'day'>, minutes: readonly number[]): DayTaken {
  const given = minutes.map((each) => ({ [day]: each }));
  return take(
    given,
    given.map((each) => ({ ...each })),
    day,
  );
}

/** Whether nothing of a day that is named is short any more, and nothing else worth a word. */
function isEnough(asked: Asked, minutes: readonly number[]): boolean {
  const { named } = asked;
  const { chores, onItsDay } = takenOn(asked, minutes);
  const choresLack = lackOf(chores);
  return (
    (named.has(CHORES) ? choresLack <= 0 : !isWorthTelling(choresLack / 60)) &&
    onItsDay.every(({ need, taken: { shortMinutes } }) =>
      named.has(need.key) ? shortMinutes <= 0 : !isWorthTelling(shortMinutes / 60),
    )
  );
}

const lackOf = (chores: DayTaken['chores']): number =>
  chores.reduce((sum, { shortMinutes }) => sum + shortMinutes, 0);

/**
 * The least that somebody must have more on a day, or each of several where work takes several: of
 * those asked one after the other, and from whom where not everybody’s would do.
 */
function longerDay(
  asked: Asked,
  minutes: readonly number[],
  needs: readonly WorkNeed[],
): { readonly minutes: number; readonly count: number; readonly from: string } | undefined {
  const { most } = asked;
  const { people } = asked.hands;
  const count = Math.max(...needs.map(({ conditions }) => conditions.peopleNeeded ?? 1));
  const able = people.flatMap((person, w) =>
    isGrownUp(person) && 0 < minutes[w]! && needs.every((need) => canDo(person, need)) ? [w] : [],
  );
  const groups = groupsOf(able.slice(0, most.people), count);
  const found = groups.flatMap((who) => {
    const room = Math.min(...who.map((w) => most.each[w]! - minutes[w]!));
    const longer = (more: number): number[] =>
      minutes.map((each, w) => (who.includes(w) ? each + more : each));
    const least = leastOf(room, (more) => isEnough(asked, longer(more)));
    return least === undefined ? [] : [{ who, minutes: least }];
  });
  if (found.length === 0) return undefined;
  const least = Math.min(...found.map((each) => each.minutes));
  const enough = found.filter((each) => each.minutes === least);
  const nameOf = (w: number): string => people[w]!.name;
  const names = enough.map(({ who }) => listed(who.map(nameOf)));
  const isAnybody = enough.length === groups.length && able.length <= most.people;
  if (1 < count) return { minutes: least, count, from: ` from each of ${names[0]}` };
  return {
    minutes: least,
    count,
    from: isAnybody && 1 < names.length ? '' : ` from ${listed(names, 'or')}`,
  };
}

/** Groups of so many, each once. */
function groupsOf(of: readonly number[], count: number): number[][] {
  if (count === 0) return [[]];
  return of.flatMap((first, k) =>
    groupsOf(of.slice(k + 1), count - 1).map((rest) => [first, ...rest]),
  );
}

const HELPER: WorkPerson = { id: 'helper', name: 'Helper', away: [] };

/** The minutes of a helper that are enough by themselves; undefined where no helper’s are. */
function helperFor(asked: Asked, minutes: readonly number[]): number | undefined {
  const hands = { ...asked.hands, people: [...asked.hands.people, HELPER] };
  const take = takingOf(hands);
  return leastOf(asked.most.helper, (more) =>
    isEnough({ ...asked, hands, take }, [...minutes, more]),
  );
}

/** The least number up to the most that will do, where more of it always does; undefined where none. */
function leastOf(most: number, willDo: (minutes: number) => boolean): number | undefined {
  if (most < 1 || !willDo(most)) return undefined;
  let [least, enough] = [0, most];
  while (least + 1 < enough) {
    const middle = (least + enough) >> 1;
    if (willDo(middle)) enough = middle;
    else least = middle;
  }
  return enough;
}
