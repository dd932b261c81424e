import { describe, expect, it } from '@jest/globals';
import { addDays } from '../../../shared/calendar/plain-date.js';
import type { Paddock } from '../../../shared/farm/paddock.js';
import { datedWork } from '../../../shared/plan/work/dated-work.js';
import type { PasturePlan } from '../../../shared/plan/pasture/pasture-plan.js';
import { newBatch } from '../../support/factories.js';
import { newHerd, newPaddocks, newPastureRequest } from '../../support/pasture-factories.js';
import { plannedPasture } from '../../support/pictures.js';

const HENS = {
  ...newBatch({ name: 'Hens', arrivalDate: '2027-04-07', moveOutDate: '2027-05-20' }),
  id: 'hens',
};

/** Eight paddocks, of which the first becomes a garden; hens follow the cows. */
function planOf(bed: Partial<Paddock>, gardenId = 'p1', areaM2 = 6000): PasturePlan {
  const paddocks = newPaddocks(8, { areaM2, forageId: 'mixed' });
  return plannedPasture({
    ...newPastureRequest({
      choices: { to: '2027-11-30' },
      paddocks: paddocks.map((each) => (each.id === gardenId ? { ...each, ...bed } : each)),
      herds: [newHerd({ followedByBatchId: 'hens' })],
    }),
    batches: [HENS],
  });
}

/** Days on which cows or hens are in the garden. */
function daysInBed({ moves, birds }: PasturePlan, gardenId = 'p1'): string[] {
  return [...moves, ...birds]
    .filter(({ paddockId }) => paddockId === gardenId)
    .flatMap(({ from, to }) => {
      const days: string[] = [];
      for (let day = from; day <= to; day = addDays(day, 1)) days.push(day);
      return days;
    })
    .sort();
}

const stopOf = ({ issues }: PasturePlan) =>
  issues.find(({ code }) => code === 'manure-before-harvest');

describe('a paddock that becomes a garden', () => {
  // 7 CFR 205.203(c)(1): raw manure at least 120 days before the harvest of what touches the soil,
  // 90 days before that of what does not; certifiers count grazing animals and poultry the same way.
  it('has its last day for them among the dates of the calendar', () => {
    const herds = [newHerd()];
    const [work] = datedWork([], { herds, cows: [] }, planOf({ harvestOn: '2027-10-01' }));
    const bed = work!.events.find(({ id }) => id === 'event/bed-p1/last-day')!;
    expect(bed.date).toBe('2027-06-03');
    expect(bed.name).toContain('last day for herd, pens and raw manure');
  });

  it('takes no cattle and no birds from 120 days before the harvest', () => {
    const plan = planOf({ harvestOn: '2027-10-01' });
    const last = daysInBed(plan).at(-1)!;
    expect(daysInBed(planOf({})).filter((day) => '2027-06-03' < day).length).toBeGreaterThan(3);
    expect(last <= '2027-06-03').toBe(true);
    expect(stopOf(plan)).toBeUndefined();
    expect(plan.beds).toMatchObject([{ paddockId: 'p1', lastDay: { value: '2027-06-03' } }]);
    expect(plan.beds[0]!.freeFrom).toBeUndefined();
    expect(plan.issues.find(({ code }) => code === 'bed-kept-off')!.text).toMatch(
      /off Paddock 1 after .*3 Jun.*\(harvest .*1 Oct.*; say the last harvest to graze it again\)\.$/,
    );
  });

  it('takes them a month longer under a crop that stands clear of the soil', () => {
    const plan = planOf({ harvestOn: '2027-10-01', cropOffSoil: true });
    expect(plan.beds[0]!.lastDay.value).toBe('2027-07-03');
    expect(daysInBed(plan).at(-1)! <= '2027-07-03').toBe(true);
  });

  it('is grazed again after its last harvest', () => {
    // Little land, so that no paddock is left out of the round.
    const bed = { harvestOn: '2027-06-15', lastHarvestOn: '2027-07-31' };
    const plan = planOf(bed, 'p1', 3000);
    expect(plan.beds[0]!.freeFrom!.value).toBe('2027-08-01');
    const days = daysInBed(plan);
    expect(days.filter((day) => day <= '2027-07-31')).toEqual([]);
    expect(days.length).toBeGreaterThan(0);
  });

  it('stops where animals stood there too shortly before the harvest, not after it', () => {
    const stop = stopOf(planOf({ harvestOn: '2027-07-01', lastGrazedOn: '2027-04-10' }))!;
    expect(stop.level).toBe('stop');
    expect(stop.text).toMatch(/animals there until .*10 Apr.*; harvest from .*8 Aug/);
    expect(stopOf(planOf({ harvestOn: '2027-08-08', lastGrazedOn: '2027-04-10' }))).toBeUndefined();
    const before = { harvestOn: '2026-09-01', lastHarvestOn: '2026-10-01' };
    expect(stopOf(planOf({ ...before, lastGrazedOn: '2027-04-10' }))).toBeUndefined();
  });
});

describe('birds behind cattle', () => {
  it('keep off a paddock that is closed behind the cattle', () => {
    const { paddockId, from } = planOf({}).birds.at(-1)!;
    const closedDays = [{ from, to: '2027-11-30', why: 'reseeding' as const }];
    const days = daysInBed(planOf({ closedDays }, paddockId), paddockId);
    expect(days.filter((day) => from <= day)).toEqual([]);
  });
});
