import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { addDays } from '../../../shared/calendar/plain-date.js';
import { workPlanOf } from '../../../shared/plan/work/work-plan.js';
import { planAnimals } from '../../../shared/plan/farm/animal-plans.js';
import { workOfFarm } from '../../../shared/plan/farm/work-of-farm.js';
import { newRequest, tables } from '../../support/factories.js';
import { newHerd, newPaddocks } from '../../support/pasture-factories.js';
import { newPicture } from '../../support/pictures.js';
import { newBatchWork, newWork } from '../../support/season-factories.js';

const today = '2027-04-05';
const hours = (each: number) => [
  { id: 'a', name: 'Adult A', away: [], hoursByWeekday: Array<number>(7).fill(each) },
];

/** Cows of two people with little time, some days before they go out. */
function herdWork(onDay: string, turnOutOn?: string) {
  const people = ['Ann', 'Ben'].map((name) => ({
    ...{ id: name, name, away: [] },
    hoursByWeekday: [2, 2, 2, 2, 2, 5, 3],
  }));
  const { farm, climate } = newRequest();
  const picture = newPicture({
    ...{ farm, climate, today: onDay, people, paddocks: newPaddocks(6) },
    herds: [newHerd(turnOutOn === undefined ? {} : { turnOutOn })],
  });
  return workOfFarm(picture, tables, planAnimals(picture, tables));
}

const turnOutOf = (request: ReturnType<typeof herdWork>): string =>
  request.work.flatMap(({ events }) => events).find(({ id }) => id === 'event/h1/turn-out')!.date;

describe('a turn-out that comes before all is ready', () => {
  const usual = turnOutOf(herdWork('2027-04-01'));

  it.each([0, 1, 2, 4])(
    'is named with a later day that does when tried, %d days before it',
    (days) => {
      const onDay = addDays(usual, -days);
      const request = herdWork(onDay);
      const date = turnOutOf(request);
      const plan = workPlanOf(request, 500);
      const move = plan.eventsToMove.find(({ kind }) => kind === 'turn-out')!;
      expect(move).toMatchObject({ id: 'event/h1/turn-out', ofId: 'h1', from: date });
      expect(date < move.to!).toBe(true);
      for (const key of move.keys) {
        const job = plan.jobs.find((each) => each.key === key)!;
        expect(job.waysToFit).toContain(move.said);
        // Nothing is planned after the day on which they go out.
        for (const piece of job.pieces) expect(piece.date <= date).toBe(true);
      }
      const later = workPlanOf(herdWork(onDay, move.to), 500);
      const due = turnOutOf(herdWork(onDay, move.to));
      expect(due >= move.to!).toBe(true);
      const lost = later.jobs.filter(
        ({ key, pieces, lostHours }) =>
          move.keys.includes(key) && (pieces.length === 0 || 0 < lostHours),
      );
      expect(lost.map(({ name }) => name)).toEqual([]);
    },
  );

  it('still asks for a fence that should have been walked long ago', () => {
    const { jobs } = workPlanOf(herdWork(addDays(usual, -1)), 20);
    expect(jobs.map(({ name }) => name)).toContain('Walk and repair perimeter fence');
  });

  it('is not named where there is time', () => {
    expect(workPlanOf(herdWork(addDays(usual, -40)), 500).eventsToMove).toEqual([]);
  });
});

describe('work that makes ready for animals', () => {
  it('is never planned after they come, whatever the hours', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 60 }),
        fc.constantFrom(0, 0.5, 1, 2, 8),
        (days, each) => {
          const work = newBatchWork(addDays(today, days), today);
          const request = newWork({ work: [work], people: hours(each) });
          const { jobs } = workPlanOf(request, 20);
          for (const { id, noUseAfter } of work.tasks) {
            const job = jobs.find(({ key }) => key === `batch/meat/${id}`);
            const done = job?.pieces.at(-1)?.date;
            if (noUseAfter !== undefined && done !== undefined)
              expect(done <= noUseAfter).toBe(true);
          }
        },
      ),
      { numRuns: 15 },
    );
  });

  it('names the arrival as what to move, by as much as is enough when tried', () => {
    const planOn = (date: string) =>
      workPlanOf(newWork({ work: [newBatchWork(date, today)], people: hours(1) }), 200);
    const repair = ({ jobs }: ReturnType<typeof planOn>) =>
      jobs.find(({ name }) => name === 'Repair brooder and pasture pen')!;
    const now = repair(planOn('2027-04-12'));
    expect(now.lostHours).toBeGreaterThan(0);
    const move = now.waysToFit.find((way) => way.startsWith('Move “Test batch: chicks arrive” to'));
    const [, day, month] = /to [A-Z][a-z]+ (\d+) ([A-Z][a-z]+) or later/.exec(move!)!;
    const to = `2027-${month === 'Apr' ? '04' : '05'}-${day!.padStart(2, '0')}`;
    expect(repair(planOn(to)).lostHours).toBe(0);
  });
});
