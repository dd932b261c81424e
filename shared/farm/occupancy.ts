import type { PlainDate } from '../calendar/plain-date.js';

/** What one batch holds on to over which days; enough to see whether two batches collide. */
export interface Occupancy {
  readonly batchName: string;
  readonly facilityId: string;
  readonly from: PlainDate;
  readonly to: PlainDate;
  /** Of a flock of hens in a coop, which others may share. */
  readonly share?: CoopShare;
}

/** What a flock takes of the floor of its coop. */
export interface CoopShare {
  readonly birds: number;
  readonly floorM2: number;
  readonly ofM2: number;
}
