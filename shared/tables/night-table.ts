import type { Sourced } from '../explain/formula.js';

/** How sure a household wants to be that a night is warm enough. */
export interface NightSurety {
  readonly id: string;
  readonly name: string;
  /** Share of years in which each night of the first ones is warm enough; 0 goes by age alone. */
  readonly share: number;
  readonly default?: boolean;
  /** What a household must have ready that goes by it. */
  readonly takes: string;
}

/** What cold costs a bird: CT = base + rise·e^(−perKg·m), °C; energy below it, kcal. */
export interface ColdFeedRow extends Sourced {
  readonly criticalBaseC: number;
  readonly criticalRiseC: number;
  readonly criticalPerKg: number;
  /** For every degree below it and day, on a kilogram to the power of three quarters. */
  readonly kcalPerDegreeDay: number;
  /** Live weights it was measured on, kg. */
  readonly fromKg: number;
  readonly toKg: number;
}

/** How far the lows of single nights lie from their average. */
export interface NightTable {
  /** SD = constant + perC·T + perRangeC·A + cosine·cos θ + sine·sin θ, °C. */
  readonly spread: Sourced & {
    readonly constant: number;
    readonly perC: number;
    readonly perRangeC: number;
    readonly cosine: number;
    readonly sine: number;
    readonly leastC: number;
  };
  /** Likeness of one night's low to the next one's: the correlation of their departures. */
  readonly likeness: Sourced & { readonly value: number };
  /** How far a forecast low is off, and how much more for every day ahead. */
  readonly forecast: Sourced & { readonly firstDayC: number; readonly perDayC: number };
  readonly coldFeed: ColdFeedRow;
  readonly surety: Sourced & { readonly choices: readonly NightSurety[] };
}
