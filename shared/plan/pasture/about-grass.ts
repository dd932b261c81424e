import type { AboutNumbers, Moved } from '../../explain/moved.js';
import { quantitiesIn } from '../../explain/quantities-in.js';
import type { Quantity } from '../../explain/quantity.js';
import type { FarmPicture } from '../../farm/picture.js';
import { openThingOf } from '../open/open-things.js';
import { howFar, once } from '../open/tried.js';
import { rowById, type Tables } from '../../tables/tables.js';
import { planPasture, type PasturePlan } from './pasture-plan.js';

/** What is not known when the plan is made, and what it would be by other figures. */
const OTHERWISE: readonly {
  readonly what: string;
  /** What tells of it. */
  readonly toldBy: 'walks' | 'forecast' | 'scale';
  readonly of: (picture: FarmPicture, tables: Tables) => FarmPicture;
}[] = [
  {
    what: 'If a third of the rain stays away all year',
    toldBy: 'walks',
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
    toldBy: 'walks',
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
    toldBy: 'forecast',
    of: (picture) => warmer(picture, -COLDER_K),
  },
  {
    what: 'If the year is 2 °C (4 °F) warmer',
    toldBy: 'forecast',
    of: (picture) => warmer(picture, COLDER_K),
  },
  {
    what: 'If the cattle weigh a tenth more',
    toldBy: 'scale',
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

/**
 * What is asked of the numbers of a pasture: the season is planned again with one thing otherwise,
 * once for all its numbers.
 */
export function aboutGrass(picture: FarmPicture, plan: PasturePlan, tables: Tables): AboutNumbers {
  const own = once(() => byName(plan));
  const otherwise = OTHERWISE.map(({ what, toldBy, of }) => ({
    ...{ what, knownBetter: knownBetter(plan, toldBy) },
    numbers: once(() => byName(planPasture(of(picture, tables), tables))),
  }));
  return {
    *movedMost(quantity): Generator<undefined, Moved | undefined> {
      const name = nameOf(quantity);
      const at = own().get(name)?.indexOf(quantity) ?? -1;
      if (at < 0) return openThingOf(quantity);
      let most: (Moved & { readonly size: number }) | undefined;
      for (const { numbers, ...change } of otherwise) {
        const to = numbers().get(name)?.[at];
        const size = to ? howFar(quantity, to) : 0;
        if (to && (most?.size ?? 0) < size) most = { ...change, to, size };
        yield undefined;
      }
      if (!most) return openThingOf(quantity, true);
      const { size: _size, ...moved } = most;
      return moved;
    },
  };
}

function knownBetter(
  { farmFactor }: PasturePlan,
  toldBy: (typeof OTHERWISE)[number]['toldBy'],
): string {
  if (toldBy === 'scale') return 'When you have weighed or taped them and typed it.';
  if (toldBy === 'forecast')
    return 'With the season: the forecast tells a week of it ahead, each pasture walk what it came to.';
  return farmFactor.value === 1
    ? 'When you have walked the pasture twice, ten days or more apart, and typed the heights: your own growth then counts.'
    : 'With each further pasture walk: your own growth counts the more.';
}

/** The same number of another plan has its label and its formula, and is as many such before it. */
const nameOf = ({ label, formula }: Quantity): string => `${formula} ${label}`;

function byName(plan: PasturePlan): ReadonlyMap<string, readonly Quantity[]> {
  const named = new Map<string, Quantity[]>();
  for (const each of quantitiesIn(plan)) {
    const name = nameOf(each);
    const before = named.get(name);
    if (before) before.push(each);
    else named.set(name, [each]);
  }
  return named;
}
