import { daysBetween, type PlainDate } from '../calendar/plain-date.js';
import type { Farm } from '../farm/farm.js';
import type { Round } from '../tables/task-template.js';
import type { Tables } from '../tables/tables.js';
import type { BatchPlan } from './batch-plan.js';
import type { PlanContext } from './context.js';
import { refillWords } from './refill-words.js';
import { fillRounds, HOLDERS, type HolderKind } from './refills.js';

/** Drinkers or feeders on a day of a plan. */
export interface RefillDay {
  readonly kind: HolderKind;
  /** Hours they last from the morning round on; Infinity where a day or more. */
  readonly lastsH: number;
  readonly rounds: readonly Round[];
  readonly said: string;
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
    const value = (id: string): number => plan.daily.find((s) => s.id === id)?.values[day] ?? 0;
    const share = value(`${kind}-share`);
    if (!part || share === 0) return [];
    const rounds = fillRounds(place, { share, isIn, on });
    const { isAssumed } = part;
    const holds = place.say(value(`${kind}-hold`), HOLDERS[kind].unit);
    return [
      {
        ...{ kind, isAssumed, ...rounds },
        said: refillWords({ kind, share, ...rounds, holds, isAssumed }),
      },
    ];
  });
}
