import { describe, expect, it } from '@jest/globals';
import { changedByWalk } from '../../../shared/plan/pasture/changed-by-walk.js';
import {
  newGroup,
  newHerd,
  newPaddocks,
  newPastureRequest,
} from '../../support/pasture-factories.js';
import { plannedPasture } from '../../support/pictures.js';

const request = newPastureRequest({
  today: '2027-06-15',
  herds: [newHerd({ name: 'Cows', groups: [newGroup({ head: 6 })] })],
  paddocks: newPaddocks(8, { areaM2: 4000 }),
});
const plan = plannedPasture(request);
const readAs = (heightCm: number) =>
  plannedPasture({
    ...request,
    readings: request.paddocks.map(({ id }) => ({
      ...{ id: `r-${id}`, paddockId: id },
      ...{ date: request.today, heightCm },
    })),
  });
const reader = {
  sayDate: (date: string) => `<${date}>`,
  sayBales: (bales: number) => `${bales} bales`,
};

describe('what a walk changed', () => {
  it('is nothing against the same plan, and that is said', () => {
    const bales = Math.round(plan.hay.balesToBuy.value);
    expect(changedByWalk(plan, plan, reader)).toEqual([
      'The next move stays as it was.',
      `Hay to buy in the usual weather stays at ${bales} bales.`,
    ]);
  });

  it('is where the herd goes and the hay to buy, each beside what it was', () => {
    const short = readAs(6);
    const [move, hay] = changedByWalk(readAs(25), short, reader);
    expect(move).toMatch(/^Cows: .* It was: Cows: /);
    const bales = Math.round(short.hay.balesToBuy.value);
    expect(hay).toMatch(new RegExp(`^Hay to buy .*: ${bales} bales, it was \\d+ bales\\.$`));
  });
});
