import { addDays, type PlainDate } from '../../calendar/plain-date.js';
import { formatDate } from '../../units/dates.js';
import { listed } from '../../units/listed.js';
import { inOwnUnits } from '../../units/own-units.js';
import type { BatchPlan } from '../batch-plan.js';
import type { PasturePlan } from '../pasture/pasture-plan.js';
import type { EventToMove } from '../work/event-to-move.js';
import type { PlannedBatch } from '../work/dated-work.js';
import type { CareGap } from '../work/care-gaps.js';
import type { WorkPlan } from '../work/planned-work.js';
import { waysOfDay } from '../work/short-day.js';
import { isWorthTelling } from '../work/worth-telling.js';
import { alarmsOf } from './alarms.js';
import { isSaidAsAlarm } from './feed-alarms.js';
import type { Attention, Looked } from './looked-at.js';
import { haveTheyLeft } from './have-they-left.js';
import { haveTheyCome } from './have-they-come.js';
import { askedOrders, untoldOrders } from './late-orders.js';
import { fewWords, isOpen, settledBy } from './warnings.js';

/** Two weeks: what comes later is read on other pages. */
const AHEAD_DAYS = 14;

/** What needs attention in the next two weeks and by when: what can kill first, then by date. */
export function attentionOf(looked: Looked, more: readonly Attention[] = []): Attention[] {
  const { picture, plan, batches } = looked;
  const last = addDays(picture.today, AHEAD_DAYS);
  return [
    ...alarmsOf(looked),
    ...more,
    ...nobodyThere(looked, last),
    ...haveTheyCome(looked),
    ...askedOrders(looked),
    ...untoldOrders(looked),
    ...batches.flatMap((batch) => ofBatch(batch, looked, last)),
    ...areTheyOut(looked),
    ...haveTheyLeft(looked),
    ...ofPasture(looked.pasture, last),
    ...tooSoon(looked, last),
    ...ofWork(plan, last),
  ].sort((a, b) => order(a) - order(b) || byDate(a, b));
}

const order = ({ level, isAlarm }: Attention): number =>
  level === 'stop' ? (isAlarm ? 0 : 1) : isAlarm ? 2 : level === 'act' ? 3 : 4;
const byDate = (a: Attention, b: Attention): number => {
  const [first, second] = [a.by ?? '', b.by ?? ''];
  return first < second ? -1 : first > second ? 1 : 0;
};

/** Days on which animals have nobody, or nobody often enough. */
const nobodyThere = (
  { plan: { careGaps, today }, judged }: Looked,
  last: PlainDate,
): Attention[] => {
  // A day off from work is asked for earlier than anything else has to be known.
  const dayOffLast = addDays(today, judged.dayOffAskedDays.value);
  return careGaps
    .filter(({ kind, from }) => from <= (kind === 'out-by-day' ? dayOffLast : last))
    .map(({ kind, from, of, said, ways }, k) => ({
      key: `care/${kind}/${k}`,
      level: kind === 'nobody-there' ? 'stop' : 'act',
      words: CARE_WORDS[kind],
      text: [said, ...ways].join(' '),
      of: of.join(', '),
      ...(from < today ? {} : { by: from }),
      place: { kind: kind === 'nobody-there' ? 'away' : 'work' },
    }));
};

const CARE_WORDS: Record<CareGap['kind'], string> = {
  'nobody-there': 'everybody is away and nobody is in charge',
  'out-by-day': 'nobody in the house by day, too long between looks',
  'no-hours': 'more chores than hours',
};

/** What is open in the plan of a batch that is there or comes soon. */
function ofBatch(
  { id, name, plan }: PlannedBatch,
  { picture: { today, farm }, animals }: Looked,
  last: PlainDate,
): Attention[] {
  const line = animals.find((each) => each.id === id);
  if (line?.kind !== 'batch' || !isNear(plan, last)) return [];
  // Whether they came at all is the one question.
  if (line.stage === 'coming' && line.wasToCome !== undefined) return [];
  const isSaid = (code: string): boolean =>
    isSaidAsAlarm(code, plan, today) || (code === 'brooder-hot' && line.heat?.tooHot !== undefined);
  return plan.issues
    .filter((issue) => isOpen(issue, line.stage) && !isSaid(issue.code))
    .map((issue, k) => {
      const { code, level, text } = issue;
      const by = settledBy(issue, plan);
      return {
        key: `batch/${id}/${code}/${k}`,
        ...{ level, words: inOwnUnits(fewWords(issue), farm.units) },
        text: inOwnUnits(text, farm.units),
        ...{ of: name, place: { kind: 'batch' as const, id } },
        ...(by === undefined || by < today ? {} : { by }),
      };
    });
}

/** There already, or so near that its heat, its room and its order are to be settled now. */
const isNear = ({ arrivalDate, tasks }: BatchPlan, last: PlainDate): boolean =>
  arrivalDate <= last || tasks.events.some(({ kind, date }) => kind === 'eggs-set' && date <= last);

/**
 * Herds that go out today by the plan, and of which no move was told: tomorrow the plan would have them
 * go out tomorrow, and all that hangs on it with them.
 */
const areTheyOut = ({ picture: { herds, today }, pasture, plan }: Looked): Attention[] =>
  herds.flatMap(({ id, name, inPaddockId }) => {
    const turnOut = pasture?.keyDates.herds.find(({ herdId }) => herdId === id)?.turnOut;
    if (inPaddockId !== undefined || turnOut?.value !== today) return [];
    // What is to be done before stands in its place.
    const isSaid = plan.eventsToMove.some(
      ({ kind, ofId, shortRun }) => kind === 'turn-out' && ofId === id && !shortRun,
    );
    if (isSaid) return [];
    return [
      {
        key: `turn-out/${id}`,
        level: 'act' as const,
        words: 'are they out on grass?',
        text: 'By the plan they go out today. Tell the move once they are out: until then their turn-out, and all that is tied to it, moves on by a day each morning. Where they wait for something, give the herd its “Not on grass before”.',
        of: name,
        place: { kind: 'pasture' as const },
        ...outOf(pasture, id),
      },
    ];
  });

/** Where they would be, were they out: told with the day since when. */
function outOf(pasture: PasturePlan | undefined, herdId: string): Pick<Attention, 'out'> {
  const move = pasture?.moves.find((each) => each.herdId === herdId);
  return { out: { herdId, ...(move ? { paddockId: move.paddockId } : {}) } };
}

function ofPasture(pasture: PasturePlan | undefined, last: PlainDate): Attention[] {
  if (!pasture) return [];
  const { firstShort } = pasture.hay;
  // A walk is of use shortly before they go out: nobody measures grass in winter.
  const isOutSoon = pasture.moves.some(({ from }) => from <= last);
  const isShortSoon = firstShort !== undefined && firstShort <= last;
  return pasture.issues
    .filter(
      ({ level, code }) =>
        level === 'stop' ||
        (code === 'grass-short' && isShortSoon) ||
        (code === 'hay-untold' && level === 'act') ||
        (code === 'height-taken' && isOutSoon),
    )
    .map((issue, k) => {
      const { code, level, text } = issue;
      return {
        key: `pasture/${code}/${k}`,
        ...{ level, words: fewWords(issue), text, of: 'Grass' },
        place: { kind: 'pasture' as const },
        ...(code === 'grass-short' ? { by: firstShort! } : {}),
      };
    });
}

/** Nothing is left to do of what was begun late, and goes on, before the day that it is for. */
const isUnderWay = ({ shortRun, to, from }: EventToMove, today: PlainDate): boolean =>
  shortRun?.isBegun === true && to === undefined && addDays(today, 1) < from;

/** Animals that come or go out before all is ready for them, with the later day that would do. */
function tooSoon(
  { plan, pasture, picture: { farm, today } }: Looked,
  last: PlainDate,
): Attention[] {
  const date = (on: PlainDate): string => formatDate(on, { units: farm.units, today });
  return plan.eventsToMove
    .filter((move) => move.from <= last && !isUnderWay(move, today))
    .map(({ id, kind, ofId, name, from, to, names, said, isPutOff, shortRun }) => ({
      key: `too-soon/${id}`,
      level: 'act',
      words: isPutOff
        ? `out on ${date(to!)}, once all is ready; done already?`
        : shortRun
          ? `“${shortRun.name}”: ${shortRun.days} of ${shortRun.fullDays} days by ${date(from)}`
          : `not all is ready by ${date(from)}${to === undefined ? '' : `, ${date(to)} would do`}`,
      text: shortRun
        ? said
        : `Not ready before it: ${listed(names.map((each) => `“${each}”`))}. ${said}`,
      of: name,
      place: { kind: 'work' },
      // Of a mineral alone that is short it is asked by itself whether they are out.
      ...(kind === 'turn-out' && from <= today && !shortRun ? outOf(pasture, ofId) : {}),
      ...(kind !== 'arrival' && to !== undefined && !isPutOff ? { later: { kind, ofId, to } } : {}),
    }));
}

/** A longer name is told without what follows its colon: how much of it, or how. */
const LONGEST_NAME = 45;

const inFew = (name: string): string =>
  name.length <= LONGEST_NAME ? name : (name.split(': ')[0] ?? name);

/**
 * Work of the next two weeks for which there are no hours, or not on its day. What stands under an event
 * that comes too soon is not said again; what must be done and is late already is said until it is.
 */
function ofWork({ jobs, eventsToMove, shortDays, today }: WorkPlan, last: PlainDate): Attention[] {
  const place = { kind: 'work' as const };
  const isSaid = new Set(
    eventsToMove.flatMap(({ from, keys, shortKeys = [] }) =>
      from <= last ? [...keys, ...shortKeys] : [],
    ),
  );
  // Of a trip that is too late for new birds an alarm tells.
  const open = jobs.filter(({ key, buys }) => !isSaid.has(key) && !buys?.tooLateFor);
  const ofDays = shortDays.flatMap((each): Attention[] => {
    const { date, keys, of, words } = each;
    const later = open.find((job) => job.later && keys.includes(job.key));
    if (date <= today || last < date || keys.every((key) => isSaid.has(key))) return [];
    const text = waysOfDay(each, open).join(' Or: ');
    const about = { key: `work/${keys[0]!}`, place, ...(0 < of.length ? { of: listed(of) } : {}) };
    const moved = later?.later ? { later: later.later } : {};
    return [{ ...about, level: 'act', words, by: date, text, ...moved }];
  });
  const ofJobs = open.flatMap(({ key, name, belongsTo, latest, priority, ...job }) => {
    const { pieces, lateDays, shortHours, beforeItsTurn, animalsNeedIt, later, waysToFit } = job;
    const about = { key: `work/${key}`, place, ...(belongsTo ? { of: belongsTo.name } : {}) };
    const first = pieces[0];
    const moved = later ? { text: waysToFit.join(' Or: '), later } : {};
    if (!first) {
      // What is due by today stands among today’s work.
      if (latest <= today || last < latest) return [];
      const words = `no time for “${name}”`;
      return [{ ...about, level: 'act' as const, words, by: latest, ...moved }];
    }
    if (isWorthTelling(shortHours) && today < first.date && first.date <= last) return [];
    const isStillLate = priority === 'must' && today < pieces.at(-1)!.date;
    if (0 < lateDays && latest <= last && (today < latest || isStillLate)) {
      const days = lateDays === 1 ? 'a day' : `${lateDays} days`;
      // Due today it is not late yet, and “planned late, by today” would say both.
      const words = `“${inFew(name)}” is ${latest === today ? 'due today and ' : ''}planned ${days} late`;
      return [
        { ...about, level: 'act' as const, words, ...(latest <= today ? {} : { by: latest }) },
      ];
    }
    if (beforeItsTurn && animalsNeedIt && first.date <= last) {
      const words = `“${name}” comes before ${listed(beforeItsTurn.map((each) => `“${each}”`))} is done`;
      return [{ ...about, level: 'act' as const, words, by: first.date }];
    }
    return [];
  });
  return [...ofDays, ...ofJobs];
}
