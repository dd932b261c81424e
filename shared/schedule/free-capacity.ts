/** Bits of a word that are used: one is left so that sums stay small whole numbers. */
const WORD_BITS = 30;

/**
 * What is left of every resource in every period, several resources to a machine word.
 *
 * Each resource has a field with one spare bit on top. Setting the spare bits and subtracting a
 * demand leaves a spare bit set exactly where the demand fits, so that one subtraction compares
 * all resources of a word.
 */
export class FreeCapacity {
  /** Words per period. */
  readonly words: number;
  private readonly spare: Int32Array;
  private readonly full: Int32Array;
  private readonly free: Int32Array[];
  private used = 0;

  constructor(capacities: readonly number[], periods: number) {
    this.fields = fieldsOf(capacities);
    this.words = this.fields.reduce((most, { word }) => Math.max(most, word + 1), 1);
    this.full = this.packed(capacities);
    this.spare = new Int32Array(this.words);
    for (const { word, shift, bits } of this.fields) this.spare[word]! |= 1 << (shift + bits);
    this.free = Array.from({ length: this.words }, (_, w) =>
      new Int32Array(periods).fill(this.full[w]!),
    );
  }

  private readonly fields: readonly Field[];

  /** Demands in the layout of a word each. */
  packed(demands: readonly number[]): Int32Array {
    const words = new Int32Array(this.words);
    this.fields.forEach(({ word, shift }, k) => (words[word]! |= demands[k]! << shift));
    return words;
  }

  /** Demands of all activities, one after another, {@link words} each. */
  packedAll(demands: readonly (readonly number[])[]): Int32Array {
    const all = new Int32Array(demands.length * this.words);
    demands.forEach((list, i) => all.set(this.packed(list), i * this.words));
    return all;
  }

  reset(): void {
    for (let w = 0; w < this.words; w++) this.free[w]!.fill(this.full[w]!, 0, this.used);
    this.used = 0;
  }

  /** First period from `from` on, at which the demand fits for `length` periods. */
  firstFit(demand: Int32Array, at: number, from: number, length: number): number {
    let start = from;
    for (let w = 0; w < this.words; w++) {
      const need = demand[at + w]!;
      if (need === 0) continue;
      const spare = this.spare[w]!;
      const free = this.free[w]!;
      const before = start;
      let open = start;
      let end = start + length;
      let t = end - 1;
      while (open <= t) {
        if ((((free[t]! | spare) - need) & spare) === spare) {
          t--;
        } else {
          // What lies behind the conflict was found free, so only what is added is looked at.
          start = t + 1;
          open = end;
          end = start + length;
          t = end - 1;
        }
      }
      // A later start may no longer suit the words looked at before.
      if (before < start && 0 < w) w = -1;
    }
    return start;
  }

  /** Whether the demand fits in one period. */
  fits(demand: Int32Array, at: number, period: number): boolean {
    for (let w = 0; w < this.words; w++) {
      const spare = this.spare[w]!;
      if ((((this.free[w]![period]! | spare) - demand[at + w]!) & spare) !== spare) return false;
    }
    return true;
  }

  take(demand: Int32Array, at: number, from: number, length: number): void {
    const to = from + length;
    for (let w = 0; w < this.words; w++) {
      const need = demand[at + w]!;
      const free = this.free[w]!;
      for (let t = from; t < to; t++) free[t]! -= need;
    }
    if (this.used < to) this.used = to;
  }

  /** Undoes a `take` of one period. */
  giveBack(demand: Int32Array, at: number, period: number): void {
    for (let w = 0; w < this.words; w++) this.free[w]![period]! += demand[at + w]!;
  }
}

interface Field {
  readonly word: number;
  readonly shift: number;
  readonly bits: number;
}

function fieldsOf(capacities: readonly number[]): Field[] {
  let word = 0;
  let shift = 0;
  return capacities.map((capacity) => {
    const bits = Math.max(1, 32 - Math.clz32(capacity));
    if (WORD_BITS < bits + 1)
      throw new RangeError(`A capacity of ${capacity} is too large; give at most 2^29 - 1.`);
    if (WORD_BITS < shift + bits + 1) {
      word++;
      shift = 0;
    }
    const field = { word, shift, bits };
    shift += bits + 1;
    return field;
  });
}
