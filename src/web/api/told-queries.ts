import type { FactOf, ToldKind } from '../../../shared/farm/told-fact.js';
import { postJson, remove } from './client.js';
import { useChange } from './queries.js';

/** What is said of a kind of fact. */
type Said<Kind extends ToldKind> = Pick<FactOf<Kind>, 'kind' | 'about' | 'on' | 'details'>;

/** Tells one thing that happened. */
export const useTell = <Kind extends ToldKind>(farmId: string) =>
  useChange((said: Said<Kind>) =>
    postJson<FactOf<Kind>[]>(`/farms/${farmId}/told`, { facts: [said] }),
  );

/** Takes back what was told, by its id. */
export const useTakeBack = (farmId: string) =>
  useChange((id: string) => remove(`/farms/${farmId}/told/${id}`));
