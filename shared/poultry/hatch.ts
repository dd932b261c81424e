import type { Formula } from '../explain/formula.js';
import type { HatchingTable } from '../tables/hatching-table.js';
import { reachOf } from './losses.js';

export const hatchFormulas = {
  dates: {
    id: 'hatch-dates',
    title: 'Dates of a hatch',
    words:
      'Counted back from the day they are to hatch by the days that eggs of this kind take. Candling and lockdown are counted from the day the eggs are set. A day early or late is usual.',
    symbols: 'set = hatch − incubation; lockdown = set + n',
    sources: ['ARITHMETIC'],
    mark: 'computed',
  },
  share: {
    id: 'hatch-share',
    title: 'Eggs that hatch',
    words:
      'Chicks of the eggs set, as a share, less what eggs lose that were kept for more than a week. Eggs are laid evenly over the days they are gathered, so only the older ones lose.',
    symbols: 'h = h₀ − mean(max(0, age − free)·loss)',
    sources: ['EGG_STORAGE'],
    mark: 'computed',
  },
  toSet: {
    id: 'hatch-eggs-to-set',
    title: 'Eggs to set',
    words:
      'The fewest eggs that leave the number of birds wanted in so many of a hundred such hatches. How many hatch, and how many chicks live, varies from one hatch to the next more than a coin does; half of the chicks are of each sex.',
    symbols:
      'min{n: P(X ≥ N_wanted) ≥ p}, X ~ Bin(n, s·B), B beta distributed with the mean h·L and the spread of both',
    sources: ['HOME_HATCHES', 'FLOCK_LOSSES'],
    mark: 'computed',
  },
  expected: {
    id: 'hatch-chicks-expected',
    title: 'Chicks to expect',
    words:
      'Eggs set times the share that hatches. The range holds eight hatches in ten: good and bad hatches come whole.',
    symbols: 'N = n·h',
    sources: ['ARITHMETIC'],
    mark: 'computed',
  },
  hens: {
    id: 'hatch-hens',
    title: 'Broody hens needed at once',
    words: 'Eggs to set, divided by the eggs that one hen covers.',
    symbols: 'k = ⌈n ÷ c⌉',
    sources: ['ARITHMETIC'],
    mark: 'computed',
  },
  setting: {
    id: 'hatch-setting',
    title: 'Setting of the incubator',
    words: 'As the guides print it. The maker’s own instructions come first.',
    symbols: 'as printed',
    sources: [],
    mark: 'published',
  },
  weightLoss: {
    id: 'hatch-weight-loss',
    title: 'Weight that eggs lose',
    words:
      'Share of its weight at setting that an egg should have lost by lockdown, as water through the shell. Less: let the air be drier. More: moister.',
    symbols: '(W_set − W_lockdown) ÷ W_set',
    sources: [],
    mark: 'published',
  },
} satisfies Record<string, Formula>;

/**
 * Share of eggs lost because they were kept, average over eggs laid evenly up to the oldest.
 *
 * Source: about 1 % a day after 7 days (see the storage row); steeper from about 13 days on.
 *
 * @param oldestDays days the oldest egg was kept, 1 or more
 * @returns 0 to below 1
 */
export function storageLossShare(
  { freeDays, lossPerDay }: HatchingTable['storage'],
  oldestDays: number,
): number {
  const late = Math.max(0, Math.floor(oldestDays) - freeDays);
  return (lossPerDay * (late * (late + 1))) / 2 / Math.max(1, Math.floor(oldestDays));
}

/** A share of eggs or birds that varies from one flock to the next. */
export interface VaryingShare {
  readonly mean: number;
  /** Likeness of the fates of two of them, 0 to below 1. */
  readonly togetherness: number;
}

/** What is left of both shares: its mean, and a likeness with the variance of their product. */
export function bothShares(a: VaryingShare, b: VaryingShare): VaryingShare {
  const mean = a.mean * b.mean;
  if (mean <= 0 || 1 <= mean) return { mean, togetherness: 0 };
  const variance = squareOf(a) * squareOf(b) - mean * mean;
  return { mean, togetherness: Math.max(0, variance / (mean * (1 - mean))) };
}

/** Mean of the square of a beta distributed share. */
const squareOf = ({ mean, togetherness }: VaryingShare): number =>
  mean * mean + togetherness * mean * (1 - mean);

/**
 * Fewest and most chicks of a hatch, leaving out the same share of hatches at both ends.
 *
 * @param outside share of hatches left out at each end, 0.01 to 0.49
 */
export function chicksRange(
  eggs: number,
  { mean, togetherness }: VaryingShare,
  outside: number,
): { readonly low: number; readonly high: number } {
  const reach = reachOf({ survivingShare: mean, sexShare: 1, togetherness });
  const mostWith = (share: number): number => {
    let low = 0;
    let high = eggs + 1;
    while (1 < high - low) {
      const middle = Math.floor((low + high) / 2);
      if (share <= reach(middle, eggs)) low = middle;
      else high = middle;
    }
    return low;
  };
  return { low: mostWith(1 - outside), high: mostWith(outside) };
}
