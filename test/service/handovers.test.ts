import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import type { Test } from 'supertest';
import { addDays, plainDateAt } from '../../shared/calendar/plain-date.js';
import type { Handover } from '../../shared/farm/handover.js';
import type { Person } from '../../shared/farm/farm.js';
import type { SitterSheet } from '../../shared/plan/handover/sitter-sheet.js';
import type { WorkPlan } from '../../shared/plan/work/planned-work.js';
import { openApp, type TestApp } from '../support/app.js';
import { anyDatabase } from '../support/databases.js';
import { expectProblem } from '../support/problem.js';

describe.each([anyDatabase()])('hand-overs on $name', (database) => {
  let app: TestApp;
  let path: string;
  let today: string;
  let people: Person[];

  beforeAll(async () => {
    app = await openApp(database);
    const { body } = await app.api.post('/api/farms/sample').expect(201);
    const { id, timeZone } = body as { id: string; timeZone: string };
    path = `/api/farms/${id}`;
    today = plainDateAt(Date.now(), timeZone);
    people = (await app.api.get(`${path}/people`).expect(200)).body as Person[];
  });
  afterAll(() => app.close());

  const handover = (more: object = {}) => ({
    personId: people[0]!.id,
    from: addDays(today, 3),
    to: addDays(today, 6),
    hoursPerDay: 4,
    roundOrder: [],
    phones: [{ who: 'Vet', number: '555 0100' }],
    whereabouts: [{ what: 'Fence tester', where: 'by the door' }],
    ...more,
  });
  const plan = async (): Promise<WorkPlan> =>
    (await app.api.get(`${path}/work`).expect(200)).body as WorkPlan;
  const refused = (request: Test, field: string): Promise<void> =>
    request.expect(400).then((response) => {
      expect(expectProblem(response, 400).problems!.map((p) => p.field)).toContain(field);
    });

  it('keeps one, changes it, and makes a page for every day', async () => {
    const sent = handover();
    const { body } = await app.api.post(`${path}/handovers`).send(sent).expect(201);
    const saved = body as Handover;
    expect(saved).toEqual({ ...sent, id: saved.id, version: 1 });
    const changed = { ...sent, hoursPerDay: 2.5, notes: 'Two lines\nof notes' };
    await app.api.put(`${path}/handovers/${saved.id}`).send(changed).expect(200);
    expect((await app.api.get(`${path}/handovers/${saved.id}`).expect(200)).body).toEqual({
      ...changed,
      id: saved.id,
      version: 2,
    });
    const sheet = (await app.api.get(`${path}/handovers/${saved.id}/sheet`).expect(200))
      .body as SitterSheet;
    expect(sheet).toMatchObject({ sitter: people[0]!.name, notes: 'Two lines\nof notes' });
    expect(sheet.pages.map(({ date }) => date)).toEqual([3, 4, 5, 6].map((k) => addDays(today, k)));
    await app.api.delete(`${path}/handovers/${saved.id}`).expect(204);
    await app.api.get(`${path}/handovers/${saved.id}/sheet`).expect(404);
  });

  it('gives the others no hours on those days', async () => {
    // The days may lie in this week, the next, or both.
    const hours = async (): Promise<number> =>
      (await plan()).weeks.slice(0, 2).reduce((sum, week) => sum + week.hours, 0);
    const before = await hours();
    const { body } = await app.api.post(`${path}/handovers`).send(handover()).expect(201);
    expect(await hours()).toBeLessThan(before);
    await app.api.delete(`${path}/handovers/${(body as Handover).id}`).expect(204);
    expect(await hours()).toBe(before);
  });

  it('shows before saving what it would move, and changes nothing by it', async () => {
    const job = {
      name: 'Split wood',
      hours: 1,
      notBefore: addDays(today, 4),
      dueOn: addDays(today, 30),
      priority: 'should',
      conditions: {},
      canBeSpread: false,
      personIds: [people.find(({ isChild }, k) => 0 < k && isChild !== true)!.id],
    };
    const { body } = await app.api.post(`${path}/jobs`).send(job).expect(201);
    const before = await app.contents();
    const preview = (await app.api.post(`${path}/handovers/preview`).send(handover()).expect(200))
      .body as { moved: { key: string; to: string }[]; careGaps: { kind: string }[] };
    const moved = preview.moved.find(({ key }) => key === `own/${(body as { id: string }).id}`)!;
    expect(moved.to > addDays(today, 6)).toBe(true);
    // Whoever is in charge is there, or it is said who is missing.
    expect(preview.careGaps.some(({ kind }) => kind === 'nobody-there')).toBe(false);
    expect(await app.contents()).toBe(before);
    await app.api.delete(`${path}/jobs/${(body as { id: string }).id}`).expect(204);
  });

  it('lets somebody come in from outside', async () => {
    const { personId: _one, ...rest } = handover();
    const { body } = await app.api
      .post(`${path}/handovers`)
      .send({ ...rest, sitter: 'Neighbor' })
      .expect(201);
    expect((await plan()).people.map(({ name }) => name)).toContain('Neighbor');
    await app.api.delete(`${path}/handovers/${(body as Handover).id}`).expect(204);
  });

  it('refuses what cannot be, by field, and keeps nothing of it', async () => {
    const before = await app.contents();
    const post = (more: object): Test => app.api.post(`${path}/handovers`).send(handover(more));
    await refused(post({ to: addDays(today, 1) }), 'to');
    await refused(post({ to: addDays(today, 60) }), 'to');
    await refused(post({ from: addDays(today, -363), to: addDays(today, -360) }), 'to');
    await refused(post({ personId: 'ghost' }), 'personId');
    const child = people.find(({ isChild }) => isChild === true)!;
    await refused(post({ personId: child.id }), 'personId');
    await refused(post({ hoursPerDay: 25 }), 'hoursPerDay');
    await refused(
      post({ ...{ personId: undefined, sitter: 'Neighbor' }, hoursPerDay: undefined }),
      'hoursPerDay',
    );
    await refused(post({ phones: [{ who: '', number: '1' }] }), 'phones.0.who');
    await refused(post({ personId: undefined }), 'sitter');
    expect(await app.contents()).toBe(before);
  });
});
