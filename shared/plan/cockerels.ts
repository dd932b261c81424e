import type { PlainDate } from '../calendar/plain-date.js';
import type { PlanContext } from './context.js';

/** The cockerels of a straight run of layers on the day they leave. */
export interface CockerelsLeaving {
  /** Days after the arrival. */
  readonly day: number;
  readonly date: PlainDate;
  readonly birds: number;
}

/** Undefined where there are none: of meat birds, of pullets, of a run too small to have one. */
export function cockerelsLeaving({ life, dateOf }: PlanContext): CockerelsLeaving | undefined {
  if (life.cockerelsLeaveAgeDays === undefined) return undefined;
  const day = life.cockerelsLeaveAgeDays - life.arrivalAgeDays;
  const birds = Math.floor(life.alive.male[day - 1]!);
  return birds === 0 ? undefined : { day, date: dateOf(day), birds };
}
