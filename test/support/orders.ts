import { addDays, plainDateAt } from '../../shared/calendar/plain-date.js';
import type { Batch } from '../../shared/farm/batch.js';
import type { Facility } from '../../shared/farm/facility.js';
import type { Farm, Person } from '../../shared/farm/farm.js';
import type { TestApp } from './app.js';
import { readExample } from './examples.js';
import { newBatch, newBrooder, newFarm } from './factories.js';
import { newOwnJob } from './season-factories.js';

export interface ExampleOrder {
  readonly today: string;
  readonly farm: Farm;
  readonly facilities: readonly Facility[];
  readonly people: readonly Person[];
  readonly batch: Batch;
}

/** One batch on an invented farm. */
export function exampleOrder(): ExampleOrder {
  return readExample('order') as ExampleOrder;
}

/** A date some days from today, for batches that are saved: those are planned from the real today. */
export const inDays = (days: number): string =>
  addDays(plainDateAt(Date.now(), 'America/New_York'), days);

export interface SavedFarm {
  readonly path: string;
  readonly id: string;
  readonly brooderId: string;
}

/** Saves a farm with one brooder through the API. */
export async function saveFarm({ api }: TestApp, more: Partial<Farm> = {}): Promise<SavedFarm> {
  const { id } = (await api.post('/api/farms').send(newFarm(more)).expect(201)).body as {
    id: string;
  };
  const path = `/api/farms/${id}`;
  const { body } = await api.post(`${path}/facilities`).send(brooderBody()).expect(201);
  return { path, id, brooderId: (body as { id: string }).id };
}

/** A job of one's own, saved through the API; gives the key of its work. */
export async function saveJob({ api }: TestApp, path: string, name: string): Promise<string> {
  const { id: _id, ...job } = newOwnJob({ name, dueOn: inDays(5) });
  const { body } = await api.post(`${path}/jobs`).send(job).expect(201);
  return `own/${(body as { id: string }).id}`;
}

/** A brooder as a client sends it, without an id. */
export function brooderBody(more: Partial<Facility> = {}): object {
  const { id: _id, ...body } = newBrooder(more as Parameters<typeof newBrooder>[0]);
  return body;
}

/** A batch as a client sends it, arriving in 120 days. */
export const batchBody = (more: Partial<Batch> = {}): Batch =>
  newBatch({ arrivalDate: inDays(120), ...more });
