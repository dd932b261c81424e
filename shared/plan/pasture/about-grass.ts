import type { AboutNumbers, Moved } from '../../explain/moved.js';
import { quantitiesIn } from '../../explain/quantities-in.js';
import type { Quantity } from '../../explain/quantity.js';
import type { FarmPicture } from '../../farm/picture.js';
import { rowById, type Tables } from '../../tables/tables.js';
import { planPasture, type PasturePlan } from './pasture-plan.js';

/** What is not known when the plan is made, and what it would be by other figures. */
const OTHERWISE: readonly {
  readonly what: string;
  readonly of: (picture: FarmPicture, tables: Tables) => FarmPicture;
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
    what: 'If the year is 2 °C (4 °F) colder',
    of: (picture) => warmer(picture, -COLDER_K),
  },
  {
    what: 'If the year is 2 °C (4 °F) warmer',
    of: (picture) => warmer(picture, COLDER_K),
  },
  {
    what: 'If the cattle weigh a tenth more',
    of: (picture, { cattle }) => ({
      ...picture,
      herds: picture.herds.map((herd) => ({
        ...herd,
        groups: herd.groups.map((group) => ({
          ...group,
          weightKg: HEAVIER * (group.weightKg ?? rowById(cattle.classes, group.classId).weightKg),
        })),
      })),
      cows: picture.cows.map((cow) =>
        cow.weightKg === undefined ? cow : { ...cow, weightKg: HEAVIER * cow.weightKg },
      ),
    }),
  },
];
const LESS_RAIN = 2 / 3;
const COLDER_K = 2;
const HEAVIER = 1.1;

const warmer = (picture: FarmPicture, kelvin: number): FarmPicture => ({
  ...picture,
  climate: {
    ...picture.climate,
    meanMinC: picture.climate.meanMinC.map((c) => c + kelvin),
    meanMaxC: picture.climate.meanMaxC.map((c) => c + kelvin),
    hotMaxC: picture.climate.hotMaxC.map((c) => c + kelvin),
  },
});

/** What is asked of the numbers of a pasture: the season is planned again with one thing otherwise. */
export const aboutGrass = (
  picture: FarmPicture,
  plan: PasturePlan,
  tables: Tables,
): AboutNumbers => ({
  *movedMost(quantity) {
    let most: Moved | undefined;
    for (const { what, of } of OTHERWISE) {
      const to = sameIn(planPasture(of(picture, tables), tables), quantity);
      if (to && (!most || changeOf(quantity, most.to) < changeOf(quantity, to)))
        most = { what, to };
      yield undefined;
    }
    return most && 0 < changeOf(quantity, most.to) ? most : undefined;
  },
  knownBetter: ({ formula }) => {
    if (BY_WEIGHT.includes(formula)) return 'When you have weighed or taped them and typed it.';
    if (!BY_GROWTH.includes(formula)) return undefined;
    return plan.farmFactor.value === 1
      ? 'When you have walked the pasture twice, ten days or more apart, and typed the heights: your own growth then counts.'
      : 'With each further pasture walk: your own growth counts the more.';
  },
});

/** Numbers that hang on the weight of the cattle, by their formulas. */
const BY_WEIGHT = [
  'intake-beef-cow',
  'intake-growing-cattle',
  'intake-milk-cow',
  'intake-share-of-weight',
  'herd-demand',
  'animal-units',
  'cattle-water-day',
  'water-tank',
  'stocking-rate',
  'cattle-stocking-density',
];
/** Numbers that hang on growth. */
const BY_GROWTH = [
  'hay-needed',
  'hay-cut',
  'bales',
  'grass-short',
  'winter-feed',
  'feed-besides-grass',
  'grass-ready',
  'turn-out',
  'last-grazing',
  'stockpile-shut',
  'stockpile-standing',
  'carrying-capacity',
  'paddock-area',
  'forage-mass',
  'height-grown-on',
  'height-of-standing',
  'standing-in-evening',
  'standing-in-all',
  'standing-average',
  'standing-above-residuals',
  'move-date',
  'days-of-stay',
  'mass-before-stay',
  'mass-after-stay',
];

const sameIn = (plan: PasturePlan, { label, formula }: Quantity): Quantity | undefined =>
  quantitiesIn(plan).find((each) => each.label === label && each.formula === formula);

/** How far two values of one number are apart: days for dates. */
function changeOf(a: Quantity, b: Quantity): number {
  const numberOf = ({ value }: Quantity): number =>
    typeof value === 'number' ? value : Date.parse(String(value)) / 86_400_000;
  const apart = Math.abs(numberOf(a) - numberOf(b));
  return Number.isNaN(apart) ? 0 : apart;
}
