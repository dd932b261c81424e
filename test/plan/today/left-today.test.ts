import { describe, expect, it } from '@jest/globals';
import type { NumberQuantity } from '../../../shared/explain/quantity.js';
import { firstOfAll, hoursLeft } from '../../../shared/plan/today/left-today.js';
import { todayHours, type TodayJob } from '../../../shared/plan/today/today-work.js';
import { tables } from '../../support/factories.js';
import { newPicture } from '../../support/pictures.js';
import { newWork } from '../../support/season-factories.js';

const job = (name: string, more: Partial<TodayJob> = {}): TodayJob => ({
  ...{ key: name, name, people: [], peopleNeeded: 1, hours: 2, state: 'open' },
  ...more,
});
const dayOf = (jobs: readonly TodayJob[], doneChores: readonly string[] = []) => {
  const child = { id: 'c', name: 'Child', isChild: true, abilities: [], away: [] };
  const request = newWork();
  const picture = { ...newPicture(request), people: [...request.people, child as never] };
  const chores = [
    { key: 'feed', name: 'Feed', hours: 0.5 },
    { key: 'eggs', name: 'Eggs', hours: 0.25, person: 'Child' },
  ].map((chore) => ({ ...chore, isDone: doneChores.includes(chore.key) }));
  return { jobs, chores, hours: todayHours(picture, tables, { chores, jobs }) };
};

describe('what is left of today', () => {
  it('only falls as work and the round are ticked off, work that was laid for no day too', () => {
    const late = job('Late', { hasNoHours: true });
    const left = [
      dayOf([job('Net'), job('Gate'), late]),
      dayOf([job('Net'), job('Gate'), job('Late', { state: 'done' })]),
      dayOf([job('Net', { state: 'done' }), job('Gate'), late]),
      dayOf([job('Net', { state: 'done' }), job('Gate'), late], ['feed']),
      dayOf([job('Net', { state: 'done' }), job('Gate'), late], ['feed', 'eggs']),
    ].map(hoursLeft);
    expect(left).toEqual([4.5, 4.5, 2.5, 2, 2]);
  });

  it('is said to be too much, with what comes first, where it is more than the hours there are', () => {
    const had = { value: 3 } as NumberQuantity;
    const net = job('Net', { forAnimals: true });
    const day = dayOf([net, job('Gate')]);
    expect(firstOfAll({ ...day, hours: { ...day.hours, had } })).toBe(
      'That is more than the 3 h there are today. First the round, then “Net”: animals depend on it. What there is no time for then can wait: “Gate”.',
    );
    const some = { value: 4.5 } as NumberQuantity;
    expect(firstOfAll({ ...day, hours: { ...day.hours, had: some } })).toBeUndefined();
  });

  it('is too much until as much is done as there are hours for, and asks for no round that was made', () => {
    const had = { value: 3 } as NumberQuantity;
    const day = dayOf([job('Net', { state: 'done' }), job('Gate')], ['feed', 'eggs']);
    expect(firstOfAll({ ...day, hours: { ...day.hours, had } })).toBe(
      'That is more than the 30 min there are still today. What there is no time for then can wait: “Gate”.',
    );
    const done = dayOf(
      [job('Net', { state: 'done' }), job('Gate', { state: 'done' })],
      ['feed', 'eggs'],
    );
    expect(firstOfAll({ ...done, hours: { ...done.hours, had } })).toBeUndefined();
  });
});
