import type { MixFeed } from './mix-feed.js';
import { squareShare, wantedBeside } from './square.js';

/** The grains and the meals of a mix by the square, in percent of protein: a check by hand. */
export interface SquareCheck {
  readonly grain: { readonly names: readonly string[]; readonly proteinPercent: number };
  readonly meal: { readonly names: readonly string[]; readonly proteinPercent: number };
  /** Minerals, premix and oil, which are set before. */
  readonly setKg: number;
  /** What grain and meal must hold between them. */
  readonly wantedPercent: number;
  readonly grainParts: number;
  readonly mealParts: number;
  /** What the square gives, and what the mix has. */
  readonly grainKg: number;
  readonly mixGrainKg: number;
}

interface Part {
  readonly feed: MixFeed;
  readonly kg: number;
}

const sum = (parts: readonly Part[], of: (part: Part) => number): number =>
  parts.reduce((all, part) => all + of(part), 0);

/**
 * Holds a mix against the two-ingredient square: its grains as one feed, its meals as the other, the
 * rest set before.
 *
 * @returns nothing where it has no grain, or no meal richer than the grain
 */
export function squareCheck(parts: readonly Part[]): SquareCheck | undefined {
  const kgOf = (some: readonly Part[]): number => sum(some, ({ kg }) => kg);
  const proteinOf = (some: readonly Part[]): number =>
    sum(some, ({ kg, feed }) => kg * feed.holds.proteinPercent) / kgOf(some);
  const of = (...whats: readonly MixFeed['what'][]) =>
    parts.filter(({ feed }) => whats.includes(feed.what));
  const [grain, meal] = [of('grain'), of('protein')];
  const rest = of('fat', 'mineral', 'additive', 'premix');
  if (grain.length === 0 || meal.length === 0) return undefined;
  const wantedPercent = wantedBeside(proteinOf(parts), {
    share: kgOf(rest) / kgOf(parts),
    percent: rest.length === 0 ? 0 : proteinOf(rest),
  });
  const [low, high] = [proteinOf(grain), proteinOf(meal)];
  const share = squareShare(low, high, wantedPercent);
  if (share === undefined) return undefined;
  const names = (some: readonly Part[]) => some.map(({ feed }) => feed.name);
  return {
    grain: { names: names(grain), proteinPercent: low },
    meal: { names: names(meal), proteinPercent: high },
    setKg: kgOf(rest),
    wantedPercent,
    grainParts: high - wantedPercent,
    mealParts: wantedPercent - low,
    grainKg: share * (kgOf(parts) - kgOf(rest)),
    mixGrainKg: kgOf(grain),
  };
}
