import type { Formula } from '../explain/formula.js';
import { straightLines } from '../maths/straight-lines.js';
import type { LayCurve, LayingTable, LightTable } from '../tables/lay-tables.js';

export const layConditionFormulas = {
  light: {
    id: 'lay-by-light',
    title: 'Lay that the light leaves',
    words:
      'Read between the points of the table at the hours of light, lamp included; less again while the day grows shorter, as far as it does so by an hour in 30 days, until the first molt. Hybrids in their first year feel part of the loss. No trial prints lay against hours of light: the shape is a planning guess.',
    symbols: 'f = 1 − s·(1 − f(h)·f_fall)',
    sources: [],
    mark: 'estimate',
  },
  air: {
    id: 'lay-by-air',
    title: 'Lay that cold and heat leave',
    words:
      'Read between the points of the table at the average air of the coop. Frozen water costs more than cold, and is not in it.',
    symbols: 'f = f(T)',
    sources: [],
    mark: 'estimate',
  },
} satisfies Record<string, Formula>;

/** Hours of light by day: those of the sun, or of the lamp where it burns longer. */
export interface LightOfDay {
  readonly hours: number;
  /** `fallDays` before. */
  readonly hoursBefore: number;
}

/**
 * Share of the lay, 0 to 1, that a length of the day leaves.
 *
 * @param felt how much of the loss the hen feels, 0 to 1
 * @param isFirstCycle whether the falling day itself still counts; later it brings the molt
 * @returns a function of the day; hours of light 0 to 24, held at the ends of the table
 *
 * Source: the table's row; a planning guess after trials that print no table of hours.
 */
export function layByLight({
  response,
}: LightTable): (light: LightOfDay, felt: number, isFirstCycle: boolean) => number {
  const read = straightLines(
    response.points.map(({ dayH }) => dayH),
    response.points.map(({ share }) => share),
  );
  return ({ hours, hoursBefore }, felt, isFirstCycle) => {
    const fall = Math.max(0, Math.min(1, (hoursBefore - hours) / response.fallH));
    const falling = isFirstCycle ? 1 - fall * (1 - response.fallShare) : 1;
    return 1 - felt * (1 - read(hours) * falling);
  };
}

/** How much of the loss of short days a hen feels: part of it in her first cycle, all of it later. */
export const lightFelt = ({ lightShare }: LayCurve, isFirstCycle: boolean): number =>
  isFirstCycle ? lightShare.value : 1;

/** Share of the lay, 0 to 1, at the average air of the coop, °C; held at the ends of the table. */
export const layByAir = ({ air }: LayingTable): ((airC: number) => number) =>
  straightLines(
    air.points.map(({ airC }) => airC),
    air.points.map(({ share }) => share),
  );
