import type { Place, StandRoom } from './stand-room.js';
import { growOn, massOf, takeOff, type Sward } from './sward.js';
import type { GrassState } from './sward-day.js';

/** Numbers of a day in a row: ten of its state, and whether it is bitten. */
const NUMBERS = 11;
const GROWN = 8;
const LOST = 9;
const BITTEN = 10;
/** Days that there is room for at first; it doubles. */
const ROOM_DAYS = 32;

/** A herd that grazes a stand every day from one on. */
export interface GrazedBy {
  readonly needKg: Float64Array;
  readonly harvestShare: number;
}

/**
 * How a stand goes on, left alone or grazed by a herd, worked out once for all looks ahead: what
 * happens to it after (a herd comes or goes, it is mown) begins another one, which is kept as well.
 * Its days are packed into numbers, the first what stood at the beginning: all that stands by day
 * side by side, as it is asked for day after day, and then a row for each.
 */
export class StandAhead {
  private readonly state: GrassState;
  private place: Place;
  /** Days that there is room for. */
  private roomDays = ROOM_DAYS;
  /** Day after the last that is worked out. */
  private until: number;
  private after: Map<number, StandAhead> | undefined;

  /**
   * @param room where its days are written
   * @param start what stands before the growth of the first day; its own from now on. Of a stand that
   *   is grazed, what stands on its first day, grown and not yet grazed
   */
  constructor(
    private readonly room: StandRoom,
    private readonly sward: Sward,
    start: GrassState,
    private readonly from: number,
    private readonly grazedBy?: GrazedBy,
  ) {
    this.place = room.take(this.roomDays * (1 + NUMBERS));
    this.state = start;
    this.until = from - 1;
    this.pack();
    if (grazedBy) this.pack();
  }

  get isOfHerd(): boolean {
    return this.grazedBy !== undefined;
  }

  /** What stands after a day's growth, kg/ha, before that day's grazing. */
  massAfter(day: number): number {
    while (this.until <= day) this.goOn();
    const { numbers, at } = this.place;
    return numbers[at + day - this.from + 1]!;
  }

  /** What a day grew, and what of it and of all that stood was lost, kg/ha. */
  grownOn(day: number): { grownKg: number; lostKg: number } {
    const row = this.rowOf(day);
    const { numbers } = this.place;
    return { grownKg: numbers[row + GROWN]!, lostKg: numbers[row + LOST]! };
  }

  /** All that stands after a day's growth. */
  stateAfter(day: number): GrassState {
    const row = this.rowOf(day);
    const { numbers: rows } = this.place;
    return {
      leafKg: rows[row]!,
      stemKg: rows[row + 1]!,
      deadLeafKg: rows[row + 2]!,
      deadStemKg: rows[row + 3]!,
      leafAge: rows[row + 4]!,
      stemAge: rows[row + 5]!,
      deadLeafAge: rows[row + 6]!,
      deadStemAge: rows[row + 7]!,
      isBitten: rows[row + BITTEN] === 1,
      grownKg: rows[row + GROWN]!,
      lostKg: rows[row + LOST]!,
    };
  }

  /** What a herd takes off on a day of the stand that it grazes, kg/ha; nothing below the residual. */
  removedOn(day: number): number {
    const { needKg, harvestShare } = this.grazedBy!;
    const { areaHa, residualKgPerHa } = this.sward;
    const above = Math.max(0, this.massAfter(day) - residualKgPerHa);
    return Math.min(above, needKg[day]! / areaHa / harvestShare);
  }

  /** The same stand with something done to it, worked out when it is first asked for. */
  then(what: number, begin: () => StandAhead): StandAhead {
    this.after ??= new Map();
    let after = this.after.get(what);
    if (!after) this.after.set(what, (after = begin()));
    return after;
  }

  private rowOf(day: number): number {
    while (this.until <= day) this.goOn();
    return this.rowAt(day - this.from + 1);
  }

  private rowAt(index: number): number {
    return this.place.at + this.roomDays + index * NUMBERS;
  }

  private goOn(): void {
    const { state, until, grazedBy, sward } = this;
    if (grazedBy) takeOff(state, this.removedOn(until - 1), sward.residualKgPerHa);
    growOn(sward, state, until);
    this.pack();
  }

  private pack(): void {
    const { state } = this;
    const index = this.until - this.from + 1;
    if (index === this.roomDays) this.makeRoom();
    const { numbers: rows, at } = this.place;
    const row = this.rowAt(index);
    rows[at + index] = massOf(state);
    rows[row] = state.leafKg;
    rows[row + 1] = state.stemKg;
    rows[row + 2] = state.deadLeafKg;
    rows[row + 3] = state.deadStemKg;
    rows[row + 4] = state.leafAge;
    rows[row + 5] = state.stemAge;
    rows[row + 6] = state.deadLeafAge;
    rows[row + 7] = state.deadStemAge;
    rows[row + GROWN] = state.grownKg;
    rows[row + LOST] = state.lostKg;
    rows[row + BITTEN] = state.isBitten ? 1 : 0;
    this.until++;
  }

  private makeRoom(): void {
    const { numbers, at } = this.place;
    const rows = numbers.subarray(this.rowAt(0), this.rowAt(this.roomDays));
    const masses = numbers.subarray(at, at + this.roomDays);
    this.roomDays *= 2;
    this.place = this.room.take(this.roomDays * (1 + NUMBERS));
    this.place.numbers.set(masses, this.place.at);
    this.place.numbers.set(rows, this.rowAt(0));
  }
}
