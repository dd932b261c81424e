import { problemsOfRow } from '../../../../shared/farm/check-row.js';
import {
  buildUpFields,
  facilityFields,
  type Brooder,
  type Facility,
  type FacilityKind,
  type Layer,
} from '../../../../shared/farm/facility.js';
import type { Fields, NumberField } from '../../../../shared/farm/field.js';
import type { FieldProblem } from '../../../../shared/problems/field-problem.js';
import type { UnitSystem } from '../../../../shared/units/unit.js';

interface Kind {
  readonly kind: FacilityKind;
  readonly name: string;
  readonly plural: string;
  readonly why: string;
  /** The numbers that its form asks for first. */
  readonly sizes: readonly string[];
}

/** The numbers that the form of a kind asks for first, by name. */
export const sizesOf = ({ kind, sizes }: Kind): readonly (readonly [string, NumberField])[] =>
  sizes.map((name) => [name, (facilityFields[kind].fields as Fields)[name] as NumberField]);

/** Inches that boards are sold in, or millimeters. */
const PLYWOOD_MM: Record<UnitSystem, number> = { metric: 12, us: 12.7 };
const FOAM_MM: Record<UnitSystem, number> = { metric: 40, us: 38.1 };

export const newLayer = (materialId: 'plywood' | 'xps', units: UnitSystem): Layer => ({
  materialId,
  thicknessMm: (materialId === 'plywood' ? PLYWOOD_MM : FOAM_MM)[units],
});

/** What is wrong with a draft, as the service would find it. */
export function problemsOfDraft(draft: Draft): FieldProblem[] {
  const problems = problemsOfRow(facilityFields[draft.kind], draft);
  if (draft.kind !== 'brooder') return problems;
  const brooder = draft as Partial<Brooder>;
  return [
    ...problems,
    // Chosen and emptied, an R-value is asked for; without one there would be no wall at all.
    ...(['walls', 'roof'] as const).flatMap((part): FieldProblem[] =>
      brooder[part] && 'rM2KPerW' in brooder[part] && brooder[part].rM2KPerW === undefined
        ? [
            {
              field: `${part}.rM2KPerW`,
              code: 'missing',
              given: undefined,
              fix: buildUpFields.fields.rM2KPerW.bounds.fix,
            },
          ]
        : [],
    ),
  ];
}

/** What is asked of each kind of facility. The brooder's walls and heat have a form of their own. */
export const KINDS: readonly Kind[] = [
  {
    kind: 'brooder',
    name: 'Brooder',
    plural: 'Brooders',
    why: 'Where chicks are kept warm. Size and walls decide the heat it needs.',
    sizes: [
      'lengthM',
      'widthM',
      'heightM',
      'feederCm',
      'drinkerCm',
      'drinkersHoldL',
      'feedersHoldKg',
    ],
  },
  {
    kind: 'coop',
    name: 'Coop',
    plural: 'Coops',
    why: 'Where layers live after the brooder.',
    sizes: ['floorM2', 'roostM', 'nestBoxes', 'runM2', 'lightH', 'drinkersHoldL', 'feedersHoldKg'],
  },
  {
    kind: 'field-pen',
    name: 'Field pen',
    plural: 'Field pens',
    why: 'Floorless pens that are moved over grass.',
    sizes: ['floorM2', 'count', 'drinkersHoldL', 'feedersHoldKg'],
  },
  {
    kind: 'freezer',
    name: 'Freezer',
    plural: 'Freezers',
    why: 'Where the birds go at the end.',
    sizes: ['liters', 'usedL', 'birdsEatenPerWeek'],
  },
  {
    kind: 'feed-store',
    name: 'Feed store',
    plural: 'Feed stores',
    why: 'How much feed keeps dry decides how often it is fetched.',
    sizes: ['capacityKg'],
  },
  {
    kind: 'circuit',
    name: 'Circuit',
    plural: 'Circuits',
    why: 'The electric circuit that feeds the heat.',
    sizes: ['volts', 'amps', 'otherLoadW'],
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
