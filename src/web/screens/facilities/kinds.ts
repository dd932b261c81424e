import type { BoundName } from '../../../../shared/farm/bounds.js';
import type { Facility, FacilityKind } from '../../../../shared/farm/facility.js';

interface KindField {
  readonly name: string;
  readonly label: string;
  readonly bound: BoundName;
  readonly optional?: boolean;
}

interface Kind {
  readonly kind: FacilityKind;
  readonly name: string;
  readonly plural: string;
  readonly why: string;
  readonly fields: readonly KindField[];
}

/** What is asked of each kind of facility. The brooder's walls and heat have a form of their own. */
export const KINDS: readonly Kind[] = [
  {
    kind: 'brooder',
    name: 'Brooder',
    plural: 'Brooders',
    why: 'Where chicks are kept warm. Size and walls decide the heat it needs.',
    fields: [
      { name: 'lengthM', label: 'Length', bound: 'lengthM' },
      { name: 'widthM', label: 'Width', bound: 'lengthM' },
      { name: 'heightM', label: 'Height', bound: 'heightM' },
      { name: 'feederCm', label: 'Feeder edge', bound: 'edgeCm', optional: true },
      { name: 'drinkerCm', label: 'Drinker edge', bound: 'edgeCm', optional: true },
    ],
  },
  {
    kind: 'coop',
    name: 'Coop',
    plural: 'Coops',
    why: 'Where layers live after the brooder.',
    fields: [
      { name: 'floorM2', label: 'Floor', bound: 'floorM2' },
      { name: 'roostM', label: 'Roost', bound: 'roostM' },
      { name: 'nestBoxes', label: 'Nest boxes', bound: 'nestBoxes' },
      { name: 'runM2', label: 'Run', bound: 'runM2' },
    ],
  },
  {
    kind: 'field-pen',
    name: 'Field pen',
    plural: 'Field pens',
    why: 'Floorless pens that are moved over grass.',
    fields: [
      { name: 'floorM2', label: 'Ground under one pen', bound: 'floorM2' },
      { name: 'count', label: 'Pens of this size', bound: 'penCount' },
    ],
  },
  {
    kind: 'freezer',
    name: 'Freezer',
    plural: 'Freezers',
    why: 'Where the birds go at the end.',
    fields: [
      { name: 'litres', label: 'Capacity', bound: 'litres' },
      { name: 'usedL', label: 'Already taken', bound: 'usedL' },
    ],
  },
  {
    kind: 'feed-store',
    name: 'Feed store',
    plural: 'Feed stores',
    why: 'How much feed keeps dry decides how often it is fetched.',
    fields: [{ name: 'capacityKg', label: 'Holds', bound: 'capacityKg' }],
  },
  {
    kind: 'circuit',
    name: 'Circuit',
    plural: 'Circuits',
    why: 'The electric circuit that the heat hangs on.',
    fields: [
      { name: 'volts', label: 'Volts', bound: 'volts' },
      { name: 'amps', label: 'Breaker', bound: 'amps' },
      { name: 'otherLoadW', label: 'What else is on it', bound: 'otherLoadW' },
    ],
  },
];

/** A facility while it is being typed: anything may still be missing. */
export type Draft = Partial<Record<string, unknown>> & {
  readonly id?: string;
  readonly kind: FacilityKind;
  readonly name: string;
};

export function emptyDraft(kind: FacilityKind): Draft {
  if (kind !== 'brooder') return { kind, name: '' };
  return {
    kind,
    name: '',
    walls: { layers: [{ materialId: 'plywood', thicknessMm: 12 }] },
    roof: { layers: [{ materialId: 'plywood', thicknessMm: 12 }] },
    standsIn: 'unheated-building',
    heat: { kind: 'lamp', wattsEach: 250, count: 1, thermostat: false },
  };
}

export const draftOf = (facility: Facility): Draft => ({ ...facility });
