import type { PlainDate } from '../calendar/plain-date.js';
import type { FieldProblem } from '../problems/field-problem.js';
import { AIR_C, whole, within } from './bounds.js';
import {
  choice,
  list,
  nested,
  number,
  optional,
  row,
  text,
  yesNo,
  type RowOf,
  type RowRule,
  type SavedRowOf,
} from './field.js';
import { repeatFields } from './repeats.js';
import { seenFields } from './seen.js';
import { tiedToFields } from './tied-to.js';
import { date, doneBy, id, OWN, workKey } from './words.js';

/** What a day must be like for a job; what is left out does not matter. */
export const workConditionFields = row('WorkConditions', {
  noRain: optional(yesNo('No rain')),
  /** Ground dry enough to work or to drive posts into. */
  dryGround: optional(yesNo('Ground dry enough to work')),
  daylight: optional(yesNo('Daylight')),
  /** A call or a trip to people who are not there on Sundays and public holidays. */
  shopsOpen: optional(yesNo('Shops and offices open')),
  dayMaxAtLeastC: optional(number('Warmest of the day at least', AIR_C)),
  dayMaxAtMostC: optional(number('Warmest of the day at most', AIR_C)),
  nightMinAtLeastC: optional(number('Coldest of the night at least', AIR_C)),
  /** The night after it, before what was planted has settled. */
  nextNightMinAtLeastC: optional(number('Coldest of the next night at least', AIR_C)),
  soilAtLeastC: optional(number('Soil at least', AIR_C)),
  /** Days without rain one after the other, its first day the first of them. */
  dryDaysInRow: optional(
    number(
      'Dry days in a row from its first',
      whole(2, 10, 'day', 'Count the days without rain that it needs, its first day included.'),
    ),
  ),
  /** People needed at once. */
  peopleNeeded: optional(
    number('People needed', whole(1, 20, 'count', 'Give how many are needed at once.')),
  ),
});
export type WorkConditions = RowOf<typeof workConditionFields>;

/** Work of each person who takes part. */
export const JOB_HOURS = within(0.05, 500, 'h', 'Give the work of each person who takes part.');

const RULES: readonly RowRule<{
  readonly notBefore?: PlainDate;
  readonly dueOn: PlainDate;
  readonly noUseAfter?: PlainDate;
  readonly personIds?: readonly string[];
}>[] = [
  {
    name: 'due-after-first',
    of: ['dueOn', 'notBefore'],
    find: ({ notBefore, dueOn }, at) =>
      notBefore !== undefined && dueOn < notBefore
        ? [before(`${at}dueOn`, dueOn, notBefore, 'The day it is due comes before its first.')]
        : [],
  },
  {
    name: 'last-after-due',
    of: ['noUseAfter', 'dueOn'],
    find: ({ dueOn, noUseAfter }, at) =>
      noUseAfter !== undefined && noUseAfter < dueOn
        ? [
            before(
              `${at}noUseAfter`,
              noUseAfter,
              dueOn,
              'Its last day comes before the day it is due.',
            ),
          ]
        : [],
  },
  {
    name: 'somebody-can-do-it',
    of: ['personIds'],
    find: ({ personIds }, at) =>
      personIds?.length === 0
        ? [
            {
              field: `${at}personIds`,
              code: 'missing',
              given: undefined,
              fix: 'Choose at least one who can do it.',
            },
          ]
        : [],
  },
];

const before = (field: string, given: string, min: string, fix: string): FieldProblem => ({
  field,
  code: 'out-of-bounds',
  given,
  min,
  fix: `${fix} Swap or change the dates.`,
});

/** Work the household sets itself: a bed, a fence, a hive. */
export const jobFields = row(
  'Job',
  {
    ...OWN,
    name: text('Name'),
    /** Work of each person who takes part. */
    hours: number('Hours of each who takes part', JOB_HOURS),
    notBefore: optional(date('Not before')),
    dueOn: date('Due by'),
    /** After this day it is lost for the year; left out, it only gets later. */
    noUseAfter: optional(date('No use after')),
    priority: choice('Priority', ['must', 'should', 'could']),
    conditions: nested('Conditions', workConditionFields),
    /** It may be spread over days. */
    canBeSpread: yesNo('May be spread over several days'),
    /** Less at a time is no use; left out, as usual. */
    smallestPieceHours: optional(
      number(
        'At least at a time',
        within(0.25, 8, 'h', 'Give the shortest time at it that is of use.'),
      ),
    ),
    /** Those who can do it; left out, everyone. */
    personIds: optional(list('Who can do it', id('Who can do it'), 50, 'ids')),
    /** Another own job that is done first, and the days to wait after it. */
    waitsForId: optional(id('After')),
    waitDays: optional(
      number(
        'Days to wait after it',
        whole(0, 120, 'day', 'Give the days to wait after the other job.'),
      ),
    ),
    /** It is done soon after the other, as hay is baled soon after it is raked. */
    mostWaitDays: optional(
      number(
        'Days to wait after it, at most',
        whole(0, 120, 'day', 'Give the most days after the other job, or leave it empty.'),
      ),
    ),
    ifLate: optional(text('What if it is late')),
    /** The ready-made set it came with. */
    setId: optional(id('Set')),
    /** An event that its dates move along with, and the day of it on which they were given. */
    tiedTo: optional(nested('Tied to', tiedToFields)),
    /** What it puts out is harmed by a night at or below this: nights of cover are counted. */
    harmedAtOrBelowC: optional(number('Plants harmed by a night at or below', AIR_C)),
    /** It spreads raw manure: what is picked from the bed waits for so many days after it. */
    isRawManure: optional(yesNo('Raw manure is spread')),
    /** It comes again, first on the day it is due; each time is ticked by itself. */
    repeats: optional(nested('Repeats', repeatFields)),
    /** Left out, grown-ups do it, and a child only where it is named. */
    forWhom: optional(choice('Child or adult', ['adult', 'child'])),
  },
  RULES,
);
export type OwnJob = SavedRowOf<typeof jobFields>;
export type Priority = OwnJob['priority'];

/** A ready-made set that is taken: the date it hangs on, and how many trees, hives or beds. */
export const takenSetFields = row('TakenSet', {
  anchorOn: date('Date it begins with'),
  count: number(
    'How many',
    within(0, 1000, 'count', 'Count the beds, trees, hives or lengths of the set.'),
  ),
  /** An event on that date, which the jobs move along with. */
  eventId: optional(workKey('Tied to')),
});

export const DATES_IN_ORDER: RowRule<{
  readonly notBefore?: PlainDate;
  readonly dueOn?: PlainDate;
}> = {
  name: 'due-after-first',
  of: ['dueOn', 'notBefore'],
  find: ({ notBefore, dueOn }, at) =>
    notBefore !== undefined && dueOn !== undefined && dueOn < notBefore
      ? [before(`${at}dueOn`, dueOn, notBefore, 'The day it is due comes before its first.')]
      : [],
};

/**
 * What is said of a piece of work: done, part done, put off, struck out, or given other hours or
 * days. What was said before of the rest of it stays; with nothing said it is as it was at first.
 */
export const progressFields = row(
  'Progress',
  {
    key: workKey('Work'),
    doneOn: optional(date('Done on')),
    doneBy: optional(doneBy()),
    notBefore: optional(date('Not before')),
    /** Another day by which it is due; with it its days are your own. */
    dueOn: optional(date('Due by')),
    /** What it really took, each person, when it was done. */
    hours: optional(number('Hours it took', JOB_HOURS)),
    /** Hours of each that are done of it while the rest is still open. */
    hoursDone: optional(number('Hours done so far', JOB_HOURS)),
    /** Hours of each to plan it with, in place of those it was reckoned at. */
    ownHours: optional(number('Hours to plan', JOB_HOURS)),
    /** Not done at all; what waits for it waits no longer. */
    struckOut: optional(yesNo('Struck out')),
    because: optional(text('Why')),
    /** Takes back the last that was said of it, so that what was said before holds again. */
    undo: optional(yesNo('Undo')),
    /** A name of the client's own: said again under the same key it stays said once. */
    tellKey: optional(id('Key')),
    /** What its teller knew; it is asked which holds where somebody else said otherwise meanwhile. */
    seen: optional(nested('Seen', seenFields)),
    saidBy: optional(text('Who said so')),
  },
  [DATES_IN_ORDER],
);

const {
  undo: _undo,
  tellKey: _tellKey,
  seen: _seen,
  saidBy: _saidBy,
  ...keptFields
} = progressFields.fields;

/** What became of a piece of work, as it is kept. */
export const toldProgressFields = row(
  'ToldProgress',
  {
    ...keptFields,
    /** What it had been reckoned at without the log, and the kind of work it is. */
    reckonedHours: optional(
      number(
        'Hours reckoned',
        within(0, 10_000, 'h', 'Give the hours as the plan of work reckoned them.'),
      ),
    ),
    kind: optional(text('Kind of work')),
    /** The last day on which a part of it was done, and the hours of each on that day. */
    partOn: optional(date('Part of it done on')),
    partHours: optional(number('Hours on that day', JOB_HOURS)),
  },
  [DATES_IN_ORDER],
);
export type Progress = RowOf<typeof toldProgressFields>;
