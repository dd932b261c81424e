import { describe, expect, it } from '@jest/globals';
import { chooseMoves } from '../../../shared/plan/pasture/surplus.js';
import { grassUnderSnow } from '../../../shared/plan/pasture/grass-under-snow.js';
import { contextAt, OREGON, PLACES, WISCONSIN, type Place } from '../../support/five-farms.js';
import { newPaddocks } from '../../support/pasture-factories.js';
import { plannedPasture } from '../../support/pictures.js';

/** A place, cattle on much land, and no hay made of it. */
const contextOf = (place: Place, head: number, areaM2 = 6070) => {
  const paddocks = newPaddocks(8, { areaM2, forageId: place.forageId });
  return contextAt(place, head, areaM2, { version: 1, makesHay: false }, paddocks);
};
const saidAt = (place: Place, head: number, areaM2?: number) => {
  const context = contextOf(place, head, areaM2);
  return grassUnderSnow(context, chooseMoves(context))[0]?.text;
};

describe('grass that snow comes onto', () => {
  it('is told with what it would spare, and how deep cattle reach it', () => {
    const text = saidAt(WISCONSIN, 6)!;
    expect(text).toMatch(/^Grass for about \d+ days stands .* when snow comes \(.*Nov/);
    expect(text).toMatch(/15 cm of loose snow, without ice or a crust/);
    expect(text).toMatch(/would spare about [1-9]\d* bales/);
    const days = (head: number): number =>
      Number(/about (\d+) days/.exec(saidAt(WISCONSIN, head) ?? 'about 0 days')![1]);
    expect(days(8)).toBeLessThan(days(6));
  });

  it('says the hay of a small herd by weight where it is not two bales', () => {
    expect(saidAt(WISCONSIN, 2, 1300)).toMatch(/would spare about [1-9]\d* kg of hay;/);
    expect(saidAt(WISCONSIN, 2, 1500)).toMatch(/would spare about 2 bales;/);
  });

  it('says no more days of grass than there are before spring', () => {
    const one = saidAt(WISCONSIN, 1)!;
    expect(one).toMatch(/^More grass than the cattle need until there is grass again stands/);
    const bales = (text: string): number => Number(/spare about (\d+) bales/.exec(text)![1]);
    // A cow eats a good two tons between the end of November and May: half of what two do.
    expect(bales(one)).toBeLessThanOrEqual(bales(saidAt(WISCONSIN, 4)!));
  });

  it('is in the plan, and no word of it where no snow lies or little stands', () => {
    const { issues } = plannedPasture(contextOf(WISCONSIN, 4));
    expect(issues.filter(({ code }) => code === 'grass-under-snow')).toHaveLength(1);
    for (const place of [OREGON, PLACES[1]!, PLACES[4]!]) expect(saidAt(place, 4)).toBeUndefined();
    expect(saidAt(WISCONSIN, 30)).toBeUndefined();
  });
});
