import type { Sourced } from '../explain/formula.js';
import type { Ranged } from './bird-tables.js';

/** Chicks of a hundred eggs that were set fresh, as a share. */
export interface HatchRate extends Sourced, Ranged {
  readonly share: number;
}

/** A kind of poultry whose eggs are set. */
export interface HatchSpecies extends Sourced {
  readonly id: string;
  readonly name: string;
  /** What its young are called, and the sexes of them. */
  readonly young: string;
  readonly youngOne: string;
  readonly male: string;
  readonly female: string;
  readonly incubationDays: number;
  /** Day after setting on which turning ends and the eggs are left alone. */
  readonly lockdownDay: number;
  /** Key of what is to be known of its young. */
  readonly caution?: string;
  readonly incubator: HatchRate;
  /** Left out where no hen should sit on them. */
  readonly hen?: HatchRate & {
    /** Eggs that one hen covers, and how few or many are put under her. */
    readonly eggs: number;
    readonly eggsLow: number;
    readonly eggsHigh: number;
  };
  /** Share of its weight that an egg should have lost by lockdown. */
  readonly weightLoss: Sourced & Ranged & { readonly share: number };
}

export interface IncubatorKind extends Sourced, Ranged {
  readonly id: string;
  readonly name: string;
  readonly default?: boolean;
  readonly airC: number;
  /** Where the thermometer is read. */
  readonly where: string;
}

/** What eggs that a household sets itself are planned by. */
export interface HatchingTable {
  readonly species: readonly HatchSpecies[];
  readonly incubators: readonly IncubatorKind[];
  readonly humidity: Sourced & Ranged & { readonly share: number };
  readonly hatchHumidity: Sourced & Ranged & { readonly share: number };
  readonly turning: Sourced & Ranged & { readonly perDay: number };
  /** Days after setting on which eggs are held against a light. */
  readonly candling: Sourced & { readonly days: readonly number[] };
  readonly keeping: Sourced &
    Ranged & {
      readonly airC: number;
      readonly humidityShare: number;
    };
  readonly storage: Sourced & {
    /** Days an egg is kept without loss. */
    readonly freeDays: number;
    readonly lossPerDay: number;
    /** From this age on eggs are lost much faster than the figure says. */
    readonly steepFromDay: number;
    /** Taken where the household does not say how old its oldest egg is. */
    readonly usualDays: number;
  };
  /** Likeness of the fates of two eggs of a hatch. */
  readonly togetherness: Sourced & { readonly value: number };
  /** Days that a hatch may come early or late. */
  readonly hatchWindow: Sourced & { readonly days: number };
  /** Age to which a hen keeps her chicks warm. */
  readonly withHen: Sourced & Ranged & { readonly days: number };
}
