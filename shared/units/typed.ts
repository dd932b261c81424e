import {
  HA_PER_ACRE,
  KG_PER_LB,
  L_PER_FT3,
  L_PER_US_GAL,
  M2_PER_FT2,
  M_PER_FT,
} from './convert.js';
import { formatTyped } from './format.js';
import { fromShown, unitLabel, type Unit, type UnitSystem } from './unit.js';

/** What was made of a typed number. */
export type Typed =
  | { readonly is: 'empty' }
  | {
      readonly is: 'value';
      /** Stored value: SI. */
      readonly stored: number;
      /** What was understood, when it was not typed in the farm's own unit. */
      readonly understood?: string;
    }
  | { readonly is: 'unread'; readonly why: string };

interface Field {
  readonly unit: Unit;
  readonly system: UnitSystem;
  readonly typedAs?: 'latitude' | 'longitude' | 'percent' | undefined;
}

/**
 * Reads a number as people type it: with or without a unit, with a decimal comma, as a fraction,
 * with a compass point. Whatever is not understood is refused with a reason, never dropped.
 */
export function readTyped(text: string, field: Field): Typed {
  const written = text.trim().replace(/[−–]/g, '-').replace(/\s+/g, ' ');
  const whole = written.replace(GROUPED, (digits) => digits.replaceAll(' ', ''));
  const plain = field.unit === 'h' ? whole.replace(CLOCK, '$1 h $2 min') : whole;
  if (plain === '') return { is: 'empty' };
  if (field.typedAs === 'latitude' || field.typedAs === 'longitude') {
    return readAngle(plain, field.typedAs);
  }
  const parts = partsOf(plain);
  if (!parts) return unread(`“${text.trim()}” is not a number${example(field)}.`);
  const values: number[] = [];
  for (const { number } of parts) {
    const value = numberOf(number, field.system);
    if (typeof value === 'string') return unread(value);
    values.push(value);
  }
  return parts.length === 1 && parts[0]!.unit === ''
    ? { is: 'value', stored: fromShown(values[0]!, field.unit, field.system) }
    : withUnits(parts, values, field);
}

/** 1 050,5 as French and many others write it: blanks between thousands. */
const GROUPED = /^[+-]? ?\d{1,3}(?: \d{3})+(?=$|[.,]\d| ?[^\d./, ])/;
/** 1:30 is an hour and a half. */
const CLOCK = /^(\d+):([0-5]\d)$/;

interface Part {
  readonly number: string;
  readonly unit: string;
}

const NUMBER = String.raw`\d+ \d+\/\d+|\d+\/\d+|\d+(?:[.,]\d+)*[.,]?|[.,]\d+`;
const UNIT = String.raw`(?:(?:sq|cu|deg)\.? ?)?(?:°? ?[a-zµ]+[23²³]?\.?)|['"′″%°]`;
const PART = new RegExp(String.raw`(${NUMBER}) ?(${UNIT})? ?`, 'iy');

/** "5 ft 6 in" → 5 ft, 6 in. The sign stays with the first number. */
function partsOf(text: string): Part[] | undefined {
  const sign = /^[+-] ?/.exec(text)?.[0] ?? '';
  const parts: Part[] = [];
  PART.lastIndex = sign.length;
  while (PART.lastIndex < text.length) {
    const found = PART.exec(text);
    if (!found) return undefined;
    parts.push({ number: found[1]!, unit: found[2] ?? '' });
  }
  if (parts.length === 0) return undefined;
  if (sign.startsWith('-')) {
    parts.forEach((part, i) => (parts[i] = { ...part, number: `-${part.number}` }));
  }
  return parts;
}

/** A number in digits, or why it is not certain. */
function numberOf(text: string, system: UnitSystem): number | string {
  const sign = text.startsWith('-') ? -1 : 1;
  const digits = text.replace('-', '');
  const fraction = /^(?:(\d+) )?(\d+)\/(\d+)$/.exec(digits);
  if (fraction) {
    const [, whole = '0', top, bottom] = fraction;
    if (Number(bottom) === 0) return 'A fraction cannot have 0 below the line.';
    return sign * (Number(whole) + Number(top) / Number(bottom));
  }
  if (/^\d{1,3}(,\d{3})+(\.\d*)?$/.test(digits)) {
    if (system === 'metric' && !digits.includes('.') && digits.split(',').length === 2) {
      const [before, after] = digits.split(',');
      return `“${digits}” can mean two things: write ${before}${after} or ${before}.${after}.`;
    }
    return sign * Number(digits.replaceAll(',', ''));
  }
  if (/^\d{1,3}(\.\d{3}){2,}(,\d*)?$/.test(digits)) {
    return sign * Number(digits.replaceAll('.', '').replace(',', '.'));
  }
  const value = Number(digits.replace(',', '.'));
  return Number.isFinite(value) ? sign * value : `“${text}” is not a number.`;
}

function withUnits(parts: readonly Part[], values: readonly number[], field: Field): Typed {
  const known = readersOf(field);
  const offer = Object.values(known.names).join(', ');
  let stored = 0;
  const names = new Set<string>();
  for (const [i, { unit }] of parts.entries()) {
    const name = nameOf(unit);
    const read = known.read[name];
    if (!read) {
      if (name === '') return unread('Write one number, or a unit after each.');
      return unread(
        offer === ''
          ? `“${unit.trim()}” is not understood here: write the number alone.`
          : `“${unit.trim()}” is not understood here: write the number alone, or with ${offer}.`,
      );
    }
    if (names.has(name)) return unread(`“${unit.trim()}” is given twice.`);
    names.add(name);
    stored += read(values[i]!);
  }
  if (1 < parts.length && field.unit === 'degC') return unread('Write one temperature.');
  const own = nameOf(unitLabel(field.unit, field.system));
  const isOwn =
    parts.length === 1 && (names.has(own) || names.has('°') || field.typedAs === 'percent');
  return isOwn
    ? { is: 'value', stored }
    : {
        is: 'value',
        stored,
        understood: formatTyped(stored, field.unit, { units: field.system, currency: 'USD' }),
      };
}

interface Readers {
  /** Number in that unit → stored value, by the unit's plain name. */
  readonly read: Readonly<Record<string, (value: number) => number>>;
  /** One way to write each of the units that are offered. */
  readonly names: Readonly<Record<string, string>>;
}

const M_OF = { m: 1, cm: 0.01, mm: 0.001, ft: M_PER_FT, in: M_PER_FT / 12, yd: M_PER_FT * 3 };
const KG_OF = { kg: 1, g: 0.001, lb: KG_PER_LB, oz: KG_PER_LB / 16 };
const M2_OF = { m2: 1, ft2: M2_PER_FT2, ha: 10_000, acre: HA_PER_ACRE * 10_000 };
const L_OF = { l: 1, ml: 0.001, m3: 1000, gal: L_PER_US_GAL, ft3: L_PER_FT3 };
const DAYS_OF = { day: 1, week: 7 };
const HOURS_OF = { h: 1, min: 1 / 60 };
const WATTS_OF = { w: 1, kw: 1000 };

/** Units of each stored unit: factors to a base, and how many stored units the base holds. */
const FAMILIES: Partial<Record<Unit, readonly [Readonly<Record<string, number>>, number]>> = {
  m: [M_OF, 1],
  cm: [M_OF, 100],
  mm: [M_OF, 1000],
  kg: [KG_OF, 1],
  g: [KG_OF, 1000],
  m2: [M2_OF, 1],
  birdM2: [M2_OF, 1],
  L: [L_OF, 1],
  freezerL: [L_OF, 1],
  mL: [L_OF, 1000],
  m3: [L_OF, 0.001],
  day: [DAYS_OF, 1],
  h: [HOURS_OF, 1],
  W: [WATTS_OF, 1],
};

const WRITTEN: Readonly<Record<string, string>> = {
  m2: 'm²',
  ft2: 'ft²',
  m3: 'm³',
  ft3: 'ft³',
  l: 'L',
  w: 'W',
  kw: 'kW',
  c: '°C',
  f: '°F',
};

function readersOf({ unit, system, typedAs }: Field): Readers {
  if (unit === 'degC') {
    return {
      read: {
        c: (v) => v,
        f: (v) => fromShown(v, 'degC', 'us'),
        '°': (v) => fromShown(v, 'degC', system),
      },
      names: { c: '°C', f: '°F' },
    };
  }
  const family = FAMILIES[unit];
  if (family) {
    const [factors, per] = family;
    return {
      read: Object.fromEntries(
        Object.entries(factors).map(([name, factor]) => [name, (v: number) => v * factor * per]),
      ),
      names: Object.fromEntries(Object.keys(factors).map((name) => [name, WRITTEN[name] ?? name])),
    };
  }
  const label = typedAs === 'percent' ? '%' : unitLabel(unit, system);
  if (label === '') return { read: {}, names: {} };
  return {
    read: { [nameOf(label)]: (v) => fromShown(v, unit, system) },
    names: { [nameOf(label)]: label },
  };
}

const OTHER_NAMES: Readonly<Record<string, string>> = {
  "'": 'ft',
  '′': 'ft',
  '"': 'in',
  '″': 'in',
  foot: 'ft',
  feet: 'ft',
  inch: 'in',
  inches: 'in',
  yard: 'yd',
  yards: 'yd',
  metre: 'm',
  metres: 'm',
  meter: 'm',
  meters: 'm',
  lbs: 'lb',
  pound: 'lb',
  pounds: 'lb',
  ounce: 'oz',
  ounces: 'oz',
  kilo: 'kg',
  kilos: 'kg',
  kgs: 'kg',
  gram: 'g',
  grams: 'g',
  acres: 'acre',
  ac: 'acre',
  hectare: 'ha',
  hectares: 'ha',
  sqft: 'ft2',
  sqm: 'm2',
  cuft: 'ft3',
  cum: 'm3',
  litre: 'l',
  litres: 'l',
  liter: 'l',
  liters: 'l',
  gallon: 'gal',
  gallons: 'gal',
  gals: 'gal',
  days: 'day',
  d: 'day',
  weeks: 'week',
  wk: 'week',
  wks: 'week',
  bag: 'bags',
  bale: 'bales',
  egg: 'eggs',
  mile: 'miles',
  hour: 'h',
  hours: 'h',
  hr: 'h',
  hrs: 'h',
  minute: 'min',
  minutes: 'min',
  mins: 'min',
  watt: 'w',
  watts: 'w',
  volt: 'v',
  volts: 'v',
  amp: 'a',
  amps: 'a',
  degc: 'c',
  degf: 'f',
};

/** A unit as typed → its plain name: lower case, without blanks, dots and raised digits. */
function nameOf(unit: string): string {
  const plain = unit.toLowerCase().replace(/[ .]/g, '').replace('²', '2').replace('³', '3');
  const bare = 1 < plain.length ? plain.replace('°', '') : plain;
  return OTHER_NAMES[bare] ?? bare;
}

const ANGLE =
  /^([nsew])? ?([+-]?) ?(\d+(?:[.,]\d+)?) ?°? ?(?:(\d+(?:[.,]\d+)?) ?['′])? ?(?:(\d+(?:[.,]\d+)?) ?["″])? ?(north|south|east|west|[nsew])?$/i;

/** Degrees with a sign or a compass point, decimal or with minutes and seconds. */
function readAngle(text: string, axis: 'latitude' | 'longitude'): Typed {
  const found = ANGLE.exec(text);
  const [positive, negative] = axis === 'latitude' ? ['N', 'S'] : ['E', 'W'];
  const how = axis === 'latitude' ? '42.9 N, 33.5 S or −33.5' : '75.3 W, 8.5 E or −75.3';
  if (!found) return unread(`“${text}” is not a ${axis}: write it such as ${how}.`);
  const [, before, sign, degrees, minutes = '0', seconds = '0', after] = found;
  const point = (before ?? after ?? '').charAt(0).toUpperCase();
  if (before && after) return unread('Write one compass point.');
  if (point !== '' && point !== positive && point !== negative) {
    return unread(`A ${axis} takes ${positive} or ${negative}, not ${point}.`);
  }
  if (point !== '' && sign === '-') return unread(`Write either the minus sign or ${point}.`);
  const dot = (digits: string): number => Number(digits.replace(',', '.'));
  const size = dot(degrees!) + dot(minutes) / 60 + dot(seconds) / 3600;
  const isNegative = point === negative || sign === '-';
  const stored = Number(((isNegative ? -1 : 1) * size).toFixed(6)) + 0;
  return { is: 'value', stored, understood: angleText(stored, axis) };
}

/** −75.3 → 75.3° west. */
export function angleText(value: number, axis: 'latitude' | 'longitude'): string {
  const [positive, negative] = axis === 'latitude' ? ['north', 'south'] : ['east', 'west'];
  return `${Number(Math.abs(value).toFixed(6))}° ${value < 0 ? negative : positive}`;
}

const unread = (why: string): Typed => ({ is: 'unread', why });

const example = ({ unit, system }: Field): string => {
  const label = unitLabel(unit, system);
  return label === '' ? '' : `: write it such as 2.5 or 2.5 ${label}`;
};
