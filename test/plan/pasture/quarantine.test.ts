import { describe, expect, it } from '@jest/globals';
import { addDays } from '../../../shared/calendar/plain-date.js';
import type { CattleGroup } from '../../../shared/farm/herd.js';
import { comesOn } from '../../../shared/plan/work/chore-days.js';
import { datedWork } from '../../../shared/plan/work/dated-work.js';
import { OF_THOSE_APART } from '../../../shared/plan/work/herd-round.js';
import { workNeeds } from '../../../shared/plan/work/work-needs.js';
import { keyDatesOf } from '../../../shared/plan/tasks/event.js';
import { newGroup, newHerd, newPastureRequest } from '../../support/pasture-factories.js';
import { newWork } from '../../support/season-factories.js';
import { plannedPasture } from '../../support/pictures.js';

const ON = '2027-06-01';
const OUT = '2027-07-01'; // seeds/pasture.json: 30 days
const there = newGroup();
const bought = (more: Partial<CattleGroup> = {}): CattleGroup =>
  newGroup({ classId: 'heifer', head: 3, arrivesOn: ON, ...more });
const planOf = (groups: CattleGroup[]) =>
  plannedPasture(newPastureRequest({ herds: [newHerd({ groups })] }));
const codesOf = (groups: CattleGroup[]): string[] =>
  planOf(groups)
    .issues.map(({ code }) => code)
    .filter((code) => code.startsWith('quarantine'));

describe('cattle that are bought in while others are there', () => {
  it('stand apart for the days of the table, with a key date at the end of them', () => {
    const plan = planOf([there, bought({ apartIn: 'Barn pen' })]);
    expect(plan.keyDates.herds[0]!.arrivals).toEqual([
      { classId: 'heifer', on: ON, head: 3, out: OUT, apartIn: 'Barn pen' },
    ]);
    const events = keyDatesOf({ id: 'h1', name: 'Cows' }, plan.herds[0]!.events);
    expect(events).toContainEqual({
      id: 'event/h1/joining-1',
      name: 'Cows: new cattle out of quarantine',
      date: OUT,
    });
    // Where none are there, nobody is waited for.
    const [first] = planOf([bought()]).keyDates.herds[0]!.arrivals;
    expect(first!.out).toBeUndefined();
  });

  it('stand apart for as long as somebody says', () => {
    const plan = planOf([there, bought({ apartIn: 'Barn pen', apartDays: 45 })]);
    expect(plan.keyDates.herds[0]!.arrivals[0]!.out).toBe('2027-07-16');
    const daily = plan.tasks.find(({ templateId }) => templateId === OF_THOSE_APART)!;
    expect(addDays(daily.end, 1)).toBe('2027-07-16');
    const text = planOf([there, bought({ apartDays: 45 })]).issues.find(
      ({ code }) => code === 'quarantine-place',
    )!.text;
    expect(text).toContain('45 days here, advice runs from 21 to 60');
  });

  it('are fed and looked at every one of those days, by their own head and in their own place', () => {
    const { tasks } = planOf([there, bought({ apartIn: 'Barn pen' })]);
    const daily = tasks.find(({ templateId }) => templateId === OF_THOSE_APART)!;
    expect([daily.start, addDays(daily.end, 1)]).toEqual([addDays(ON, 1), OUT]);
    expect(daily.name).toContain('Barn pen');
    // Half an hour and 0.15 h for ten head, by the template: three of them, not seven.
    expect(daily.hours / 29).toBeCloseTo(0.5 + 0.15 * 0.3, 6);
  });

  it('leave the others their own round every day', () => {
    const herd = newHerd({ groups: [there, bought()] });
    const pasture = planOf([there, bought()]);
    const [all] = datedWork([], { herds: [herd], cows: [] }, pasture);
    // With no other work of the herd that takes somebody there.
    const tasks = all!.tasks.filter(({ templateId }) => templateId === OF_THOSE_APART);
    const work = [{ ...all!, tasks }];
    const { chores } = workNeeds(newWork({ today: addDays(ON, -9), work }), 60);
    const keyed = (part: string) => chores.filter(({ key }) => key.includes(part));
    const rounds = keyed('round');
    const days = Array.from({ length: 25 }, (_, k) => 10 + k);
    expect(keyed(OF_THOSE_APART)).toHaveLength(1);
    expect(days.filter((day) => !rounds.some((chore) => comesOn(chore, day)))).toEqual([]);
  });

  it('ask for a place, and for one that no herd grazes', () => {
    expect(codesOf([there, bought()])).toEqual(['quarantine-place']);
    expect(codesOf([there, bought({ apartIn: 'Barn pen' })])).toEqual([]);
    const { moves } = planOf([there, bought({ apartIn: 'Barn pen' })]);
    const { paddockId } = moves.find(({ to }) => ON <= to)!;
    const grazed = `paddock ${paddockId.slice(1)} `;
    expect(codesOf([there, bought({ apartIn: grazed })])).toEqual(['quarantine-grazed']);
    expect(codesOf([bought()])).toEqual([]);
  });

  it('begin the days of others again that stand in the same place', () => {
    const later = bought({ arrivesOn: '2027-06-20', apartIn: 'barn pen' });
    const first = bought({ apartIn: 'Barn pen' });
    expect(codesOf([there, first, later])).toEqual(['quarantine-shared']);
    expect(codesOf([there, first, { ...later, arrivesOn: OUT }])).toEqual([]);
    expect(codesOf([there, first, { ...later, arrivesOn: ON }])).toEqual([]);
    expect(codesOf([there, first, { ...later, apartIn: 'Far pen' }])).toEqual([]);
  });

  it('calve apart where a calf is due in those days', () => {
    const due = (calvesOn: string) => codesOf([there, bought({ apartIn: 'Barn pen', calvesOn })]);
    expect(due('2027-06-15')).toEqual(['quarantine-calving']);
    expect(due('2027-07-15')).toEqual([]);
  });
});
