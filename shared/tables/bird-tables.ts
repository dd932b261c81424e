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

export interface Dressing extends Sourced, Ranged {
  readonly id: string;
  readonly share: number;
  readonly definition: string;
}

export interface IceWaterChilling extends Sourced {
  readonly minutes: number;
  readonly deviation: number;
  readonly fromKg: number;
  readonly toKg: number;
}

export interface ProcessingTable {
  readonly dressing: readonly Dressing[];
  readonly waterUptake: Sourced & Ranged & { readonly share: number };
  readonly packing: Sourced & Ranged & { readonly kgPerL: number };
  readonly withdrawalH: Sourced & Ranged & { readonly value: number };
  /** Ice for a weight of carcass as habit has it, from a cool day to a hot one. */
  readonly ice: Sourced & Ranged;
  /** Heat that ice takes up: of the carcass, the water over it, and the air of the day. */
  readonly iceBalance: Sourced & {
    readonly carcassC: number;
    readonly carcassKJPerKgK: number;
    readonly waterKJPerKgK: number;
    readonly meltKJPerKg: number;
    /** Kilograms of water over a kilogram of carcass. */
    readonly waterPerCarcass: number;
    readonly endC: number;
    /** What a tub lets in, for a kilogram of carcass in it. */
    readonly airWPerKPerKg: number;
    /** Hours that a carcass lies in ice. */
    readonly hours: number;
    readonly because?: string;
  };
  readonly iceBag: Sourced & { readonly kg: number };
  readonly chilling: Sourced & {
    readonly targetC: number;
    /** Hours within which the law wants it, by carcass. */
    readonly rows: readonly { readonly belowKg?: number; readonly hours: number }[];
    /** Minutes that bare carcasses of a range of weights took in ice water, as measured. */
    readonly iceWater: IceWaterChilling;
  };
  readonly freezerBags: Sourced & { readonly perBird: number };
  /** Minutes that a bird, or a load, takes at each station. */
  readonly stations: Readonly<Record<'cones' | 'scalder' | 'plucker', Station>>;
  /** Propane to heat the scald water for a day, and to keep it hot for each bird. */
  readonly scalding: Sourced & { readonly gasLPerDay: number; readonly gasLPerBird: number };
  /** How long frozen birds keep. */
  readonly keeping: Sourced & { readonly days: number };
  /** Days a carcass rests cold before it is eaten or frozen. */
  readonly resting: Sourced & { readonly days: number };
}

/** Where birds wait for each other on a day of processing. */
export type Station = Sourced & Ranged & { readonly minutes: number };

export interface Material extends Sourced {
  readonly id: string;
  readonly name: string;
  readonly rM2KPerWPerM: number;
}

export interface HeatTable {
  readonly films: Sourced & { readonly insideM2KPerW: number; readonly outsideM2KPerW: number };
  readonly birds: Sourced & {
    readonly totalW: number;
    readonly exponent: number;
    readonly perK: number;
    readonly sensibleShare: number;
    readonly sensibleDropPerK2: number;
    readonly litterLoss: number;
    readonly creditFromDay: number;
    /** Dry heat of a chick in its first days, for each kilogram: less than the law by weight says. */
    readonly newlyHatchedWPerKg: number;
  };
  readonly ventilation: Sourced & {
    readonly m3PerHPerKg075: number;
    readonly m3PerHPerKg: number;
    readonly m3PerHPerChick: number;
    readonly unventedGasFactor: number;
  };
  readonly zone: Sourced & {
    readonly coolEndBelowHeaterK: number;
    readonly coolEndMinC: number;
    readonly roomBelowHeaterK: number;
  };
  readonly building: Sourced & { readonly warmerThanOutsideK: number };
  readonly heatedRoom: Sourced & { readonly airC: number };
  readonly coldNightMarginK: Sourced & { readonly value: number };
  readonly plate: Sourced & { readonly wattsPerChick: number; readonly warmestRoomFromC: number };
  readonly lampRule: Sourced & {
    readonly chicks: number;
    readonly atF: number;
    readonly lampW: number;
    /** Fewer a lamp than this are printed nowhere: there the rule ends. */
    readonly fewestChicks: number;
  };
  readonly rules: readonly LampRuleOfThumb[];
  /** Radiation on the bedding straight below a gas brooder that hangs as high as its maker says. */
  readonly gasBrooder: Sourced & { readonly fluxWPerM2: number };
  /** Newly hatched chicks packed as they came, without heat: how warm, and how many die in two days. */
  readonly chickBox: Sourced & {
    readonly warmerK: number;
    readonly toAgeDays: number;
    /** Air of a cold and of a warm room they were kept in, and how many died there. */
    readonly coldAirC: number;
    readonly coldDiedShare: number;
    readonly warmAirC: number;
    readonly warmDiedShare: number;
  };
  /** From this height on the top of a brooder is a ceiling, and nobody takes it off. */
  readonly ceiling: Sourced & { readonly fromM: number };
  readonly gasRule: Sourced & { readonly lowWPerM2: number; readonly highWPerM2: number };
  readonly openTop: Sourced & {
    readonly convection: number;
    readonly radiationWPerM2K: number;
    /** Of the exchange of air through a level opening, when all air below it is warm. */
    readonly exchange: number;
  };
  readonly floor: Sourced & { readonly wPerM2K: number };
  readonly radiant: Sourced & {
    readonly share: number;
    readonly shareLow: number;
    readonly shareHigh: number;
    readonly beamHalfAngleDeg: number;
    readonly riseKPerWPerM2: number;
  };
  /** Least distance from a lamp to the bedding, unless its maker says more. */
  /** From a lamp to the bedding, and to anything else that burns. */
  readonly clearance: Sourced & { readonly valueM: number; readonly toBurnableM: number };
  readonly lamps: Sourced & {
    readonly highestM: number;
    readonly stepM: number;
    /** Until this age every chick is to have room under a lamp. */
    readonly spotsUntilDay: number;
    /** How much cooler than under the heat the cool end is to be at least. */
    readonly coolEndBelowK: number;
    /** By day lamps are raised where it is so much warmer below them than wanted. */
    readonly spotAboveK: number;
  };
  readonly tooHot: Sourced & {
    readonly rows: readonly {
      readonly fromDay: number;
      readonly warnC: number;
      readonly dangerC: number;
    }[];
  };
  readonly circuit: Sourced & { readonly share: number };
  /** The smallest that houses commonly have. */
  readonly usualCircuit: Sourced & {
    readonly volts: number;
    readonly amps: number;
    readonly otherVolts: number;
    readonly otherAmps: number;
    /** Where it is the first of the two; everywhere else the other. */
    readonly countries: readonly string[];
  };
  readonly propane: Sourced & Ranged & { readonly MJPerL: number };
}

/** What somebody prints about lamps and chicks, in watts for each chick. */
export interface LampRuleOfThumb extends Sourced {
  readonly name: string;
  readonly wattsPerChick: number;
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
