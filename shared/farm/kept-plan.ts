interface KeptPiece {
  readonly date: string;
  readonly minutes: number;
  readonly personIds: readonly string[];
}

/** Hours of each of some people. */
export interface PartBy {
  readonly hours: number;
  readonly personIds: readonly string[];
}

/** Where one piece of work stood in an earlier plan. */
export interface KeptJob {
  readonly name: string;
  readonly belongsTo?: string;
  readonly latest: string;
  /** Minutes of each that found no place; left out where all of it did. */
  readonly lostMinutes?: number;
  /** Of work of the next days: signature of its row and of people’s hours on them. */
  readonly nearFor?: string;
  /** Bound to its day as animals need it, and what it did not wait for. */
  readonly isBoundToADay?: true;
  readonly doneWithout?: readonly string[];
  /** Hours of it that were told as done on the day of the plan: the pieces are without them. */
  readonly partHours?: number;
  /** Whose hours those were, as the plan had it before they were told. */
  readonly partBy?: readonly PartBy[];
  /** Of a trip for feed: its first day, the seller, left out where nobody named one, and the bags. */
  readonly trip?: {
    readonly on: string;
    readonly from?: string;
    readonly lines?: readonly { readonly name: string; readonly bags: number }[];
  };
  readonly pieces: readonly KeptPiece[];
  /** Where it stood before it was put off: there it goes again when that is taken back. */
  readonly stoodAt?: readonly KeptPiece[];
}

/** An earlier plan of the work, by its key: what the next stays with, and is compared with. */
export interface KeptPlan {
  readonly plannedOn: string;
  readonly jobs: Readonly<Record<string, KeptJob>>;
  /** Signature of all it was made from: made again of the same, a plan stays what it is. */
  readonly madeFor?: string;
  /** Signature of who had hours when: with other people it is looked at anew. */
  readonly madeBy?: string;
}
