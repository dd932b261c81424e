import { addDays, type PlainDate } from '../../../../shared/calendar/plain-date.js';
import { findArrivals, type ArrivalWeek } from '../../../../shared/plan/arrival-finder.js';
import { weeksBeside, type WeekBeside } from '../../../../shared/plan/weeks-beside.js';
import { FieldError } from '../../../../shared/problems/field-problem.js';
import { farmDay } from '../../api/queries.js';
import { inPicture, withoutBlanks, type BatchDraft, type Setting } from './use-plan.js';

const SEARCHED_DAYS = 364;

/** The best week, and what speaks against those before and after it. */
export type BestWeek = ArrivalWeek & { readonly beside: readonly WeekBeside[] };

/** The day it is on the farm. */
export const todayOf = ({ farm }: Pick<Setting, 'farm'>): PlainDate => farmDay(farm);

/** The first day on which chicks that are ordered today usually come. */
export const firstArrival = (setting: Setting): PlainDate =>
  addDays(todayOf(setting), setting.tables.judgements.arrival.usualLeadDays.value);

/**
 * The best week within a year for a new batch, ordered as long ahead as is usual; undefined while what
 * is typed cannot be planned.
 */
export function bestWeek(setting: Setting, draft: BatchDraft): BestWeek | undefined {
  const from = firstArrival(setting);
  const typed = { ...draft, arrivalDate: from };
  const { picture, batch } = inPicture(setting, withoutBlanks(typed));
  const to = addDays(todayOf(setting), SEARCHED_DAYS);
  try {
    const weeks = findArrivals(picture, setting.tables, batch.id, { from, to });
    const best = weeks.find(({ rank }) => rank === 1);
    return best && { ...best, beside: weeksBeside(weeks, best) };
  } catch (error) {
    if (error instanceof FieldError) return undefined;
    throw error;
  }
}
