import { daysBetween } from '../calendar/plain-date.js';
import type { PlanContext } from './context.js';
import { LAY_YEAR_DAYS } from './laying-years.js';
import type { OtherFlock } from './request.js';

/** Laying years of a flock that are shown by month and counted on: hens are kept for two, mostly. */
export const YEARS_BY_MONTH = 2;

/** What a batch lays, for the other flocks of its farm; undefined when it is not for eggs. */
export function flockOf({ batch, lay }: PlanContext): OtherFlock | undefined {
  if (!lay) return undefined;
  const days = Math.min(lay.hens.length, lay.firstDay + YEARS_BY_MONTH * LAY_YEAR_DAYS);
  const { arrivalDate, eggsWantedPerWeek } = batch;
  return {
    arrivalDate,
    eggs: Float64Array.from({ length: days }, (_, i) =>
      i < lay.firstDay ? 0 : lay.planned[i]! * lay.hens[i]!,
    ),
    ...(eggsWantedPerWeek === undefined ? {} : { eggsWantedPerWeek }),
  };
}

/** Eggs that the household wants in a week: as said of this flock, else of the last one it said. */
export function eggsWanted({
  batch,
  otherFlocks = [],
}: Pick<PlanContext, 'batch' | 'otherFlocks'>): number | undefined {
  const said = otherFlocks.filter((flock) => flock.eggsWantedPerWeek !== undefined);
  said.sort((a, b) => daysBetween(b.arrivalDate, a.arrivalDate));
  return batch.eggsWantedPerWeek ?? said.at(-1)?.eggsWantedPerWeek;
}

/** Eggs of all other flocks over days of this batch, the second not included. */
export function eggsOfOthers(
  { batch, otherFlocks = [] }: Pick<PlanContext, 'batch' | 'otherFlocks'>,
  { from, to }: { readonly from: number; readonly to: number },
): number {
  let sum = 0;
  for (const { arrivalDate, eggs } of otherFlocks) {
    const ahead = daysBetween(arrivalDate, batch.arrivalDate);
    for (let i = Math.max(0, from + ahead); i < Math.min(eggs.length, to + ahead); i++)
      sum += eggs[i]!;
  }
  return sum;
}
