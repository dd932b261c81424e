import type { Herd } from '../farm/herd.js';
import type { Tables } from '../tables/tables.js';

/** Days after which it is no longer believed that a herd of which nothing was told stands where it was. */
export const silentDays = (
  { pasture, judgements }: Tables,
  { longestStayDays = pasture.longestStayDays.value }: Pick<Herd, 'longestStayDays'>,
): number => longestStayDays + judgements.alarms.recentDays.value;
