import type { DaysOfWork } from './days-of-work.js';
import { suitsOf } from './days-that-suit.js';
import type { PlannedChore } from './work-need.js';

/** Chores on those of their days that suit them: one that waits for warm air comes on no cold day. */
export const onSuitableDays = (
  chores: readonly PlannedChore[],
  days: DaysOfWork,
  wetFromMm: number,
): PlannedChore[] =>
  chores.map((chore) => {
    const suits = chore.conditions && suitsOf(chore.conditions, days, wetFromMm);
    const { onDays } = chore;
    return suits && onDays
      ? { ...chore, onDays: new Set([...onDays].filter((day) => suits[day] === 1)) }
      : chore;
  });

export const comesOn = ({ fromDay, toDay, onDays }: PlannedChore, day: number): boolean =>
  fromDay <= day && day <= toDay && (onDays?.has(day) ?? true);
