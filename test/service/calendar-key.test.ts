import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import type { CalendarAddress } from '../../src/calendar/calendar-keys.service.js';
import { openApp, type TestApp } from '../support/app.js';
import { databases } from '../support/databases.js';
import { newFarm } from '../support/factories.js';
import { expectProblem } from '../support/problem.js';

describe.each(databases())('the address of the calendar on $name', (database) => {
  let app: TestApp;
  let path: string;
  let otherPath: string;

  const open = async (HOST: string): Promise<void> => {
    app = await openApp(database, { HOST });
    const farm = async (): Promise<string> =>
      `/api/farms/${((await app.api.post('/api/farms').send(newFarm()).expect(201)).body as { id: string }).id}`;
    [path, otherPath] = [await farm(), await farm()];
  };
  const address = async (of = path): Promise<CalendarAddress> =>
    (await app.api.get(`${of}/calendar`).expect(200)).body as CalendarAddress;

  describe('of a program open to the network', () => {
    beforeAll(() => open('0.0.0.0'), 60_000);
    afterAll(() => app.close());

    it('holds a key that nobody can guess, the same however often it is asked for', async () => {
      const all = await Promise.all(Array.from({ length: 5 }, () => address()));
      expect(new Set(all.map((each) => each.path)).size).toBe(1);
      expect(all[0]!.isKeyNeeded).toBe(true);
      // 32 bytes in base64url.
      expect(all[0]!.path).toMatch(/\/calendar\.ics\?key=[A-Za-z0-9_-]{43}$/);
      expect((await address(otherPath)).path.slice(-43)).not.toBe(all[0]!.path.slice(-43));
    });

    it('gives the calendar, and without its key or with another nothing', async () => {
      const own = (await address()).path;
      const { text } = await app.api.get(own).expect(200);
      expect(text).toContain('BEGIN:VCALENDAR');
      const other = (await address(otherPath)).path.slice(-43);
      const wrong = ['', '?key=', `?key=${other}`, `?key=${own.slice(-43, -1)}`, '?key=a&key=b'];
      for (const query of wrong) {
        const { detail } = expectProblem(await app.api.get(`${path}/calendar.ics${query}`), 403);
        expect(detail).toMatch(/Copy the new one from the page/);
      }
    });

    it('made anew, ends the old one', async () => {
      const before = (await address()).path;
      const after = (await app.api.post(`${path}/calendar/key`).expect(200))
        .body as CalendarAddress;
      expect(after.path).not.toBe(before);
      expectProblem(await app.api.get(before), 403);
      await app.api.get(after.path).expect(200);
      expect(await address()).toEqual(after);
    });

    it('is shown in no other answer', async () => {
      const key = (await address()).path.slice(-43);
      for (const each of ['/api/farms', path, `${path}/picture`, `${path}/work`]) {
        expect((await app.api.get(each).expect(200)).text).not.toContain(key);
      }
    });

    it('of a farm that is not there is not found', async () => {
      expectProblem(await app.api.get('/api/farms/none/calendar'), 404);
      expectProblem(await app.api.post('/api/farms/none/calendar/key'), 404);
      expectProblem(await app.api.get('/api/farms/none/calendar.ics'), 404);
    });
  });

  describe('of a program for this computer only', () => {
    beforeAll(() => open('127.0.0.1'), 60_000);
    afterAll(() => app.close());

    it('needs no key', async () => {
      expect(await address()).toEqual({ path: `${path}/calendar.ics`, isKeyNeeded: false });
      await app.api.get(`${path}/calendar.ics`).expect(200);
    });
  });
});
