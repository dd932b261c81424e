import { describe, expect, it } from '@jest/globals';
import { addDays } from '../../../shared/calendar/plain-date.js';
import type { Batch } from '../../../shared/farm/batch.js';
import type { Person } from '../../../shared/farm/farm.js';
import type { NamedBatch } from '../../../shared/farm/picture.js';
import type { FactOf } from '../../../shared/farm/told-fact.js';
import { planBatch } from '../../../shared/plan/batch-plan.js';
import { leavingOn } from '../../../shared/plan/leaving-on.js';
import { changedByFact } from '../../../shared/plan/record/changed-by-fact.js';
import { weightAlarms } from '../../../shared/plan/today/weight-alarms.js';
import { newBatch, newBrooder, newRequest, tables } from '../../support/factories.js';
import { newPicture } from '../../support/pictures.js';

const CAME = '2027-05-05';
const TODAY = addDays(CAME, 27);
const { farm, climate } = newRequest({});

/** A batch of which 30 birds weigh so much of what is planned for 28 days: what is said of it. */
function weighed(ofPlan: number, more: Partial<Batch> = {}, people: readonly Person[] = []) {
  const batch: NamedBatch = {
    ...newBatch({ brooderId: 'brooder', orderedBirds: 60, ...more }),
    ...{ id: 'c', arrivalDate: CAME },
  };
  const of = (row: NamedBatch, weighings: { readonly averageKg: number }[]) =>
    newPicture({
      ...{ farm, climate, today: TODAY, facilities: [newBrooder()], people, batches: [row] },
      weighings: weighings.map((each) => ({
        ...{ id: 'w', batchId: 'c', date: TODAY, birds: 30, ...each },
      })),
    });
  const weights = planBatch(of(batch, [{ averageKg: 1 }]), tables, 'c').birds.weighed!;
  const averageKg = Math.round(1000 * ofPlan * weights.rows[0]!.plannedKg!) / 1000;
  const fact: FactOf<'weighed'> = {
    ...{ id: 'w', key: 'w', kind: 'weighed', about: 'c', on: TODAY },
    ...{ toldAt: `${TODAY}T08:00:00.000Z`, details: { birds: 30, averageKg } },
  };
  const picture = of(batch, [{ averageKg }]);
  const plan = planBatch(picture, tables, 'c');
  const { changes, choice } = changedByFact(picture, tables, { fact, facts: [fact] });
  return {
    batch,
    plan,
    choice,
    said: (id: string) => changes.find((each) => each.id === id)?.words,
    alarms: weightAlarms(picture, tables, [{ id: 'c', name: 'Birds', plan } as never]),
    afterChoice: () =>
      planBatch(of(leavingOn(batch, choice!, choice!.on), [{ averageKg }]), tables, 'c'),
  };
}

describe('weights a fifth under plan', () => {
  it('leave a day that goes by age, and offer the one on which they weigh what was planned', () => {
    const { said, choice, plan, alarms, afterChoice } = weighed(0.8);
    expect(said('weight')).toMatch(
      /^Processing stays on Mon 28 Jun: as many days, lighter birds, about 1\.95 kg dressed each instead of 2\.25 kg .+ They weigh what was planned about Tue 6 Jul \(between .+ and .+\)\.$/,
    );
    expect(said('feed')).toContain('less than before');
    expect(choice).toMatchObject({ batchId: 'c', words: 'Process on Tue 6 Jul instead' });
    expect(alarms).toMatchObject([
      {
        ...{ isAlarm: true, level: 'act', key: choice!.settles, leaving: choice },
        text: expect.stringContaining(said('weight')!),
      },
    ]);
    expect(alarms[0]!.text).toContain(said('feed'));
    // The day that is offered brings the weight that was planned.
    const wantedKg = 3.04;
    expect(plan.leaving!.liveEach.value).toBeLessThan(0.9 * wantedKg);
    expect(afterChoice().leaving!.on.value).toBe(choice!.on);
    expect(afterChoice().leaving!.liveEach.value / wantedKg).toBeCloseTo(1, 1);
  });

  it('move a day that goes by weight, and offer the old one with lighter birds', () => {
    const { said, choice, alarms, afterChoice } = weighed(0.8, { targetLiveKg: 2.5 });
    expect(said('leaves')).toBe('Processing: Sat 26 Jun, 6 days later than Sun 20 Jun.');
    expect(said('ready')).toContain('between Wed 23 Jun and Tue 29 Jun');
    expect(choice!.words).toBe('Process on Sun 20 Jun all the same');
    expect(alarms[0]!.text).toContain(said('leaves'));
    expect(afterChoice().leaving!.on.value).toBe('2027-06-20');
  });

  it('offer the next day with hands where only Saturdays have any, and none before they weigh it', () => {
    const [hours, none] = [5, 0];
    const onSaturdays = [none, none, none, none, none, hours, none];
    const people = ['Ann', 'Ben'].map((name) => ({
      ...{ id: name, name, away: [], hoursByWeekday: onSaturdays },
    }));
    const { said, plan, choice, afterChoice } = weighed(0.8, { wantedBirds: 30 }, people);
    expect(plan.leaving!.on.value).toBe('2027-06-26');
    expect(said('weight')).toMatch(
      /They weigh what was planned about .+ \(between .+ and .+\); the next day with hands for it is Sat 3 Jul\.$/,
    );
    expect(choice).toMatchObject({ on: '2027-07-03', words: 'Process on Sat 3 Jul instead' });
    expect(afterChoice().leaving!.on.value).toBe('2027-07-03');
  });

  it('go by age where a processor is hired and none was asked: no slot is called booked', () => {
    const { batch, plan, choice, afterChoice } = weighed(0.8, { processing: 'hired' });
    expect(choice!.words).toMatch(/^Ask the processor for .+ instead$/);
    expect(leavingOn(batch, choice!, choice!.on).slotDate).toBeUndefined();
    expect(afterChoice().leaving!.on.value).toBe(choice!.on);
    const bookings = ({ tasks }: typeof plan) =>
      tasks.tasks
        .filter(({ templateId }) => templateId.includes('book'))
        .map(({ templateId, isOver }) => [templateId, isOver]);
    expect(bookings(plan).length).toBeGreaterThan(0);
    expect(bookings(afterChoice())).toEqual(bookings(plan));
  });

  it('never move a slot that is booked: the processor is to be asked', () => {
    const { said, choice, alarms } = weighed(0.8, { processing: 'hired', slotDate: '2027-06-30' });
    expect(said('weight')).toContain('The slot is booked: keep it and have lighter birds, or ask');
    expect(choice).toBeUndefined();
    expect(alarms).toHaveLength(1);
    expect(alarms[0]!.leaving).toBeUndefined();
  });
});

describe('other weights', () => {
  it('offer an earlier day where they are a fifth over it', () => {
    const { choice, said } = weighed(1.2);
    expect(said('weight')).toContain('heavier birds');
    expect(choice!.on < '2027-06-28').toBe(true);
  });

  it('say what changes and ask nothing where they lie near the plan', () => {
    for (const ofPlan of [0.95, 1, 1.05]) {
      const { choice, alarms } = weighed(ofPlan);
      expect([choice, alarms]).toEqual([undefined, []]);
    }
    expect(weighed(0.95).said('weight')).toContain('Processing stays on Mon 28 Jun');
    expect(weighed(0.95).said('weight')).not.toContain('They weigh what was planned');
  });
});
