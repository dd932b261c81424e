/** Whose calves are asked after. */
export interface CalvingAsked {
  readonly herdId: string;
  /** The one cow; left out of a group. */
  readonly cowId?: string;
  /** Cows of which nothing is told. */
  readonly head: number;
}
