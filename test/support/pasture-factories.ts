import type { Cow } from '../../shared/farm/cow.js';
import type { CattleGroup, Herd } from '../../shared/farm/herd.js';
import type { GrassReading, Paddock } from '../../shared/farm/paddock.js';
import type { HerdMove } from '../../shared/farm/told-fact.js';
import type { Farm } from '../../shared/farm/farm.js';
import { climateFromMonthlyMeans } from '../../shared/weather/climate.js';
import { newFarm, tables } from './factories.js';
import type { PastureCase } from './pictures.js';

/** Rain of a humid temperate place, mm a month; invented. */
export const RAIN_MM = [75, 65, 80, 90, 95, 100, 100, 95, 100, 95, 90, 85];

/** A valid paddock, invented. A test writes only what it is about. */
export function newPaddock(more: Partial<Paddock> = {}): Paddock {
  return {
    id: 'p1',
    name: 'Paddock 1',
    areaM2: 8000,
    forageId: 'orchardgrass-legume',
    stand: 'good',
    productivity: 'medium',
    soilId: 'loam',
    hasWater: true,
    hasShade: false,
    closedDays: [],
    ...more,
  };
}

/** Paddocks that differ by nothing but their name. */
export const newPaddocks = (count: number, more: Partial<Paddock> = {}): Paddock[] =>
  Array.from({ length: count }, (_, k) =>
    newPaddock({ id: `p${k + 1}`, name: `Paddock ${k + 1}`, ...more }),
  );

export const newGroup = (more: Partial<CattleGroup> = {}): CattleGroup => ({
  classId: 'cow-calf',
  head: 4,
  ...more,
});

export const newHerd = (more: Partial<Herd> = {}): Herd => ({
  id: 'h1',
  name: 'Cows',
  groups: [newGroup()],
  ...more,
});

/** A named cow of the herd of `newHerd`. */
export const newCow = (more: Partial<Cow> = {}): Cow => ({
  id: 'cow',
  name: 'Clover',
  herdId: 'h1',
  classId: 'cow-calf',
  ...more,
});

/** A herd went into a paddock, or into none, as it was told. */
export const toldMove = (herdId: string, paddockId: string | undefined, on: string): HerdMove => ({
  ...{ id: `move-${on}`, key: `move-${on}`, kind: 'herd-move', about: herdId, on },
  details: paddockId === undefined ? {} : { paddockId },
  toldAt: `${on}T08:00:00.000Z`,
});

export const newReading = (more: Partial<GrassReading> = {}): GrassReading => ({
  id: 'r1',
  paddockId: 'p1',
  date: '2027-04-20',
  heightCm: 12,
  ...more,
});

/** A valid pasture request on a valid farm, in the spring of 2027. */
export function newPastureRequest(
  more: Partial<Omit<PastureCase, 'farm'>> & { farm?: Partial<Farm>; rainMm?: number[] } = {},
): PastureCase {
  const { rainMm = RAIN_MM, farm: given, ...rest } = more;
  const farm = newFarm(given);
  return {
    farm,
    climate: climateFromMonthlyMeans(farm.monthlyMinC, farm.monthlyMaxC, 6, rainMm),
    tables,
    today: '2027-04-21',
    paddocks: newPaddocks(6),
    herds: [newHerd()],
    cows: [],
    readings: [],
    followers: [],
    choices: {},
    ...rest,
  };
}
