import type { Sourced } from '../explain/formula.js';

/** How meat birds answer to the air they live in, and what a weighing is worth. */
export interface GrowingTable {
  /** Air at which birds of an age grow best; straight lines between, the last one kept. */
  readonly best: Sourced & {
    readonly points: readonly { readonly ageDays: number; readonly bestC: number }[];
  };
  /** Warmer than that: by the square of the degrees up to a bend, evenly from there. */
  readonly heat: Sourced & {
    readonly gainPerC2: number;
    readonly feedPerC2: number;
    readonly bendC: number;
    readonly gainPerCBeyond: number;
    readonly feedPerCBeyond: number;
    readonly least: number;
  };
  /** Colder: more feed from some degrees below the best on, less gain in hard cold. */
  readonly cold: Sourced & {
    readonly gainBelowC: number;
    readonly gainPerC: number;
    readonly feedBelowBestC: number;
    readonly feedPerC: number;
    readonly least: number;
  };
  /** How much birds of a flock differ, and what a household's scale is off by. */
  readonly evenness: Sourced & {
    readonly cv: number;
    readonly scaleShare: number;
    /** Younger weighings say nothing of growth. */
    readonly youngestDays: number;
  };
}
