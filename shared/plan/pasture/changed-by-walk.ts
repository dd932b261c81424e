import type { PlainDate } from '../../calendar/plain-date.js';
import { herdsNow, sayHerdNow } from './herd-now.js';
import type { PasturePlan } from './pasture-plan.js';

/** How a reader writes what changed. */
export interface WalkReader {
  readonly sayDate: (date: PlainDate) => string;
  readonly sayBales: (bales: number) => string;
}

/**
 * What heights that were just read change, a sentence each: where each herd is and goes next, and the
 * hay to buy. Of what stays as it was it says that too, so that nobody looks for more.
 *
 * @param before the plan as it stood when the heights were saved
 */
export function changedByWalk(
  before: PasturePlan,
  after: PasturePlan,
  { sayDate, sayBales }: WalkReader,
): string[] {
  const was = new Map(
    herdsNow(before).map((herd) => [herd.herd.id, sayHerdNow(before, herd, sayDate)]),
  );
  const moves = herdsNow(after).flatMap((herd) => {
    const now = sayHerdNow(after, herd, sayDate);
    const old = was.get(herd.herd.id);
    return old === undefined || old === now ? [] : [`${now} It was: ${old}`];
  });
  const [oldBales, bales] = [before, after].map(({ hay }) => Math.round(hay.balesToBuy.value));
  return [
    ...(moves.length === 0 ? ['The next move stays as it was.'] : moves),
    oldBales === bales
      ? `Hay to buy in the usual weather stays at ${sayBales(bales!)}.`
      : `Hay to buy in the usual weather: ${sayBales(bales!)}, it was ${sayBales(oldBales!)}.`,
  ];
}
