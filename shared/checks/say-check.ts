import { formatHours, formatMoney } from '../units/format.js';
import { labelAfter, SHOWN, toShown, type Unit, type UnitSystem } from '../units/unit.js';
import type { Check, Standing } from './compare.js';

/** A row of checks in words, for page and terminal alike. */
export interface SaidCheck {
  readonly theirs: string;
  readonly ours: string;
  readonly off: string;
  readonly allowed: string;
  readonly standing: string;
}

const WORDS: Readonly<Record<Standing, string>> = {
  holds: 'agrees',
  disagrees: 'disagrees',
  beyond: 'too far off',
  'explained-in-vain': 'agrees after all',
};

/**
 * What a row compares, in a reader's units. Money stays in the dollars of the sources, and a value
 * that the source prints in other words is given in those as well.
 */
export function sayCheck(check: Check, units: UnitSystem): SaidCheck {
  const { theirs, ours, deviation, allowed, allowedShare, unit } = check;
  const isShare = allowedShare !== undefined && theirs !== 0;
  return {
    theirs: sayFigure(theirs, unit, units),
    ours: sayFigure(ours, unit, units),
    off: signed(
      isShare
        ? sayFigure(deviation / Math.abs(theirs), 'share', units, 1)
        : sayDifference(deviation, unit, units),
      deviation,
    ),
    allowed: isShare
      ? sayFigure(allowedShare, 'share', units)
      : sayDifference(allowed, unit, units),
    standing: WORDS[check.standing],
  };
}

const signed = (text: string, value: number): string => (0 < value ? `+${text}` : text);

/** Degrees apart have no zero of their own, and shares are points apart. */
function sayDifference(value: number, unit: Unit, units: UnitSystem): string {
  if (unit === 'share' || unit === 'chance')
    return `${sayFigure(100 * value, 'count', units)} points`;
  return sayFigure(value, unit === 'degC' ? 'K' : unit, units);
}

/** A figure to compare by: with as many digits as tell it from its neighbor, whatever its unit. */
function sayFigure(value: number, unit: Unit, units: UnitSystem, digits?: number): string {
  if (unit === 'money') return formatMoney(value, 'USD');
  if (unit === 'h') return sayHours(value);
  const read = unit === 'chance' ? 'share' : unit;
  const shown = toShown(value, read, units);
  const most = digits ?? Math.max(0, 2 - Math.floor(Math.log10(Math.abs(shown) || 1)));
  const text = (Number(shown.toFixed(Math.min(most, 6))) + 0).toLocaleString('en', {
    maximumFractionDigits: 6,
  });
  const { label } = SHOWN[read][units];
  return label === '' ? text : `${text} ${labelAfter(text, label)}`;
}

/** Under an hour with what tells minutes apart. */
function sayHours(hours: number): string {
  if (1 <= Math.abs(hours)) return formatHours(hours);
  return `${Number((60 * hours).toPrecision(3)) + 0} min`;
}
