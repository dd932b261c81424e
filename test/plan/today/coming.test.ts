import { describe, expect, it } from '@jest/globals';
import { addDays } from '../../../shared/calendar/plain-date.js';
import { comingDates } from '../../../shared/plan/today/coming.js';
import { workPlanOf } from '../../../shared/plan/work/work-plan.js';
import { planPasture } from '../../../shared/plan/pasture/pasture-plan.js';
import { newRequest, tables } from '../../support/factories.js';
import { newCow, newGroup, newHerd, newPaddocks } from '../../support/pasture-factories.js';
import { newPicture, plannedBatch } from '../../support/pictures.js';
import { newBatchWork, newWork } from '../../support/season-factories.js';

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

describe('what comes with work', () => {
  const arrivalDate = '2027-08-25';
  const given = newRequest({ today, batch: { arrivalDate, processing: 'hired' } });
  const batch = { id: 'meat', name: 'Broilers', plan: plannedBatch(given) };
  const [planned] = workPlanOf(newWork({ today, work: [newBatchWork(arrivalDate, today)] })).jobs;
  const pieces = (date: string) => [{ date, hours: 1, personIds: [] }];
  const job = (templateId: string, date: string) => ({
    ...planned!,
    key: `batch/meat/${batch.plan.tasks.tasks.find((task) => task.templateId === templateId)!.id}`,
    name: 'Check the freezer',
    belongsTo: { id: 'meat', name: 'Broilers', kind: 'batch' as const },
    pieces: pieces(date),
  });
  const textsOf = (jobs: readonly ReturnType<typeof job>[]) =>
    comingDates(newPicture({ ...request, people: [] }), { ...plan, events: [], jobs }, [batch]).map(
      ({ on, text }) => [on, text],
    );

  it('holds a slot to book and the work that is planned first', () => {
    const [first, booked] = [addDays(today, 5), addDays(today, 20)];
    const texts = textsOf([
      job('meat.set-batch-size', first),
      job('meat.book-processor-or-fix-own-processing', booked),
    ]);
    expect(texts.slice(0, 2)).toEqual([
      [first, 'Broilers: check the freezer'],
      [booked, 'Broilers: book the processor’s slot'],
    ]);
  });

  it('tells booking once, though it is the first work too', () => {
    const booked = addDays(today, 20);
    const texts = textsOf([job('meat.book-processor-or-fix-own-processing', booked)]);
    expect(texts.filter(([on]) => on === booked)).toHaveLength(1);
  });
});

describe('calves', () => {
  const on = '2027-10-20';
  const herd = newHerd({
    groups: [newGroup({ classId: 'dry-cow', head: 3, calvesOn: '2027-04-16' })],
  });
  const cow = newCow({ name: 'Rosa', classId: 'dry-cow', calvesOn: '2027-05-16' });
  const picture = newPicture({
    ...{ ...request, people: [], today: on, herds: [herd], cows: [cow] },
    paddocks: newPaddocks(2),
  });
  const coming = comingDates(
    picture,
    { ...plan, today: on, events: [], jobs: [] },
    [],
    planPasture(picture, tables),
  );

  it('are spoken of before they are weaned, a cow of her own by name', () => {
    // April 16 and May 16, and 205 days.
    expect(coming.map((each) => [each.on, each.text])).toEqual([
      ['2027-11-07', 'Cows: calves weaned about then'],
      ['2027-12-07', 'Cows: calf of Rosa weaned about then'],
    ]);
  });
});
