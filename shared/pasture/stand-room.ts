/** Numbers of a piece that is asked of memory at once. */
const PIECE = 1 << 15;

/** Room for the numbers of all stands of a walk: hundreds of small arrays cost more than their sums. */
export class StandRoom {
  private piece = new Float64Array(0);
  private taken = 0;

  /** Numbers that nobody else writes. */
  take(numbers: number): Float64Array {
    if (this.piece.length < this.taken + numbers) {
      this.piece = new Float64Array(Math.max(PIECE, numbers));
      this.taken = 0;
    }
    const from = this.taken;
    this.taken += numbers;
    return this.piece.subarray(from, this.taken);
  }
}
