/** A job is done by people on days: what it takes, when it may be done, what it waits for. */
export interface WorkJob {
  readonly id: string;
  /** Work in all for each of the people who take part. */
  readonly minutes: number;
  /** How many work on it together. */
  readonly peopleNeeded: number;
  /** Workers who can do it. */
  readonly able: readonly number[];
  /**
   * Smallest useful piece when it may be spread over days, and done in part where not all of it
   * fits; left out, it is done in one day or not at all.
   */
  readonly smallestPieceMinutes?: number;
  /** First day on which it may be worked on. */
  readonly fromDay: number;
  /** Last day on which it can be finished without loss. */
  readonly dueDay: number;
  /** Last day on which it can be finished at all. */
  readonly untilDay: number;
  /** 1 for every day that suits it; left out, all do. */
  readonly suits?: Uint8Array;
  /** It waits for fit weather: it leaves no hours of a fit day free. */
  readonly takesFirstDay?: true;
  /** It takes minutes of daylight. */
  readonly needsLight?: boolean;
  readonly waitsFor: readonly WorkWait[];
  /** What a day past the due day costs, and what it costs never to be done. */
  readonly lateCostPerDay: number;
  readonly lostCost: number;
  /** Where it stands whatever else is planned. Its hours are not among the workers’ any more. */
  readonly pinned?: readonly WorkPiece[];
}

/** Starts at least `days` after the day on which the other was finished; 0 is the same day. */
export interface WorkWait {
  readonly job: number;
  readonly days: number;
  /** And at most so many; both are done in one go. */
  readonly atMostDays?: number;
}

/** Minutes of one person on every day, what repeats every day already taken off. */
export interface Worker {
  readonly minutes: Int32Array;
  /** Those of them that are in daylight. */
  readonly lightMinutes: Int32Array;
  /**
   * Minutes by day that they have at the same hours as another, by the other: of those with whom they
   * have fewer than either has.
   */
  readonly together?: ReadonlyMap<number, Int32Array>;
  /** Work that may be spread is theirs before others’, where it is begun as soon so and in time. */
  readonly helpsFirst?: true;
}

/**
 * Hours that a plan leaves free on each day, for what weather and animals push there: work that has
 * time enough goes to a later day instead, and stays so many days clear of its due day.
 */
interface Margin {
  /** Share of the minutes of each on each day. */
  readonly share: number;
  /** Less than this is of no use to anybody: of a short evening nothing is left free. */
  readonly leastMinutes: number;
  readonly spareDays: number;
}

export interface WorkProblem {
  readonly days: number;
  readonly workers: readonly Worker[];
  readonly jobs: readonly WorkJob[];
  /** Left out, days are filled to the last minute. */
  readonly margin?: Margin;
}

export interface WorkPiece {
  readonly day: number;
  readonly minutes: number;
  readonly workers: readonly number[];
}

/** Pieces of each job in order of days; none where it does not fit. */
export type WorkPlacing = readonly (readonly WorkPiece[])[];

/** Day on which a job is finished, -1 when it is not in the plan. */
export const finishDay = (pieces: readonly WorkPiece[]): number => pieces.at(-1)?.day ?? -1;

/** Minutes of a job, of each who takes part, that pieces hold. */
export function placedMinutes(pieces: readonly WorkPiece[]): number {
  let sum = 0;
  for (const { minutes } of pieces) sum += minutes;
  return sum;
}

/**
 * What a job costs with its pieces, which may hold a part of it.
 *
 * What is not done costs its share of `lostCost`, and lateness goes by the last piece that counts:
 * where a late rest would cost more than losing it, it counts as lost. So no piece more ever costs,
 * a part never costs more than nothing nor less than the whole, and a job in one piece costs what
 * its days late do, at most `lostCost`.
 */
export function costOf(job: WorkJob, pieces: readonly WorkPiece[]): number {
  const { lostCost, lateCostPerDay, dueDay, minutes } = job;
  let cost = lostCost;
  let open = minutes;
  for (const piece of pieces) {
    open -= piece.minutes;
    const late = Math.max(0, piece.day - dueDay) * lateCostPerDay;
    cost = Math.min(cost, late + (lostCost * open) / minutes);
  }
  return cost;
}
