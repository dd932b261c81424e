import type { Formula } from '../explain/formula.js';

export const sizingFormulas = {
  paddocks: {
    id: 'paddock-count',
    title: 'Paddocks for a rest and a stay',
    words: 'Longest rest of the season divided by the days of stay, plus the one being grazed.',
    symbols: 'n = ⌈rest ÷ stay⌉ + 1',
    sources: ['GRAZING_27'],
    mark: 'published',
  },
  area: {
    id: 'paddock-area',
    title: 'Size of a paddock',
    words:
      'What the herd eats in a stay, divided by the forage above the residual and the share of it that is eaten.',
    symbols: 'A = F·days ÷ (available·u)',
    sources: ['GRAZING_20'],
    mark: 'published',
  },
  stockingRate: {
    id: 'stocking-rate',
    title: 'Stocking rate',
    words: 'Live weight on the whole of the grazed land.',
    symbols: 'live weight ÷ all area',
    sources: ['GRAZING_31'],
    mark: 'published',
  },
  stockDensity: {
    id: 'cattle-stocking-density',
    title: 'Stocking density',
    words: 'Live weight on the paddock being grazed now.',
    symbols: 'live weight ÷ paddock area',
    sources: ['GRAZING_31'],
    mark: 'published',
  },
  capacity: {
    id: 'carrying-capacity',
    title: 'Head the land carries',
    words:
      'Growth of the plan times the share eaten, divided by what one animal eats on the days on which grass grows. None of it is made into hay for the other days, on which all hay is bought.',
    symbols: 'n = growth·u ÷ (intake·days)',
    sources: ['GRAZING_16'],
    mark: 'published',
  },
  animalDays: {
    id: 'animal-days',
    title: 'Animal days on an area',
    words: 'Head times days in the paddock, divided by its area.',
    symbols: 'head·days ÷ A',
    sources: ['ARITHMETIC'],
    mark: 'computed',
  },
  allFence: {
    id: 'fence-of-all',
    title: 'Fence of all paddocks',
    words:
      'What two paddocks share is built once. Outlines show it; paddocks of which only the size is known are taken as rectangles of equal size in one block, in rows that take the least fence.',
    symbols: 'L = Σ around each − Σ shared',
    sources: ['ARITHMETIC'],
    mark: 'computed',
  },
  energizer: {
    id: 'fence-energizer',
    title: 'Energizer',
    words:
      'One joule for a mile of fence, whatever the strands; counting wire asks for four times.',
    symbols: 'E = L·1 J ÷ 1.6 km',
    sources: ['ARITHMETIC'],
    mark: 'computed',
  },
  shade: {
    id: 'cattle-shade',
    title: 'Shade',
    words: 'Head times the shade one lies in at noon.',
    symbols: 'A = head·a',
    sources: ['ARITHMETIC'],
    mark: 'computed',
  },
  lane: {
    id: 'lane-length',
    title: 'Lane',
    words: 'The long side of the paddock; wide enough for the herd and a vehicle.',
    symbols: 'L = √(A·k)',
    sources: ['GRAZING_56'],
    mark: 'published',
  },
  fence: {
    id: 'fence-length',
    title: 'Fence of a rectangle',
    words: 'Two lengths and two widths; the longer the shape, the more fence for the same ground.',
    symbols: 'L = 2·√A·(√k + 1 ÷ √k)',
    sources: ['GRAZING_57'],
    mark: 'published',
  },
} satisfies Record<string, Formula>;

/** Paddocks for the longest rest and the stay, both in days of 1 or more. */
export const paddocksFor = (restDays: number, stayDays: number): number =>
  Math.ceil(restDays / stayDays - 1e-9) + 1;

/** Rest each paddock gets in an even rotation, days. */
export const restOfRotation = (paddocks: number, stayDays: number): number =>
  (paddocks - 1) * stayDays;

/** Area for a stay, m². Demand of the herd in kg of dry matter a day. */
export const paddockAreaM2 = (herd: {
  demandKgPerDay: number;
  days: number;
  availableKgPerHa: number;
  harvestShare: number;
}): number =>
  (10_000 * herd.demandKgPerDay * herd.days) / (herd.availableKgPerHa * herd.harvestShare);

/** Head the land carries over a season. */
export const carryingCapacity = (land: {
  areaM2: number;
  growthKgPerHa: number;
  harvestShare: number;
  intakeKgPerDay: number;
  seasonDays: number;
}): number =>
  ((land.areaM2 / 10_000) * land.growthKgPerHa * land.harvestShare) /
  (land.intakeKgPerDay * land.seasonDays);

/** Amount on an area, per hectare: stocking rate on all of it, density on one paddock. */
export const perHectare = (amount: number, areaM2: number): number => (amount * 10_000) / areaM2;

/** Fence around a rectangle of an area whose long side is `longToShort` times the short, m. */
export function rectangleFenceM(areaM2: number, longToShort: number): number {
  const shortM = Math.sqrt(areaM2 / longToShort);
  return 2 * shortM * (1 + longToShort);
}

/** Long side of such a rectangle, m. */
export const longSideM = (areaM2: number, longToShort: number): number =>
  Math.sqrt(areaM2 * longToShort);

/** New fence, m, that cuts a rectangle across its long side into equal strips. */
export const splitFenceM = (areaM2: number, longToShort: number, parts: number): number =>
  (parts - 1) * Math.sqrt(areaM2 / longToShort);
