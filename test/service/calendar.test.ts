import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import ICAL from 'ical.js';
import type { Person } from '../../shared/farm/farm.js';
import type { WorkPlan } from '../../shared/plan/work/planned-work.js';
import { openApp, type TestApp } from '../support/app.js';
import { anyDatabase } from '../support/databases.js';
import { expectProblem } from '../support/problem.js';

interface Entry {
  readonly uid: string;
  readonly on: string;
  readonly summary: string;
  readonly isAllDay: boolean;
  readonly alarms: readonly string[];
  readonly sequence: number;
}

/** Reads a feed with a parser that has nothing to do with what wrote it (RFC 5545, ical.js). */
function entriesIn(text: string): Entry[] {
  const calendar = new ICAL.Component(ICAL.parse(text) as unknown[] as never);
  return calendar.getAllSubcomponents('vevent').map((component) => {
    const event = new ICAL.Event(component);
    return {
      uid: event.uid,
      on: event.startDate.toString(),
      summary: event.summary,
      isAllDay: event.startDate.isDate,
      alarms: component
        .getAllSubcomponents('valarm')
        .map((alarm) => String(alarm.getFirstPropertyValue('trigger'))),
      sequence: event.sequence,
    };
  });
}

describe.each([anyDatabase()])('the calendar on $name', (database) => {
  let app: TestApp;
  let path: string;
  let farm: Record<string, unknown>;
  let people: Person[];
  let batches: { id: string; name: string; arrivalDate: string }[];

  beforeAll(async () => {
    app = await openApp(database);
    const { body } = await app.api.post('/api/farms/sample').expect(201);
    farm = body as Record<string, unknown>;
    path = `/api/farms/${String(farm['id'])}`;
    people = (await app.api.get(`${path}/people`).expect(200)).body as Person[];
    batches = (await app.api.get(`${path}/batches`).expect(200)).body as typeof batches;
  });
  afterAll(() => app.close());

  const feed = async (query = ''): Promise<string> => {
    const response = await app.api.get(`${path}/calendar.ics${query}`).expect(200);
    expect(response.headers['content-type']).toMatch(/^text\/calendar/);
    return response.text;
  };
  const plan = async (): Promise<WorkPlan> =>
    (await app.api.get(`${path}/work`).expect(200)).body as WorkPlan;

  it('holds every piece of work and every event of the plan, each on a day of its own', async () => {
    const [text, season] = [await feed(), await plan()];
    const entries = entriesIn(text);
    const pieces = season.jobs.flatMap((job) => job.pieces);
    expect(entries.length).toBeGreaterThanOrEqual(pieces.length + season.events.length);
    expect(entries.every(({ isAllDay }) => isAllDay)).toBe(true);
    expect(new Set(entries.map(({ uid }) => uid)).size).toBe(entries.length);
    const coming = batches.filter(
      ({ arrivalDate }) => season.today < arrivalDate && arrivalDate <= season.to,
    );
    expect(coming.length).toBeGreaterThan(0);
    for (const { arrivalDate, name } of coming)
      expect(entries).toContainEqual(
        expect.objectContaining({ on: arrivalDate, summary: `${name}: chicks arrive` }),
      );
    // RFC 5545, 3.1: lines end in CRLF and are folded at 75 octets.
    const lines = text.split('\r\n');
    expect(text.replaceAll('\r\n', '')).not.toMatch(/[\r\n]/);
    expect(Math.max(...lines.map((line) => Buffer.byteLength(line)))).toBeLessThanOrEqual(75);
  });

  it('reminds of what cannot slip at nine on the morning before, and of nothing else', async () => {
    const entries = entriesIn(await feed());
    const arrival = entries.find(({ summary }) => summary.endsWith(': chicks arrive'))!;
    expect(arrival.alarms).toEqual(['-PT15H']);
    expect(entries.some(({ alarms }) => alarms.length === 0)).toBe(true);
  });

  it('gives each person their own work and everyone’s events', async () => {
    const season = await plan();
    const [one] = people;
    const own = entriesIn(await feed(`?person=${one!.id}`));
    const all = entriesIn(await feed());
    expect(own.length).toBeLessThan(all.length);
    const theirs = season.jobs.flatMap(({ pieces }) =>
      pieces.filter(({ personIds }) => personIds.includes(one!.id)),
    );
    const others = season.jobs.flatMap(({ pieces }) => pieces).length - theirs.length;
    expect(all.length - own.length).toBe(others);
    const problem = expectProblem(await app.api.get(`${path}/calendar.ics?person=ghost`), 400);
    expect(problem.problems![0]!.field).toBe('person');
  });

  it('moves entries instead of doubling them when an arrival moves', async () => {
    const before = entriesIn(await feed());
    const { today } = await plan();
    const [first] = batches
      .filter(({ arrivalDate }) => today < arrivalDate)
      .sort((a, b) => (a.arrivalDate < b.arrivalDate ? -1 : 1));
    const { id, ...batch } = first!;
    const later = batch.arrivalDate.replace(/\d\d$/, (day) =>
      String(Math.min(28, Number(day) + 7)).padStart(2, '0'),
    );
    await app.api
      .put(`${path}/batches/${id}`)
      .send({ ...batch, arrivalDate: later })
      .expect(200);
    const after = entriesIn(await feed());
    const arrival = (entries: Entry[]): Entry =>
      entries.find(({ uid }) => uid.includes(`event/${id}/arrival`))!;
    expect(arrival(after).uid).toBe(arrival(before).uid);
    expect(arrival(after).on).toBe(later);
    expect(arrival(after).sequence).toBeGreaterThan(arrival(before).sequence);
    // Work may be done in more pieces on its new days: each is numbered after its name.
    const uids = (entries: Entry[]): string[] => [
      ...new Set(
        entries
          .map(({ uid }) => uid.replace(/\/\d+@/, '@'))
          // Trips for feed are those of all batches together: another may make them.
          .filter((uid) => uid.includes(`batch/${id}/`) && !uid.includes('fetch-feed')),
      ),
    ];
    // What now lies beyond the end of the plan is gone; nothing comes under another name.
    expect(uids(before)).toEqual(expect.arrayContaining(uids(after)));
    expect(uids(after).length).toBeGreaterThan(0.7 * uids(before).length);
  });
});
