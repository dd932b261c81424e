import { within, whole } from './bounds.js';
import {
  choice,
  nested,
  number,
  oneOf,
  optional,
  row,
  rows,
  text,
  yesNo,
  type RowOf,
  type RowRule,
  type SavedRowOf,
} from './field.js';
import { ASSUMED, id, OWN } from './words.js';

/** One layer of a wall or roof. */
export const layerFields = row('Layer', {
  materialId: id('Material'),
  thicknessMm: number('Thickness', within(0.1, 1000, 'mm', 'Measure the thickness of the layer.')),
});
export type Layer = RowOf<typeof layerFields>;

/** A wall or roof: layers by material, or the R-value printed on the board. Films are added. */
export const buildUpFields = row('BuildUp', {
  layers: optional(rows('Layers', layerFields, 12, 'layer')),
  rM2KPerW: optional(
    number('R-value', within(0, 20, 'm2KPerW', 'Take the R-value from the label of the board.')),
  ),
});
export type BuildUp = RowOf<typeof buildUpFields>;

export const heatSourceFields = row('HeatSource', {
  kind: choice('Source', ['lamp', 'plate', 'gas']),
  wattsEach: number(
    'Each heater',
    within(1, 60000, 'W', 'Read the watts on the lamp, plate or gas heater.'),
  ),
  count: number('How many heaters', whole(0, 100, 'count', 'Count the lamps, plates or heaters.')),
  /** Without one, whatever is switched on burns day and night. */
  thermostat: yesNo('A thermostat switches it'),
  /** Of gas: a radiant brooder or a hover warms what is below it; left out, it is one. */
  warms: optional(choice('The gas heater warms', ['spot', 'room'])),
});
export type HeatSource = RowOf<typeof heatSourceFields>;
export type HeatSourceKind = HeatSource['kind'];

const LENGTH = within(0.2, 60, 'm', 'Measure the inside of the brooder.');
const EDGE = within(0, 100000, 'cm', 'Add up both sides of every trough or the rim of every pan.');
const HOLDS = {
  /** All of them together, full; left out, what is usual for so many birds. */
  drinkersHoldL: optional(
    number(
      'Drinkers hold',
      within(0.2, 5000, 'L', 'Add up what all drinkers hold when they are full.'),
    ),
  ),
  feedersHoldKg: optional(
    number(
      'Feeders hold',
      within(0.1, 5000, 'kg', 'Add up the feed that all feeders hold when they are full.'),
    ),
  ),
} as const;
const FLOOR = within(0.1, 10000, 'm2', 'Measure the floor: length times width.');

const ROOM_OF_BROODER: RowRule<{ readonly standsIn: string; readonly roomC?: number }> = {
  name: 'heated-room-has-air',
  of: ['standsIn', 'roomC'],
  find: ({ standsIn, roomC }, at) =>
    standsIn === 'heated-room' && roomC === undefined
      ? [
          {
            field: `${at}roomC`,
            code: 'missing',
            given: undefined,
            fix: 'Give the air temperature of the heated room.',
          },
        ]
      : [],
};

export const brooderFields = row(
  'Brooder',
  {
    ...OWN,
    ...ASSUMED,
    name: text('Name'),
    kind: choice('Kind', ['brooder']),
    lengthM: number('Length', LENGTH),
    widthM: number('Width', LENGTH),
    heightM: number('Height', within(0.2, 6, 'm', 'Measure from the floor to the lid or roof.')),
    walls: nested('Walls', buildUpFields, 'walls'),
    /** Left out for a brooder without a lid: its top is an opening. */
    roof: optional(nested('Lid', buildUpFields, 'lid')),
    standsIn: choice('Place', ['outdoors', 'unheated-building', 'heated-room']),
    /** Air of a heated room. */
    roomC: optional(
      number(
        'Air of the room',
        within(0, 35, 'degC', 'Give the air temperature of the heated room.'),
      ),
    ),
    heat: nested('Heat', heatSourceFields),
    /** Least distance from lamp to bedding by the lamp's maker, where that is more than usual. */
    lampClearanceCm: optional(
      number(
        'Lamp to bedding, at least',
        within(45.7, 300, 'cm', 'Read it on the lamp’s label; never under 46 cm (18 in).'),
      ),
    ),
    /** A board can shut off a part of it in the first weeks. */
    closesOff: optional(yesNo('A part of it can be closed off')),
    circuitId: optional(id('Circuit')),
    feederCm: optional(number('Feeder length', EDGE)),
    drinkerCm: optional(number('Drinker length', EDGE)),
    ...HOLDS,
  },
  [ROOM_OF_BROODER],
);
export type Brooder = SavedRowOf<typeof brooderFields>;
export type Surroundings = Brooder['standsIn'];

export const coopFields = row('Coop', {
  ...OWN,
  ...ASSUMED,
  name: text('Name'),
  kind: choice('Kind', ['coop']),
  floorM2: number('Floor', FLOOR),
  roostM: number('Roost', within(0, 1000, 'm', 'Add up the lengths of all roosts.')),
  nestBoxes: number('Nest boxes', whole(0, 1000, 'count', 'Count the nest boxes.')),
  runM2: number('Run', within(0, 100000, 'm2', 'Measure the run; 0 when there is none.')),
  ...HOLDS,
  /** Hours of light a day, sun and lamp together; left out, there is no lamp. */
  lightH: optional(
    number(
      'Light with a lamp',
      within(8, 18, 'h', 'Give the hours of light a day that the lamp makes up, such as 15.'),
    ),
  ),
});
export type Coop = SavedRowOf<typeof coopFields>;

export const fieldPenFields = row('FieldPen', {
  ...OWN,
  ...ASSUMED,
  name: text('Name'),
  kind: choice('Kind', ['field-pen']),
  floorM2: number('Ground under one pen', FLOOR),
  count: number('Pens of this size', whole(1, 500, 'count', 'Count the pens of this size.')),
  /** Of all pens of this size together. */
  ...HOLDS,
  /** Closed: roof and windward side keep rain and wind off. Left out, it is not known. */
  sides: optional(choice('Wind and rain', ['closed', 'open'])),
});
export type FieldPen = SavedRowOf<typeof fieldPenFields>;

const HELD_BY_FREEZER: RowRule<{ readonly liters: number; readonly usedL: number }> = {
  name: 'no-more-taken-than-held',
  of: ['usedL', 'liters'],
  find: ({ liters, usedL }, at) =>
    usedL <= liters
      ? []
      : [
          {
            field: `${at}usedL`,
            code: 'out-of-bounds',
            given: usedL,
            max: liters,
            unit: 'L',
            boundBy: `${at}liters`,
            fix: 'No more can be taken than the freezer holds: correct one of the two.',
          },
        ],
};

export const freezerFields = row(
  'Freezer',
  {
    ...OWN,
    ...ASSUMED,
    name: text('Name'),
    kind: choice('Kind', ['freezer']),
    liters: number(
      'Capacity',
      within(1, 20000, 'freezerL', 'Read the capacity on the freezer’s plate.'),
    ),
    /** Liters taken by other food than the birds planned here. */
    usedL: number(
      'Already taken',
      within(0, 20000, 'freezerL', 'Estimate the room already taken.'),
    ),
    /** Birds of all batches that the household eats out of it; left out, a batch lasts a year. */
    birdsEatenPerWeek: optional(
      number(
        'Birds eaten a week',
        within(0.1, 100, 'ratio', 'Give whole birds a week: 0.5 is one every two weeks.'),
      ),
    ),
  },
  [HELD_BY_FREEZER],
);
export type Freezer = SavedRowOf<typeof freezerFields>;

export const feedStoreFields = row('FeedStore', {
  ...OWN,
  ...ASSUMED,
  name: text('Name'),
  kind: choice('Kind', ['feed-store']),
  capacityKg: number('Holds', within(1, 1e6, 'kg', 'Estimate how much feed can be kept dry.')),
});
export type FeedStore = SavedRowOf<typeof feedStoreFields>;

export const circuitFields = row('Circuit', {
  ...OWN,
  ...ASSUMED,
  name: text('Name'),
  kind: choice('Kind', ['circuit']),
  volts: number('Volts', within(6, 480, 'V', 'Read the volts of the circuit.')),
  amps: number('Breaker', within(1, 200, 'A', 'Read the amps on the breaker.')),
  /** What else runs on it at the same time. */
  otherLoadW: number(
    'What else is on it',
    within(0, 100000, 'W', 'Add up the watts of everything else on the circuit.'),
  ),
});
export type Circuit = SavedRowOf<typeof circuitFields>;

/** What is described of each kind of facility. */
export const facilityFields = {
  brooder: brooderFields,
  coop: coopFields,
  'field-pen': fieldPenFields,
  freezer: freezerFields,
  'feed-store': feedStoreFields,
  circuit: circuitFields,
} as const;

/** A facility of any kind, told apart by its `kind`. */
export const anyFacility = oneOf('Facility', 'kind', facilityFields);

export type Facility = Brooder | Coop | FieldPen | Freezer | FeedStore | Circuit;
export type FacilityKind = Facility['kind'];

/** The facility of a kind with an id, or undefined. */
export function facilityOf<K extends FacilityKind>(
  facilities: readonly Facility[],
  kind: K,
  id: string | undefined,
): Extract<Facility, { kind: K }> | undefined {
  return facilities.find((f) => f.kind === kind && f.id === id) as
    | Extract<Facility, { kind: K }>
    | undefined;
}
