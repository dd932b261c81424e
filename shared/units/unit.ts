import {
  CM_PER_IN,
  HA_PER_ACRE,
  KG_PER_LB,
  L_PER_FT3,
  L_PER_US_GAL,
  M2_PER_FT2,
  M_PER_FT,
  R_SI_PER_R_IP,
} from './convert.js';

/** What a farm reads and types. Stored values never change with it. */
export type UnitSystem = 'metric' | 'us';

/**
 * What a value is measured in: SI, or a plain count. A few say how an SI value is shown as well;
 * `storedUnit` is the SI unit below.
 */
export type Unit =
  | 'kg'
  | 'g'
  | 'm2'
  | 'birdM2'
  | 'm'
  | 'cm'
  | 'mm'
  | 'degC'
  | 'incubatorC'
  | 'K'
  | 'W'
  | 'kWh'
  | 'MJ'
  | 'J'
  | 'L'
  | 'LPerH'
  | 'freezerL'
  | 'mL'
  | 'm3'
  | 'm3PerH'
  | 'WPerM2K'
  | 'm2KPerW'
  | 'WPerK'
  | 'kgPerM2'
  | 'kgPerHa'
  | 'kgPerHaCm'
  | 'ha'
  | 'perHa'
  | 'rainMm'
  | 'km'
  | 'kgPerL'
  | 'MJPerL'
  | 'kcal'
  | 'kcalPerKg'
  | 'percent'
  | 'day'
  | 'h'
  | 'count'
  | 'eggs'
  | 'bags'
  | 'bales'
  | 'share'
  | 'chance'
  | 'ratio'
  | 'A'
  | 'V'
  | 'money'
  | 'moneyPerKg'
  | 'moneyPerL'
  | 'date'
  | 'text';

/** How one unit is shown in one system: shown = stored × factor + offset. */
export interface Shown {
  readonly label: string;
  readonly factor: number;
  readonly offset: number;
  readonly digits: number;
}

const as = (label: string, factor = 1, digits = 1, offset = 0): Shown => ({
  label,
  factor,
  offset,
  digits,
});
const both = (label: string, digits: number): Record<UnitSystem, Shown> => ({
  metric: as(label, 1, digits),
  us: as(label, 1, digits),
});

/** How each stored unit is shown in each system. The only place where people's units live. */
export const SHOWN: Record<Unit, Record<UnitSystem, Shown>> = {
  kg: { metric: as('kg', 1, 2), us: as('lb', 1 / KG_PER_LB, 2) },
  g: { metric: as('g', 1, 0), us: as('oz', 1 / (KG_PER_LB * 62.5), 1) },
  m2: { metric: as('m²', 1, 2), us: as('ft²', 1 / M2_PER_FT2, 1) },
  // The floor of one chick is told by quarters of a square foot.
  birdM2: { metric: as('m²', 1, 3), us: as('ft²', 1 / M2_PER_FT2, 2) },
  m: { metric: as('m', 1, 2), us: as('ft', 1 / M_PER_FT, 2) },
  cm: { metric: as('cm', 1, 1), us: as('in', 1 / CM_PER_IN, 1) },
  mm: { metric: as('mm', 1, 0), us: as('in', 1 / (CM_PER_IN * 10), 2) },
  degC: { metric: as('°C', 1, 1), us: as('°F', 1.8, 0, 32) },
  // Half a degree Fahrenheit decides over a hatch.
  incubatorC: { metric: as('°C', 1, 1), us: as('°F', 1.8, 1, 32) },
  K: { metric: as('°C', 1, 1), us: as('°F', 1.8, 1) },
  W: both('W', 0),
  kWh: both('kWh', 1),
  MJ: both('MJ', 1),
  J: both('J', 1),
  L: { metric: as('L', 1, 1), us: as('gal', 1 / L_PER_US_GAL, 1) },
  LPerH: { metric: as('L/h', 1, 0), us: as('gal/h', 1 / L_PER_US_GAL, 0) },
  // Freezers are sold by the liter and by the cubic foot, never by the gallon.
  freezerL: { metric: as('L', 1, 0), us: as('ft³', 1 / L_PER_FT3, 1) },
  mL: { metric: as('ml', 1, 0), us: as('fl oz', 128 / (L_PER_US_GAL * 1000), 1) },
  m3: { metric: as('m³', 1, 2), us: as('ft³', 1000 / L_PER_FT3, 1) },
  m3PerH: { metric: as('m³/h', 1, 1), us: as('cfm', 1000 / (L_PER_FT3 * 60), 1) },
  WPerM2K: { metric: as('W/(m²·K)', 1, 2), us: as('BTU/(h·ft²·°F)', R_SI_PER_R_IP, 3) },
  m2KPerW: { metric: as('m²·K/W', 1, 2), us: as('ft²·h·°F/BTU', 1 / R_SI_PER_R_IP, 2) },
  WPerK: { metric: as('W/K', 1, 2), us: as('W/°F', 5 / 9, 2) },
  kgPerM2: { metric: as('kg/m²', 1, 1), us: as('lb/ft²', M2_PER_FT2 / KG_PER_LB, 2) },
  kgPerHa: { metric: as('kg/ha', 1, 0), us: as('lb/acre', HA_PER_ACRE / KG_PER_LB, 0) },
  kgPerHaCm: {
    metric: as('kg/ha·cm', 1, 0),
    us: as('lb/acre·in', (HA_PER_ACRE / KG_PER_LB) * CM_PER_IN, 0),
  },
  ha: { metric: as('ha', 1e-4, 2), us: as('acres', 1e-4 / HA_PER_ACRE, 2) },
  perHa: { metric: as('a ha', 1, 0), us: as('an acre', HA_PER_ACRE, 0) },
  rainMm: { metric: as('mm', 1, 0), us: as('in', 1 / (CM_PER_IN * 10), 1) },
  km: { metric: as('km', 1, 2), us: as('miles', 1 / 1.609344, 2) },
  kgPerL: { metric: as('kg/L', 1, 2), us: as('lb/ft³', L_PER_FT3 / KG_PER_LB, 0) },
  MJPerL: { metric: as('MJ/L', 1, 2), us: as('MJ/gal', L_PER_US_GAL, 1) },
  kcal: both('kcal', 0),
  kcalPerKg: { metric: as('kcal/kg', 1, 0), us: as('kcal/lb', KG_PER_LB, 0) },
  day: both('days', 0),
  h: both('h', 2),
  count: both('', 0),
  eggs: both('eggs', 0),
  bags: both('bags', 0),
  bales: both('bales', 0),
  share: both('%', 1),
  // What feed holds of an amino acid: hundredths of a percent decide.
  percent: both('%', 2),
  chance: both('', 2),
  ratio: both('', 2),
  A: both('A', 1),
  V: both('V', 0),
  money: both('', 2),
  moneyPerKg: { metric: as('a kg', 1, 2), us: as('a lb', KG_PER_LB, 2) },
  moneyPerL: { metric: as('a liter', 1, 2), us: as('a gallon', L_PER_US_GAL, 2) },
  date: both('', 0),
  text: both('', 0),
};

/** Stored value → the number a farm with this system reads. Shares are read as percent. */
export function toShown(value: number, unit: Unit, system: UnitSystem): number {
  if (unit === 'share') return value * 100;
  const { factor, offset } = SHOWN[unit][system];
  return value * factor + offset;
}

/** The number a farm typed → stored value. The inverse of `toShown`. */
export function fromShown(shown: number, unit: Unit, system: UnitSystem): number {
  if (unit === 'share') return shown / 100;
  const { factor, offset } = SHOWN[unit][system];
  return (shown - offset) / factor;
}

/** Units that only say how a stored value is shown, with the SI unit it is stored in. */
const STORED: Partial<Record<Unit, Unit>> = {
  ha: 'm2',
  birdM2: 'm2',
  freezerL: 'L',
  incubatorC: 'degC',
  rainMm: 'mm',
  chance: 'ratio',
};

/** The unit in which a value is stored and computed: square meters for an area shown in acres. */
export const storedUnit = (unit: Unit): Unit => STORED[unit] ?? unit;

/** The label of a stored value as it stands; a share is a part of one there, not percent. */
export const storedLabel = (unit: Unit): string =>
  unit === 'share' ? '' : SHOWN[storedUnit(unit)].metric.label;

export const unitLabel = (unit: Unit, system: UnitSystem): string => SHOWN[unit][system].label;

/** The label after a number as it is written: 1 day, 2 days, 1 acre, 0.5 acres. */
export const labelAfter = (number: string, label: string): string =>
  number === '1' || number === '-1' ? (SINGULAR[label] ?? label) : label;

const SINGULAR: Readonly<Record<string, string>> = {
  days: 'day',
  bags: 'bag',
  bales: 'bale',
  eggs: 'egg',
  acres: 'acre',
  miles: 'mile',
};
