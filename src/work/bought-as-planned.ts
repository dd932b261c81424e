import type { PlainDate } from '../../shared/calendar/plain-date.js';
import type { PlannedJob } from '../../shared/plan/work/planned-work.js';
import type { Said } from '../told/keep-facts.js';

/**
 * The bags that a trip brings that is ticked off while nobody has told what was bought on it: those
 * that were planned. Else they would be asked for again.
 */
export function boughtAsPlanned(jobs: readonly PlannedJob[], key: string, on: PlainDate): Said[] {
  const { from, lines = [] } = jobs.find((each) => each.key === key)?.buys ?? {};
  const seller = from === undefined ? {} : { from };
  const details = { ...seller, work: key };
  return lines.map((line) => ({
    ...{ kind: 'bought', about: key, on },
    details: { ...line, ...details },
  }));
}
