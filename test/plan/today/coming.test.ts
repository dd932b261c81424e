import { describe, expect, it } from '@jest/globals';
import { addDays } from '../../../shared/calendar/plain-date.js';
import { comingDates } from '../../../shared/plan/today/coming.js';
import { workPlanOf } from '../../../shared/plan/work/work-plan.js';
import { newPicture } from '../../support/pictures.js';
import { newWork } from '../../support/season-factories.js';

const today = '2027-05-05';
const request = newWork({ today, work: [] });
const { keep: _keep, ...plan } = workPlanOf(request, 20);
/** Absences that begin so many days from today, and nothing else to come. */
const comingIn = (...days: number[]) => {
  const away = days.map((day) => ({ from: addDays(today, day), to: addDays(today, day + 1) }));
  const people = [{ id: 'a', name: 'Ada', away }];
  return comingDates(newPicture({ ...request, people }), { ...plan, events: [], jobs: [] }, []).map(
    ({ on }) => on,
  );
};

describe('comingDates', () => {
  it('are those of the weeks ahead', () => {
    expect(comingIn(10, 30, 200)).toEqual([addDays(today, 10), addDays(today, 30)]);
  });

  it('are the next one alone where none is near, so that a quiet farm knows what comes', () => {
    expect(comingIn(200, 300)).toEqual([addDays(today, 200)]);
    expect(comingIn()).toEqual([]);
  });
});
