import type { BuyingProblem, Trip } from './buying-problem.js';
import type { ItemDays } from './item-days.js';

const WEEK = 7;

/** Days on which trips are thought of: the last open one of each week, and before each season of an item. */
export function likelyDays(problem: BuyingProblem, items: readonly ItemDays[]): readonly Trip[] {
  const begins = items.flatMap(({ item: { needKg }, handDays }) =>
    Array.from(needKg.keys()).flatMap((day) =>
      0 < needKg[day]! && (day === 0 || needKg[day - 1] === 0) ? [Math.max(0, day - handDays)] : [],
    ),
  );
  const weeks = Array.from(
    { length: Math.ceil(problem.days / WEEK) },
    (_, k) => WEEK * (k + 1) - 1,
  );
  const trips = problem.suppliers.flatMap(({ days }, supplier): Trip[] => {
    const lastOpen = [...begins, ...weeks].map((day) =>
      days.lastIndexOf(1, Math.min(day, problem.days - 1)),
    );
    return [...new Set([days.indexOf(1), ...lastOpen])]
      .filter((day) => 0 <= day)
      .map((day) => ({ supplier, day }));
  });
  return trips.sort(byDay);
}

/** Trips of two lists, each once, by day. */
export const merged = (some: readonly Trip[], more: readonly Trip[]): readonly Trip[] => {
  const keys = new Set<number>();
  return [...some, ...more]
    .filter(({ supplier, day }) => {
      const key = 1000 * day + supplier;
      if (keys.has(key)) return false;
      keys.add(key);
      return true;
    })
    .sort(byDay);
};

const byDay = (a: Trip, b: Trip): number => a.day - b.day || a.supplier - b.supplier;
