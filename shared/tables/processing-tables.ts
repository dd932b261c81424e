import type { Sourced } from '../explain/formula.js';
import type { Ranged } from './bird-tables.js';

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
