import { batchFields } from '../farm/batch.js';
import { within } from '../farm/bounds.js';
import { startingHourFields } from '../farm/farm.js';
import {
  choice,
  list,
  nested,
  number,
  oneOf,
  record,
  row,
  sevenDays,
  type RowRule,
} from '../farm/field.js';
import { jobFields, workConditionFields } from '../farm/job.js';
import {
  AHEAD_DAYS,
  AIR_C,
  CLOCK,
  COUNT,
  DAYS,
  HOURS,
  ID,
  M,
  maybe,
  MM,
  NAME,
  OFFSET_DAYS,
  part,
  POINTS,
  rowOf,
  SHARE,
  SOURCED,
  table,
  value,
  WORDS,
  YES_NO,
} from './figures.js';
import { ROUNDS, type TaskTemplate } from './task-template.js';

const { priority } = jobFields.fields;
const conditions = nested('Conditions', workConditionFields);

const ORIGIN = batchFields.fields.origin;

const EVENTS = [
  'eggs-set',
  'candle',
  'lockdown',
  'arrival',
  'heaters-short',
  'hands-short',
  'mild-days',
  'harden-off',
  'last-medicated',
  'move-out',
  'processing',
  'first-egg',
  'delivery',
  'turn-out',
  'cattle-arrival',
  'quarantine-over',
  'calving',
  'mowing',
  'topping',
] as const;

const SAID_OTHERWISE = row('SaidOtherwise', { name: maybe(NAME), ifLate: maybe(WORDS) });

/** Work is of a length of its own, unless it goes on until another event. */
const LENGTH_OR_UNTIL: RowRule<Pick<TaskTemplate, 'lengthDays' | 'until'>> = {
  name: 'length-or-until',
  of: ['lengthDays', 'until'],
  find: ({ lengthDays, until }, at) =>
    lengthDays === undefined && until === undefined
      ? [
          {
            field: `${at}lengthDays`,
            code: 'missing',
            given: undefined,
            fix: 'Give the days it takes, or the event until which it goes on.',
          },
        ]
      : [],
};

/** A piece of work hung on an event of a batch or a herd; it waits for others of its own table. */
const taskTemplate = (name: string, own: 'taskTemplates' | 'herdTaskTemplates') =>
  table(
    name,
    {
      id: ID,
      name: NAME,
      purpose: maybe(choice('Purpose', ['meat', 'layers'])),
      processing: maybe(choice('Processing', ['home', 'hired'])),
      origins: maybe(list('Origins', ORIGIN, 4, 'origins', 1)),
      onlyIf: maybe(
        choice('Only if', [
          'medicated',
          'older-flock',
          'brooder-assumed',
          'brooder-known',
          'brooder-stands',
          'pen-assumed',
          'coop-unfinished',
          'nests-short',
          'grower-feed',
          'laying-feed',
          'shell-apart',
          'plucked-by-hand',
          'plucked-by-machine',
          'first-processing',
        ]),
      ),
      classes: maybe(list('Classes', rowOf('cattle.classes'), 10, 'ids', 1)),
      event: choice('Event', EVENTS),
      onceWithinDays: maybe(DAYS),
      until: maybe(choice('Until', EVENTS)),
      offsetDays: OFFSET_DAYS,
      earliestOffsetDays: maybe(OFFSET_DAYS),
      latestOffsetDays: maybe(OFFSET_DAYS),
      lapses: maybe(YES_NO),
      runsUntilEvent: maybe(YES_NO),
      leastRunDays: maybe(DAYS),
      ifShort: maybe(WORDS),
      beforeEvent: maybe(YES_NO),
      animalsNeedIt: maybe(YES_NO),
      doneByOrder: maybe(YES_NO),
      doneByArrival: maybe(YES_NO),
      keptIn: maybe(nested('Kept in', SAID_OTHERWISE)),
      inTheCold: maybe(nested('In the cold', SAID_OTHERWISE)),
      onceHere: maybe(
        nested(
          'Once they are here',
          row('OnceHere', {
            ...{ name: NAME, days: DAYS, ifLate: WORDS },
            ...{ offsetDays: maybe(DAYS), hoursBase: maybe(HOURS) },
            waitsFor: maybe(list('Waits for', rowOf(own), 20, 'ids')),
          }),
        ),
      ),
      leadNote: maybe(WORDS),
      lengthDays: maybe(DAYS),
      spreadOver: maybe(
        nested('Spread over', row('ComesOver', { fromOffsetDays: OFFSET_DAYS, days: DAYS })),
      ),
      daysOfOne: maybe(DAYS),
      hoursBase: HOURS,
      hoursPerUnit: HOURS,
      unit: choice('For each', ['hundred-birds', 'hundred-eggs', 'ten-head', 'acre', 'ton']),
      isDaily: YES_NO,
      goesOn: maybe(YES_NO),
      needs: maybe(WORDS),
      rounds: maybe(list('Rounds', choice('Round', ROUNDS), ROUNDS.length, 'rounds', 1)),
      looks: maybe(nested('Looks', row('Looks', { everyH: HOURS, days: maybe(DAYS) }))),
      conditions: maybe(conditions),
      onDemand: maybe(YES_NO),
      forWhom: maybe(choice('For whom', ['child'])),
      mayFollowDays: maybe(DAYS),
      notSplit: maybe(YES_NO),
      whoeverProcesses: maybe(YES_NO),
      fewerTakeLonger: maybe(YES_NO),
      waitsFor: list('Waits for', rowOf(own), 20, 'ids'),
      waitDays: maybe(record('Days to wait', DAYS, 20)),
      mostWaitDays: maybe(record('Days to wait at most', DAYS, 20)),
      waitsForOutside: maybe(list('Waits for others', NAME, 20, 'words')),
      ifLate: WORDS,
      ifEarly: maybe(WORDS),
      ...SOURCED,
    },
    [LENGTH_OR_UNTIL],
  );

export const taskTemplates = taskTemplate('Task', 'taskTemplates');
export const herdTaskTemplates = taskTemplate('HerdTask', 'herdTaskTemplates');

export const work = nested(
  'Work',
  row('Work', {
    horizonDays: part('Horizon', { value: AHEAD_DAYS, mostDays: AHEAD_DAYS }),
    hoursByWeekday: part('HoursByWeekday', {
      values: sevenDays('Hours', HOURS.bounds),
      because: maybe(WORDS),
    }),
    startH: part('Begins', startingHourFields.fields),
    outByDay: part('Out by day', { fromH: CLOCK, toH: CLOCK }),
    visits: part('Visits', { everyH: HOURS }),
    wetDay: part('WetDay', {
      rainMm: MM,
      meanRainMm: MM,
      wetAfterWetShare: SHARE,
      because: maybe(WORDS),
    }),
    forecast: part('Forecast', { rightShares: sevenDays('Comes as forecast', SHARE.bounds) }),
    dayToDay: value('Likeness to the day before', SHARE),
    frost: part('FrostLows', { lows: table('FrostLow', { name: NAME, atOrBelowC: AIR_C }) }),
    keyDates: nested(
      'KeyDates',
      row('KeyDates', {
        soil: table('WarmSoil', { id: ID, name: NAME, atLeastC: AIR_C, ...SOURCED }),
        hivesOpen: part('HivesOpen', { name: NAME, dayMaxC: AIR_C, daysInRow: DAYS }),
        swarming: part('Swarming', { name: NAME, afterDays: DAYS }),
        bloom: part('Bloom', { name: NAME, atOrBelowC: AIR_C }),
      }),
    ),
    workableGround: part('WorkableGround', {
      layerM: M,
      drierThanFieldCapacityMm: MM,
      kc: SHARE,
      depletionShare: SHARE,
      usualSoilId: rowOf('soils'),
    }),
    snow: part('Snow', { belowMeanC: AIR_C, meltMmPerC: MM }),
    smallestPieceHours: part('SmallestPiece', { value: HOURS, longerThanHours: HOURS }),
    placing: part('Placing', {
      priority: table('Priority', { id: priority, lostCost: POINTS, lateCostPerDay: POINTS }),
      animalsNeedItTimes: POINTS,
      moveCost: POINTS,
    }),
    milking: part('Milking', {
      timesADay: COUNT,
      hoursEachTime: HOURS,
      hoursEachCow: HOURS,
    }),
    herdMove: part('HerdMove', { hoursBase: HOURS, because: maybe(WORDS) }),
    lookFor: nested(
      'LookFor',
      row('LookFor', {
        outdoorBirds: list('Outdoor birds', WORDS, 20, 'sentences', 1),
        cattle: list('Cattle', WORDS, 20, 'sentences', 1),
        cattleInFrost: list('Cattle in frost', WORDS, 20, 'sentences', 1),
      }),
    ),
    inTrouble: part('InTrouble', {
      heat: WORDS,
      birds: WORDS,
      cattle: WORDS,
      fence: WORDS,
      hives: WORDS,
      seedlings: WORDS,
    }),
  }),
);

const countedIn = nested(
  'Counted in',
  row('CountedIn', {
    unit: NAME,
    each: number('Of what hours are given for', within(0.01, 100, 'ratio', 'Convert the unit.')),
  }),
);

export const jobSets = table('JobSet', {
  id: ID,
  name: NAME,
  counted: nested('Counted', row('Counted', { us: countedIn, metric: countedIn })),
  anchor: choice('Anchor', ['last-frost', 'first-frost', 'date']),
  anchorName: NAME,
  suggest: maybe(
    oneOf('Suggested', 'from', {
      'last-frost': row('FromLastFrost', {
        from: choice('From', ['last-frost']),
        offsetDays: maybe(OFFSET_DAYS),
      }),
      'turn-out': row('FromTurnOut', { from: choice('From', ['turn-out']) }),
      'hives-open': row('FromHivesOpen', { from: choice('From', ['hives-open']) }),
    }),
  ),
  jobs: table('SetJob', {
    id: ID,
    name: NAME,
    firstOffsetDays: OFFSET_DAYS,
    dueOffsetDays: OFFSET_DAYS,
    lastOffsetDays: maybe(OFFSET_DAYS),
    hoursBase: HOURS,
    hoursPerUnit: HOURS,
    priority,
    conditions,
    canBeSpread: YES_NO,
    smallestPieceHours: maybe(HOURS),
    harmedAtOrBelowC: maybe(AIR_C),
    isRawManure: maybe(YES_NO),
    waitsFor: maybe(ID),
    waitDays: maybe(DAYS),
    mostWaitDays: maybe(DAYS),
    everyDays: maybe(DAYS),
    times: maybe(DAYS),
    ifLate: WORDS,
  }),
  ...SOURCED,
});
