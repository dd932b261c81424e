import type { PlainDate } from '../../calendar/plain-date.js';
import type { PlannedJob } from '../work/planned-work.js';
import type { FeedTrip } from './feed-trips.js';
import { ANYWHERE } from './where-bought.js';

/** The day on which the plan of the work makes a trip: within the days the trip can wait, by the hours. */
export function dayInWork(
  { on, from }: Pick<FeedTrip, 'on' | 'from'>,
  jobs: readonly PlannedJob[],
): PlainDate | undefined {
  const job = jobs.find(({ buys }) => buys?.on === on.value && (buys.from ?? ANYWHERE) === from);
  return job?.pieces[0]?.date;
}
