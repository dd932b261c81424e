import type { PlainDate } from '../calendar/plain-date.js';

export interface PhoneNumber {
  readonly who: string;
  readonly number: string;
}

export interface LeftThing {
  readonly what: string;
  readonly where: string;
}

/** Days on which one person does what cannot wait, because others are away. */
export interface Handover {
  readonly id: string;
  /** The caretaker: one of the household, or somebody who comes in. */
  readonly personId?: string;
  readonly caretaker?: string;
  readonly from: PlainDate;
  readonly to: PlainDate;
  readonly hoursPerDay: number;
  /** Batches and herds in the order in which one walks past them; others follow. */
  readonly walkingOrder: readonly string[];
  readonly phones: readonly PhoneNumber[];
  readonly left: readonly LeftThing[];
  readonly notes?: string;
}
