import { addDays, type PlainDate } from '../calendar/plain-date.js';
import { hatchesHere, isStarted, type Origin } from './batch-origin.js';
import type { RowRule } from './field.js';

/** Youngest age at which birds are processed, days from hatch. */
export const LEAST_LEAVE_AGE_DAYS = 28;
export const MOST_LEAVE_AGE_DAYS = 365;

interface BatchDates {
  readonly purpose: string;
  readonly processing?: string;
  readonly slotDate?: PlainDate;
  readonly slotBirds?: number;
  readonly orderedBirds?: number;
  readonly origin?: Origin;
  readonly hatchToArrivalDays: number;
  readonly sex: string;
  readonly arrivalDate: PlainDate;
  readonly orderDate?: PlainDate;
  readonly moveOutDate?: PlainDate;
}

/** What does not go with pullets that come grown. */
const STARTED: readonly {
  readonly of: 'purpose' | 'sex' | 'hatchToArrivalDays';
  readonly is: string | number;
  readonly fix: string;
}[] = [
  { of: 'purpose', is: 'layers', fix: 'Started pullets are hens to be: plan them for eggs.' },
  { of: 'sex', is: 'pullets', fix: 'Started pullets are grown enough to be told: choose pullets.' },
  {
    of: 'hatchToArrivalDays',
    is: 0,
    fix: 'Started pullets come by their age in weeks: give 0 days here.',
  },
];

export const batchRules: readonly RowRule<BatchDates>[] = [
  {
    name: 'started-are-pullets',
    of: ['origin', 'purpose', 'sex', 'hatchToArrivalDays'],
    find: (batch, at) =>
      isStarted(batch)
        ? STARTED.filter(({ of, is }) => batch[of] !== is).map(({ of, fix }) => ({
            field: `${at}${of}`,
            code: 'conflict' as const,
            given: batch[of],
            fix,
          }))
        : [],
  },
  {
    name: 'own-chicks-are-not-on-the-way',
    of: ['hatchToArrivalDays', 'origin'],
    find: (batch, at) =>
      hatchesHere(batch) && batch.hatchToArrivalDays !== 0
        ? [
            {
              field: `${at}hatchToArrivalDays`,
              code: 'conflict',
              given: batch.hatchToArrivalDays,
              fix: 'Chicks from your own eggs arrive on the day they hatch: give 0 days.',
            },
          ]
        : [],
  },
  {
    name: 'own-eggs-hatch-both-sexes',
    of: ['sex', 'origin'],
    find: (batch, at) =>
      hatchesHere(batch) && batch.sex !== 'straight-run'
        ? [
            {
              field: `${at}sex`,
              code: 'conflict',
              given: batch.sex,
              fix: 'Eggs hatch both sexes: choose straight run.',
            },
          ]
        : [],
  },
  {
    name: 'arrives-after-order',
    of: ['arrivalDate', 'orderDate'],
    find: ({ arrivalDate, orderDate }, at) =>
      orderDate === undefined || orderDate <= arrivalDate
        ? []
        : [
            {
              field: `${at}arrivalDate`,
              code: 'out-of-bounds',
              given: arrivalDate,
              min: orderDate,
              fix: 'The birds cannot arrive before they are ordered: move one of the two dates.',
            },
          ],
  },
  {
    name: 'moves-after-arrival',
    of: ['moveOutDate', 'arrivalDate'],
    find: ({ arrivalDate, moveOutDate }, at) =>
      moveOutDate === undefined || arrivalDate < moveOutDate
        ? []
        : [
            {
              field: `${at}moveOutDate`,
              code: 'out-of-bounds',
              given: moveOutDate,
              min: addDays(arrivalDate, 1),
              fix: 'Birds leave the brooder after they have arrived.',
            },
          ],
  },
  {
    name: 'slot-is-a-processors',
    of: ['slotDate', 'purpose', 'processing'],
    find: ({ slotDate, purpose, processing }, at) =>
      slotDate !== undefined && (purpose !== 'meat' || processing === 'home')
        ? [
            {
              field: `${at}slotDate`,
              code: 'conflict',
              given: slotDate,
              fix:
                purpose === 'meat'
                  ? 'A slot is with a processor: choose a hired one, or take the slot out.'
                  : 'A slot is for meat birds: take it out.',
            },
          ]
        : [],
  },
  {
    name: 'slot-when-they-are-grown',
    of: ['slotDate', 'arrivalDate', 'hatchToArrivalDays'],
    find: ({ slotDate, arrivalDate, hatchToArrivalDays }, at) => {
      const min = addDays(arrivalDate, LEAST_LEAVE_AGE_DAYS - hatchToArrivalDays);
      const max = addDays(arrivalDate, MOST_LEAVE_AGE_DAYS - hatchToArrivalDays);
      return slotDate === undefined || (min <= slotDate && slotDate <= max)
        ? []
        : [
            {
              field: `${at}slotDate`,
              code: 'out-of-bounds',
              given: slotDate,
              min,
              max,
              fix: 'No bird is ready sooner than four weeks after hatch, nor kept for meat past a year: move the slot or the arrival.',
            },
          ];
    },
  },
  {
    name: 'slot-for-birds-there-are',
    of: ['slotBirds', 'orderedBirds'],
    find: ({ slotBirds, orderedBirds }, at) =>
      slotBirds === undefined || orderedBirds === undefined || slotBirds <= orderedBirds
        ? []
        : [
            {
              field: `${at}slotBirds`,
              code: 'out-of-bounds',
              given: slotBirds,
              max: orderedBirds,
              fix: 'No more can be processed than were ordered.',
            },
          ],
  },
];
