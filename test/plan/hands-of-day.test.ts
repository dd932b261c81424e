import { describe, expect, it } from '@jest/globals';
import type { Person } from '../../shared/farm/farm.js';
import { planContext } from '../../shared/plan/plan-context.js';
import { handsOn } from '../../shared/plan/hands-of-day.js';
import { newRequest } from '../support/factories.js';

const weekday = (id: string, hours: number, when: Partial<Person>): Person => ({
  ...{ id, name: id.toUpperCase(), away: [], hoursByWeekday: Array<number>(7).fill(hours) },
  ...when,
});
const from = (hour: number) => ({ weekday: hour, weekend: 8 });
const allDay = (id: string, hours: number) => weekday(id, hours, { byDay: 'at-home' });
const mornings = (id: string) => weekday(id, 4, { byDay: 'out-pm', startH: from(8) });
const afternoons = (id: string) => weekday(id, 4, { byDay: 'out-am', startH: from(13) });
const evenings = (id: string, hours = 2) => weekday(id, hours, { byDay: 'out', startH: from(17) });

const TUESDAY = '2027-06-29';
const DECEMBER = '2027-12-07';
/** Who is at it, from when. */
const day = (people: Person[], date = TUESDAY) => {
  const { names, beginsH, hours, chores } = handsOn(planContext(newRequest({ people })), date);
  return { names, beginsH, hours: hours + chores };
};

describe('the hands of a weekday', () => {
  it('are those who are home in the morning, also where they go out at noon', () => {
    expect(day([allDay('a', 4), mornings('b')])).toEqual({
      names: ['A', 'B'],
      beginsH: 8,
      hours: 8,
    });
  });

  it('are not of one who has the morning and one who has the evening together', () => {
    expect(day([mornings('a'), evenings('b')])).toEqual({ names: ['A'], beginsH: 8, hours: 4 });
  });

  it('are those who come home with hours rather than one at home with hardly any', () => {
    const later = day([allDay('a', 0.5), evenings('b', 4)]);
    expect(later).toMatchObject({ names: ['A', 'B'], beginsH: 17 });
  });

  it('begin when all are home, where all are out', () => {
    expect(day([evenings('a'), evenings('b')])).toEqual({
      names: ['A', 'B'],
      beginsH: 17,
      hours: 4,
    });
    expect(day([afternoons('a'), afternoons('b')])).toMatchObject({ beginsH: 13, hours: 8 });
  });

  it('have only the light that is left after they come home', () => {
    expect(day([evenings('a')], DECEMBER).hours).toBeLessThan(1);
  });

  it('are all of them from the morning on at weekends', () => {
    const found = day([mornings('a'), evenings('b')], '2027-06-26');
    expect(found).toMatchObject({ names: ['A', 'B'], beginsH: 8 });
  });
});
