import type { Sourced } from '../explain/formula.js';
import type { Ranged } from './bird-tables.js';

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
  /** Least distance from a lamp to the bedding, unless its maker says more, and to anything else that burns. */
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
