import type { Sourced } from '../../explain/formula.js';
import { addDays } from '../../calendar/plain-date.js';
import { together } from '../../explain/quantity.js';
import { BEFORE_DAYS } from './days-of-work.js';
import type { WholeWork } from './whole-work.js';
import { groundRows, type DryEnough } from './work-ground.js';

/** What says of each day of a plan whether its ground is dry enough to work. */
export interface GroundPart {
  readonly dryEnough: DryEnough;
  /** Water missing from the worked layer on the morning of each day, mm. */
  readonly missingMm: readonly number[];
  /** Frozen or under snow, 1 or 0; water of the snow that lies, mm; the soil 4 in deep, °C. */
  readonly isWintry: readonly number[];
  readonly snowMm: readonly number[];
  readonly soilC: readonly number[];
  /** Of days that nobody knows: share of years in which it is fit where it is dry, and from which it counts as fit. */
  readonly fitShare: readonly (number | null)[];
  readonly fitFrom: readonly (number | null)[];
  /** What says when rain is snow, and how fast it melts. */
  readonly snow: Sourced;
  /** Rain from which a day is too wet whatever the ground, mm. */
  readonly wetFromMm: number;
  /** Day of the last ground check, from which the balance of soil water goes on. */
  readonly checkedOn?: string;
  /** What that balance rests on. */
  readonly balance: Sourced;
}

/** The ground of a plan's days, as it is sent with the plan. */
export function groundPart({ request, days, dryEnough }: WholeWork): GroundPart {
  const first = addDays(request.today, -BEFORE_DAYS);
  const checkedOn = request.groundChecks
    .map(({ date }) => date)
    .filter((date) => first < date && date <= request.today)
    .sort()
    .at(-1);
  return {
    dryEnough,
    missingMm: Array.from(days.missingMm, tenth),
    isWintry: [...days.isWintry],
    snowMm: Array.from(days.snowMm, tenth),
    soilC: Array.from(days.soilC, tenth),
    fitShare: Array.from(days.beside?.fitShare ?? [], shareOf),
    fitFrom: Array.from(days.beside?.groundFrom ?? [], shareOf),
    snow: together([request.tables.work.snow]),
    wetFromMm: request.tables.work.wetDay.rainMm,
    ...(checkedOn === undefined ? {} : { checkedOn }),
    balance: together(groundRows(request)),
  };
}

const tenth = (value: number): number => Math.round(value * 10) / 10;

/** A share as it is sent: none of what is known, nor of a day that is never fit. */
const shareOf = (share: number): number | null =>
  Number.isFinite(share) ? Math.round(share * 1000) / 1000 : null;
