import { describe, expect, it } from '@jest/globals';
import { addDays, daysBetween } from '../../shared/calendar/plain-date.js';
import { taskHours } from '../../shared/plan/tasks/task-hours.js';
import { newRequest, tables } from '../support/factories.js';
import { plannedBatch } from '../support/pictures.js';

const CASES = tables.strains.flatMap((s) => s.purposes.map((purpose) => [s.id, purpose] as const));

describe('planTasks', () => {
  it.each(CASES)(
    'moves every task of %s for %s that hangs on arrival by the same seven days',
    (strainId, purpose) => {
      const batch = { strainId, purpose, arrivalDate: '2027-05-12' };
      const { tasks, changes } = plannedBatch(
        newRequest({ batch, previousArrivalDate: '2027-05-05' }),
      ).tasks;
      const hung = tasks.filter((t) => t.event === 'arrival');
      expect(hung.length).toBeGreaterThan(5);
      for (const task of hung) {
        const change = changes!.find((c) => c.id === task.id)!;
        expect(change.movedDays).toBe(7);
        expect(change.after).toBe(task.start);
        expect(change.before).toBe(addDays(task.start, -7));
      }
    },
  );

  it.each(CASES)(
    'says of every other task of %s for %s how far it moved, and leaves out those that did not',
    (strainId, purpose) => {
      const before = plannedBatch(
        newRequest({ batch: { strainId, purpose, arrivalDate: '2027-05-05' } }),
      ).tasks.tasks;
      const plan = plannedBatch(
        newRequest({
          batch: { strainId, purpose, arrivalDate: '2027-05-12' },
          previousArrivalDate: '2027-05-05',
        }),
      );
      const was = new Map(before.map((t) => [t.id, t.start]));
      const moved = plan.tasks.tasks.filter(
        // Trips for feed follow from the feed plan of the new dates: they are others, not moved.
        (t) => t.event !== 'delivery' && was.has(t.id) && was.get(t.id) !== t.start,
      );
      expect(plan.tasks.changes!.map((c) => c.id)).toEqual(moved.map((t) => t.id));
      for (const change of plan.tasks.changes!) {
        expect(change.movedDays).toBe(daysBetween(was.get(change.id)!, change.after));
      }
    },
  );

  it('says nothing of changes when the date is the same or none is given', () => {
    expect(plannedBatch(newRequest()).tasks.changes).toBeUndefined();
    expect(
      plannedBatch(newRequest({ previousArrivalDate: '2027-05-05' })).tasks.changes,
    ).toBeUndefined();
  });

  it('says which moved tasks are late now', () => {
    // Ordering is due 84 days before arrival; a week earlier makes it late on this day.
    const plan = plannedBatch(
      newRequest({
        batch: { arrivalDate: '2027-05-05' },
        previousArrivalDate: '2027-05-12',
        today: '2027-05-05',
      }),
    );
    expect(plan.tasks.late).toBeGreaterThan(0);
    expect(plan.tasks.changes!.filter((c) => c.nowLate).length).toBe(
      plan.tasks.tasks.filter((t) => t.alreadyLate && t.event !== 'delivery').length,
    );
    expect(plan.issues.map((i) => i.code)).toContain('tasks-late');
  });

  it('lists tasks by date and adds up their hours', () => {
    const { tasks, hoursInAll } = plannedBatch(newRequest()).tasks;
    const starts = tasks.map((t) => t.start);
    expect(starts).toEqual([...starts].sort());
    expect(hoursInAll.value).toBeCloseTo(
      tasks.reduce((sum, t) => sum + t.hours, 0),
      1,
    );
  });

  it('gives 200 birds the base and twice the hours of 100 (base + hours for each 100 × birds ÷ 100)', () => {
    const hours = (orderedBirds: number): number =>
      plannedBatch(newRequest({ batch: { orderedBirds } })).tasks.tasks.find(
        (t) => t.id === 'meat.clean-disinfect-and-dry-brooder',
      )!.hours;
    expect(hours(100)).toBe(2); // 1.5 + 0.5
    expect(hours(200)).toBe(2.5); // 1.5 + 2 × 0.5
  });
});

describe('taskHours', () => {
  it('opens the hours of every task to the inputs they are made of', () => {
    const plan = plannedBatch(newRequest());
    const placed = plan.birds.chicksPlaced.value;
    for (const task of plan.tasks.tasks) {
      const { value, inputs, sources } = taskHours(task, tables);
      expect(value).toBe(task.hours);
      const [base, per100, hundreds, days] = inputs.map((i) => Number(i.value)) as [
        number,
        number,
        number,
        number,
      ];
      const birds = task.event === 'processing' ? plan.leaving!.birdsToProcess : placed;
      expect(hundreds).toBeCloseTo(birds / 100, 4);
      expect(value).toBeCloseTo((base + per100 * hundreds) * days, 3);
      for (const id of sources) expect(Object.keys(tables.sources)).toContain(id);
    }
  });

  it('fetches feed once for every date it must be in by, with all the bags of that date', () => {
    const plan = plannedBatch(newRequest());
    // The feed of the first days has a task of its own.
    const trips = plan.tasks.tasks.filter((t) => t.event === 'delivery');
    const first = plan.tasks.tasks.find((t) => t.id === 'meat.fetch-starter-feed')!;
    const buyBy = plan.feed.phases.flatMap((p) => p.deliveries.map((d) => String(d.buyBy.value)));
    expect(trips.map((t) => t.start)).toEqual(
      [...new Set(buyBy)].filter((date) => plan.arrivalDate < date).sort(),
    );
    const bags = plan.feed.phases.reduce((sum, p) => sum + p.bags.value, 0);
    const named = [first, ...trips].flatMap((t) =>
      [...t.name.matchAll(/(\d+) ×/g)].map((m) => Number(m[1])),
    );
    expect(named.reduce((a, b) => a + b, 0)).toBe(bags);
  });

  it('does not let the order for chicks wait until the day before they hatch', () => {
    const { tasks, arrivalDate } = { ...plannedBatch(newRequest()).tasks, ...newRequest().batch };
    const order = tasks.find((t) => t.templateId.startsWith('meat.order-chicks'))!;
    expect(daysBetween(order.latestStart, arrivalDate)).toBeGreaterThanOrEqual(28);
  });
});
