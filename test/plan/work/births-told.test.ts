import { describe, expect, it } from '@jest/globals';
import { withoutBirthsTold } from '../../../shared/plan/work/births-told.js';
import { tables } from '../../support/factories.js';
import { newGroup, newHerd, newPastureRequest } from '../../support/pasture-factories.js';
import { plannedPasture } from '../../support/pictures.js';

const TODAY = '2027-05-09';
const herd = newHerd({
  groups: [newGroup({ classId: 'dry-cow', head: 2, calvesOn: '2027-05-10' })],
});
const { tasks } = plannedPasture(newPastureRequest({ today: TODAY, herds: [herd] }));
const born = (date: string) => ({ herdId: 'h1', date, calves: 1 });

/** Ids of the templates that are left of the calving. */
const left = (
  calvings: readonly ReturnType<typeof born>[],
  { today = TODAY, done = [] as string[] } = {},
): string[] => {
  const progress = done.map((id) => ({ key: `herd/h1/${id}`, doneOn: today }));
  return withoutBirthsTold(tasks, herd, { calvings, cows: [], progress, today }, tables)
    .filter(({ event }) => event === 'calving')
    .map(({ templateId }) => templateId);
};
const WATCH = 'calving.round-the-clock-checks-every-3-to';
const BIRTH = 'calving.attend-birth-feet-by-1-h-calf';
const NAVEL = 'calving.navel-tag-record';
const PAIR = 'calving.move-pair-to-clean-grass';

describe('calves that were told', () => {
  it('leave the watch and the birth while one is still to come', () => {
    expect(left([])).toEqual(expect.arrayContaining([WATCH, BIRTH, NAVEL, PAIR]));
    expect(left([born('2027-05-08')])).toEqual(left([]));
  });

  it('end the watch with the last of them, and the navel the day after', () => {
    const all = [born('2027-05-06'), born('2027-05-08')];
    expect(left(all)).not.toContain(WATCH);
    expect(left(all)).not.toContain(BIRTH);
    expect(left(all)).toEqual(expect.arrayContaining([NAVEL, PAIR]));
    expect(left(all, { today: '2027-05-10' })).not.toContain(NAVEL);
    // Told today, the birth itself is of today.
    expect(left([born('2027-05-06'), born(TODAY)])).toContain(BIRTH);
  });

  it('leave in sight what was ticked off before', () => {
    const id = tasks.find(({ templateId }) => templateId === WATCH)!.id;
    expect(left([born('2027-05-06'), born('2027-05-08')], { done: [id] })).toContain(WATCH);
  });
});
