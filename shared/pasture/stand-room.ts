/** Numbers of a piece that is asked of memory at once. */
const PIECE = 1 << 15;

/** Where somebody's own numbers are written: those of a piece from one on. */
export interface Place {
  readonly numbers: Float64Array;
  readonly at: number;
}

/** Room for the numbers of all stands of a walk: hundreds of small arrays cost more than their sums. */
export class StandRoom {
  private piece = new Float64Array(0);
  private taken = 0;

  /** A place that nobody else writes to. */
  take(numbers: number): Place {
    if (this.piece.length < this.taken + numbers) {
      this.piece = new Float64Array(Math.max(PIECE, numbers));
      this.taken = 0;
    }
    const at = this.taken;
    this.taken += numbers;
    return { numbers: this.piece, at };
  }
}
