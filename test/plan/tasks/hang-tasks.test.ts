import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { addDays, daysBetween } from '../../../shared/calendar/plain-date.js';
import type { PlanEvent } from '../../../shared/plan/tasks/event.js';
import { hangTasks, lateTasks, type TasksFor } from '../../../shared/plan/tasks/hang-tasks.js';
import { taskHours } from '../../../shared/plan/tasks/task-hours.js';
import type { Task } from '../../../shared/plan/tasks/task.js';
import type { EventKind, TaskTemplate } from '../../../shared/tables/task-template.js';
import { tables } from '../../support/factories.js';

const template = (more: Partial<TaskTemplate> & { id: string }): TaskTemplate => ({
  name: more.id,
  event: 'arrival',
  offsetDays: 0,
  lengthDays: 1,
  hoursBase: 1,
  hoursPerUnit: 0,
  unit: 'ten-head',
  isDaily: false,
  waitsFor: [],
  ifLate: 'trouble',
  sources: ['HERD_TASKS'],
  mark: 'estimate',
  ...more,
});

const of = (more: Partial<TasksFor> = {}): TasksFor => ({
  id: 'cows',
  today: '2027-01-01',
  asksFor: () => true,
  counts: { 'ten-head': 8, acre: 3, 'hundred-birds': 60 },
  idOf: (id, { number }) => (number === undefined ? id : `${number}.${id}`),
  ...more,
});

const byId = (tasks: readonly Task[], id: string): Task => tasks.find((task) => task.id === id)!;

/** Events with at most one day of each kind but calvings and deliveries, as a farm has them. */
const anyEvents = fc
  .record({
    day: fc.integer({ min: 0, max: 900 }),
    apart: fc.array(fc.integer({ min: 0, max: 120 }), { minLength: 7, maxLength: 7 }),
    calvings: fc.integer({ min: 0, max: 3 }),
  })
  .map(({ day, apart, calvings }): PlanEvent[] => {
    const on = (k: number): string => addDays('2027-01-01', day + apart[k]!);
    const once: readonly EventKind[] = ['arrival', 'move-out', 'processing', 'turn-out'];
    return [
      ...once.map((kind, k) => ({ kind, date: on(k) })),
      ...Array.from({ length: calvings }, (_, k): PlanEvent => ({
        kind: 'calving',
        number: k + 1,
        date: on(4 + k),
      })),
    ];
  });

const real = [
  ...tables.taskTemplates.filter((t) => t.purpose === 'meat' && t.processing !== 'hired'),
  ...tables.herdTaskTemplates,
];

/** Whether one of some events is near enough for what is done once for both. */
const isOnceBefore = (
  { onceWithinDays: days }: TaskTemplate,
  event: PlanEvent,
  before: readonly PlanEvent[],
): boolean =>
  days !== undefined &&
  before.some(
    ({ kind, date }) => kind === event.kind && Math.abs(daysBetween(date, event.date)) <= days,
  );

describe('work on demand', () => {
  it('waits for its cause, and is not late when its first day is past', () => {
    const templates = [template({ id: 'due' }), template({ id: 'pull-out', onDemand: true })];
    const events: PlanEvent[] = [{ kind: 'arrival', date: '2027-01-01' }];
    const tasks = hangTasks(templates, events, of({ today: '2027-01-20' }));
    expect(byId(tasks, 'due').alreadyLate).toBe(true);
    expect(byId(tasks, 'pull-out').alreadyLate).toBe(false);
  });
});

describe('work that is done once for several days', () => {
  const processing = (date: string, birds: number, number: number): PlanEvent => ({
    ...{ kind: 'processing', date, number, what: `${birds} birds` },
    counts: { 'hundred-birds': birds },
  });
  const once = (days: number): TaskTemplate =>
    template({
      ...{ id: 'ice', event: 'processing', offsetDays: -1, onceWithinDays: days },
      ...{ hoursPerUnit: 1, unit: 'hundred-birds' },
    });

  it('is for the animals of all of them', () => {
    const events = [processing('2027-06-19', 40, 1), processing('2027-06-20', 30, 2)];
    const tasks = hangTasks([once(1)], events, of());
    expect(tasks.map(({ start, hours, units }) => [start, hours, units])).toEqual([
      ['2027-06-18', 1.7, 0.7],
    ]);
  });

  it('sets tables up once for weekends in a row, and brings ice for each', () => {
    const events = [processing('2027-06-19', 40, 1), processing('2027-06-26', 40, 2)];
    const ofDays = tables.taskTemplates.filter(
      ({ id, processing: by }) => /^processing\.(set-up|make-or)/.test(id) && by === 'home',
    );
    const tasks = hangTasks(ofDays, events, of());
    expect(tasks.map(({ templateId, start }) => `${templateId.slice(11, 17)} ${start}`)).toEqual([
      'make-o 2027-06-18',
      'set-up 2027-06-18',
      'make-o 2027-06-25',
    ]);
    for (const { earliestStart, id } of tasks)
      if (/make-or/.test(id)) expect(earliestStart).toBeUndefined();
  });
});

describe('hangTasks', () => {
  it('hangs every template once on each event of its kind, under an id of its own', () => {
    fc.assert(
      fc.property(anyEvents, (events) => {
        const tasks = hangTasks(real, events, of());
        const wanted = events.flatMap((event, k) =>
          real.filter((t) => t.event === event.kind && !isOnceBefore(t, event, events.slice(0, k))),
        );
        expect(tasks.map((t) => t.templateId)).toEqual(wanted.map((t) => t.id));
        expect(new Set(tasks.map((t) => t.id)).size).toBe(tasks.length);
        const ids = new Set(tasks.map((t) => t.id));
        for (const { waits } of tasks) for (const wait of waits) expect(ids).toContain(wait.id);
      }),
      { numRuns: 40 },
    );
  });

  it('moves all tasks by as many days as their events move, under the same ids', () => {
    fc.assert(
      fc.property(anyEvents, fc.integer({ min: -200, max: 200 }), (events, days) => {
        const moved = events.map((event) => ({ ...event, date: addDays(event.date, days) }));
        const there = hangTasks(real, moved, of());
        const here = hangTasks(real, events, of());
        expect(there.map(({ id, hours, spareDays }) => ({ id, hours, spareDays }))).toEqual(
          here.map(({ id, hours, spareDays }) => ({ id, hours, spareDays })),
        );
        expect(there.map(({ start, end, latestStart }) => [start, end, latestStart])).toEqual(
          here.map((t) => [t.start, t.end, t.latestStart].map((date) => addDays(date, days))),
        );
      }),
      { numRuns: 40 },
    );
  });

  it('lets a task wait for the one of the same calving, not of another', () => {
    const table = [
      template({ id: 'bed', event: 'calving', offsetDays: -5 }),
      template({ id: 'watch', event: 'calving', offsetDays: -2, waitsFor: ['bed'] }),
    ];
    const tasks = hangTasks(
      table,
      [
        { kind: 'calving', number: 1, date: '2027-04-01' },
        { kind: 'calving', number: 2, date: '2027-05-01' },
      ],
      of(),
    );
    expect(byId(tasks, '1.watch').waits).toEqual([{ id: '1.bed', days: 0 }]);
    expect(byId(tasks, '2.watch').waits).toEqual([{ id: '2.bed', days: 0 }]);
    expect(byId(tasks, '2.bed').latestStart).toBe('2027-04-29'); // 2.watch may slip to 30 April
  });

  it('lets a task wait for one that hangs on another event, with the days between', () => {
    const table = [
      template({ id: 'clean', offsetDays: -7 }),
      template({
        id: 'lime',
        event: 'move-out',
        waitsFor: ['clean'],
        waitDays: { clean: 2 },
        mostWaitDays: { clean: 4 },
      }),
    ];
    const arrival: PlanEvent = { kind: 'arrival', date: '2027-05-05' };
    const move: PlanEvent = { kind: 'move-out', date: '2027-05-25' };
    expect(byId(hangTasks(table, [arrival, move], of()), 'lime').waits).toEqual([
      { id: 'clean', days: 2, atMostDays: 4 },
    ]);
    // Without an arrival there is nothing to wait for, and nothing is named that is not there.
    const alone = byId(hangTasks(table, [move], of()), 'lime');
    expect(alone.waits).toEqual([]);
    expect(alone.waitsFor).toEqual([]);
  });

  it('counts base and units once, or on each day of daily work up to the event it lasts until', () => {
    const table = [
      template({ id: 'once', hoursBase: 2, hoursPerUnit: 0.5, lengthDays: 4 }),
      template({
        ...{ id: 'daily', hoursBase: 0.2, hoursPerUnit: 0.5, isDaily: true, offsetDays: 1 },
        until: 'move-out',
      }),
    ];
    const tasks = hangTasks(
      table,
      [
        { kind: 'arrival', date: '2027-05-01' },
        { kind: 'move-out', date: '2027-05-12' },
      ],
      of(),
    );
    expect(byId(tasks, 'once').hours).toBe(2.4); // 2 + 0.5 × 8 head ÷ 10
    const daily = byId(tasks, 'daily');
    expect([daily.days, daily.hours, daily.end]).toEqual([10, 6, '2027-05-11']); // (0.2 + 0.4) × 10
  });

  it('lets work go on as long as it says where the event it lasts until does not come', () => {
    const { lengthDays: _, ...open } = template({ id: 'daily', isDaily: true, until: 'move-out' });
    const arrival: PlanEvent = { kind: 'arrival', date: '2027-05-01' };
    const [daily] = hangTasks([{ ...open, lengthDays: 5 }], [arrival], of());
    expect([daily!.days, daily!.end]).toEqual([5, '2027-05-05']);
    expect(() => hangTasks([open], [arrival], of())).toThrow(/daily goes on until move-out/);
  });

  it('leaves one walk of the grass where the days of those before it are gone', () => {
    const walks = (today: string): (string | undefined)[] =>
      hangTasks(tables.herdTaskTemplates, [{ kind: 'turn-out', date: '2027-05-08' }], of({ today }))
        .filter(({ templateId, isOver }) => templateId.includes('measure-grass') && !isOver)
        .filter(({ start }) => start < '2027-05-08')
        .map(({ name }) => name);
    expect(walks('2027-04-01')).toHaveLength(3);
    expect(walks('2027-05-03')).toEqual(['Measure grass, one week before turn-out']);
  });

  it('names what comes with an event', () => {
    const [trip] = hangTasks(
      [template({ id: 'fetch', name: 'Fetch feed', event: 'delivery' })],
      [{ kind: 'delivery', number: 1, date: '2027-05-01', what: '3 × starter' }],
      of(),
    );
    expect(trip!.name).toBe('Fetch feed: 3 × starter');
  });

  it('refuses a template that counts what is not there', () => {
    expect(() =>
      hangTasks(
        [template({ id: 'fence', unit: 'acre' })],
        [{ kind: 'arrival', date: '2027-05-01' }],
        of({ counts: { 'hundred-birds': 60 } }),
      ),
    ).toThrow(/fence counts acre/);
  });
});

describe('taskHours', () => {
  it('opens the hours of any task to base, amount, units and days', () => {
    const tasks = hangTasks(
      tables.herdTaskTemplates,
      [{ kind: 'turn-out', date: '2027-05-01' }],
      of(),
    );
    expect(tasks.length).toBeGreaterThan(10);
    for (const task of tasks) {
      const { value, inputs, sources } = taskHours(task, tables);
      const [base, perUnit, units, days] = inputs.map((each) => Number(each.value));
      expect(value).toBe(task.hours);
      expect(value).toBeCloseTo((base! + perUnit! * units!) * days!, 3);
      const of = tables.herdTaskTemplates.find(({ id }) => id === task.templateId)!;
      expect(sources).toEqual(['ARITHMETIC', ...of.sources]);
    }
  });
});

describe('lateTasks', () => {
  const words = { one: 'task is', many: 'tasks are' };
  const tasksOn = (today: string): Task[] =>
    hangTasks(
      ['Ant', 'Bee', 'Cow', 'Dog'].map((name) => template({ id: name, name })),
      [{ kind: 'arrival', date: '2027-05-01' }],
      of({ today }),
    );

  it('says nothing while none is late', () => {
    expect(lateTasks(tasksOn('2027-05-01'), 'late', words)).toEqual([]);
  });

  it('counts them all and names three', () => {
    expect(lateTasks(tasksOn('2027-05-02'), 'late', words)).toEqual([
      { level: 'act', code: 'late', text: '4 tasks are already late: ant; bee; cow ….' },
    ]);
    expect(lateTasks(tasksOn('2027-05-02').slice(1, 2), 'late', words)[0]!.text).toBe(
      '1 task is already late: bee.',
    );
  });
});
