import { describe, expect, it } from '@jest/globals';
import type { FarmPicture } from '../../shared/farm/picture.js';
import { herdChores } from '../../shared/plan/chore-hours.js';
import { newFarm, tables } from '../support/factories.js';
import { newPaddocks } from '../support/pasture-factories.js';
import { newPicture } from '../support/pictures.js';
import { climateFromMonthlyMeans } from '../../shared/weather/climate.js';

const { monthlyMinC, monthlyMaxC } = newFarm();
const herd = { id: 'h', name: 'Cows', groups: [{ classId: 'dry-cow', head: 10 }] };
const pictureWith = (more: Partial<FarmPicture>): FarmPicture =>
  newPicture({
    farm: newFarm(),
    today: '2027-04-05',
    climate: climateFromMonthlyMeans(monthlyMinC, monthlyMaxC, 6),
    ...more,
  });

describe('chores that go before a day of processing', () => {
  // seeds/herd-task-templates.json, for ten head: hay 0.25 + 0.1 h, the look 0.35 + 0.05 h.
  it('are the look at cattle, and hay where no grass grows', () => {
    const onGrass = herdChores(pictureWith({ herds: [herd], paddocks: newPaddocks(1) }), tables);
    expect(onGrass('2027-07-10')).toBeCloseTo(0.4, 9);
    expect(onGrass('2027-01-10')).toBeCloseTo(0.75, 9);
    const inLot = herdChores(pictureWith({ herds: [herd], paddocks: [] }), tables);
    expect(inLot('2027-07-10')).toBeCloseTo(0.75, 9);
  });
});
