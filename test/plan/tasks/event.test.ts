import { describe, expect, it } from '@jest/globals';
import { keyDatesOf } from '../../../shared/plan/tasks/event.js';
import { newRequest } from '../../support/factories.js';
import { newGroup, newHerd, newPastureRequest } from '../../support/pasture-factories.js';
import { plannedBatch, plannedPasture } from '../../support/pictures.js';

describe('keyDatesOf', () => {
  it('names the days of a meat batch, without its trips for feed', () => {
    const plan = plannedBatch(newRequest());
    expect(plan.tasks.events.some(({ kind }) => kind === 'delivery')).toBe(true);
    expect(keyDatesOf({ id: 'b1', name: 'Chicks' }, plan.tasks.events)).toEqual([
      { id: 'event/b1/arrival', name: 'Chicks: chicks arrive', date: '2027-05-05' },
      {
        id: 'event/b1/move-out',
        name: 'Chicks: out of the brooder',
        date: plan.outdoors.moveOut!.value,
      },
      { id: 'event/b1/leaving', name: 'Chicks: processing', date: plan.leaving!.on.value },
    ]);
  });

  it('numbers the arrivals and calvings of a herd from 1', () => {
    const plan = plannedPasture(
      newPastureRequest({
        today: '2027-04-05',
        herds: [
          newHerd({
            groups: [
              newGroup({ calvesOn: '2027-05-20' }),
              newGroup({ calvesOn: '2027-06-03', arrivesOn: '2027-04-20' }),
            ],
          }),
        ],
      }),
    );
    const [herd] = plan.herds;
    const dates = keyDatesOf({ id: herd!.id, name: herd!.name }, herd!.events);
    expect(
      dates.filter(({ id }) => /arrival|calving/.test(id)).map(({ id, date }) => [id, date]),
    ).toEqual([
      [`event/${herd!.id}/arrival-1`, '2027-04-20'],
      [`event/${herd!.id}/calving-1`, '2027-05-20'],
      [`event/${herd!.id}/calving-2`, '2027-06-03'],
    ]);
    // Ticks of households are kept by these: calvings count from 0 in the ids of their tasks.
    expect(
      plan.tasks.filter(({ event }) => event === 'calving').map(({ id }) => id.split('.')[1]),
    ).toEqual(expect.arrayContaining(['c0', 'c1']));
  });
});
