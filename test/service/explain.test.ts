import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import { openApp, type TestApp } from '../support/app.js';
import { databases } from '../support/databases.js';
import { readExample } from '../support/examples.js';

describe.each(databases().slice(0, 1))('explaining a plan on $name', (database) => {
  let app: TestApp;
  beforeAll(async () => {
    app = await openApp(database);
  }, 60_000);
  afterAll(() => app.close());

  it('opens every number to words, symbols, inputs in the farm’s units, and sources', async () => {
    const order = readExample('order');
    const { body } = await app.api
      .post('/api/plans/explain')
      .send(order as object)
      .expect(200);
    const all = body as {
      label: string;
      value: string;
      words: string;
      symbols: string;
      sources: unknown[];
    }[];
    expect(all.length).toBeGreaterThan(150);
    expect(all.filter((e) => !e.words || !e.symbols || e.sources.length === 0)).toEqual([]);
    expect(all.find((e) => e.label === 'Feed for the whole batch')!.value).toMatch(/lb$/);
  });
});
