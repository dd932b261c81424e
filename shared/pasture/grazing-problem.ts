import type { Judgements } from '../tables/judgements.js';
import type { GrassWeather } from './grass-weather.js';
import type { Sward } from './sward.js';

/** What moves are decided by, beside heights and rests. */
export type GrazingJudgements = Readonly<Record<keyof Judgements['grazing'], number>>;

/** Herds as the grass sees them: what they would eat of it on each day. */
export interface Grazers {
  readonly demandKg: Float64Array;
  readonly longestStayDays: number;
  /** First day they may be on grass. */
  readonly notBefore: number;
  /** Paddock they stand in when the plan begins, or undefined. */
  readonly startsIn: number | undefined;
  /** It was told since when it stands there: it has been in, whatever day it should have gone. */
  readonly isSeenThere: boolean;
}

/** A season of grass to be grazed. Day 0 is the first that growth is followed from. */
export interface GrazingProblem {
  readonly swards: readonly Sward[];
  readonly herds: readonly Grazers[];
  /** First day of the plan and the day after its last. */
  readonly from: number;
  readonly to: number;
  /** Where herds were between day 0 and the plan. */
  readonly past: readonly Stay[];
  /** What was mown or topped between day 0 and the plan's first day, as it was told. */
  readonly mown: readonly Mown[];
  /** The usual weather, and each paddock in it from a day on, as wet as its ground is then. */
  readonly usualWeather: GrassWeather;
  readonly usualFrom: (paddock: number, day: number) => Sward;
  /** Usual growth of each paddock by day, kg/ha: all that is known of days to come. */
  readonly usualGrowth: readonly Float64Array[];
  /** Last day on which anything grows in a usual year. */
  readonly growthEnds: number;
  /** Share eaten of what disappears, by days of stay, and how much less in rank grass. */
  readonly harvestShare: readonly number[];
  readonly rankDrop: number;
  readonly judged: GrazingJudgements;
  /** Net energy for upkeep of hay from each paddock, Mcal a kg of dry matter. */
  readonly hayMcalPerKg: readonly number[];
  /** Of what is mown, the share that cattle eat as hay. */
  readonly hayEatenShare: number;
  /** Days after the first of a go by which it is mown: so long its work may wait for dry ones. */
  readonly mownWithinDays: number;
  /** Which of several ready paddocks is taken: by a plain rule always the most grown. */
  readonly takes: 'just-ready' | 'in-turn' | 'most-grown';
  /** Growth of a day from which grass is called growing, kg/ha. */
  readonly growsKgPerHa: number;
}

/** A paddock that was mown on a day. */
export interface Mown {
  readonly paddock: number;
  readonly day: number;
  readonly isLeftLying: boolean;
}

/** A herd in a paddock from a day on, for some days. */
export interface Stay {
  readonly herd: number;
  readonly paddock: number;
  readonly from: number;
  readonly days: number;
}
