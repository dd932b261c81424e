import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import { addDays, daysBetween, plainDateAt } from '../../shared/calendar/plain-date.js';
import type { Person } from '../../shared/farm/farm.js';
import type { OwnJob } from '../../shared/farm/job.js';
import type { Saved } from '../../shared/farm/saved.js';
import type { ToldFact } from '../../shared/farm/told-fact.js';
import type { WorkPlan } from '../../shared/plan/work/planned-work.js';
import { openApp, type TestApp } from '../support/app.js';
import { databases } from '../support/databases.js';
import { saveJob } from '../support/orders.js';
import { expectProblem } from '../support/problem.js';
import type { Test } from 'supertest';

const LAST_YEAR = addDays(plainDateAt(Date.now(), 'UTC'), -364);

/** What is told of a line that was bought. */
const KEYS = ['what', 'name', 'amount', 'eachKg', 'money'];

describe.each(databases())('the work on $name', (database) => {
  let app: TestApp;
  let path: string;
  let id: string;
  let today: string;

  beforeAll(async () => {
    app = await openApp(database);
    const { body } = await app.api.post('/api/farms/sample').expect(201);
    ({ id } = body as { id: string });
    path = `/api/farms/${id}`;
    today = plainDateAt(Date.now(), (body as { timeZone: string }).timeZone);
  });
  afterAll(() => app.close());

  const bed = (more: object = {}) => ({
    name: 'Dig the long bed',
    hours: 1,
    dueOn: addDays(today, 20),
    priority: 'should',
    conditions: { daylight: false },
    canBeSpread: true,
    ...more,
  });
  const plan = async (): Promise<WorkPlan> =>
    (await app.api.get(`${path}/work`).expect(200)).body as WorkPlan;
  const planned = async (job: OwnJob) =>
    (await plan()).jobs.find(({ key }) => key === `own/${job.id}`);
  const save = async (more: object = {}): Promise<OwnJob> =>
    (await app.api.post(`${path}/jobs`).send(bed(more)).expect(201)).body as OwnJob;

  it('plans the work of batches and herds beside the household’s own', async () => {
    const job = await save();
    const { jobs, people, weeks, chores } = await plan();
    expect(new Set(jobs.map((each) => each.belongsTo?.kind))).toEqual(
      new Set(['batch', 'herd', undefined]),
    );
    const there = (await app.api.get(`${path}/people`)).body as {
      id: string;
      name: string;
      isChild?: boolean;
    }[];
    expect(people.map(({ name }) => name)).toEqual(
      expect.arrayContaining(there.map(({ name }) => name)),
    );
    // The first week may have begun before today: the next is whole.
    // Two grown-ups give 33 and 30.5 hours, and nobody is away before the week after; a child
    // counts with the rounds that it does.
    const children = new Set(there.filter(({ isChild }) => isChild).map(({ id }) => id));
    const monday = daysBetween(today, weeks[1]!.from);
    const ofChildren = chores
      .slice(monday, monday + 7)
      .flat()
      .filter(({ personId }) => children.has(personId ?? ''))
      .reduce((sum, { hours }) => sum + hours, 0);
    expect(weeks[1]!.hours).toBeCloseTo(63.5 + ofChildren, 1);
    const [piece, ...more] = (await planned(job))!.pieces;
    expect(piece).toMatchObject({ hours: 1, personIds: [expect.any(String)] });
    expect(piece!.date <= job.dueOn!).toBe(true);
    expect(more).toEqual([]);
    await app.api.delete(`${path}/jobs/${job.id}`).expect(204);
  });

  it('keeps a job, changes it, and gives it back as it was sent', async () => {
    const job = await save();
    expect((await app.api.get(`${path}/jobs/${job.id}`).expect(200)).body).toEqual({
      ...bed(),
      id: job.id,
      version: 1,
    });
    await app.api
      .put(`${path}/jobs/${job.id}`)
      .send(bed({ hours: 3 }))
      .expect(200);
    const [row] = await app.rows('jobs', { id: job.id });
    expect(JSON.parse(String(row!['details']))).toMatchObject({ hours: 3 });
    await app.api.delete(`${path}/jobs/${job.id}`).expect(204);
    expect(await app.rows('jobs', { id: job.id })).toEqual([]);
  });

  it('ticks off, opens again and puts off', async () => {
    const job = await save();
    const key = `own/${job.id}`;
    const mark = (body: object) => app.api.put(`${path}/work/progress`).send({ key, ...body });
    await mark({ doneOn: today, hours: 1.5 }).expect(200);
    expect(await planned(job)).toBeUndefined();
    await mark({}).expect(200);
    // It is planned again, whenever a full week has room for it, and a day later once it is put off.
    const [again] = (await planned(job))!.pieces;
    expect(again).toMatchObject({ hours: 1 });
    const later = addDays(again!.date, 1);
    await mark({ notBefore: later }).expect(200);
    const [put] = (await planned(job))!.pieces;
    expect(put).toMatchObject({ hours: 1 });
    expect(put!.date >= later).toBe(true);
    await mark({}).expect(200);
    const told = await app.rows('told_facts', { farmId: id, about: key });
    // What was taken back is history, not gone.
    expect(told.map(({ takenBackAt }) => takenBackAt)).toEqual([
      expect.any(String),
      expect.any(String),
    ]);
    await app.api.delete(`${path}/jobs/${job.id}`).expect(204);
  });

  it('takes a trip that is ticked off as bought as planned, once, until that is undone', async () => {
    const trip = (await plan()).jobs.find(({ buys }) => buys)!;
    const tick = (said: object) =>
      app.api
        .put(`${path}/work/progress`)
        .send({ key: trip.key, ...said })
        .expect(200);
    const bought = async (): Promise<ToldFact[]> => {
      const asked = app.api.get(`${path}/told`).query({ kind: 'bought', about: trip.key });
      return ((await asked.expect(200)).body as { facts: ToldFact[] }).facts;
    };
    await tick({ doneOn: today });
    const byName = (lines: readonly object[]) =>
      new Set(lines.map((line) => JSON.stringify(line, KEYS)));
    expect(byName((await bought()).map(({ details }) => details))).toEqual(
      byName(trip.buys!.lines),
    );
    expect((await plan()).jobs.map(({ key }) => key)).not.toContain(trip.key);
    await tick({ hours: 2 });
    await tick({ doneOn: addDays(today, -1) });
    expect(await bought()).toHaveLength(trip.buys!.lines.length);
    // Told of the trip by itself, it stays whatever becomes of the tick.
    const byHand = { what: 'minerals', name: 'Salt', amount: 1 };
    const fact = { kind: 'bought', about: trip.key, on: today, details: byHand };
    await app.api
      .post(`${path}/told`)
      .send({ facts: [fact] })
      .expect(201);
    await tick({ undo: true });
    await tick({ undo: true });
    expect((await bought()).map(({ details }) => details)).toEqual([byHand]);
  });

  it('plans by the hours that people say they have', async () => {
    const people = (await app.api.get(`${path}/people`)).body as Saved<Person>[];
    for (const { id: personId, version: _version, ...person } of people) {
      await app.api
        .put(`${path}/people/${personId}`)
        .send({ ...person, hoursByWeekday: [0, 0, 0, 0, 0, 0, 0] })
        .expect(200);
    }
    const job = await save();
    expect(await planned(job)).toMatchObject({
      pieces: [],
      why: 'Nobody has hours on its suitable days.',
    });
    for (const { id: personId, version: _version, ...person } of people)
      await app.api.put(`${path}/people/${personId}`).send(person).expect(200);
    expect((await planned(job))!.pieces).toHaveLength(1);
    await app.api.delete(`${path}/jobs/${job.id}`).expect(204);
  });

  it('keeps when the hours of a day begin, and takes the usual again', async () => {
    const [{ id: personId, version: _version, startH: _own, ...person }] = (
      await app.api.get(`${path}/people`)
    ).body;
    const at = `${path}/people/${personId}`;
    const startH = { weekday: 9.5, weekend: 23 + 59 / 60 };
    await app.api
      .put(at)
      .send({ ...person, startH })
      .expect(200);
    expect((await app.api.get(at)).body).toMatchObject({ name: person.name, startH });
    await app.api.put(at).send(person).expect(200);
    expect((await app.api.get(at)).body).not.toHaveProperty('startH');
  });

  it('forgets the work with its farm', async () => {
    const other = (await app.api.post('/api/farms/sample')).body as { id: string };
    const at = `/api/farms/${other.id}`;
    const key = await saveJob(app, at, 'Bed');
    await app.api.put(`${at}/work/progress`).send({ key, doneOn: today }).expect(200);
    await app.api.delete(at).expect(204);
    expect(await app.rows('jobs', { farmId: other.id })).toEqual([]);
    expect(await app.rows('told_facts', { farmId: other.id })).toEqual([]);
  });

  describe('refuses, and changes nothing', () => {
    it.each([
      ['a last day before the day it is due', { noUseAfter: '2020-01-01' }, 'noUseAfter'],
      ['a first day after the day it is due', { notBefore: '2099-01-01' }, 'notBefore|dueOn'],
      [
        'a day it was due a year ago',
        { notBefore: undefined, dueOn: LAST_YEAR, hours: 500 },
        'dueOn',
      ],
      ['no hours', { hours: 0 }, 'hours'],
      ['somebody who is not there', { personIds: ['nobody'] }, 'personIds.0'],
      [
        'more people than there are',
        { conditions: { peopleNeeded: 9 } },
        'conditions.peopleNeeded',
      ],
      ['a wait for what is not there', { waitsForId: 'nothing' }, 'waitsForId'],
      ['an priority of its own', { priority: 'urgent' }, 'priority'],
    ])('%s', async (_, more, field) => {
      const before = await app.contents();
      const { status, body } = await app.api.post(`${path}/jobs`).send(bed(more));
      expect(status).toBe(400);
      const fields = (body as { problems: { field: string }[] }).problems.map((p) => p.field);
      expect(fields.some((each) => new RegExp(`^(${field})$`).test(each))).toBe(true);
      expect(await app.contents()).toBe(before);
    });

    it('jobs that would wait for each other in a circle', async () => {
      const first = await save({ name: 'Till' });
      const second = await save({ name: 'Sow', waitsForId: first.id });
      await expectRefusal(
        app.api.put(`${path}/jobs/${first.id}`).send(bed({ name: 'Till', waitsForId: second.id })),
        'waitsForId',
        'conflict',
      );
      for (const job of [second, first]) await app.api.delete(`${path}/jobs/${job.id}`).expect(204);
    });

    it('work ticked off on a day to come', async () => {
      await expectRefusal(
        app.api.put(`${path}/work/progress`).send({ key: 'own/x', doneOn: addDays(today, 3) }),
        'doneOn',
        'out-of-bounds',
      );
    });

    it('hours of a day that are no hours of a day', async () => {
      await expectRefusal(
        app.api
          .post(`${path}/people`)
          .send({ name: 'Adult C', away: [], hoursByWeekday: [1, 2, 3, 4, 5, 6, 25] }),
        'hoursByWeekday.6',
        'out-of-bounds',
      );
    });

    it('hours that begin at no time of the clock', async () => {
      const person = { name: 'Adult C', away: [], startH: { weekday: 24, weekend: 8 } };
      await expectRefusal(
        app.api.post(`${path}/people`).send(person),
        'startH.weekday',
        'out-of-bounds',
      );
    });
  });
});

async function expectRefusal(sent: Test, field: string, code: string): Promise<void> {
  const { problems } = expectProblem(await sent, 400);
  expect(problems).toContainEqual(expect.objectContaining({ field, code }));
}
