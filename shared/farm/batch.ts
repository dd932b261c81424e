import { ORIGINS } from './batch-origin.js';
import { batchRules, LEAST_LEAVE_AGE_DAYS, MOST_LEAVE_AGE_DAYS } from './batch-rules.js';
import { whole, within } from './bounds.js';
import { choice, nested, number, optional, record, row, text, yesNo, type RowOf } from './field.js';
import { ASSUMED, date, id, OWN, price } from './words.js';

/** Prices as decimal text in the farm's currency. A missing price leaves its line without money. */
export const batchPriceFields = row('BatchPrices', {
  perBird: optional(price('A chick')),
  /** Of eggs that the household sets itself. */
  perEgg: optional(price('A hatching egg')),
  processingPerBird: optional(price('Processing a bird')),
  iceBag: optional(price('A bag of ice')),
  freezerBag: optional(price('A freezer bag')),
  beddingPerBag: optional(price('A bag of bedding')),
  /** Price of one bag of each feed phase, by phase id. */
  feedPerBag: optional(record('Bags of feed', price('A bag of feed'), 12)),
  /** What a dozen eggs brings, or would cost in the shop. */
  eggDozen: optional(price('A dozen eggs')),
});

const LOSS = {
  ...within(0, 90, 'ratio', 'Give the percent of birds lost, 0 to 90.'),
  typedAs: 'percent',
} as const;

/** One group of birds of the same age, as ordered. What is left out takes the stated default. */
export const batchFields = row(
  'Batch',
  {
    ...OWN,
    ...ASSUMED,
    name: text('Name'),
    purpose: choice('Purpose', ['meat', 'layers']),
    strainId: id('Breed or cross'),
    sex: choice('Sex', ['straight-run', 'cockerels', 'pullets']),
    /** Birds wanted at the end: to the freezer, or hens at the first egg. */
    wantedBirds: number(
      'Birds wanted',
      whole(1, 5000, 'count', 'Plan up to 5,000 birds; split a larger flock.'),
    ),
    /** Birds really ordered, when that is fixed already. */
    orderedBirds: optional(
      number('Already ordered', whole(1, 6000, 'count', 'Give the birds in the box.')),
    ),
    orderDate: optional(date('Ordered on')),
    /** A hatchery’s box when left out. Own eggs hatch on the arrival date. */
    origin: optional(choice('Where they come from', ORIGINS)),
    /** Of started pullets. */
    arrivalAgeWeeks: optional(
      number(
        'Weeks old when they come',
        whole(
          8,
          20,
          'count',
          'Give 8 to 20 weeks: younger ones still need a brooder, older ones are in lay.',
        ),
      ),
    ),
    incubatorKindId: optional(id('Incubator')),
    /** Eggs really set, once they are. */
    eggsSet: optional(number('Eggs set', whole(1, 20_000, 'count', 'Count the eggs you set.'))),
    oldestEggDays: optional(
      number(
        'Oldest egg when set',
        whole(
          1,
          21,
          'day',
          'Give the days the oldest egg was kept; eggs of three weeks hardly hatch.',
        ),
      ),
    ),
    hatchPercent: optional(
      number('Eggs that hatch', {
        ...within(1, 100, 'ratio', 'Give the percent of eggs set that hatched here before.'),
        typedAs: 'percent',
      }),
    ),
    arrivalDate: date('Arrival'),
    /** Days from hatch to arrival. */
    hatchToArrivalDays: number(
      'Days from hatch to arrival',
      whole(0, 3, 'day', 'Chicks must arrive within 72 hours of hatch.'),
    ),

    brooderId: optional(id('Brooder')),
    penId: optional(id('Field pens')),
    coopId: optional(id('Coop')),
    /** Where pens or a coop stand in a fence while the birds are outdoors. */
    grassPaddockId: optional(id('Paddock they stand in')),
    freezerId: optional(id('Freezer')),
    feedStoreId: optional(id('Feed store')),

    growthTableId: optional(id('Growth table')),
    layCurveId: optional(id('How they lay')),
    feedProgramId: optional(id('Feeds')),
    broodingScheduleId: optional(id('Brooding schedule')),
    spaceStandardId: optional(id('Brooder space')),
    moveOutRuleId: optional(id('Move-out rule')),
    /** How sure each of the first nights must be warm enough. */
    nightSuretyId: optional(id('Warm enough on')),
    /** A date the household has fixed for the move, whatever the nights. */
    moveOutDate: optional(date('Move-out date (your own)')),

    /** Growth and feed of small flocks, or those of the trial house the table is from. */
    keptAs: optional(choice('How they are kept', ['small-flock', 'trial-house'])),
    weightFactor: optional(
      number(
        'Weight factor',
        within(0.3, 1.6, 'ratio', 'Give your birds’ weight over the table’s, about 0.7 to 1.2.'),
      ),
    ),
    feedFactor: optional(
      number(
        'Feed factor',
        within(0.5, 2, 'ratio', 'Give your birds’ feed over the table’s, about 0.9 to 1.3.'),
      ),
    ),
    wastePercent: optional(
      number('Feed wasted', {
        ...within(0, 50, 'ratio', 'Give the percent of feed spilled, 0 to 50.'),
        typedAs: 'percent',
      }),
    ),
    firstWeekLossPercent: optional(number('First-week loss', LOSS)),
    laterLossPercent: optional(number('Later loss', LOSS)),

    /** Meat: leave at this age, counted from hatch … */
    leaveAgeDays: optional(
      number(
        'Age at processing',
        whole(
          LEAST_LEAVE_AGE_DAYS,
          MOST_LEAVE_AGE_DAYS,
          'day',
          'Give days from hatch; most meat birds leave at 42 to 112.',
        ),
      ),
    ),
    /** … or when the mean live weight reaches this. */
    targetLiveKg: optional(
      number('Target live weight', within(0.4, 8, 'kg', 'Give the average live weight wanted.')),
    ),
    processing: optional(choice('Processing', ['home', 'hired'])),
    /** ISO weekday on which they leave, 1 Monday to 7 Sunday: the one nearest to that age. */
    processingWeekday: optional(
      number('Processing weekday', whole(1, 7, 'count', 'Give 1 for Monday to 7 for Sunday.')),
    ),
    /** People who come to help on a day of processing at home. */
    processingHelpers: optional(
      number(
        'Helpers on the day',
        whole(0, 30, 'count', 'Count the people who come to help, without the household.'),
      ),
    ),
    /** Left out, any day. */
    helpersWeekday: optional(
      number('Helpers come on', whole(1, 7, 'count', 'Give 1 for Monday to 7 for Sunday.')),
    ),
    /** They take as long again. */
    processingIsFirst: optional(yesNo('First time processing')),
    plucking: optional(choice('Plucking', ['machine', 'hand'])),
    /** Equipment holds nobody up where it is not said. */
    killingCones: optional(
      number('Killing cones', whole(1, 40, 'count', 'Count the cones you set birds in at once.')),
    ),
    scalderBirds: optional(
      number('Birds in the scalder', whole(1, 20, 'count', 'Count the birds it takes at once.')),
    ),
    pluckerBirds: optional(
      number('Birds in the plucker', whole(1, 20, 'count', 'Count the birds it takes at once.')),
    ),
    /** A day booked with a custom processor: they leave on it, whatever age or weight. */
    slotDate: optional(date('Slot booked for')),
    slotBirds: optional(
      number(
        'Birds on the slot',
        whole(1, 5000, 'count', 'Give the birds the slot is booked for.'),
      ),
    ),
    dressingShare: optional(
      number(
        'Dressing',
        within(0.4, 0.9, 'share', 'Give the dressed share of live weight, 40 to 90 %.'),
      ),
    ),
    movesPerDay: optional(
      number(
        'Pen moves a day',
        within(0.1, 4, 'ratio', 'Give pen moves a day: 1 is daily, 0.5 every second day.'),
      ),
    ),
    /** Floor of pen or coop for one bird after the move, in the place of the table's. */
    homeFloorM2: optional(
      number(
        'Floor a bird after the move (your own)',
        within(0.05, 5, 'birdM2', 'Give the floor of the pen or coop that one bird is to have.'),
      ),
    ),
    /** Feed withdrawal days from the label of a medicated feed. */
    medicatedWithdrawalDays: optional(
      number(
        'Withdrawal days on the feed label',
        whole(0, 60, 'day', 'Take the days from the label of the bag.'),
      ),
    ),

    /** Stays on the feed before where the last one would be fed for a few days only. */
    skipsLastFeed: optional(yesNo('Leaves out the last feed')),
    /** Left out, pullets join an earlier batch of layers where there is one. */
    joinsOlderFlock: optional(yesNo('Joins older hens')),
    /** Eggs that the household eats in a week: said of one flock, it holds for all that lay. */
    eggsWantedPerWeek: optional(
      number('Eggs you eat a week', whole(1, 20_000, 'count', 'Give the eggs you want in a week.')),
    ),
    /** Layers: what a hen of the household's own lays, in the place of the table. */
    ownEggsPerHen: optional(
      number(
        'Eggs a hen in her first year (your own)',
        within(20, 365, 'count', 'Give the eggs of one hen in her first year of lay.'),
      ),
    ),

    bagKg: optional(
      number('One bag of feed', within(1, 1500, 'kg', 'Read the weight of one bag.')),
    ),
    prices: optional(nested('Prices', batchPriceFields)),
  },
  batchRules,
);
export type Batch = RowOf<typeof batchFields>;
export type Purpose = Batch['purpose'];
export type Sex = Batch['sex'];
