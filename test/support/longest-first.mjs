import Sequencer from '@jest/test-sequencer';
import { statSync } from 'node:fs';

/**
 * Files of tests that take long, longest first, so that none is begun when the others are done: a
 * fresh clone knows no times, and goes by the size of a file. Those of the page wait for a browser, so
 * that every other one is of those that wait for nothing.
 */
const LONG = [
  'page/page',
  'buying/buying-proven',
  'page/work',
  'service/openapi-fuzz',
  'page/offline',
  'seeds/everything-is-read',
  'page/pasture',
  'farm/described-rows',
  'page/two-pages',
  'published/checks',
  'page/real-use',
  'service/starting',
  'page/look',
  'seeds/check-tables',
  'page/year',
  'service/any-body',
  'page/feed',
  'service/pasture',
  'page/mishap',
  'service/work-further',
  'page/record',
  'cli/plan',
  'page/tell',
  'service/sample-days',
  'page/mix',
  'cli/backup',
  'page/costs',
  'service/reference',
  'page/trust',
  'service/household',
].map((name) => `/test/${name}.test.ts`);

export default class LongestFirst extends Sequencer {
  sort(tests) {
    const placed = tests.map((test) => {
      const place = LONG.findIndex((name) => test.path.endsWith(name));
      return { test, place: place < 0 ? LONG.length : place, bytes: statSync(test.path).size };
    });
    placed.sort((one, other) => one.place - other.place || other.bytes - one.bytes);
    return placed.map(({ test }) => test);
  }
}
