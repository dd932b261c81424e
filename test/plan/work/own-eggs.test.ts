import { describe, expect, it } from '@jest/globals';
import type { Handover } from '../../../shared/farm/handover.js';
import { sitterSheet } from '../../../shared/plan/handover/sitter-sheet.js';
import { keyDatesOf } from '../../../shared/plan/tasks/event.js';
import { calendarEntries } from '../../../shared/plan/work/calendar-entries.js';
import type { DatedWork } from '../../../shared/plan/work/work-request.js';
import { workPlanOf } from '../../../shared/plan/work/work-plan.js';
import { newRequest, tables } from '../../support/factories.js';
import { plannedBatch } from '../../support/pictures.js';
import { newWork } from '../../support/season-factories.js';

const TODAY = '2027-04-05';

/** Work of eggs that hatch on 5 May. */
function eggs(origin: 'incubator' | 'hen'): DatedWork {
  const plan = plannedBatch(
    newRequest({
      today: TODAY,
      batch: {
        origin,
        strainId: 'heritage',
        wantedBirds: 20,
        hatchToArrivalDays: 0,
        arrivalDate: '2027-05-05',
      },
    }),
  );
  return {
    id: 'eggs',
    name: 'Own chicks',
    kind: 'batch',
    tasks: plan.tasks.tasks,
    events: keyDatesOf({ id: 'eggs', name: 'Own chicks' }, plan.tasks.events),
  };
}

const handover: Handover = {
  id: 'h',
  personId: 'b',
  from: '2027-05-01',
  to: '2027-05-03',
  hoursPerDay: 4,
  roundOrder: [],
  phones: [],
  whereabouts: [],
};

describe('work of own eggs', () => {
  const plan = workPlanOf(newWork({ today: TODAY, work: [eggs('incubator')] }), 60);

  it('stands in the calendar on the days of the hatch, and so do its key dates', () => {
    const entries = calendarEntries(plan, 'metric');
    const on = (date: string) =>
      entries.filter((entry) => entry.date === date).map(({ title }) => title);
    expect(on('2027-04-14')).toEqual(
      expect.arrayContaining([
        expect.stringContaining('Set the eggs in the incubator'),
        'Own chicks: eggs set',
      ]),
    );
    expect(on('2027-04-21').join()).toContain('Candle the eggs');
    expect(on('2027-05-02')).toEqual(
      expect.arrayContaining([
        expect.stringContaining('Lockdown: stop turning'),
        'Own chicks: lockdown',
      ]),
    );
    expect(on('2027-05-05')).toContain('Own chicks: chicks hatch');
  });

  it('takes turning of the eggs off the hours of every day until lockdown', () => {
    const turning = plan.chores.map((day) => day.some(({ name }) => name.startsWith('Turn')));
    // 14 April is 9 days from today, 2 May 27.
    expect(turning.indexOf(true)).toBe(10);
    expect(turning.lastIndexOf(true)).toBe(26);
  });

  it('stands on the sheet of a sitter who is in charge of lockdown', () => {
    const away = workPlanOf(
      newWork({ today: TODAY, work: [eggs('incubator')], handovers: [handover] }),
      60,
    );
    const { pages } = sitterSheet(handover, away, () => [], { people: [], tables });
    const [first, second] = pages;
    expect(first!.chores.map(({ name }) => name).join()).toContain('Turn the eggs');
    expect(second!.chores.map(({ name }) => name).join()).not.toContain('Turn the eggs');
    expect(second!.jobs.map(({ name }) => name).join()).toContain('Lockdown');
  });

  it('under a hen is the care of the hen, day by day, to the end of her brooding', () => {
    const { chores } = workPlanOf(newWork({ today: TODAY, work: [eggs('hen')] }), 60);
    const names = (day: number) => chores[day]!.map(({ name }) => name).join();
    expect(names(15)).toContain('Sitting hen');
    expect(names(31)).toContain('Hen with chicks');
  });
});
