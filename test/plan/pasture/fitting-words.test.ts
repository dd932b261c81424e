import { describe, expect, it } from '@jest/globals';
import type { PasturePlan } from '../../../shared/plan/pasture/pasture-plan.js';
import { climateFromMonthlyMeans } from '../../../shared/weather/climate.js';
import {
  newGroup,
  newHerd,
  newPaddocks,
  newPastureRequest,
} from '../../support/pasture-factories.js';
import { plannedPasture } from '../../support/pictures.js';

const textOf = ({ issues }: PasturePlan, code: string): string | undefined =>
  issues.find((each) => each.code === code)?.text;

describe('words that fit the farm', () => {
  it.each([
    ['2027-03-20', 'Start magnesium mineral by'],
    ['2027-05-01', 'Start magnesium mineral now; it was due'],
  ])('say on %s: %s', (today, label) => {
    const plan = plannedPasture(
      newPastureRequest({
        today,
        herds: [newHerd({ groups: [newGroup({ calvesOn: '2027-05-05' })] })],
      }),
    );
    expect(plan.keyDates.herds[0]!.magnesiumFrom?.label).toBe(label);
  });

  it('speak of no grass again where none ever grows', () => {
    const cold = climateFromMonthlyMeans(Array(12).fill(-20), Array(12).fill(-8), 6);
    const plan = plannedPasture(newPastureRequest({ climate: cold }));
    expect(textOf(plan, 'hay-to-buy')).toMatch(/^To buy for a year, as nothing is grazed: about/);
  });

  it('speak of no other paddock where there is one', () => {
    const plan = plannedPasture(
      newPastureRequest({ paddocks: newPaddocks(1, { areaM2: 40_000 }) }),
    );
    const all = plan.issues.map(({ text }) => text).join(' ');
    expect(all).not.toMatch(/last paddock|next paddock|shut it for hay/);
  });

  it('say beside dry standing grass that it wants protein', () => {
    const oregon = climateFromMonthlyMeans(
      [1, 1.6, 3, 4.3, 6.7, 9.2, 11.1, 10.8, 8.9, 5.5, 3.3, 1],
      [8.2, 10.4, 13.1, 15.7, 19.3, 22.8, 27.4, 27.9, 25, 18.2, 11.4, 7.7],
      6,
      [153, 128, 117, 71, 62, 35, 12, 17, 36, 77, 164, 187],
    );
    const cautionsIn = (climate = oregon): boolean =>
      plannedPasture(
        newPastureRequest({
          ...(climate ? { climate } : {}),
          farm: { latitudeDeg: 44.57 },
          paddocks: newPaddocks(8, { areaM2: 6070 }),
          choices: { version: 1, makesHay: false },
        }),
      ).cautions.includes('dry-grass');
    expect(cautionsIn()).toBe(true);
    expect(cautionsIn(newPastureRequest().climate)).toBe(false);
  });
});
