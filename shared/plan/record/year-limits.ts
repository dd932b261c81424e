import type { YearLimits } from '../../farm/farm.js';
import type { YearCounts } from './year-counts.js';

/** What is held against a limit of the place. */
export type LimitOf = keyof YearLimits;

/** What was told of a calendar year, beside what the place may. */
export interface AgainstLimit {
  readonly of: LimitOf;
  readonly label: string;
  readonly told: number;
  /** More that plans of this year come to; only of birds to process. */
  readonly planned?: number;
  readonly limit: number;
}

const LIMIT_LABELS: Readonly<Record<LimitOf, string>> = {
  birdsProcessed: 'Birds processed',
  birdsSold: 'Birds sold alive',
  eggsSold: 'Eggs sold',
};

/**
 * What was told of a year beside each limit that the household typed, in whole birds and eggs.
 * Nothing where no limit was typed: which rule a place sells under is not for a program to say.
 */
export function againstLimits(
  { birds, eggs }: Pick<YearCounts, 'birds' | 'eggs'>,
  limits: YearLimits | null | undefined,
): AgainstLimit[] {
  const told: Record<LimitOf, number> = {
    birdsProcessed: birds.processed,
    birdsSold: birds.sold,
    eggsSold: eggs.sold,
  };
  return (Object.keys(told) as LimitOf[]).flatMap((of) => {
    const limit = limits?.[of];
    return limit === undefined ? [] : [{ of, label: LIMIT_LABELS[of], told: told[of], limit }];
  });
}

/** The counts of a year, with the limits of the place beside them. */
export interface CountedYear extends YearCounts {
  readonly limits: readonly AgainstLimit[];
  /** Rain that is usual from the first to the last reading of the gauge, mm. */
  readonly usualRainMm?: number;
}
