import type { PlainDate } from '../../calendar/plain-date.js';

/** The paddock in which a herd was told to be. */
export interface StillIn {
  readonly herdId: string;
  readonly paddockId: string;
  readonly paddock: string;
}

/** A move that was planned: where to, or off grass, and on which day. */
export interface MoveMeant {
  readonly herdId: string;
  readonly paddockId?: string;
  readonly on: PlainDate;
}
