import { describe, expect, it } from '@jest/globals';
import { addDays, daysBetween } from '../../shared/calendar/plain-date.js';
import type { BatchPlan } from '../../shared/plan/batch-plan.js';
import { newRequest } from '../support/factories.js';
import { plannedBatch } from '../support/pictures.js';

const ARRIVAL = '2027-05-05';
const BAG_KG = 20;
type Opened = readonly (readonly [day: number, bags: number])[];
const planned = (opened: Opened = []): BatchPlan =>
  plannedBatch({
    ...newRequest(),
    feedOpenings: opened.map(([day, bags], k) => ({
      ...{ id: `f${k}`, batchId: 'any', date: addDays(ARRIVAL, day), bags, bagKg: BAG_KG },
    })),
  });
const plain = planned();
const feedTo = (plan: BatchPlan, day: number): number =>
  plan.daily
    .find(({ id }) => id === 'feed-day')!
    .values.slice(0, day)
    .reduce((a, b) => a + b, 0);
/** Openings of one bag each as a flock that uses so much of the plan would come to them. */
function bags(share: number, count: number): Opened {
  const days: number[] = [0];
  for (let day = 1; days.length < count; day++) {
    if (days.length * BAG_KG <= share * feedTo(plain, day)) days.push(day);
  }
  return days.map((day) => [day, 1]);
}

const HENS = {
  purpose: 'layers',
  strainId: 'brown-layer',
  sex: 'pullets',
  wantedBirds: 20,
} as const;
const hensWith = (days: readonly number[] = []): BatchPlan => {
  const request = newRequest({ batch: { ...HENS, arrivalDate: ARRIVAL } });
  const feedOpenings = days.map((day, k) => ({
    ...{ id: `h${k}`, batchId: 'any', date: addDays(ARRIVAL, day), bags: 1, bagKg: BAG_KG },
  }));
  return plannedBatch({
    ...request,
    feedOpenings,
    today: addDays(ARRIVAL, (days.at(-1) ?? 0) + 1),
  });
};
const plainHens = hensWith();
const layFrom = daysBetween(ARRIVAL, String(plainHens.laying!.firstEgg.value));
/** Days on which hens that use so much of the plan open a bag, from a day of lay on. */
function bagsOfHens(share: number, count: number, from = 10): number[] {
  const days = [layFrom + from];
  for (let day = layFrom + from; days.length < count; day++) {
    const used = share * (feedTo(plainHens, day) - feedTo(plainHens, days[0]!));
    if (days.length * BAG_KG <= used) days.push(day);
  }
  return days;
}

describe('feed of hens by the bags that were opened since the first egg', () => {
  it('moves what they eat from then on, and nothing of their rearing', () => {
    const [some, more] = [6, 14].map((count) => hensWith(bagsOfHens(1.25, count)));
    const over = (plan: BatchPlan): number =>
      (feedTo(plan, layFrom + 200) - feedTo(plan, layFrom)) /
      (feedTo(plainHens, layFrom + 200) - feedTo(plainHens, layFrom));
    expect(over(more!)).toBeGreaterThan(over(some!));
    expect(over(more!)).toBeGreaterThan(1.15);
    expect(over(more!)).toBeLessThan(1.26);
    expect(feedTo(more!, layFrom)).toBe(feedTo(plainHens, layFrom));
    const { used, total } = more!.feed;
    expect(used!.used.value).toBe(13 * BAG_KG);
    expect(used!.factor.spread!.low).toBeLessThan(over(more!));
    expect(used!.conversion).toBeUndefined();
    expect(total.inputs).toContainEqual(
      expect.objectContaining({ label: 'Your hens’ feed over the plan’s', mark: 'own-record' }),
    );
    const dozen = (plan: BatchPlan): number => plan.laying!.years[1]!.feedPerDozen.value;
    expect(dozen(more!) / dozen(plainHens)).toBeCloseTo(over(more!), 5);
    expect(more!.issues.map(({ code }) => code)).toContain('feed-above-plan');
  });

  it('begins anew after weeks in which no bag was told', () => {
    const late = bagsOfHens(1.25, 8, 120);
    const [alone, after] = [hensWith(late), hensWith([...bagsOfHens(1.25, 3), ...late])];
    expect(after.feed.used!.factor.value).toBe(alone.feed.used!.factor.value);
  });
});

describe('feed by the bags that were opened', () => {
  it.each([
    ['none', []],
    ['one bag', [[0, 1]]],
    [
      'a second bag, as the first may have been half empty',
      [
        [0, 1],
        [6, 1],
      ],
    ],
    ['several on the same day', [[0, 6]]],
  ] as const)('is left as planned after %s', (_, opened) => {
    const plan = planned(opened);
    expect(plan.feed.used).toBeUndefined();
    expect(plan.feed.total.value).toBe(plain.feed.total.value);
  });

  it('changes little where they use what was planned', () => {
    const { feed } = planned(bags(1, 6));
    expect(feed.used!.used.value).toBe(5 * BAG_KG);
    expect(feed.total.value / plain.feed.total.value).toBeGreaterThan(0.95);
    expect(feed.total.value / plain.feed.total.value).toBeLessThan(1.05);
  });

  it('moves feed to buy and the conversion with what is used, the more so the more bags', () => {
    // Bags are opened on whole days: at two of them a week the ratio goes up and down by a few hundredths.
    const more = [4, 7, 14].map((count) => planned(bags(1.3, count)));
    const ratios = more.map(({ feed }) => feed.total.value / plain.feed.total.value);
    expect(ratios[0]).toBeGreaterThan(1.02);
    expect(ratios[1]).toBeGreaterThan(ratios[0]!);
    expect(ratios[2]).toBeGreaterThan(ratios[1]!);
    expect(ratios[2]).toBeLessThan(1.31);
    const last = more.at(-1)!;
    expect(last.leaving!.conversion.value / plain.leaving!.conversion.value).toBeCloseTo(
      ratios[2]!,
      2,
    );
    expect(last.leaving!.liveEach.value).toBe(plain.leaving!.liveEach.value);
    // Nearly a third more than planned, and what is planned as spilled besides.
    const { wasted } = last.feed.used!;
    const spilled = plain.feed.wasteShare;
    expect(wasted!.value).toBeCloseTo(
      (last.feed.used!.used.value / last.feed.used!.plannedKg) * (1 + spilled) - 1,
      5,
    );
    expect(wasted!.value).toBeGreaterThan(0.2);
    expect(wasted!.spread!.low).toBeLessThan(wasted!.value);
    const open = more.map(({ feed }) => feed.used!.factor.spread!.high - feed.used!.factor.value);
    expect(open[2]).toBeLessThan(open[0]!);
  });

  it('is called too much once it is sure, and not before', () => {
    const said = (opened: Opened): boolean =>
      planned(opened).issues.some(({ code }) => code === 'feed-above-plan');
    expect(said(bags(1.4, 14))).toBe(true);
    expect(said(bags(1.4, 3))).toBe(false);
    expect(said(bags(1.05, 14))).toBe(false);
  });

  it('is left as planned, and asked about, where no flock eats so much or so little', () => {
    for (const share of [0.4, 2.6]) {
      const plan = planned(bags(share, share < 1 ? 4 : 14));
      expect(plan.issues.map(({ code }) => code)).toContain('feed-far-off');
      expect(plan.feed.total.value).toBe(plain.feed.total.value);
    }
  });

  it('names the bags among what the feed is made of', () => {
    const { total } = planned(bags(1.3, 8)).feed;
    expect(total.inputs).toContainEqual(
      expect.objectContaining({ label: 'Your feed over the plan’s', mark: 'own-record' }),
    );
  });
});
