import { afterAll, afterEach, beforeAll, describe, expect, it, jest } from '@jest/globals';
import { addDays } from '../../shared/calendar/plain-date.js';
import type { Handover } from '../../shared/farm/handover.js';
import type { TickedToday } from '../../shared/plan/today/today.js';
import type { WorkPlan } from '../../shared/plan/work/planned-work.js';
import { loadTables, readSeed } from '../../src/reference/load-tables.js';
import { sampleOnDay } from '../../src/sample-farm/sample-on-day.js';
import { readSample } from '../../src/sample-farm/sample-seed.js';
import { openApp, type TestApp } from '../support/app.js';
import { databases } from '../support/databases.js';
import { ServiceDate } from '../support/outside.js';

const EVERY_DAY = Array.from({ length: 2 * 366 }, (_, k) => addDays('2027-01-01', k));
/** Where a year is most unlike itself: deep winter, chicks in two boxes, processing and the week after it, the last grass. */
const LOOKED_AT = ['01-15', '04-01', '05-20', '07-10', '08-01', '08-15', '10-01', '10-28'];

describe('the sample farm on every day of two years, one of them a leap year', () => {
  const seed = readSample(readSeed('sample-farm.json'), 'own');
  const { jobSets } = loadTables();
  const made = EVERY_DAY.map((today) => ({
    ...sampleOnDay(seed, { today, jobSets, suffix: 'own' }),
    today,
  }));

  it('has hens that lay, birds that grow or come within half a year, and each name once', () => {
    for (const { today, batches } of made) {
      const laying = batches.filter(
        ({ purpose, arrivalDate }) =>
          purpose === 'layers' &&
          addDays(today, -480) < arrivalDate &&
          arrivalDate < addDays(today, -150),
      );
      expect({ today, laying: laying.length }).not.toEqual({ today, laying: 0 });
      const next = batches.filter(({ arrivalDate }) => today < arrivalDate);
      expect(next.map(({ arrivalDate }) => arrivalDate).sort()[0]! < addDays(today, 250)).toBe(
        true,
      );
      expect(new Set(batches.map(({ name }) => name)).size).toBe(batches.length);
    }
  });

  it('gets no chicks between fall and spring, and has no meat birds outdoors in winter', () => {
    for (const { batches } of made) {
      for (const { purpose, arrivalDate } of batches) {
        const monthDay = arrivalDate.slice(5);
        expect('03-15' < monthDay && monthDay < '08-15').toBe(true);
        if (purpose === 'meat') expect('05-01' < monthDay).toBe(true);
      }
    }
  });

  it('goes away within weeks, with somebody in charge, and never while chicks are new', () => {
    for (const { today, handover, people, batches } of made) {
      const { from, to } = handover;
      expect(addDays(today, 10) < from && from < addDays(today, 60)).toBe(true);
      expect(handover.awayIds).toEqual(people.map(({ id }) => id));
      for (const { arrivalDate } of batches)
        expect(to < arrivalDate || addDays(arrivalDate, 7) < from).toBe(true);
    }
  });

  it('was told nothing of a day to come, and did all of its own work that was due', () => {
    for (const { today, facts, jobs } of made) {
      expect(facts.filter(({ on }) => today < on)).toEqual([]);
      const done = new Set(facts.map(({ about }) => about));
      const open = jobs.filter(({ dueOn, id }) => dueOn < today && !done.has(`own/${id}`));
      expect(open).toEqual([]);
    }
  });
});

describe('the first screen of the sample farm', () => {
  let app: TestApp;
  beforeAll(async () => {
    app = await openApp(databases({})[0]!);
  }, 60_000);
  afterEach(() => {
    jest.restoreAllMocks();
  });
  afterAll(() => app.close());

  it.each(LOOKED_AT)('has animals, work, a date to come, and no stop on %s', async (monthDay) => {
    const today = `2027-${monthDay}`;
    jest.spyOn(ServiceDate, 'now').mockReturnValue(Date.parse(`${today}T16:00:00Z`));
    const { body } = await app.api.post('/api/farms/sample').expect(201);
    const farm = `/api/farms/${(body as { id: string }).id}`;
    const day = (await app.api.get(`${farm}/today`).expect(200)).body as TickedToday;
    expect(day.date).toBe(today);
    const batches = day.animals.flatMap((each) => (each.kind === 'batch' ? [each] : []));
    expect(batches.some(({ eggs }) => 0 < Number(eggs?.value))).toBe(true);
    expect(batches.some(({ stage, next }) => stage === 'coming' && next)).toBe(true);
    expect(batches.filter(({ wasToLeave }) => wasToLeave).map(({ name }) => name)).toEqual([]);
    const herd = day.animals.flatMap((each) => (each.kind === 'herd' ? [each] : []));
    expect(herd.every(({ on, hay }) => on ?? hay)).toBe(true);
    expect(herd).toHaveLength(1);
    expect(day.chores.length).toBeGreaterThan(1);
    expect(day.attention.filter(({ level }) => level === 'stop')).toEqual([]);
    const work = (await app.api.get(`${farm}/work`).expect(200)).body as WorkPlan;
    expect(work.jobs.filter(({ alreadyLate }) => alreadyLate).map(({ key }) => key)).toEqual([]);
    const [handover] = (await app.api.get(`${farm}/handovers`).expect(200)).body as Handover[];
    expect(handover!.sitter).toBe('Nell');
  });
});
