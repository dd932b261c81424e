import { describe, expect, it } from '@jest/globals';
import { addDays } from '../../../shared/calendar/plain-date.js';
import type { CalvingTold } from '../../../shared/farm/calving-told.js';
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
  const picture = newPicture({ ...request, people });
  return comingDates({ picture, tables }, { ...plan, events: [], jobs: [] }, []).map(
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
    comingDates(
      { picture: newPicture({ ...request, people: [] }), tables },
      { ...plan, events: [], jobs },
      [batch],
    ).map(({ on, text }) => [on, text]);

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
  const coming = (
    { today: day = on, calvings = [] as CalvingTold[], cows = [cow] } = {},
    events: typeof plan.events = [],
  ) => {
    const picture = newPicture({
      ...{ ...request, people: [], today: day, herds: [herd], cows, calvings },
      paddocks: newPaddocks(2),
    });
    const work = { ...plan, today: day, events, jobs: [] };
    return comingDates({ picture, tables }, work, [], planPasture(picture, tables));
  };
  const texts = (...of: Parameters<typeof coming>) => coming(...of).map(({ text }) => text);

  it('are spoken of before they are weaned, a cow of her own by name', () => {
    // April 16 and May 16, and 205 days.
    expect(coming().map((each) => [each.on, each.text])).toEqual([
      ['2027-11-07', 'Cows: calves weaned about then'],
      ['2027-12-07', 'Cows: calf of Rosa weaned about then'],
    ]);
  });

  it('are weaned of no cow that has none: not in calf, or with a dead one', () => {
    const of = { herdId: herd.id!, date: '2027-05-18', cowId: cow.id! };
    const others = ['Cows: calves weaned about then'];
    expect(texts({ calvings: [{ ...of, calves: 0, notInCalf: 1 }] })).toEqual(others);
    expect(texts({ calvings: [{ ...of, calves: 0, dead: 1 }] })).toEqual(others);
    expect(texts({ calvings: [{ ...of, calves: 1 }] })).toHaveLength(2);
  });

  it('are calves where two named cows have them on one day', () => {
    const bella = { ...cow, id: 'bella', name: 'Bella' };
    expect(texts({ cows: [cow, bella] })).toContain(
      'Cows: calves of Rosa and Bella weaned about then',
    );
  });

  it('are due no more once they are told', () => {
    const day = '2027-05-10';
    const key = (id: string) => ({ id, name: id, date: '2027-05-16' });
    const events = [
      key(`event/${herd.id}/calving-cow-${cow.id}`),
      key(`event/${herd.id}/calving-1`),
    ];
    const born = [{ herdId: herd.id!, date: '2027-05-09', calves: 1, cowId: cow.id! }];
    const due = (calvings: CalvingTold[]) =>
      texts({ today: day, calvings }, events).filter((text) => text.startsWith('event/'));
    expect(due([])).toHaveLength(2);
    expect(due(born)).toEqual([`event/${herd.id}/calving-1`]);
  });
});
