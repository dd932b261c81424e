import { batchFields } from './batch.js';
import { DAY_HOURS, whole, within } from './bounds.js';
import { awayFields, farmFields } from './farm.js';
import {
  choice,
  nested,
  number,
  optional,
  row,
  rows,
  sevenDays,
  text,
  yesNo,
  type RowOf,
} from './field.js';
import { date, id } from './words.js';

/** When somebody has time for the farm, in words instead of hours. */
export const FREE_TIMES = [
  'all-day',
  'at-home-mornings',
  'at-home-afternoons',
  'mornings-and-evenings',
  'evenings',
  'mornings',
  'weekends',
] as const;
export type FreeTime = (typeof FREE_TIMES)[number];

/** What is asked of a child's age: little more than what can be given to it. */
export const CHILD_AGES = ['under-8', '8-to-12', '13-and-up'] as const;
export type ChildAge = (typeof CHILD_AGES)[number];

/** Hours that somebody with time at such hours is taken to have. */
export const freeTimeFields = row('FreeTimeHours', {
  free: choice('Has time', FREE_TIMES),
  hoursByWeekday: sevenDays('Hours by day of the week', DAY_HOURS),
});

export const starterFields = row('Starter', {
  name: optional(text('Name')),
  isChild: optional(yesNo('A child')),
  /** Left out, no hours are counted on. */
  childAge: optional(choice('Age of the child', CHILD_AGES)),
  free: optional(choice('Has time', FREE_TIMES)),
  away: optional(rows('Days away', awayFields, 20, 'absence')),
});
export type Starter = RowOf<typeof starterFields>;

/** Birds that are to come: how many are wanted at the end, and in which month, if that matters. */
export const birdsToComeFields = row('BirdsToCome', {
  birds: number('Birds', whole(1, 5000, 'count', 'Plan up to 5,000 birds.')),
  /**
   * The first day of the month, or of the time from which on, of which the best week is chosen;
   * where it is the last day as well, that very day.
   */
  from: optional(date('From')),
  to: optional(date('Until')),
});
export type BirdsToCome = RowOf<typeof birdsToComeFields>;

const layersFields = {
  ...birdsToComeFields.fields,
  startedWeeks: batchFields.fields.arrivalAgeWeeks,
  /** As many as are wanted are in lay here already. */
  areHere: optional(yesNo('They are here')),
};

/** Hens that are to come, as chicks or as started pullets of an age, or that are here. */
export const layersToComeFields = row('LayersToCome', layersFields, [
  {
    name: 'hens-here-do-not-come',
    of: ['areHere', 'from', 'to', 'startedWeeks'],
    find: (layers, at) =>
      layers.areHere
        ? (['from', 'to', 'startedWeeks'] as const).flatMap((each) =>
            layers[each] === undefined
              ? []
              : [
                  {
                    field: `${at}${each}`,
                    code: 'conflict' as const,
                    given: layers[each],
                    fix: 'Hens that are here do not come any more: leave this out, or say that they are not here.',
                  },
                ],
          )
        : [],
  },
]);
export type LayersToCome = RowOf<typeof layersToComeFields>;

export const cattleToComeFields = row(
  'CattleToCome',
  {
    classId: id('Class'),
    head: number('Head', whole(1, 2000, 'count', 'Count the animals.')),
    /** Left out, they are there. */
    arrivesOn: optional(date('Arrives on')),
    calvesOn: optional(date('Calving due')),
    /** The last day of a calving season that begins on the day before; left out, all are due about that day. */
    calvesUntil: optional(date('Calving due until')),
  },
  [
    {
      name: 'calves-in-order',
      of: ['calvesOn', 'calvesUntil'],
      find: ({ calvesOn, calvesUntil }, at) =>
        calvesUntil === undefined || (calvesOn !== undefined && calvesOn <= calvesUntil)
          ? []
          : [
              {
                field: `${at}calvesUntil`,
                code: 'conflict',
                given: calvesUntil,
                fix: 'Give the first day on which calves are due as well, and no later one than the last.',
              },
            ],
    },
  ],
);
export type CattleToCome = RowOf<typeof cattleToComeFields>;

/** Paddocks of one size; what is left out is assumed. */
export const equalPaddocksFields = row(
  'EqualPaddocks',
  {
    count: optional(number('Paddocks', whole(1, 100, 'count', 'Count the paddocks.'))),
    areaM2: optional(
      number('Size of each', within(50, 1e6, 'ha', 'Give the area of one paddock.')),
    ),
    /** Divided among them; most people know what they have in all. */
    allM2: optional(
      number('All together', within(50, 1e8, 'ha', 'Give the area of all paddocks together.')),
    ),
  },
  [
    {
      name: 'each-or-all',
      of: ['areaM2', 'allM2'],
      find: ({ areaM2, allM2 }, at) =>
        areaM2 === undefined || allM2 === undefined
          ? []
          : [
              {
                field: `${at}allM2`,
                code: 'conflict',
                given: allM2,
                fix: 'Give the size of one paddock or of all together, not both.',
              },
            ],
    },
  ],
);

const { name, latitudeDeg, longitudeDeg, elevationM, timeZone, units, currency, country, region } =
  farmFields.fields;
const { monthlyMinC, monthlyMaxC, monthlyRainMm, lastFrost, firstFrost } = farmFields.fields;

/** Climate that the household knows better than an estimate, or where there is none. */
export const ownClimateFields = row('OwnClimate', {
  ...{ monthlyMinC, monthlyMaxC, monthlyRainMm, lastFrost, firstFrost },
});

/** What a start is made with where nobody says it, for whoever is about to start. */
export const startUsualFields = row('StartUsual', {
  elevationM,
  freeTimes: rows('Hours of each time', freeTimeFields, FREE_TIMES.length, 'time'),
});
export type StartUsual = RowOf<typeof startUsualFields>;

/** Where, who and what is coming: all that a first plan needs. */
export const startFields = row('Start', {
  name: optional(name),
  /** What the place is called, for a farm without a name yet. */
  place: optional(text('Place', 200)),
  latitudeDeg,
  longitudeDeg,
  elevationM: optional(elevationM),
  timeZone,
  ...{ units, currency, country, region },
  climate: optional(nested('Climate', ownClimateFields)),
  /** What of an estimate the household looked at and found right. */
  hasConfirmedClimate: optional(yesNo('The estimated climate looks right')),
  weatherFetch: optional(yesNo('Weather may be fetched')),
  people: rows('People', starterFields, 30, 'person'),
  meat: optional(nested('Meat birds', birdsToComeFields)),
  /** Further batches of meat birds, in the places of the first one. */
  moreMeat: optional(rows('More meat birds', birdsToComeFields, 3, 'batch')),
  layers: optional(nested('Layers', layersToComeFields)),
  /** Kinds that graze together. */
  cattle: optional(rows('Cattle', cattleToComeFields, 6, 'kind of cattle')),
  paddocks: optional(nested('Paddocks', equalPaddocksFields)),
  /** Left out, nobody does, and that is assumed. */
  makesHay: optional(yesNo('We make hay of the grass that is left over')),
  hasGarden: optional(yesNo('A garden')),
  hives: optional(number('Hives', whole(0, 500, 'count', 'Count the hives.'))),
});
export type Start = RowOf<typeof startFields>;
