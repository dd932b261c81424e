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
    missingMm: Array.from(days.missingMm, (mm) => Math.round(mm * 10) / 10),
    wetFromMm: request.tables.work.wetDay.rainMm,
    ...(checkedOn === undefined ? {} : { checkedOn }),
    balance: together(groundRows(request)),
  };
}
