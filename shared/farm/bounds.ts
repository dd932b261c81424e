import type { FieldProblem } from '../problems/field-problem.js';
import type { Unit } from '../units/unit.js';

/** The values a field may take, and what to do when it does not. */
export interface Bounds {
  readonly min: number;
  readonly max: number;
  readonly unit: Unit;
  readonly integer?: boolean;
  /** What may be typed besides a number and a unit: a compass point, or a per cent sign. */
  readonly typedAs?: 'latitude' | 'longitude' | 'percent';
  readonly fix: string;
}

const within = (min: number, max: number, unit: Unit, fix: string, integer = false): Bounds =>
  integer ? { min, max, unit, fix, integer } : { min, max, unit, fix };

/**
 * Bounds of every number that people type: one list for the service, the page and the terminal.
 * They say what this program plans for, not what is wise; warnings in the plan say that.
 */
export const BOUNDS = {
  latitudeDeg: {
    ...within(-90, 90, 'ratio', 'Give degrees north of the equator, negative for south.'),
    typedAs: 'latitude',
  },
  longitudeDeg: {
    ...within(-180, 180, 'ratio', 'Give degrees east of Greenwich, negative for west.'),
    typedAs: 'longitude',
  },
  elevationM: within(-430, 6000, 'm', 'Give the height above sea level.'),
  airC: within(-60, 60, 'degC', 'Give the air temperature; check °C against °F.'),
  roomC: within(0, 35, 'degC', 'Give the air temperature of the heated room.'),
  lengthM: within(0.2, 60, 'm', 'Measure the inside of the brooder.'),
  heightM: within(0.2, 6, 'm', 'Measure from the floor to the lid or roof.'),
  rM2KPerW: within(0, 20, 'm2KPerW', 'Take the R-value from the label of the board.'),
  thicknessMm: within(0.1, 1000, 'mm', 'Measure the thickness of the layer.'),
  wattsEach: within(1, 60000, 'W', 'Read the watts on the lamp, plate or gas heater.'),
  heaterCount: within(0, 100, 'count', 'Count the lamps, plates or heaters.', true),
  edgeCm: within(0, 100000, 'cm', 'Add up both sides of every trough or the rim of every pan.'),
  floorM2: within(0.1, 10000, 'm2', 'Measure the floor: length times width.'),
  runM2: within(0, 100000, 'm2', 'Measure the run; 0 when there is none.'),
  roostM: within(0, 1000, 'm', 'Add up the lengths of all roosts.'),
  nestBoxes: within(0, 1000, 'count', 'Count the nest boxes.', true),
  penCount: within(1, 500, 'count', 'Count the pens of this size.', true),
  litres: within(1, 20000, 'freezerL', 'Read the capacity on the freezer’s plate.'),
  usedL: within(0, 20000, 'freezerL', 'Estimate the room already taken.'),
  capacityKg: within(1, 1e6, 'kg', 'Estimate how much feed can be kept dry.'),
  volts: within(6, 480, 'V', 'Read the volts of the circuit.'),
  amps: within(1, 200, 'A', 'Read the amps on the breaker.'),
  otherLoadW: within(0, 100000, 'W', 'Add up the watts of everything else on the circuit.'),
  wantedBirds: within(1, 5000, 'count', 'Plan up to 5,000 birds; split a larger flock.', true),
  orderedBirds: within(1, 6000, 'count', 'Give the birds in the box.', true),
  hatchToArrivalDays: within(0, 3, 'day', 'Chicks must arrive within 72 hours of hatch.', true),
  weightFactor: within(
    0.3,
    1.6,
    'ratio',
    'Give your birds’ weight over the table’s, about 0.7 to 1.2.',
  ),
  feedFactor: within(0.5, 2, 'ratio', 'Give your birds’ feed over the table’s, about 0.9 to 1.3.'),
  wastePercent: {
    ...within(0, 50, 'ratio', 'Give the per cent of feed spilled, 0 to 50.'),
    typedAs: 'percent',
  },
  lossPercent: {
    ...within(0, 90, 'ratio', 'Give the per cent of birds lost, 0 to 90.'),
    typedAs: 'percent',
  },
  leaveAgeDays: within(
    28,
    365,
    'day',
    'Give days from hatch; most meat birds leave at 42 to 112.',
    true,
  ),
  targetLiveKg: within(0.4, 8, 'kg', 'Give the mean live weight wanted.'),
  dressingShare: within(0.4, 0.9, 'share', 'Give the dressed share of live weight, 40 to 90 %.'),
  movesPerDay: within(0.1, 4, 'ratio', 'Give pen moves a day: 1 is daily, 0.5 every second day.'),
  withdrawalDays: within(0, 60, 'day', 'Take the days from the label of the bag.', true),
  weekday: within(1, 7, 'count', 'Give 1 for Monday to 7 for Sunday.', true),
  paddockM2: within(50, 1e7, 'ha', 'Give the grazed area, without lanes and woods.'),
  manureKgPerDay: within(0, 1000, 'kg', 'Give the nutrient the flock drops in a day.'),
  parts: within(2, 20, 'count', 'Split a paddock into 2 to 20 parts.', true),
  heightCm: within(0, 250, 'cm', 'Lay the hand flat on the sward and read the height under it.'),
  turnInCm: within(3, 200, 'cm', 'Give the height at which the herd goes in.'),
  residualCm: within(1, 150, 'cm', 'Give the height that must be left.'),
  massKgPerHaCm: within(
    20,
    500,
    'kgPerHaCm',
    'Give the dry matter in a centimetre of height, as cut and weighed.',
  ),
  head: within(1, 2000, 'count', 'Count the animals of this class.', true),
  cattleKg: within(30, 1500, 'kg', 'Give the weight of one; owners guess about 70 kg too low.'),
  gainKgPerDay: within(-1, 2.5, 'kg', 'Give the gain of one in a day.'),
  milkKgPerDay: within(0, 70, 'kg', 'Give the milk of one cow in a day.'),
  stayDays: within(1, 14, 'day', 'Give days: three keep the herd off the regrowth.', true),
  followDays: within(1, 30, 'day', 'Give the days the birds follow behind the herd.', true),
  rainShare: within(0, 3, 'share', 'Give rain as a share of the usual, 0 to 300 %.'),
  restFactor: within(0.3, 3, 'ratio', 'Give rest over the table’s: 1 is the table’s own.'),
  hayKg: within(0, 1e7, 'kg', 'Give the hay in store, as it lies there.'),
  jobHours: within(0.05, 500, 'h', 'Give the work of each person who takes part.'),
  reckonedHours: within(0, 10_000, 'h', 'Give the hours as the plan of work reckoned them.'),
  unitsOfWork: within(0, 1000, 'count', 'Count the beds, trees, hives or lengths of the set.'),
  dayHours: within(0, 24, 'h', 'Give the hours for the farm on that day of the week.'),
  clockH: within(0, 23.99, 'h', 'Give the hour of the clock: 7.5 is half past seven.'),
  peopleAtOnce: within(1, 20, 'count', 'Give how many are needed at once.', true),
  waitDays: within(0, 120, 'day', 'Give the days to wait after the other job.', true),
  refillH: within(0.1, 48, 'h', 'Give the hours the trough needs to refill for a day’s water.'),
  rainMm: within(0, 1500, 'rainMm', 'Give the rain of the month, snow melted.'),
  skipped: within(0, 1e7, 'count', 'Give how many to leave out at the start.', true),
  pageSize: within(1, 1000, 'count', 'Give how many are wanted at once.', true),
  version: within(1, 1e9, 'count', 'Send the version as it came with the row.', true),
  bagKg: within(1, 1500, 'kg', 'Read the weight of one bag.'),
} satisfies Record<string, Bounds>;

export type BoundName = keyof typeof BOUNDS;

/** What is wrong with a number that has bounds; nothing when it is within them, or left out. */
export function problemsOfBound(field: string, given: unknown, bound: BoundName): FieldProblem[] {
  if (given === undefined) return [];
  const { min, max, unit, fix, integer } = BOUNDS[bound] as Bounds;
  if (typeof given !== 'number' || !Number.isFinite(given)) {
    return [{ field, code: 'not-a-number', given, fix }];
  }
  const whole = !integer || Number.isInteger(given);
  return min <= given && given <= max && whole
    ? []
    : [{ field, code: 'out-of-bounds', given, min, max, unit: whole ? unit : 'whole', fix }];
}

/** Longest span over which the arrival finder looks for weeks, days. */
export const MAX_FINDER_DAYS = 732;
export const MAX_LIST = 200;
