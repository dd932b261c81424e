import { describe, expect, it } from '@jest/globals';
import type { PasturePlan } from '../../../shared/plan/pasture/pasture-plan.js';
import { climateFromMonthlyMeans } from '../../../shared/weather/climate.js';
import { climateOf, OREGON } from '../../support/five-farms.js';
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
    // What would speak of them is there.
    expect(textOf(plan, 'goes-rank') ?? textOf(plan, 'goes-in-low')).toBeDefined();
    const all = plan.issues.map(({ text }) => text).join(' ');
    expect(all).not.toMatch(/last paddock|next paddock|shut it for hay/);
  });

  it('say beside dry standing grass that it wants protein', () => {
    const cautionsIn = (climate = climateOf(OREGON)): boolean =>
      plannedPasture(
        newPastureRequest({
          ...(climate ? { climate } : {}),
          farm: { latitudeDeg: OREGON.latitudeDeg },
          paddocks: newPaddocks(8, { areaM2: 6070 }),
          choices: { version: 1, makesHay: false },
        }),
      ).cautions.includes('dry-grass');
    expect(cautionsIn()).toBe(true);
    expect(cautionsIn(newPastureRequest().climate)).toBe(false);
  });
});
