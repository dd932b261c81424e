import { useQuery } from '@tanstack/react-query';
import type { Supplier } from '../../../shared/farm/supplier.js';
import type { FeedYear } from '../../../shared/plan/feed-year/feed-year.js';
import { ofFarm } from './queries.js';

export const useFeedYear = (farmId: string) => useQuery(ofFarm<FeedYear>(farmId, '/feed'));

export const useSuppliers = (farmId: string) => useQuery(ofFarm<Supplier[]>(farmId, '/suppliers'));
