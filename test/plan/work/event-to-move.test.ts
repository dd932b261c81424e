import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { addDays } from '../../../shared/calendar/plain-date.js';
import { workPlanOf } from '../../../shared/plan/work/work-plan.js';
import { newBatchWork, newWork } from '../../support/season-factories.js';

const today = '2027-04-05';
const hours = (each: number) => [
  { id: 'a', name: 'Adult A', away: [], hoursByWeekday: Array<number>(7).fill(each) },
];

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
