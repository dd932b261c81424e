import { describe, expect, it } from '@jest/globals';
import { grassYears } from '../../../shared/plan/pasture/grass-years.js';
import { pastureContext } from '../../../shared/plan/pasture/pasture-context.js';
import { planPasture } from '../../../shared/plan/pasture/pasture-plan.js';
import { pastureOfFarm } from '../../../shared/plan/pasture/pasture-of-farm.js';
import { chooseMoves } from '../../../shared/plan/pasture/surplus.js';
import { tables } from '../../support/factories.js';
import {
  newHerd,
  newGroup,
  newPaddocks,
  newPastureRequest,
} from '../../support/pasture-factories.js';
import { pictureOfPasture } from '../../support/pictures.js';

const picture = pictureOfPasture(
  newPastureRequest({
    paddocks: newPaddocks(6, { areaM2: 4000 }),
    herds: [newHerd({ groups: [newGroup({ classId: 'dry-cow', head: 3 })] })],
    choices: { to: '2027-12-15' },
  }),
);

describe('the grass through years of weather', () => {
  const found = grassYears(picture, tables, 6);

  it('feeds more by hand the surer it is to be, and the same each time', () => {
    const kg = found.fed.map((each) => each.kg.value);
    expect([...kg].sort((a, b) => a - b)).toEqual(kg);
    expect(grassYears(picture, tables, 6)).toEqual(found);
  });

  it('buys hay for eight years in ten: more than the usual weather asks, less what lies in store', () => {
    const plan = planPasture(picture, tables);
    const { toBuy, balesToBuy } = found;
    expect(toBuy.value).toBeGreaterThan(plan.hay.toBuy.value);
    expect(toBuy.spread!.low).toBeLessThanOrEqual(toBuy.value);
    expect(toBuy.spread!.high).toBeGreaterThanOrEqual(toBuy.value);
    expect(balesToBuy.value).toBeGreaterThanOrEqual(plan.hay.balesToBuy.value);
    const withHay = {
      ...picture,
      pastureChoices: { ...picture.pastureChoices, hayInStoreKg: 500 },
    };
    expect(grassYears(withHay, tables, 6).toBuy.value).toBeCloseTo(toBuy.value - 500, 6);
  });

  it('decides by what is known: weather from August on changes no move before it', () => {
    const request = pastureOfFarm(picture, tables);
    const movesWith = (augustC: number) => {
      const context = pastureContext(request, (dayOfYear) => {
        const of = (year: ArrayLike<number>, late: number): Float64Array =>
          Float64Array.from(dayOfYear, (day) => year[day - 1]! + (213 <= day ? late : 0));
        const { climate } = request;
        return {
          minC: of(climate.meanMinC, augustC),
          maxC: of(climate.meanMaxC, augustC),
          rainMm: of(climate.meanRainMm!, 0).map((mm, i) =>
            213 <= dayOfYear[i]! && 0 < augustC ? 0 : mm,
          ),
        };
      });
      // Day 0 of the plan is New Year’s Day.
      const august = 212;
      return chooseMoves(context)
        .books.stays.filter(({ from }) => from < august)
        .map(({ from, paddock }) => [from, paddock]);
    };
    expect(movesWith(6)).toEqual(movesWith(0));
  });
});
