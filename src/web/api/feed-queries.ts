import { useQuery } from '@tanstack/react-query';
import type { FeedYear } from '../../../shared/plan/feed-year/feed-year.js';
import { ofFarm } from './queries.js';

export const useFeedYear = (farmId: string) => useQuery(ofFarm<FeedYear>(farmId, '/feed'));
