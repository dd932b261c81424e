import type { Mark, Sourced } from '../explain/formula.js';
import type { Purpose } from '../farm/batch.js';

export type BirdSex = 'male' | 'female';

export interface GrowthPoint {
  readonly ageDays: number;
  readonly weightKg: number;
  readonly cumulativeFeedKg?: number;
}

/**
 * One kind of bird of one era. Meat tables of different eras are never joined; a pullet table may go
 * on with weights of grown hens, and its name then says so.
 */
export interface GrowthTable extends Sourced {
  readonly id: string;
  readonly name: string;
  readonly asHatched?: readonly GrowthPoint[];
  readonly male?: readonly GrowthPoint[];
  readonly female?: readonly GrowthPoint[];
  readonly sexRatio?: Sourced & {
    readonly points: readonly { readonly ageDays: number; readonly femaleToMale: number }[];
    readonly note: string;
  };
  readonly maleGompertz?: Sourced & {
    readonly asymptoteKg: number;
    readonly ratePerDay: number;
    readonly hatchKg: number;
  };
  readonly feedModel?: Sourced & {
    readonly gainKgPerKg: number;
    readonly maintenanceKgPerKg075Day: number;
    readonly note: string;
  };
  /** What birds of a household weigh and eat, over what is printed here. */
  readonly atHome?: Sourced & {
    readonly weightFactor: number;
    readonly feedFactor: number;
    readonly note: string;
  };
  /** Feed of other sources over what is planned with for the same weight. */
  readonly feedSpread?: Sourced & {
    readonly low: number;
    readonly high: number;
    readonly because: string;
  };
}

export interface Strain {
  readonly id: string;
  readonly name: string;
  readonly description: string;
  /** Kind of poultry, whose eggs hatch alike: a row of the hatching table. */
  readonly species: string;
  /** Does not breed true: chicks from its own eggs differ from it. */
  readonly isCross?: boolean;
  readonly purposes: readonly Purpose[];
  /** Purposes for which a new batch starts with this strain. */
  readonly defaultFor?: readonly Purpose[];
  /** The first is the default. */
  readonly growthTables: readonly string[];
  readonly waste: Sourced & { readonly percent: number };
  readonly feedProgram: Partial<Record<Purpose, string>>;
  readonly losses: string;
  readonly layLosses?: string;
  /** Age at which meat birds are usually processed, and cockerels beside pullets. */
  readonly leave: Sourced & { readonly ageDays: number };
  /** Of those that are raised for meat. */
  readonly dressing?: string;
  /** Share of a fast meat chicken's losses in heat that this strain has while it grows. */
  readonly heat: Sourced & {
    readonly share: number;
    /** Why the chickens' answer stands in, where none of its own was found. */
    readonly standsIn?: string;
  };
  readonly moveOut: string;
  readonly layCurve?: string;
}

export interface FeedPhase {
  readonly id: string;
  readonly name: string;
  /** A phase lasts until the next one begins. */
  readonly fromDay: number | 'first-egg';
  readonly proteinPercentLow: number;
  readonly proteinPercentHigh: number;
  readonly energyKcalPerKg: number;
  readonly calciumPercent?: number;
}

export interface FeedProgram extends Sourced {
  readonly id: string;
  readonly name: string;
  /** The program in whose place this one may be chosen. */
  readonly insteadOf?: string;
  /** Up to so many birds it is what is usually bought in that one's place. */
  readonly fewBirds?: number;
  readonly phases: readonly FeedPhase[];
}

/** A row for one kind of poultry; for chickens where it does not say. */
export interface OfSpecies {
  readonly species?: string;
}

export interface BroodingSchedule extends Sourced, OfSpecies {
  readonly id: string;
  readonly name: string;
  readonly default?: boolean;
  readonly where: string;
  /** What a step is the temperature of: chick height under the heat, or all air of a warm house. */
  readonly measures: 'under-heat' | 'air';
  readonly interpolate: boolean;
  readonly steps: readonly {
    readonly fromDay: number;
    readonly toDay: number;
    readonly lowC: number;
    readonly highC: number;
  }[];
}

/** A row holds until the next one begins. */
export interface SpaceRow {
  readonly fromDay: number;
  readonly floorM2: number;
  readonly feederCm?: number;
  readonly drinkerCm?: number;
}

export interface BrooderSpaceStandard extends Sourced, OfSpecies {
  readonly id: string;
  readonly name: string;
  readonly default?: boolean;
  readonly rows: readonly SpaceRow[];
}

export interface SpaceStandards {
  readonly brooder: readonly BrooderSpaceStandard[];
  readonly pen: PenSpace;
  /** The same for birds that are no chickens. */
  readonly otherPens: readonly (PenSpace & { readonly species: string })[];
  readonly penMoves: Sourced & Ranged & { readonly perDay: number; readonly because: string };
  readonly coop: Sourced & {
    readonly floorM2: number;
    readonly floorMinM2: number;
    readonly floorMaxM2: number;
    readonly hensPerNest: number;
    readonly hensPerNestLow: number;
    readonly hensPerNestHigh: number;
    readonly roostCm: number;
  };
  readonly liveWeightCapKgPerM2: Sourced & { readonly value: number; readonly high: number };
  /** What drinkers hold, L a bird, and feeders, kg a bird, where nobody has said. */
  readonly holds: { readonly drinkers: UsualHold; readonly feeders: UsualHold };
}

/** A row holds until the next one begins. */
export interface UsualHold extends Sourced {
  readonly rows: readonly { readonly fromDay: number; readonly each: number }[];
  readonly because: string;
}

export type PenSpace = Sourced & Ranged & { readonly floorM2: number };

export interface Ranged {
  readonly low: number;
  readonly high: number;
  readonly because?: string;
}

/** Nitrogen and phosphorus that birds leave in a day, for each kilogram of their live weight. */
export interface ManureOfBirds extends Sourced {
  readonly nKgPerDayPerKgLive: number;
  readonly pKgPerDayPerKgLive: number;
}

export interface WaterTable extends Sourced {
  readonly referenceC: number;
  readonly points: readonly { readonly ageDays: number; readonly mLPerDay: number }[];
}

/** Water of meat birds goes with their feed. */
export interface MeatWater extends Sourced, Ranged {
  /** Kilograms of water per kilogram of feed in cool air. */
  readonly ratio: number;
}

export interface WaterHeatRise extends Sourced {
  readonly fromC: number;
  readonly atC: number;
  readonly riseLow: number;
  readonly rise: number;
  readonly riseHigh: number;
  readonly because: string;
}

export interface LossTable extends Sourced {
  readonly id: string;
  readonly firstWeekPercent: number;
  readonly laterPercent: number;
  readonly laterToDay: number;
  readonly layYearPercent?: number;
  /** What flocks lost in all while they grew, where sources differ. */
  readonly spread?: Sourced & {
    readonly lowPercent: number;
    readonly highPercent: number;
    readonly because: string;
  };
}

export interface LitterTable extends Sourced, Ranged {
  readonly depthM: number;
  readonly topUpShare: number;
  readonly topUpEveryDays: number;
  readonly topUpMark: Mark;
  readonly bagLooseM3: number;
  readonly bagNote: string;
}

export interface MoveOutTable extends Sourced {
  readonly id: string;
  readonly laterSources: readonly string[];
  readonly laterMark: Mark;
  readonly rules: readonly MoveOutRule[];
}

export interface MoveOutRule {
  readonly id: string;
  readonly name: string;
  readonly fromDay: number;
  readonly nightLowC: number;
  /** Older birds stand colder nights in a dry shelter; a planning guess. */
  readonly later: readonly { readonly fromDay: number; readonly nightLowC: number }[];
  readonly default?: boolean;
  /** What a household must have ready to go by it; only of a rule that is a way of its own. */
  readonly takes?: string;
}
