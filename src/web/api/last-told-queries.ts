import { useQuery } from '@tanstack/react-query';
import { addDays, type PlainDate } from '../../../shared/calendar/plain-date.js';
import type { ToldKind } from '../../../shared/farm/told-fact.js';
import {
  isToldAlike,
  lastTold,
  type Alike,
  type LastTold,
} from '../../../shared/plan/today/last-told.js';
import { ofFarm, useTables } from './queries.js';
import type { ToldPage } from './record-queries.js';

/** More than is told of one kind in a year on most places; of more, the newest are read. */
const MOST = 1000;

/** What was told last of a kind, read while the next of it is told; nothing of kinds that are not alike. */
export function useLastTold(
  farmId: string,
  kind: ToldKind | undefined,
  today: PlainDate,
): readonly LastTold[] {
  const judged = useTables().data?.judgements.alarms;
  const isAsked = judged !== undefined && kind !== undefined && isToldAlike(kind);
  const days = kind === 'bought' ? judged?.boughtReadDays : judged?.toldReadDays;
  const query = new URLSearchParams({
    ...(isAsked && days ? { kind, from: addDays(today, -days.value) } : {}),
    take: String(MOST),
  });
  const { data } = useQuery({
    ...ofFarm<ToldPage>(farmId, `/told?${query.toString()}`),
    enabled: isAsked,
  });
  // The newest come first.
  return isAsked && data ? lastTold(data.facts.toReversed() as Alike[]) : [];
}
