import { describe, expect, it } from '@jest/globals';
import { addDays } from '../../shared/calendar/plain-date.js';
import type { Brooder } from '../../shared/farm/facility.js';
import type { Person } from '../../shared/farm/farm.js';
import type { BatchPlan } from '../../shared/plan/batch-plan.js';
import { refillsOn } from '../../shared/plan/refills-on.js';
import { datedWork } from '../../shared/plan/work/dated-work.js';
import { workPlanOf } from '../../shared/plan/work/work-plan.js';
import { newBrooder, newFarm, newRequest, tables } from '../support/factories.js';
import { plannedBatch } from '../support/pictures.js';
import { newWork } from '../support/season-factories.js';

const today = '2027-05-03';
const planOf = (brooder: Partial<Brooder> = {}): BatchPlan =>
  plannedBatch(
    newRequest({
      today,
      batch: { arrivalDate: '2027-06-02', wantedBirds: 75, brooderId: 'brooder' },
      facilities: [newBrooder(brooder)],
    }),
  );
const inBrooder = (plan: BatchPlan) =>
  plan.refills.find(({ kind, isBrooder }) => kind === 'drinkers' && isBrooder)!;

describe('drinkers and feeders of a batch', () => {
  it('are taken as usual until they are typed, and it is said', () => {
    const usual = inBrooder(planOf());
    expect(usual.isAssumed).toBe(true);
    expect(usual.said).toContain('assumed');
    const own = inBrooder(planOf({ drinkersHoldL: 100 }));
    expect(own).toMatchObject({ isAssumed: false, holds: { value: 100 } });
    expect(own.said).toMatch(/^Drinkers \(100 L\) last .* on a hot day .*: fill every morning\.$/);
  });

  it('are filled on the day on which less is left than they eat, told as days go on', () => {
    const plan = planOf({ feedersHoldKg: 20 });
    const fedKg = plan.daily.find(({ id }) => id === 'feed-day')!.values;
    const said = (day: number) =>
      refillsOn(plan, addDays('2027-06-02', day), {
        ...{ farm: newFarm(), tables },
        say: (value, unit) => `${value} ${unit}`,
      }).find(({ kind }) => kind === 'feeders')!.said;
    // Full on the first day; the next time on the first whose feed is not in them any more.
    let leftKg = 20 - fedKg[0]!;
    let due = 1;
    for (; fedKg[due]! <= leftKg; due++) leftKg -= fedKg[due]!;
    expect(due).toBeGreaterThan(2);
    expect(said(0)).toMatch(/Due today\.$/);
    expect(said(due)).toMatch(/Due today\.$/);
    for (let day = 1; day < due; day++) expect(said(day)).toContain('Not due before');
  });

  it('are due no more where what is in them lasts until the birds leave', () => {
    const plan = plannedBatch(
      newRequest({
        today,
        batch: {
          ...{ arrivalDate: '2027-06-02', wantedBirds: 75, brooderId: 'brooder' },
          ...{ purpose: 'layers', strainId: 'white-layer' },
        },
        facilities: [newBrooder()],
      }),
    );
    const days = plan.daily.find(({ id }) => id === 'feeders-share')!.values.length;
    const isDue = Array.from({ length: 30 }, (_, k) =>
      refillsOn(plan, addDays('2027-06-02', days - 30 + k), {
        ...{ farm: newFarm(), tables },
        say: (value, unit) => `${value} ${unit}`,
      }).some(({ said }) => said.endsWith('Due today.')),
    );
    expect(isDue).toContain(true);
    // They last longer than a day, so that the day after a filling is never another.
    expect(isDue.filter((is, k) => is && isDue[k - 1])).toEqual([]);
  });

  it('last as long as their water is more than that of the hot day', () => {
    const plan = planOf({ drinkersHoldL: 10 });
    const hot = plan.daily.find(({ id }) => id === 'water-hot-day')!.values;
    const share = plan.daily.find(({ id }) => id === 'drinkers-share')!.values;
    expect(share[10]).toBeCloseTo(10 / hot[10]!, 4);
    const usual = plan.daily.find(({ id }) => id === 'water-day')!.values;
    hot.forEach((L, day) => expect(L).toBeGreaterThanOrEqual(usual[day]! - 1e-4));
  });

  it('that last no longer than all are out are a gap in the care, and a round at noon', () => {
    const people: Person[] = [
      { id: 'a', name: 'Adult A', away: [], startH: { weekday: 17, weekend: 8 } },
    ];
    const workOf = (brooder: Partial<Brooder>) => {
      const plan = planOf(brooder);
      const batches = [{ id: 'meat', name: 'Meat chicks', plan }];
      return workPlanOf(
        newWork({
          today,
          people,
          work: datedWork(batches, { herds: [], cows: [] }, undefined),
        }),
        1,
      );
    };
    const ofDrinkers = (given: Partial<Brooder>) => {
      const out = String(planOf(given).outdoors.moveOut!.value);
      return workOf(given).careGaps.filter(
        ({ said, from }) => said.includes('drinkers hold') && from < out,
      );
    };
    expect(ofDrinkers({ drinkersHoldL: 8 }).length).toBeGreaterThan(0);
    expect(ofDrinkers({ drinkersHoldL: 100 })).toEqual([]);
    const noon = workOf({ drinkersHoldL: 8 })
      .chores.flat()
      .filter(({ key }) => key === 'batch/meat/drinkers-noon');
    expect(noon.length).toBeGreaterThan(0);
    expect(noon[0]!.rounds).toEqual(['noon']);
  });
});
