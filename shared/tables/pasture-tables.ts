import type { Productivity, Stand } from '../farm/paddock.js';
import type { Mark, Sourced } from '../explain/formula.js';

interface Value extends Sourced {
  readonly value: number;
}
interface ValueRange extends Value {
  readonly low: number;
  readonly high: number;
  readonly because?: string;
}

/** How dead grass falls and rots where it is dry, against where it is wet. */
export interface DeadGrass {
  /** Days of rain that it is as wet as. */
  readonly overDays: number;
  /** In the dry it falls by 1 ÷ (1 + this) of the rate. */
  readonly dryDivisor: number;
  /** How fast the rate rises with wetness. */
  readonly steepness: number;
}

/** One kind of sward. Mass counts from the ground, stubble included. */
export interface Forage {
  readonly id: string;
  readonly name: string;
  readonly habit: 'cool-season' | 'warm-season';
  /** Dry matter in a centimeter of height. */
  readonly massKgPerHaCm: Sourced &
    Readonly<
      Record<Stand, { readonly low: number; readonly high: number; readonly value: number }>
    >;
  readonly heights: Sourced & {
    /** What is tall enough for the first quick pass of spring. */
    readonly firstPassCm: number;
    /** Least and best height to go in at, as they are printed: “6 to 8 inches”. */
    readonly readyFromCm: number;
    readonly readyHeightCm: number;
    readonly residualHeightCm: number;
    readonly rankCm: number;
    readonly rankSources: readonly string[];
    readonly rankMark: Mark;
  };
  readonly restDays: Sourced & {
    readonly fast: number;
    readonly hot: number;
  };
  readonly legumeShare: Value;
  readonly water: Sourced & {
    readonly kc: number;
    readonly rootDepthM: number;
    readonly depletionShare: number;
  };
  readonly energyMcalPerKg: Value;
  /** Groups of grasses that make it up, and their shares of what stands. */
  readonly groups: Sourced & {
    readonly shares: readonly { readonly id: string; readonly share: number }[];
  };
}

/** A group of grasses that grow alike: what they are built like, and how they answer to weather. */
export interface GrassGroup extends Sourced {
  readonly id: string;
  readonly leafAreaM2PerG: number;
  readonly bladeShare: number;
  readonly stemsFromSum: number;
  readonly stemsToSum: number;
  readonly springFactor: number;
  readonly autumnFactor: number;
  readonly leafLifeSum: number;
  readonly leafDigestible: { readonly new: number; readonly old: number };
  readonly stemDigestible: { readonly new: number; readonly old: number };
  readonly response: Sourced & {
    readonly lightUseGPerMJ: number;
    readonly baseC: number;
    readonly wakesC: number;
    readonly fullFromC: number;
    readonly fullToC: number;
    readonly stopC: number;
    readonly onsetSum: number;
    readonly lostPerMJ: number;
    readonly ageingBaseC: number;
  };
}

export interface Soil extends Sourced {
  readonly id: string;
  readonly name: string;
  readonly fieldCapacity: number;
  readonly wiltingPoint: number;
}

export type IntakeEquation =
  | 'nrc-cow-lactating'
  | 'nrc-cow-pregnant'
  | 'nrc-calf'
  | 'nrc-yearling'
  | 'nrc-dairy'
  | 'share';

export interface CattleClass {
  readonly id: string;
  readonly name: string;
  readonly equation: IntakeEquation;
  readonly weightKg: number;
  readonly gainKgPerDay: number;
  readonly milkKgPerDay: number;
  readonly milkFatPercent?: number;
  /** Stands for weight, gain and milk that are not given. */
  readonly usual: Sourced;
  /** Cows of the kind calve: without a date nothing of it is planned, and it is asked for. */
  readonly asksWhenDue?: boolean;
  readonly bodyWeightShare: ValueRange;
  readonly water: string;
  readonly manure: Sourced & {
    readonly nKgPerDayPerKgLive: number;
    readonly pKgPerDayPerKgLive: number;
  };
}

export interface CattleTable {
  /** Grass that a sucking calf eats by its age. */
  readonly calfAtFoot: Sourced & {
    readonly rows: readonly { readonly ageDays: number; readonly kgPerDay: number }[];
  };
  /** What a sucking calf weighs at one age, and gains a day before and after it. */
  readonly calfWeight: Sourced & {
    readonly atDays: number;
    readonly kg: number;
    readonly gainKgPerDay: number;
  };
  readonly girth: {
    readonly rule: Sourced & { readonly cubicInchesPerLb: number };
    /** How far it was found too high against a scale. */
    readonly tooHeavyKg: Sourced & {
      readonly low: number;
      readonly high: number;
      readonly because: string;
    };
  };
  readonly classes: readonly CattleClass[];
  readonly animalUnits: Sourced & {
    readonly perKgLive: number;
    /** Dry matter that a unit eats in a day: 26 lb. */
    readonly dryKgPerUnitDay: number;
    /** Units by metabolic weight over units by weight, of a large cow. */
    readonly metabolicShare: number;
    readonly calfOverDays: number;
    readonly calfUnits: number;
    readonly because: string;
  };
}

export interface HayMethod extends Sourced {
  readonly id: string;
  readonly name: string;
  readonly loss: number;
  readonly low: number;
  readonly high: number;
}

export interface PastureTable {
  readonly readingWeight: Sourced & {
    /** How many readings the table's own growth counts for. */
    readonly priorReadings: number;
    /** Standard error of the growth between two heights that were read. */
    readonly readingErrorKgPerHa: number;
    /** Standard deviation of growth between two readings from what the model has, as a share of it. */
    readonly growthSpread: number;
    readonly lowFactor: number;
    readonly highFactor: number;
  };
  /**
   * Ground that plants cover, of what they cover in a good stand: of a fair one 65 of 100, of a good one
   * about 82. That an excellent one grows more is left out.
   */
  readonly coverShare: Sourced & Readonly<Record<Stand, number>>;
  /** What the soil gives, by how well the ground yields. */
  readonly nitrogenIndex: Sourced & Readonly<Record<Productivity, number>>;
  /** How dead grass falls in dry weather. */
  readonly deadGrass: Sourced & DeadGrass;
  readonly utilisation: Sourced & {
    readonly byStayDays: readonly number[];
    readonly rankDrop: number;
    readonly low: number;
    readonly high: number;
    readonly because: string;
  };
  readonly longestStayDays: Value;
  readonly wetGround: Sourced & { readonly drierThanFieldCapacityMm: number };
  readonly quarantineDays: ValueRange;
  readonly magnesiumLeadDays: Value;
  readonly gradualDays: Sourced & {
    readonly low: number;
    readonly value: number;
    readonly high: number;
  };
  readonly bloatLegumeShare: Value;
  readonly stockpile: Sourced & {
    readonly daysBeforeGrowthEnds: number;
    readonly low: number;
    readonly high: number;
  };
  readonly birdsBehind: Sourced & { readonly lagDays: number };
  readonly nitrogenLimitKgPerHa: ValueRange;
  /** Days from the last of the birds to the first of the cattle. */
  readonly birdsOff: Value;
  readonly rawManure: Sourced & {
    readonly touchingSoilDays: number;
    readonly offSoilDays: number;
  };
  readonly hay: Sourced & {
    readonly dryMatterShare: number;
    readonly harvestShare: number;
    readonly stubbleCm: number;
    readonly bales: readonly { readonly id: string; readonly name: string; readonly kg: number }[];
    readonly feeding: readonly HayMethod[];
    readonly storing: readonly HayMethod[];
  };
}

/** Water of one animal by class, at highs of the day; growing cattle by weight as well. */
export interface WaterChart extends Sourced {
  readonly classes: Readonly<
    Record<string, readonly { readonly airC: number; readonly liters: number }[]>
  >;
  /** Weight for which each row of growing cattle was printed, kg. */
  readonly growingKg: Readonly<Record<string, number>>;
}

export interface CattleWaterTable extends WaterChart {
  /** Cattle on grain, which are printed on to heavier weights, kg: growing cattle rise as they do. */
  readonly heavierKg: Readonly<Record<string, number>>;
  /** Another chart, of hot weather only. */
  readonly hot: WaterChart;
  /** Times as much, at most, as the equation of milk cows has. */
  readonly milkCowInHeat: Sourced & { readonly most: number; readonly because: string };
  readonly milkCow: Sourced & {
    readonly base: number;
    readonly perKgDryMatter: number;
    readonly perKgMilk: number;
    readonly perGSodium: number;
    readonly sodiumGPerKgDryMatter: number;
    readonly perC: number;
  };
  readonly tank: Sourced & {
    readonly rows: readonly {
      readonly refillH: number;
      readonly litersPerHead?: number;
      readonly shareOfDay?: number;
    }[];
  };
  /** Time a trough takes to refill for a day's water, where none is given. */
  readonly refill: Sourced & { readonly hours: number };
  readonly troughEdgeM: Sourced & { readonly per: number; readonly m: number };
  readonly distance: Sourced & { readonly milkM: number; readonly otherM: number };
}

export interface GestationTable {
  readonly sdDays: Value;
  readonly breeds: readonly (Sourced & {
    readonly id: string;
    readonly name: string;
    readonly meanDays: number;
    readonly sdDays?: number;
  })[];
}

export interface FenceTable {
  readonly laneWidthM: Sourced & { readonly low: number; readonly high: number };
  /** `byWire`: how many times as much where every strand of wire is counted. */
  readonly energizerJPerKm: Value & { readonly byWire: number; readonly because: string };
  /** Of a paddock, where none is drawn. */
  readonly shape: Sourced & { readonly longToShort: number };
  /** How paddocks lie to each other, where none are drawn. */
  readonly block: Sourced & { readonly because: string };
  readonly groundRodMPerJ: Value;
  readonly shadeM2PerHead: ValueRange;
}

export interface CattleHeatTable extends Sourced {
  readonly moderateFrom: number;
  readonly severeFrom: number;
}
