import type { AboutNumbers, Moved } from '../../explain/moved.js';
import { quantitiesIn } from '../../explain/quantities-in.js';
import type { Quantity } from '../../explain/quantity.js';
import type { FarmPicture } from '../../farm/picture.js';
import type { Tables } from '../../tables/tables.js';
import { planPasture, type PasturePlan } from './pasture-plan.js';

/** What is not known when the plan is made, and what it would be by other figures. */
const OTHERWISE: readonly {
  readonly what: string;
  readonly of: (picture: FarmPicture) => FarmPicture;
}[] = [
  {
    what: 'If a third of the rain stays away all year',
    of: (picture) => ({
      ...picture,
      pastureChoices: {
        ...picture.pastureChoices,
        rainShareByMonth: Array.from(
          { length: 12 },
          (_, m) => LESS_RAIN * (picture.pastureChoices.rainShareByMonth?.[m] ?? 1),
        ),
      },
    }),
  },
  {
    what: 'If the ground yields a step less than you chose',
    of: (picture) => ({
      ...picture,
      paddocks: picture.paddocks.map((own) => ({
        ...own,
        productivity: own.productivity === 'high' ? 'medium' : 'low',
      })),
    }),
  },
  {
    what: 'If spring and the year are two degrees colder',
    of: (picture) => ({
      ...picture,
      climate: {
        ...picture.climate,
        meanMinC: picture.climate.meanMinC.map((c) => c - COLDER_K),
        meanMaxC: picture.climate.meanMaxC.map((c) => c - COLDER_K),
      },
    }),
  },
];
const LESS_RAIN = 2 / 3;
const COLDER_K = 2;

/** Numbers that growth decides, by their formulas. */
const OF_GROWTH = [
  'hay-needed',
  'bales',
  'grass-short',
  'winter-feed',
  'feed-besides-grass',
  'grass-ready',
  'turn-out',
  'last-grazing',
  'stockpile-shut',
  'stockpile-standing',
  'hay-cut',
  'carrying-capacity',
];

/** What is asked of the numbers of a pasture: the season is planned again with one thing otherwise. */
export const aboutGrass = (
  picture: FarmPicture,
  plan: PasturePlan,
  tables: Tables,
): AboutNumbers => ({
  *movedMost(quantity) {
    if (!OF_GROWTH.includes(quantity.formula)) return undefined;
    let most: Moved | undefined;
    for (const { what, of } of OTHERWISE) {
      const to = sameIn(planPasture(of(picture), tables), quantity);
      if (to && (!most || changeOf(quantity, most.to) < changeOf(quantity, to)))
        most = { what, to };
      yield undefined;
    }
    return most && 0 < changeOf(quantity, most.to) ? most : undefined;
  },
  knownBetter: ({ formula }) =>
    OF_GROWTH.includes(formula)
      ? plan.farmFactor.value === 1
        ? 'When you have walked the pasture twice, ten days or more apart, and typed the heights: your own growth then counts.'
        : 'With each further pasture walk: your own growth counts the more.'
      : undefined,
});

const sameIn = (plan: PasturePlan, { label, formula }: Quantity): Quantity | undefined =>
  quantitiesIn(plan).find((each) => each.label === label && each.formula === formula);

/** How far two values of one number are apart: days for dates. */
function changeOf(a: Quantity, b: Quantity): number {
  const numberOf = ({ value }: Quantity): number =>
    typeof value === 'number' ? value : Date.parse(String(value)) / 86_400_000;
  const apart = Math.abs(numberOf(a) - numberOf(b));
  return Number.isNaN(apart) ? 0 : apart;
}
