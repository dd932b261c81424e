import { BOUNDS, problemsOfBound, type BoundName } from '../../../../shared/farm/bounds.js';
import type {
  Brooder,
  Facility,
  FacilityKind,
  Freezer,
  Layer,
} from '../../../../shared/farm/facility.js';
import { problemsOfFreezer } from '../../../../shared/plan/check-facilities.js';
import type { FieldProblem } from '../../../../shared/problems/field-problem.js';
import type { UnitSystem } from '../../../../shared/units/unit.js';
import { labelsFrom } from '../../fields/field-words.js';

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

/** Inches that boards are sold in, or millimetres. */
const PLYWOOD_MM: Record<UnitSystem, number> = { metric: 12, us: 12.7 };
const FOAM_MM: Record<UnitSystem, number> = { metric: 40, us: 38.1 };

export const newLayer = (materialId: 'plywood' | 'xps', units: UnitSystem): Layer => ({
  materialId,
  thicknessMm: (materialId === 'plywood' ? PLYWOOD_MM : FOAM_MM)[units],
});

/** Labels of the brooder's own form, by the field's path. */
export const BROODER_LABELS = {
  roomC: 'Air of the room',
  standsIn: 'Place',
  circuitId: 'Circuit',
  'heat.kind': 'Source',
  'heat.wattsEach': 'Each heater',
  'heat.count': 'How many heaters',
} as const;

const PARTS: Readonly<Record<string, string>> = { walls: 'walls', roof: 'lid' };

/** The label printed at a field of a facility of this kind. */
export function labelOfFacility(kind: FacilityKind): (field: string) => string | undefined {
  const own = KINDS.find((k) => k.kind === kind)!.fields;
  const labelOf = labelsFrom({
    name: 'Name',
    ...BROODER_LABELS,
    ...Object.fromEntries(own.map(({ name, label }) => [name, label])),
  });
  return (field) => {
    const [part = '', what, index] = field.split('.');
    const named = PARTS[part];
    if (named === undefined) return labelOf(field);
    return what === 'layers' && index !== undefined
      ? `Layer ${Number(index) + 1} of the ${named}`
      : `R-value of the ${named}`;
  };
}

/** What is wrong with a draft, as the service would find it. */
export function problemsOfDraft(draft: Draft): FieldProblem[] {
  const { fields } = KINDS.find((k) => k.kind === draft.kind)!;
  const own = fields.flatMap(({ name, bound, optional }) =>
    checked(name, draft[name], bound, optional),
  );
  if (draft.kind === 'freezer' && own.length === 0) {
    return problemsOfFreezer(draft as Partial<Freezer>);
  }
  if (draft.kind !== 'brooder') return own;
  const brooder = draft as Partial<Brooder>;
  const walls = (['walls', 'roof'] as const).flatMap((part) => [
    ...(brooder[part]?.layers ?? []).flatMap((layer, i) =>
      checked(`${part}.layers.${i}.thicknessMm`, layer.thicknessMm, 'thicknessMm'),
    ),
    ...(brooder[part] && 'rM2KPerW' in brooder[part]
      ? checked(`${part}.rM2KPerW`, brooder[part].rM2KPerW, 'rM2KPerW')
      : []),
  ]);
  return [
    ...own,
    ...walls,
    ...(brooder.standsIn === 'heated-room' ? checked('roomC', brooder.roomC, 'roomC') : []),
    ...checked('heat.wattsEach', brooder.heat?.wattsEach, 'wattsEach'),
    ...checked('heat.count', brooder.heat?.count, 'heaterCount'),
  ];
}

const checked = (
  field: string,
  given: unknown,
  bound: BoundName,
  optional = false,
): FieldProblem[] =>
  given === undefined && !optional
    ? [{ field, code: 'missing', given, fix: BOUNDS[bound].fix }]
    : problemsOfBound(field, given, bound);

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

export function emptyDraft(kind: FacilityKind, units: UnitSystem): Draft {
  if (kind !== 'brooder') return { kind, name: '' };
  return {
    kind,
    name: '',
    walls: { layers: [newLayer('plywood', units)] },
    roof: { layers: [newLayer('plywood', units)] },
    standsIn: 'unheated-building',
    heat: { kind: 'lamp', wattsEach: 250, count: 1, thermostat: false },
  };
}

export const draftOf = (facility: Facility): Draft => ({ ...facility });
