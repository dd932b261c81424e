import { describe, expect, it } from '@jest/globals';
import { addDays } from '../../../shared/calendar/plain-date.js';
import { workPlanOf } from '../../../shared/plan/work/work-plan.js';
import { newBatchWork, newWork } from '../../support/season-factories.js';

const today = '2027-04-05';
const BEFORE = [
  'move-to-pasture.put-pen-on-short-dry-grass',
  'move-to-pasture.run-and-test-electric-net',
  'move-to-pasture.set-water-and-the-same-feeders',
];

/** Days on which what must stand before the move is planned, with everybody away for some days. */
function plannedWith(awayDays: { before: number; until: number } | undefined) {
  const work = newBatchWork('2027-05-05', today);
  const move = work.events.find(({ id }) => id.endsWith('/move-out'))!.date;
  const away = awayDays
    ? [{ from: addDays(move, -awayDays.before), to: addDays(move, -awayDays.until) }]
    : [];
  const people = ['a', 'b'].map((id) => ({ id, name: id, away }));
  const plan = workPlanOf(newWork({ today, people, work: [work] }), 100);
  const jobs = BEFORE.map((id) => plan.jobs.find(({ key }) => key.endsWith(id))!);
  return { move, jobs };
}

describe('pen, net and water', () => {
  it('stand before the birds are out, when there is time', () => {
    const { move, jobs } = plannedWith(undefined);
    for (const { pieces } of jobs) {
      expect(pieces.length).toBeGreaterThan(0);
      for (const { date } of pieces) expect(date <= move).toBe(true);
    }
  });

  it.each([
    { before: 3, until: 1 },
    { before: 8, until: 0 },
    { before: 20, until: 0 },
    { before: 20, until: -3 },
  ])('are never planned after them: away from $before to $until days before', (away) => {
    const { move, jobs } = plannedWith(away);
    for (const { pieces } of jobs) for (const { date } of pieces) expect(date <= move).toBe(true);
  });

  it('have no time at all, and say so, when nobody is there', () => {
    const { jobs } = plannedWith({ before: 20, until: -3 });
    for (const { pieces } of jobs) expect(pieces).toEqual([]);
  });
});
