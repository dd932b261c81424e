import type { PlainDate } from '../calendar/plain-date.js';

export type Stand = 'fair' | 'good' | 'excellent';
export const STANDS: readonly Stand[] = ['fair', 'good', 'excellent'];
export type Productivity = 'low' | 'medium' | 'high';
export const PRODUCTIVITIES: readonly Productivity[] = ['low', 'medium', 'high'];

export type ClosedFor = 'hay' | 'wet' | 'reseeding' | 'stockpile' | 'other';

/** Days on which no herd may stand in a paddock. */
export interface ClosedDays {
  readonly from: PlainDate;
  readonly to: PlainDate;
  readonly why: ClosedFor;
}

/** Corners of a paddock, degrees east and north, the first not repeated. */
export type Outline = readonly (readonly [longitudeDeg: number, latitudeDeg: number])[];

/** A piece of grass that is grazed as one. */
export interface Paddock {
  readonly id: string;
  readonly name: string;
  readonly areaM2: number;
  readonly forageId: string;
  readonly stand: Stand;
  readonly productivity: Productivity;
  readonly soilId: string;
  readonly hasWater: boolean;
  readonly hasShade: boolean;
  /** The user's own, where they differ from the forage's. */
  readonly turnInCm?: number;
  readonly residualCm?: number;
  readonly massKgPerHaCm?: number;
  readonly lastGrazedOn?: PlainDate;
  readonly closed: readonly ClosedDays[];
  /** Set when the ground becomes garden: the first harvest. */
  readonly harvestOn?: PlainDate;
  readonly outline?: Outline;
}

/** A height measured while walking the field. */
export interface GrassReading {
  readonly id: string;
  readonly paddockId: string;
  readonly date: PlainDate;
  readonly heightCm: number;
}
