import type { PlainDate } from '../../calendar/plain-date.js';
import type { TripToBuy } from '../tasks/task.js';
import type { WorkPlan } from './planned-work.js';

/** The days of a piece of work that a household acts on. */
export interface FittedDay {
  /** As the plan of the work calls it: a trip says what is bought on it. */
  readonly name: string;
  /** Where the plan of the work puts it: its first day. */
  readonly on: PlainDate;
  /** Its last day, where it takes more than one. */
  readonly until?: PlainDate;
  /** The last day on which all that waits for it is still on time. */
  readonly dueBy: PlainDate;
  /** Days it can slip from where it stands. */
  readonly spareDays: number;
  /** What is bought on it, where it is the next trip for feed. */
  readonly buys?: TripToBuy;
}

/** By the keys of work; what has no day in the plan of the work is not among them. */
export type FittedDays = ReadonlyMap<string, FittedDay>;

/** The days that the plan of the work found, so that every place says the same of the same work. */
export function fittedDays({ jobs }: Pick<WorkPlan, 'jobs'>): FittedDays {
  return new Map(
    jobs.flatMap(({ key, name, pieces, latest, spareDays, buys }): [string, FittedDay][] => {
      const [first, last] = [pieces[0]?.date, pieces.at(-1)?.date];
      if (first === undefined || last === undefined) return [];
      return [
        [
          key,
          {
            name,
            on: first,
            ...(first < last ? { until: last } : {}),
            dueBy: latest,
            spareDays,
            ...(buys ? { buys } : {}),
          },
        ],
      ];
    }),
  );
}
