import { daysBetween, type PlainDate } from '../calendar/plain-date.js';
import type { NumberQuantity, Quantity } from '../explain/quantity.js';
import type { Judgements } from '../tables/judgements.js';
import { formatDate } from '../units/dates.js';
import { formatMoney, formatValue, type Reader } from '../units/format.js';
import type { BatchPlan } from './batch-plan.js';

/** Something of a plan that is another than before, in words. */
export interface Change {
  /** What it is of: its name stays the same from plan to plan. */
  readonly id:
    | 'arrival'
    | 'leaves'
    | 'ready'
    | 'first-egg'
    | 'birds'
    | 'weight'
    | 'feed'
    | 'bill'
    | 'eggs'
    | 'move-out'
    | 'dead-in-box'
    | 'weighed'
    | 'new-issue'
    | 'solved';
  readonly words: string;
}

type Judged = Judgements['birds'];

/**
 * What is another in a plan than before, and matters: days, birds, weight, feed to buy, eggs, the
 * bill, and what now stands in the way or no longer does. Empty when nothing does.
 *
 * @param before and after: plans of the same batch on the same day
 */
export function whatChanged(
  before: BatchPlan,
  after: BatchPlan,
  { reader, judged }: { readonly reader: Reader; readonly judged: Judged },
): Change[] {
  const say = saying(reader, judged);
  return [
    ...say.day('arrival', 'They come', before.arrivalDate, after.arrivalDate),
    ...say.number('birds', 'Birds at the end', before.birds.atEnd, after.birds.atEnd),
    ...say.day('move-out', 'They move out', movesOut(before), movesOut(after)),
    ...say.day('leaves', 'Processing', dayOf(before.leaving?.on), dayOf(after.leaving?.on)),
    ...readyChange(before, after, reader),
    ...say.share('weight', 'Live weight each', before.leaving?.liveEach, after.leaving?.liveEach),
    ...say.day(
      'first-egg',
      'The first egg',
      dayOf(before.laying?.firstEgg),
      dayOf(after.laying?.firstEgg),
    ),
    ...say.share(
      'eggs',
      'Eggs in the first year',
      before.laying?.eggsInYear,
      after.laying?.eggsInYear,
    ),
    ...say.share('feed', 'Feed for all their days', before.feed.total, after.feed.total),
    ...billChange(before, after, judged),
    ...issueChanges(before, after),
  ];
}

const dayOf = (fact: Quantity | undefined): PlainDate | undefined =>
  fact === undefined ? undefined : String(fact.value);

/** A move that there is not, or never safe, is said by an issue of the plan. */
function movesOut({ outdoors }: BatchPlan): PlainDate | undefined {
  const out = outdoors.moveOut?.value;
  return typeof out === 'string' && /^\d{4}-/.test(out) ? out : undefined;
}

function saying(reader: Reader, { changedShare }: Judged) {
  const say = ({ value, unit }: NumberQuantity, of = value): string =>
    formatValue(of, unit, reader);
  return {
    day: (
      id: Change['id'],
      what: string,
      was: PlainDate | undefined,
      is: PlainDate | undefined,
    ): Change[] => {
      if (was === undefined || is === undefined || was === is) return [];
      const days = Math.abs(daysBetween(was, is));
      const far = days === 1 ? 'a day' : days === 7 ? 'a week' : `${days} days`;
      const way = was < is ? 'later' : 'earlier';
      return [
        {
          id,
          words: `${what}: ${formatDate(is, reader)}, ${far} ${way} than ${formatDate(was, reader)}.`,
        },
      ];
    },
    /** A count, of which every one matters. */
    number: (id: Change['id'], what: string, was: NumberQuantity, is: NumberQuantity): Change[] =>
      was.value === is.value ? [] : [{ id, words: `${what}: ${say(is)} instead of ${say(was)}.` }],
    /** An amount, of which a small difference does not. */
    share: (
      id: Change['id'],
      what: string,
      was: NumberQuantity | undefined,
      is: NumberQuantity | undefined,
    ): Change[] => {
      if (!was || !is || !isMuch(was.value, is.value, changedShare.value)) return [];
      const way = was.value < is.value ? 'more' : 'less';
      const by = say(is, Math.abs(is.value - was.value));
      return [{ id, words: `${what}: ${say(is)}, ${by} ${way} than before.` }];
    },
  };
}

const isMuch = (was: number, is: number, share: number): boolean =>
  share * Math.abs(was) <= Math.abs(is - was) && was !== is;

function readyChange({ leaving: was }: BatchPlan, { leaving: is }: BatchPlan, reader: Reader) {
  if (!is?.ready) return [];
  const [soonest, latest] = is.ready.map((day) => String(day.value)) as [string, string];
  const before = was?.ready?.map((day) => String(day.value));
  if (before?.[0] === soonest && before[1] === latest) return [];
  const words =
    soonest === latest
      ? `They reach the weight you want on ${formatDate(latest, reader)}.`
      : `They reach the weight you want between ${formatDate(soonest, reader)} and ${formatDate(latest, reader)}.`;
  return [{ id: 'ready' as const, words }];
}

function billChange(
  { bill: was }: BatchPlan,
  { bill: is }: BatchPlan,
  { changedShare }: Judged,
): Change[] {
  if (was.currency !== is.currency) return [];
  if (!isMuch(was.total.value, is.total.value, changedShare.value)) return [];
  const by = formatMoney(Math.abs(is.total.value - was.total.value), is.currency);
  const way = was.total.value < is.total.value ? 'more' : 'less';
  // A part of it is never called the bill: most of the money is in what has no price yet.
  const what = is.leftOut.length === 0 ? 'The bill' : 'What has a price';
  const changed = `${what}: ${formatMoney(is.total.value, is.currency)}, ${by} ${way} than before`;
  return [{ id: 'bill', words: `${[changed, ...is.leftOut].join(', ')}.` }];
}

/** What must be seen to now that did not have to be, and the other way round; notes are left out. */
function issueChanges(before: BatchPlan, after: BatchPlan): Change[] {
  const pressing = ({ issues }: BatchPlan) => issues.filter(({ level }) => level !== 'note');
  const codes = (plan: BatchPlan) => new Set(pressing(plan).map(({ code }) => code));
  const [had, has] = [codes(before), codes(after)];
  return [
    ...pressing(after)
      .filter(({ code }) => !had.has(code))
      .map(({ text }) => ({ id: 'new-issue' as const, words: text })),
    ...pressing(before)
      .filter(({ code }) => !has.has(code) && !goesOn(code, after))
      .map(({ text }) => ({ id: 'solved' as const, words: `No longer so: ${text}` })),
  ];
}

/** Too few were ordered, and too few there are: once they are there it is no longer for ordering. */
const goesOn = (code: string, { issues }: BatchPlan): boolean =>
  code === 'too-few-birds' && issues.some((each) => each.code === 'fewer-than-wanted');
