/** One layer of a wall or roof. */
export interface Layer {
  readonly materialId: string;
  readonly thicknessMm: number;
}

/** A wall or roof: layers by material, or the R-value printed on the board. Films are added. */
export interface BuildUp {
  readonly layers?: readonly Layer[];
  readonly rM2KPerW?: number;
}

export type HeatSourceKind = 'lamp' | 'plate' | 'gas';
export type Surroundings = 'outdoors' | 'unheated-building' | 'heated-room';

export interface HeatSource {
  readonly kind: HeatSourceKind;
  readonly wattsEach: number;
  readonly count: number;
  /** Without one, whatever is switched on burns day and night. */
  readonly thermostat: boolean;
}

export interface Brooder {
  readonly kind: 'brooder';
  readonly id: string;
  readonly name: string;
  readonly lengthM: number;
  readonly widthM: number;
  readonly heightM: number;
  readonly walls: BuildUp;
  /** Left out for a brooder without a lid. */
  readonly roof?: BuildUp;
  readonly standsIn: Surroundings;
  /** Air of a heated room. */
  readonly roomC?: number;
  readonly heat: HeatSource;
  readonly circuitId?: string;
  readonly feederCm?: number;
  readonly drinkerCm?: number;
}

export interface Coop {
  readonly kind: 'coop';
  readonly id: string;
  readonly name: string;
  readonly floorM2: number;
  readonly roostM: number;
  readonly nestBoxes: number;
  readonly runM2: number;
}

export interface FieldPen {
  readonly kind: 'field-pen';
  readonly id: string;
  readonly name: string;
  readonly floorM2: number;
  readonly count: number;
}

export interface Freezer {
  readonly kind: 'freezer';
  readonly id: string;
  readonly name: string;
  readonly litres: number;
  /** Litres already taken. */
  readonly usedL: number;
}

export interface FeedStore {
  readonly kind: 'feed-store';
  readonly id: string;
  readonly name: string;
  readonly capacityKg: number;
}

export interface Circuit {
  readonly kind: 'circuit';
  readonly id: string;
  readonly name: string;
  readonly volts: number;
  readonly amps: number;
  /** What else runs on it at the same time. */
  readonly otherLoadW: number;
}

export type Facility = Brooder | Coop | FieldPen | Freezer | FeedStore | Circuit;
export type FacilityKind = Facility['kind'];

export const FACILITY_KINDS: readonly FacilityKind[] = [
  'brooder',
  'coop',
  'field-pen',
  'freezer',
  'feed-store',
  'circuit',
];

/** The facility of a kind with an id, or undefined. */
export function facilityOf<K extends FacilityKind>(
  facilities: readonly Facility[],
  kind: K,
  id: string | undefined,
): Extract<Facility, { kind: K }> | undefined {
  return facilities.find((f) => f.kind === kind && f.id === id) as
    Extract<Facility, { kind: K }> | undefined;
}
