import type { PlainDate } from '../calendar/plain-date.js';
import { FOLLOW_DAYS, whole, within } from './bounds.js';
import {
  number,
  optional,
  row,
  rows,
  text,
  type RowOf,
  type RowRule,
  type SavedRowOf,
} from './field.js';
import { leftHeight } from './paddock.js';
import { ASSUMED, date, id, OWN } from './words.js';

const LEAVES_AFTER: RowRule<{ readonly arrivesOn?: PlainDate; readonly leavesOn?: PlainDate }> = {
  name: 'leaves-after-arrival',
  of: ['leavesOn', 'arrivesOn'],
  find: ({ arrivesOn, leavesOn }, at) =>
    arrivesOn !== undefined && leavesOn !== undefined && leavesOn <= arrivesOn
      ? [
          {
            field: `${at}leavesOn`,
            code: 'out-of-bounds',
            given: leavesOn,
            min: arrivesOn,
            fix: 'Cattle leave after they arrive.',
          },
        ]
      : [],
};

/** Cattle of one class in a herd. */
export const cattleGroupFields = row(
  'CattleGroup',
  {
    classId: id('Class'),
    head: number('Head', whole(1, 2000, 'count', 'Count the animals of this class.')),
    /** Weight of one on the first day of the plan or on arrival. */
    weightKg: optional(
      number(
        'Weight of one',
        within(30, 1500, 'kg', 'Give the weight of one; owners guess about 70 kg too low.'),
      ),
    ),
    gainKgPerDay: optional(
      number('Gain a day', within(-1, 2.5, 'kg', 'Give the gain of one in a day.')),
    ),
    milkKgPerDay: optional(
      number('Milk a day', within(0, 70, 'kg', 'Give the milk of one cow in a day.')),
    ),
    /** Of a milk cow: what of her feed is grain. */
    grainKgPerDay: optional(
      number('Grain a day', within(0, 15, 'kg', 'Give the grain of one milk cow in a day.')),
    ),
    arrivesOn: optional(date('Arrives on')),
    leavesOn: optional(date('Leaves on')),
    /** Id of the fact by which these were told to have died or gone, on the day that stands before it. */
    leftAs: optional(id('Told as')),
    /** Place of the group, from 1, that they were some of; left out where all of it went. */
    leftOf: optional(number('Of group', whole(1, 20, 'count', 'Name one of the groups.'))),
    /** Where they were to leave on another day. */
    wouldLeaveOn: optional(date('Would have left on')),
    /** Where they stand when they come to others: a pen, or a paddock by its name. */
    apartIn: optional(text('Kept apart in')),
    /** Left out, the table's. */
    apartDays: optional(
      number(
        'Days kept apart',
        whole(1, 180, 'day', 'Give the days; advice runs from three weeks to two months.'),
      ),
    ),
    bredOn: optional(date('Bred on')),
    /** Due date when it is known otherwise; else the service date plus the breed's gestation. */
    calvesOn: optional(date('Calving due, if known')),
    breedId: optional(id('Breed')),
  },
  [LEAVES_AFTER],
);
export type CattleGroup = RowOf<typeof cattleGroupFields>;

const HAS_CATTLE: RowRule<{ readonly groups: readonly unknown[] }> = {
  name: 'has-cattle',
  of: ['groups'],
  find: ({ groups }, at) =>
    groups.length === 0
      ? [
          {
            field: `${at}groups`,
            code: 'missing',
            given: undefined,
            fix: 'Give the herd at least one class of cattle.',
          },
        ]
      : [],
};

/** Cattle that graze together. */
export const herdFields = row(
  'Herd',
  {
    ...OWN,
    ...ASSUMED,
    name: text('Name'),
    groups: rows('Groups', cattleGroupFields, 20, 'group'),
    /** Longest stay in one paddock, days, so that regrowth is not bitten. */
    longestStayDays: optional(
      number(
        'Longest stay in a paddock',
        whole(1, 14, 'day', 'Give days: three keep the herd off the regrowth.'),
      ),
    ),
    inPaddockId: optional(id('Now in')),
    inSince: optional(date('Since')),
    /** Not on grass before this date, whatever the grass. */
    turnOutOn: optional(date('Not on grass before')),
    /** The trough or tank that is there; without it the smallest that does is planned. */
    tankL: optional(
      number('Tank that is there', within(20, 500_000, 'L', 'Give what the tank holds when full.')),
    ),
    supplyLPerH: optional(
      number(
        'Water supply',
        within(
          1,
          100_000,
          'LPerH',
          'Time how long it takes to fill a bucket, and give an hour of it.',
        ),
      ),
    ),
    /** Batch of birds in pens or a mobile coop that follows this herd. */
    followedByBatchId: optional(id('Birds that follow')),
    followDays: optional(number('Days after the herd', FOLLOW_DAYS)),
  },
  [HAS_CATTLE],
);
export type Herd = SavedRowOf<typeof herdFields>;

/** Where a herd really went, and on which day. */
export const movedFields = row('Moved', {
  paddockId: id('Moved to'),
  on: date('Moved on'),
  /** What is left in the paddock that they left: a reading of it on that day. */
  leftHeightCm: leftHeight(),
});
