import { describe, expect, it } from '@jest/globals';
import { addDays } from '../../shared/calendar/plain-date.js';
import type { NamedBatch } from '../../shared/farm/picture.js';
import { planBatch, type BatchPlan } from '../../shared/plan/batch-plan.js';
import { newBatch, newBrooder, newRequest, tables } from '../support/factories.js';
import { newPicture } from '../support/pictures.js';

const DUE = '2027-05-05';
const { farm, climate } = newRequest({});

/** A batch that was due on a day and was told to have come on another, so many days ago. */
function cameOn(came: string, due: string, ago: number): BatchPlan {
  const batch: NamedBatch = {
    ...newBatch({ brooderId: 'brooder', orderedBirds: 60 }),
    ...{ id: 'c', arrivalDate: due },
  };
  const picture = newPicture({
    ...{ farm, climate, today: addDays(came, ago), facilities: [newBrooder()], batches: [batch] },
    headChanges: [{ batchId: 'c', date: came, change: 'arrived', birds: 60 }],
  });
  return planBatch(picture, tables, 'c');
}

describe.each([-20, -5, -1, 1, 5, 14, 40])(
  'a box told to have come %i days from its day',
  (days) => {
    const came = addDays(DUE, days);

    it.each([0, 1, 3, 8])('has all of its work, %i days later, on the days of that day', (ago) => {
      const { tasks, daily, outdoors } = cameOn(came, DUE, ago);
      const asDue = cameOn(came, came, ago);
      expect(tasks).toEqual(asDue.tasks);
      expect(daily).toEqual(asDue.daily);
      expect(outdoors).toEqual(asDue.outdoors);
      const late = tasks.tasks.filter(
        ({ alreadyLate, event }) => alreadyLate && event === 'arrival',
      );
      expect(late.map(({ name, start, end }) => `${start} ${end} ${name}`)).toEqual([]);
    });
  },
);
