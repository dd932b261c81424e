import { addDays, daysBetween, type PlainDate } from '../calendar/plain-date.js';
import type { Farm } from '../farm/farm.js';
import type { Round } from '../tables/task-template.js';
import type { Tables } from '../tables/tables.js';
import type { BatchPlan } from './batch-plan.js';
import type { PlanContext } from './context.js';
import { formatDate } from '../units/dates.js';
import { refillWords } from './refill-words.js';
import { fillRounds, HOLDERS, type HolderKind } from './refills.js';

/** Drinkers or feeders on a day of a plan. */
export interface RefillDay {
  readonly kind: HolderKind;
  /** Hours they last from the morning round on; Infinity where a day or more. */
  readonly lastsH: number;
  readonly rounds: readonly Round[];
  readonly said: string;
  /** What is done, without how long they last: the same while holders and rounds are. */
  readonly does: string;
  readonly isAssumed: boolean;
}

/** How long drinkers and feeders of a planned batch last on a date; none on a day without need. */
export function refillsOn(
  plan: BatchPlan,
  on: PlainDate,
  place: { readonly farm: Farm; readonly tables: Tables; say: PlanContext['say'] },
): RefillDay[] {
  const day = daysBetween(plan.arrivalDate, on);
  const out = plan.outdoors.moveOut?.value;
  const isIn = plan.brooding !== undefined && (out === undefined || on < String(out));
  return (['drinkers', 'feeders'] as const).flatMap((kind): RefillDay[] => {
    const part = plan.refills.find(
      (each) => each.kind === kind && each.from <= on && on <= each.to,
    );
    const valuesOf = (id: string): ArrayLike<number> =>
      plan.daily.find((s) => s.id === id)?.values ?? [];
    const [shares, hold] = [valuesOf(`${kind}-share`), valuesOf(`${kind}-hold`)];
    const share = shares[day] ?? 0;
    if (!part || share === 0) return [];
    const rounds = fillRounds(place, { share, isIn, on });
    const { isAssumed } = part;
    const say = (each: number | undefined): string => place.say(each ?? 0, HOLDERS[kind].unit);
    const holds = say(hold[day]);
    const first = daysBetween(plan.arrivalDate, part.from);
    const isBigger = first < day && holds !== say(hold[day - 1]) && hold[day - 1]! < hold[day]!;
    const next = kind === 'feeders' ? nextFill(shares, hold, { first, day }) : undefined;
    return [
      {
        ...{ kind, isAssumed, ...rounds },
        does: `${kind} ${holds}, ${rounds.rounds.join(' ')} of ${Math.max(1, Math.floor(share))}`,
        said: [
          ...(isBigger
            ? [`Change to bigger ${kind} today (${say(hold[day - 1])} until now).`]
            : []),
          refillWords({ kind, share, ...rounds, holds, isAssumed }),
          ...(2 <= share && next !== undefined ? [dueSaid(place, on, next - day)] : []),
        ].join(' '),
      },
    ];
  });
}

/** “Due today.” of feed for several days, counted from full feeders on the first day in that home. */
function dueSaid(
  { farm }: { readonly farm: Pick<Farm, 'units'> },
  on: PlainDate,
  inDays: number,
): string {
  if (inDays === 0) return 'Due today.';
  const date = formatDate(addDays(on, inDays), { units: farm.units, today: on });
  return `Not due before ${date}: look whether they are low.`;
}

/** The first day from one on, on which what is left in the feeders is less than the day takes; none where it lasts until the birds leave. */
function nextFill(
  shares: ArrayLike<number>,
  hold: ArrayLike<number>,
  { first, day }: { first: number; day: number },
): number | undefined {
  let leftKg = 0;
  for (let at = first; at < shares.length; at++) {
    const needKg = shares[at]! === 0 ? 0 : hold[at]! / shares[at]!;
    const isOther = at === first || hold[at] !== hold[at - 1];
    if (isOther || leftKg < needKg) {
      if (day <= at) return at;
      leftKg = hold[at]!;
    }
    leftKg -= needKg;
  }
  return undefined;
}
