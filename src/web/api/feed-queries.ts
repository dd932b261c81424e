import { useMutation, useQuery } from '@tanstack/react-query';
import type { PlainDate } from '../../../shared/calendar/plain-date.js';
import type { Bought } from '../../../shared/farm/season-facts.js';
import type { Supplier } from '../../../shared/farm/supplier.js';
import type { FeedSpent } from '../../../shared/plan/feed-spent/feed-spent.js';
import type { FeedYear } from '../../../shared/plan/feed-year/feed-year.js';
import { WHOLE_FARM } from '../../../shared/farm/told-fact.js';
import { dayIn } from '../kept/day-it-is.js';
import { ofFarm, type SavedFarm } from './queries.js';
import { useMessage } from './told-queries.js';

export const useFeedYear = (farmId: string) => useQuery(ofFarm<FeedYear>(farmId, '/feed'));

/** Where the feed money of the last year went, once receipts were told. */
export const useFeedSpent = (farmId: string) =>
  useQuery(ofFarm<{ readonly spent?: FeedSpent }>(farmId, '/feed/spent'));

export const useSuppliers = (farmId: string) => useQuery(ofFarm<Supplier[]>(farmId, '/suppliers'));

/** The day it is on a farm. */
export const todayAt = ({ timeZone }: Pick<SavedFarm, 'timeZone'>): PlainDate => dayIn(timeZone);

/** A line of a receipt, as it is told. */
export interface ToldLine {
  readonly on: PlainDate;
  readonly details: Bought;
}

/** Tells the lines of receipts together, all or none. */
export function useTellReceipt(farmId: string) {
  const { mutateAsync } = useMessage(farmId);
  return useMutation({
    mutationFn: async (lines: readonly ToldLine[]): Promise<void> => {
      const facts = lines.map(
        ({ on, details }) => ({ kind: 'bought', about: WHOLE_FARM, on, details }) as const,
      );
      await mutateAsync({ message: { does: 'tell', facts } });
    },
  });
}
