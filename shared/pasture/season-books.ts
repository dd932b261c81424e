import type { Stay } from './grazing-problem.js';
import type { GrassState } from './sward-day.js';

/** Why a stay begins on its day. */
export type StayStart = 'out-already' | 'turn-out' | 'next' | 'after-hay';

/** Why a stay ends when it does. */
export type StayEnd = 'eaten-down' | 'long-enough' | 'shut' | 'herd-gone' | 'plan-ends' | 'snow';

/** What let a herd in. */
export type Entry =
  | 'ready'
  | 'first-pass'
  | 'leaf-stage'
  | 'at-rest'
  | 'dormant'
  | 'standing-there';

/** What one stay did. Masses in kg/ha, amounts in kg. */
export interface StayRecord extends Stay {
  readonly massBefore: number;
  readonly massAfter: number;
  readonly grownKg: number;
  readonly eatenKg: number;
  readonly trampledKg: number;
  readonly hayKg: number;
  readonly start: StayStart;
  readonly entry: Entry;
  readonly end: StayEnd;
  /** Strips it is grazed in, one after the other, so that no regrowth is bitten. */
  readonly strips: number;
  /** Days since the paddock was last grazed or mown, or undefined on its first visit. */
  readonly restDays: number | undefined;
  /** Mass it had when it was last left. */
  readonly grownInRestKgPerHa: number | undefined;
  readonly isRank: boolean;
  /** Of what stood on the first morning: the share that can be digested, and that is dead. */
  readonly digestibleShare: number;
  readonly deadShare: number;
  /** Of what is eaten of it, by which milk and gain go. */
  readonly digestibleEaten: number;
}

/** Where the grass of one paddock went over the plan, kg. */
export interface PaddockBook {
  readonly startKg: number;
  readonly endKg: number;
  readonly grownKg: number;
  readonly eatenKg: number;
  readonly trampledKg: number;
  /** For hay, and topped. */
  readonly mownKg: number;
  readonly diedOffKg: number;
}

/** What a day brought and took in one paddock, kg/ha, index = days after day 0. */
export interface GrassDays {
  readonly grown: Float64Array;
  readonly eaten: Float64Array;
  readonly trampled: Float64Array;
  readonly mown: Float64Array;
  readonly diedOff: Float64Array;
}

/** A paddock dropped from the round for hay: closed, mown, closed while it dries. */
export interface Cut {
  readonly paddock: number;
  readonly shutFrom: number;
  /** First day of the go that it is mown in: its work has the days from then on. */
  readonly goFrom: number;
  readonly day: number;
  readonly openFrom: number;
  readonly kg: number;
}

/** A paddock that is cut down, and what is cut left lying. */
export interface Topping {
  readonly paddock: number;
  readonly day: number;
  readonly kg: number;
}

export interface SeasonBooks {
  /** Mass of each paddock in the evening of each day, kg/ha, those before the plan included. */
  readonly massKgPerHa: readonly Float64Array[];
  /** Mass of each paddock on the morning of the plan's first day, kg/ha. */
  readonly startKgPerHa: readonly number[];
  /** What stood then, by leaf and stem. */
  readonly startStates: readonly GrassState[];
  readonly stays: readonly StayRecord[];
  readonly paddocks: readonly PaddockBook[];
  /** The same books by day. */
  readonly days: readonly GrassDays[];
  /** Hay (or other feed) each herd needs on each day, kg of dry matter. */
  readonly hayKg: readonly Float64Array[];
  readonly eatenKg: readonly Float64Array[];
  readonly cuts: readonly Cut[];
  /** What stood in each paddock on the day of its last reading, by moves and mowing that were told, kg/ha. */
  readonly stoodAtReading: readonly (number | undefined)[];
  /** Cuts of the days before the plan that are taken as made, as nobody told otherwise. */
  readonly assumedCuts: readonly Cut[];
  readonly toppings: readonly Topping[];
  /** What was mown or topped as it was told, up to the plan's first day. */
  readonly toldCuts: readonly Topping[];
}
