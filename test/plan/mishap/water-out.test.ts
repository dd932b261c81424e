import { describe, expect, it } from '@jest/globals';
import { waterOut } from '../../../shared/plan/mishap/water-out.js';
import { animalLines } from '../../../shared/plan/today/animal-lines.js';
import { planAnimals } from '../../../shared/plan/farm/animal-plans.js';
import { newBatch, newBrooder, newRequest, tables } from '../../support/factories.js';
import { newPicture } from '../../support/pictures.js';

const { farm, climate } = newRequest({});

function lines(today: string) {
  const { targetLiveKg: _target, ...batch } = newBatch({ brooderId: 'brooder' });
  const picture = newPicture({
    ...{ farm, climate, today, facilities: [newBrooder()] },
    batches: [{ orderedBirds: 60, ...batch, id: 'chicks', arrivalDate: '2027-05-05' }],
  });
  const { batches } = planAnimals(picture, tables);
  return animalLines(picture, tables, { batches });
}

describe('waterOut', () => {
  it('lists the water of the day as Today has it, and its sum', () => {
    const animals = lines('2027-05-20');
    const drinks = Number(animals[0]!.water!.value);
    const { follows, numbers, cautions } = waterOut(animals, tables, farm, { lowC: -2 });
    expect(drinks).toBeGreaterThan(1);
    expect(numbers.map(({ label, value }) => [label, value])).toEqual([[animals[0]!.name, drinks]]);
    expect(follows).toEqual([expect.stringMatching(/^They drink about [\d.]+ (L|gal) today/)]);
    expect(cautions.map(({ title }) => title)).toEqual([tables.cautions['frozen-drinkers']!.title]);
    expect(waterOut(animals, tables, farm, { lowC: 12 }).cautions).toEqual([]);
    expect(waterOut(animals, tables, farm, { lowC: 12, isPowerOut: true }).follows).toEqual([
      'A pump stands still without power.',
      follows[0],
    ]);
  });

  it('says that nobody drinks before any animal is there, and of the freezer without power', () => {
    const { follows, numbers, cautions } = waterOut(lines('2027-04-01'), tables, farm, {
      ...{ lowC: 2, isPowerOut: true },
    });
    expect(numbers).toEqual([]);
    expect(follows).toEqual(['No animals here drink today.']);
    expect(cautions.map(({ title }) => title)).toEqual([tables.cautions['freezer-power']!.title]);
  });
});
