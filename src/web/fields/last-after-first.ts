import { addDays, daysBetween, type PlainDate } from '../../../shared/calendar/plain-date.js';

interface Days {
  readonly from?: PlainDate | undefined;
  readonly to?: PlainDate | undefined;
}

/** What was typed of two days; a first day that is moved takes the last one along, as many days on. */
export function withLastAfterFirst(before: Days, typed: Days): Days {
  const { from, to } = typed;
  if (from === undefined || to !== undefined || before.to === undefined) return typed;
  if (before.from === undefined) return before.to < from ? { ...typed, to: from } : typed;
  return { ...typed, to: addDays(from, Math.max(0, daysBetween(before.from, before.to))) };
}
