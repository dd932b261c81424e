/**
 * One way for each place, in the order in which the places were come to. A hundred thousand are asked
 * for in one plan: a table of numbers that is begun anew without being cleared takes less than maps.
 */
export class Places {
  private size = FIRST_SLOTS;
  /** By slot: the round in which it was taken last, and which of the places it is. */
  private round = new Int32Array(FIRST_SLOTS);
  private which = new Int32Array(FIRST_SLOTS);
  private now = 0;
  private sought = 0;
  private readonly place: number[] = [];
  private readonly way: number[] = [];
  private count = 0;

  /** Forgets all. */
  begin(): void {
    this.now++;
    this.count = 0;
  }

  /** The slot of a place, taken or not. It holds until the next is taken. */
  slotOf(place: number): number {
    const { round, which, now, size } = this;
    this.sought = place;
    // The high bits: what many places are multiples of shows in the low ones.
    let at = Math.imul(place, SPREAD) >>> (BITS - Math.log2(size));
    for (; round[at] === now; at = (at + 1) % size) if (this.place[which[at]!] === place) break;
    return at;
  }

  /** The way to the place of a slot; -1 where there is none. */
  wayAt = (slot: number): number =>
    this.round[slot] === this.now ? this.way[this.which[slot]!]! : NONE;

  /** Puts down the first way to the place that was sought last, in its slot. */
  take(slot: number, way: number): void {
    this.round[slot] = this.now;
    this.which[slot] = this.count;
    this.place[this.count] = this.sought;
    this.way[this.count] = way;
    this.count++;
    if (this.size < 2 * this.count) this.grow();
  }

  /** Puts down another way to the place of a slot. */
  put(slot: number, way: number): void {
    this.way[this.which[slot]!] = way;
  }

  all = (): number[] => this.way.slice(0, this.count);

  private grow(): void {
    this.size *= 2;
    this.round = new Int32Array(this.size);
    this.which = new Int32Array(this.size);
    this.now = 1;
    for (let k = 0; k < this.count; k++) {
      const at = this.slotOf(this.place[k]!);
      this.round[at] = this.now;
      this.which[at] = k;
    }
  }
}

const NONE = -1;
/** A power of two, as all sizes after it are. */
const FIRST_SLOTS = 1024;
const BITS = 32;
/** Odd and large: neighbors come to lie far apart. */
const SPREAD = 0x9e3779b1;
