import type { Formula } from '../explain/formula.js';
import type { GrowingTable } from '../tables/growing-table.js';

export const growthInAirFormulas = {
  air: {
    id: 'growth-in-air',
    title: 'What the air leaves of gain and asks of feed',
    words:
      'Birds grow best in air that falls with their age. In warmer air they gain less and eat less, by the square of the degrees at first; in colder air they eat more, and in hard cold they gain less too. The day’s average air outdoors is taken; in the brooder they have the air they want. An estimate: it was fitted to one trial of fast meat chickens. Slow ones, pullets and ducks are taken to lose half as much, turkeys as much: no figures of their own were found. Hens in lay answer in their feed and lay instead.',
    symbols:
      'a = 1 − h·0.006·x², b = 1 − h·0.004·x² for x = T − T_best > 0; b = 1 + 0.01·(−x − 3) in the cold',
    sources: ['GROWTH_BY_AIR'],
    mark: 'estimate',
  },
} satisfies Record<string, Formula>;

/** Factors on a day's gain and feed; 1 in air that suits the birds. */
export interface AirFactors {
  readonly gain: number;
  readonly feed: number;
}

const NONE: AirFactors = { gain: 1, feed: 1 };

/** Air at which birds of an age grow best, °C; straight lines between the table's ages. */
export function bestAirC({ points }: GrowingTable['best'], ageDays: number): number {
  const after = points.findIndex((p) => ageDays < p.ageDays);
  if (after === 0) return points[0]!.bestC;
  if (after < 0) return points.at(-1)!.bestC;
  const [a, b] = [points[after - 1]!, points[after]!];
  return a.bestC + ((b.bestC - a.bestC) * (ageDays - a.ageDays)) / (b.ageDays - a.ageDays);
}

/**
 * What the average air of a day leaves of a growing bird's gain, and asks of its feed.
 *
 * @param heatShare of a fast meat chicken's losses in heat, 0 to 1
 * @param airC average of the day, °C; fitted between −10 and 33 °C
 */
export function airFactors(
  { best, heat, cold }: GrowingTable,
  heatShare: number,
  ageDays: number,
  airC: number,
): AirFactors {
  const over = airC - bestAirC(best, ageDays);
  if (0 < over) {
    const square = Math.min(over, heat.bendC) ** 2;
    const beyond = Math.max(0, over - heat.bendC);
    const left = (perC2: number, perC: number): number =>
      Math.max(heat.least, 1 - heatShare * (perC2 * square + perC * beyond));
    return {
      gain: left(heat.gainPerC2, heat.gainPerCBeyond),
      feed: left(heat.feedPerC2, heat.feedPerCBeyond),
    };
  }
  const chill = -over - cold.feedBelowBestC;
  if (chill <= 0) return NONE;
  const frost = Math.max(0, cold.gainBelowC - airC);
  return {
    gain: Math.max(cold.least, 1 - cold.gainPerC * frost),
    feed: 1 + cold.feedPerC * chill,
  };
}
