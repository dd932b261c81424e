import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import { openApp, type TestApp } from './app.js';
import { changed, problemOf, type BadValue } from './bad-values.js';
import { databases } from './databases.js';
import { saveFarm, type SavedFarm } from './orders.js';
import { expectFieldProblem } from './problem.js';

/** Where a body goes, and one that is accepted there. */
export interface Place {
  readonly what: string;
  readonly verb?: 'post' | 'put';
  readonly path: (farm: SavedFarm) => string;
  readonly valid: () => object;
  readonly bad: readonly BadValue[];
}

/**
 * For each bad value a test: put into the valid body it is a 400 that names the field, the value,
 * what is allowed and what to do, and the database is as it was.
 */
export function describeRefusals({ what, verb = 'post', path, valid, bad }: Place): void {
  describe.each(databases())(`${what} on $name`, (database) => {
    let app: TestApp;
    let farm: SavedFarm;

    beforeAll(async () => {
      app = await openApp(database);
      farm = await saveFarm(app);
    }, 60_000);
    afterAll(() => app.close());

    it.each(bad.map((each) => ({ about: each[0], each })))('refuses $about', async ({ each }) => {
      const before = await app.contents();
      const body = changed(valid(), each[1], each[2]);
      const response = await app.api[verb](path(farm)).send(body);
      expectFieldProblem(response, problemOf(each));
      expect(await app.contents()).toBe(before);
    });

    it('accepts the body that these are changes of', async () => {
      const { status, body } = await app.api[verb](path(farm)).send(valid());
      expect(body).not.toHaveProperty('problems');
      expect(status).toBeLessThan(300);
    });
  });
}
