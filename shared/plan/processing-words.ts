import type { PlanContext } from './context.js';
import type { ProcessingDay } from './processing-days.js';

/** How many on which day. */
export const sayDays = ({ say }: PlanContext, days: readonly ProcessingDay[]): string =>
  days.map(({ date, birds }) => `${birds} on ${say(date, 'date')}`).join('; ');
