import type { Moved } from '../../explain/moved.js';
import type { Quantity } from '../../explain/quantity.js';
import { capital } from '../bird-words.js';
import { formatValue, type Reader } from '../../units/format.js';
import { inOwnUnits } from '../../units/own-units.js';
import { hoursMovedMost, taskFormulas } from '../tasks/task-hours.js';

/** Something that is not known when a plan is made, and the formulas whose numbers hang on it most. */
interface OpenThing {
  readonly what: string;
  /** What tells more of it, and is told to the program or fetched by it. */
  readonly knownBetter: string;
  readonly formulas: readonly string[];
  /** Plans try it: of a number of theirs that it does not move it is not said. */
  readonly isTried?: true;
}

/** What tells more of weather to come; of a time that is past it tells nothing. */
export const WITH_FORECAST = 'With the forecast, from a week before.';

const OPEN_THINGS: readonly OpenThing[] = [
  {
    what: 'How fast the birds grow',
    isTried: true,
    knownBetter: 'When you have weighed some of them and typed it: your own growth then counts.',
    formulas: [
      ...['bird-weight', 'gompertz-growth', 'growth-in-air', 'growth-speed', 'weighed-average'],
      ...['dressed-weight', 'packed-weight', 'freezer-liters', 'freezer-filled', 'freezer-left'],
      ...['eaten-up', 'chill-time', 'chill-limit', 'chilling-at-once', 'ice', 'ice-bags'],
      ...['stocking-density', 'leave-date', 'number-times-each', 'per-bird', 'feed-of-phase'],
      ...['bird-feed-day', 'bird-feed-model', 'feed-bags', 'feed-buy-by'],
      ...['feed-conversion', 'cockerel-feed', 'bird-sensible-heat', 'flock-water-with-feed'],
      ...['floor-a-bird', 'most-chicks', 'most-birds', 'slot-arrival', 'slot-ready', 'slot-over'],
      ...['stop-best-day', 'stop-as-good', 'stop-off-best', 'stop-pays-until'],
      ...['next-weight-costs', 'all-weight-costs', 'conversion-of-week'],
    ],
  },
  {
    what: 'How many of the birds live',
    isTried: true,
    knownBetter: 'When they have come and you count them: tell the ones that die, on Today.',
    formulas: [
      ...[
        'close-off-floor',
        'birds-alive',
        'choice-lost',
        'birds-counted',
        'usual-loss-by-now',
        'chance-of-such-losses',
        'birds-to-order',
        'birds-enough',
        'flock-water-day',
        'flock-water-hot-day',
        'drinkers-feeders-last',
        'drinkers-feeders-hold',
        'floor-need',
      ],
      ...['edge-need', 'space-runs-out', 'brooder-days-to-spare', 'pens-needed', 'birds-that-fit'],
      ...['freezer-bags', 'scalding-gas', 'processing-hours', 'plate-rule', 'watts-a-chick'],
    ],
  },
  {
    what: 'How cold it gets',
    isTried: true,
    knownBetter: WITH_FORECAST,
    formulas: [
      ...['expected-night-low', 'cold-night', 'tonight-low'],
      ...['harden-off-from', 'litter-volume', 'ground-covered'],
      ...[
        'around-brooder',
        'around-brooder-then',
        'brooder-air-of-heaters',
        'under-lamp',
        'under-gas-heater',
      ],
      ...['brooder-heat-need', 'brooder-ventilation', 'heaters-needed', 'heaters-on'],
      ...['lamp-height', 'lamp-rule', 'heat-energy', 'heat-energy-total', 'mean-of-heat-days'],
      ...[
        'pen-heat-energy',
        'gas-liters',
        'close-off-saves',
        'heat-off-date',
        'most-chicks-by-heat',
      ],
      ...['move-out-date', 'move-out-cold-night', 'move-out-cold-nights', 'low-of-cold-night'],
      ...['feed-of-cold-night', 'lay-by-air', 'temperature-humidity-index', 'arrival-score'],
    ],
  },
  {
    what: 'How well your hens lay',
    isTried: true,
    knownBetter: 'When you have counted the eggs of a week and typed them.',
    formulas: [
      ...['lay-at-age', 'hen-day-lay', 'own-lay', 'flock-eggs-day', 'eggs-a-week'],
      ...['hens-for-eggs', 'layer-energy', 'feed-per-dozen', 'oyster-shell'],
    ],
  },
  {
    what: 'When your hens come into lay',
    knownBetter: 'With the first eggs you find: those you count and type go into the plan.',
    formulas: ['first-egg-date', 'molt-begins'],
  },
  {
    what: 'The date it counts to',
    knownBetter: 'With that date: opened in its own plan it says when.',
    formulas: ['days-to-go'],
  },
  {
    what: 'How many eggs hatch',
    isTried: true,
    knownBetter: 'When you candle the eggs; after the hatch, type how many of a hundred hatched.',
    formulas: ['hatch-share', 'hatch-chicks-expected', 'hatch-eggs-to-set', 'hatch-hens'],
  },
  {
    what: 'How much they eat, and how many of them there are',
    knownBetter:
      'As bags are opened: tell on Today when you open one and what you bought, and what is left counts.',
    formulas: [
      ...['feed-of-year', 'feed-in-store', 'feed-runs-out', 'feed-bags-of-trip', 'feed-trip-day'],
      ...[
        'flock-feed-day',
        'feed-fetched-for',
        'feed-trip-share',
        'feed-store-most',
        'feed-money-sum',
      ],
    ],
  },
  {
    what: 'What is in your grain and meal: it differs from field to field and from lot to lot',
    knownBetter: 'When what you bought was tested and you type that under the ingredient.',
    formulas: ['ration-amount', 'ration-holds', 'ration-to-begin', 'ration-like-bag'],
  },
  {
    what: 'What you pay',
    isTried: true,
    knownBetter: 'When you type the price you pay.',
    formulas: [
      ...['bill-line', 'bill-total', 'bill-unit', 'energy-cost', 'feed-cost-per-dozen'],
      ...['cost-own-hours', 'cost-trips', 'cost-gear-share', 'cost-in-all', 'break-even'],
      ...['price-wanted', 'left-over', 'hour-brings', 'bill-of-week', 'bill-so-far'],
      ...['feed-trip-cost', 'feed-fetching-per-kg', 'ration-cost', 'ration-bought'],
      ...[
        'choice-each',
        'bill-if-kept-on',
        'lay-quarter-cost',
        'lay-dozen-so-far',
        'lay-pays-from',
      ],
      ...['flock-pays-until', 'money-of-cold-night', 'heat-of-cold-night'],
    ],
  },
  {
    what: 'How the grass grows',
    isTried: true,
    knownBetter:
      'With each pasture walk whose heights you type: from the second on your own growth counts.',
    formulas: [
      ...['grass-ready', 'turn-out', 'gradual-until', 'magnesium-from', 'last-grazing'],
      ...['move-date', 'days-of-stay', 'rest-before-stay', 'growth-in-rest', 'grass-digestible'],
      ...['mass-before-stay', 'mass-after-stay', 'height-of-standing', 'height-grown-on'],
      ...['forage-mass', 'standing-in-evening', 'standing-in-all', 'standing-average'],
      ...['standing-above-residuals', 'carrying-capacity', 'paddock-area', 'paddock-count'],
      ...['grass-short', 'hay-a-day', 'hay-cut', 'hay-needed', 'bales', 'winter-feed'],
      ...[
        'hay-own',
        'hay-of-days-ahead',
        'hay-made-dry',
        'hay-next-winter',
        'grass-meanwhile',
        'hay-until-plan',
        'hay-to-buy',
        'hay-to-buy-unmade',
        'hay-to-buy-until-out',
        'hay-to-buy-next-winter',
        'hay-baled',
        'hay-baled-left',
        'hay-in-store',
        'hay-untold',
        'hay-runs-out',
      ],
      'saved-over-plain-rule',
      ...['forage-energy', 'milk-carried', 'gain-carried', 'milk-off-the-back'],
      ...[
        'feed-besides-grass',
        'farm-growth-factor',
        'paddock-growth-factor',
        'reading-against-plan',
        'sward-growth',
      ],
      ...['stockpile-shut', 'stockpile-standing', 'head-that-fits', 'land-that-fits'],
      ...['animal-days', 'paddock-nitrogen', 'paddock-phosphorus', 'legumes-in-stand'],
    ],
  },
  {
    what: 'What the cattle weigh',
    isTried: true,
    knownBetter: 'When you have weighed or taped them and typed it.',
    formulas: [
      ...['intake-beef-cow', 'intake-growing-cattle', 'intake-milk-cow', 'intake-share-of-weight'],
      ...['herd-demand', 'need-of-days-ahead', 'animal-units', 'stocking-rate'],
      ...['cattle-stocking-density', 'manure-nitrogen', 'hay-to-put-out', 'bales-to-put-out'],
      ...['hay-today', 'weight-of-girth'],
    ],
  },
  {
    what: 'How hot the day gets',
    isTried: true,
    knownBetter: WITH_FORECAST,
    formulas: [
      ...['expected-day-high', 'hot-day'],
      'cattle-water-day',
      'cattle-water-hot-day',
      'water-tank',
      'water-lasts',
      'water-refill',
    ],
  },
  {
    what: 'On which day she was bred, and how long she carries',
    knownBetter: 'When you type the day she was bred, or the day the vet gives.',
    formulas: ['calving-due', 'weaned-on'],
  },
  {
    what: 'How much it rains',
    knownBetter: WITH_FORECAST,
    formulas: [
      ...['rain-to-come', 'wet-day-after-move', 'soil-water-depletion', 'water-stress'],
      'reference-evapotranspiration',
    ],
  },
  {
    what: 'How wet the soil is',
    knownBetter: 'When you tell on Today whether the ground is dry enough: your own checks count.',
    formulas: [
      'ground-of-a-day',
      'ground-of-a-day-beyond-the-forecast',
      'dry-enough-from',
      'snow-on-the-ground',
    ],
  },
  {
    what: 'What the winters and summers to come are like',
    knownBetter:
      'When a daily record of ten years or more, or your own frost dates, are typed under Your place.',
    formulas: [
      ...['fed-in-years', 'hay-to-buy-sure'],
      'frost-of-the-year',
      'nights-too-cold',
      'odds-of-dry-days',
      'hot-day-of-ten-years',
      'frost-free-days',
    ],
  },
  {
    what: 'How warm this spring is',
    knownBetter:
      'As its days are measured and forecast; and by a thermometer in your own bed, 4 in deep.',
    formulas: ['soil-temperature', 'hives-open', 'swarming'],
  },
  {
    what: 'How long the work takes you',
    knownBetter: 'When you have logged what such work takes: your own hours then count.',
    formulas: [
      ...['task-hours', 'task-hours-in-all', 'hours-of-work', 'hours-of-week'],
      'hours-used-today',
      ...['hours-of-set', 'days-to-spare-of-work', 'birds-a-day', 'birds-an-hour', 'latest-day'],
    ],
  },
  {
    what: 'Which days of those years were fit for it',
    knownBetter: 'With the forecast, from a week before; and when you have logged what it takes.',
    formulas: ['chance-in-time', 'begin-by'],
  },
  {
    what: 'Who is there',
    knownBetter: 'When absences and hours are typed under Your place.',
    formulas: ['hours-had-today'],
  },
];

const THINGS = new Map(
  OPEN_THINGS.flatMap((thing) => thing.formulas.map((id) => [id, thing] as const)),
);

/** Numbers whose range no figure settles, but a look does: at the birds, the eggs or the ground. */
const SEEN_THEN = new Map([
  [
    'brooder-under-heater',
    'In their first hours: spread evenly they are right, crowded under the heat they are cold, along the walls too hot.',
  ],
  ...['heaters-needed', 'heat-energy-total'].map(
    (id) =>
      [
        id,
        'The day before they come, with the brooder warmed: by a thermometer where they will lie.',
      ] as const,
  ),
  ['litter-volume', 'While they are on it: litter that is wet or caked asks for more.'],
  ['ground-covered', 'Behind the pen: ground that is bare or covered asks for another move.'],
  ['nest-boxes', 'Once they lay: eggs on the floor ask for more nests.'],
  ['feed-withdrawal', 'With the first birds you open: a full crop asks for longer.'],
  ['hatch-weight-loss', 'When you weigh the eggs, or candle them and look at the air cell.'],
  ['fence-of-all', 'When the corners of the paddocks are drawn or walked.'],
  ['forage-mass', 'When you cut, dry and weigh what stands on a square of a known size.'],
  ['cattle-shade', 'On the first hot noon: all of them lie in it at once, or some stand outside.'],
  ['fence-energizer', 'When the fence stands: with a fence tester, at the end far from it.'],
  [
    'hatch-setting',
    'With the eggs: candle and weigh them, and count a hundred set against those that hatched.',
  ],
  [
    'light-to-add',
    'While the lamp is on: by the eggs you count beside those that are expected then.',
  ],
]);

/** Of a number whose sources differ, and nothing that comes tells which of them is right. */
export const NEVER_SETTLED =
  'Never by waiting: what is published differs, and nothing that still comes settles it.';

/**
 * What moves a number most, as far as its range and its formula say, and when that is known better.
 *
 * @param isTried whether its own plan was made otherwise already, and nothing of that moved it
 * @returns undefined of a fact: of what was typed, counted or set by a standard nothing is to come
 */
export function openThingOf(quantity: Quantity, isTried = false): Moved | undefined {
  const { formula, spread, unit } = quantity;
  const thing = THINGS.get(formula);
  const wasTried = isTried && thing?.isTried === true;
  const settledBy =
    (wasTried ? undefined : thing?.knownBetter) ?? SEEN_THEN.get(formula) ?? NEVER_SETTLED;
  if (formula === taskFormulas.hours.id)
    return { ...hoursMovedMost(quantity), knownBetter: settledBy };
  // The range of a chance comes from the number of years alone.
  if (spread && spread.low !== spread.high && unit !== 'chance')
    return { what: capital(spread.because), knownBetter: settledBy };
  if (!thing) return undefined;
  const { what, knownBetter } = thing;
  return wasTried
    ? { what: `${what}; but what was tried of that hardly moves it`, knownBetter }
    : { what, knownBetter };
}

/** What moves a number, as one sentence in the units of a household. */
export const sayMoved = ({ what, to }: Moved, reader: Reader): string =>
  `${inOwnUnits(what, reader.units)}${to ? `: ${formatValue(to.value, to.unit, reader)}` : ''}.`;

/** When a number is known better that nothing still open moves, and nothing that comes tells. */
export const NEVER_BETTER = 'Never: it is as right as what you typed and the figures it stands on.';

/** When a number is known better that nothing still open moves: what comes may tell all the same. */
export const knownBetterUnmoved = (formula: string): string =>
  SEEN_THEN.get(formula) ?? NEVER_BETTER;

/** When a number is known better that only the household's own choice moves. */
export const YOURS_TO_CHOOSE = 'Never by waiting: that is yours to choose.';

/** What is said of a number that nothing still open moves. */
export const NOTHING_MOVES =
  'Nothing that could well turn out otherwise: it follows from what you typed and from the figures named here.';
