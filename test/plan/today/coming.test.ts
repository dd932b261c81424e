import { describe, expect, it } from '@jest/globals';
import { addDays } from '../../../shared/calendar/plain-date.js';
import { comingDates } from '../../../shared/plan/today/coming.js';
import { workPlanOf } from '../../../shared/plan/work/work-plan.js';
import { newRequest } from '../../support/factories.js';
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
