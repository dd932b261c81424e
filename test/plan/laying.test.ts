import { describe, expect, it } from '@jest/globals';
import { addDays } from '../../shared/calendar/plain-date.js';
import type { Batch } from '../../shared/farm/batch.js';
import type { Coop } from '../../shared/farm/facility.js';
import type { EggCount } from '../../shared/farm/egg-count.js';
import type { BatchPlan } from '../../shared/plan/batch-plan.js';
import type { LayingPart } from '../../shared/plan/laying.js';
import { newRequest } from '../support/factories.js';
import { plannedBatch } from '../support/pictures.js';

const MILD = { monthlyMinC: Array<number>(12).fill(12), monthlyMaxC: Array<number>(12).fill(22) };

interface Hens {
  readonly batch?: Partial<Batch>;
  readonly eggCounts?: readonly EggCount[];
  readonly latitudeDeg?: number;
  readonly lightH?: number;
  readonly isHill?: boolean;
}

function planOf({
  batch,
  eggCounts = [],
  latitudeDeg = 45,
  lightH,
  isHill = false,
}: Hens = {}): BatchPlan {
  const coop: Coop = {
    kind: 'coop',
    id: 'coop',
    name: 'Coop',
    floorM2: 8,
    roostM: 6,
    nestBoxes: 6,
    runM2: 40,
    ...(lightH === undefined ? {} : { lightH }),
  };
  return plannedBatch(
    newRequest({
      farm: { latitudeDeg, ...(isHill ? {} : MILD) },
      facilities: [coop],
      eggCounts,
      batch: {
        purpose: 'layers',
        strainId: 'brown-layer',
        sex: 'pullets',
        wantedBirds: 12,
        arrivalDate: '2027-04-15',
        coopId: 'coop',
        ...batch,
      },
    }),
  );
}

const hens = (asked?: Hens): LayingPart => planOf(asked).laying!;

/** Eggs a week, as planned, in a month. */
const weekIn = ({ months }: LayingPart, month: string): number =>
  months.find(({ from }) => from.startsWith(month))!.planned.value;

describe('planLaying', () => {
  it('gives fewer eggs in December than in May at 45 degrees without a lamp, and not at the equator', () => {
    const ratio = (latitudeDeg: number) => {
      const laying = hens({ latitudeDeg });
      return weekIn(laying, '2027-12') / weekIn(laying, '2028-05');
    };
    expect(ratio(45)).toBeLessThan(0.8);
    expect(ratio(0)).toBeGreaterThan(1);
  });

  it('gives more in winter with a lamp in the coop, and the same in June', () => {
    const [dark, lit] = [hens(), hens({ lightH: 15 })];
    expect(weekIn(lit, '2027-12')).toBeGreaterThan(1.2 * weekIn(dark, '2027-12'));
    expect(weekIn(lit, '2028-06')).toBeCloseTo(weekIn(dark, '2028-06'), 6);
  });

  it('shows both beside each other, whichever is planned', () => {
    const [dark, lit] = [hens(), hens({ lightH: 15 })];
    expect(dark.months.map(({ lit: { value } }) => value)).toEqual(
      lit.months.map(({ planned }) => planned.value),
    );
    expect(lit.months.map(({ unlit }) => unlit.value)).toEqual(
      dark.months.map(({ planned }) => planned.value),
    );
    expect([dark.lampH, lit.lampH]).toEqual([undefined, 15]);
  });

  it('lets a cold winter take eggs too', () => {
    expect(weekIn(hens({ isHill: true }), '2028-01')).toBeLessThan(
      0.95 * weekIn(hens(), '2028-01'),
    );
  });

  it('loses more to short days with an old breed than with a hybrid', () => {
    const ratio = (batch: Partial<Batch>) => {
      const laying = hens({ batch });
      return weekIn(laying, '2027-12') / weekIn(laying, '2028-05');
    };
    expect(ratio({ strainId: 'heritage' })).toBeLessThan(ratio({}) - 0.1);
  });

  it('gives fewer eggs in each later year, from a molt in the second fall on', () => {
    const { years, molts } = hens();
    const eggs = years.map(({ eggsPerHen }) => eggsPerHen.value);
    expect(eggs).toEqual([...eggs].sort((a, b) => b - a));
    expect(eggs).toHaveLength(4);
    expect(String(molts[0]!.value).slice(0, 7)).toBe('2028-10');
  });

  it('adds up: days of the first year, its weeks and its months are the same eggs', () => {
    const plan = planOf();
    const { eggsInYear, weeks } = plan.laying!;
    const days = plan.daily.find(({ id }) => id === 'eggs-day')!.values;
    const ofDays = days.reduce((sum, each) => sum + each, 0);
    const ofWeeks = weeks.reduce((sum, { eggs }) => sum + eggs.value, 0);
    expect(ofDays / eggsInYear.value).toBeCloseTo(1, 4);
    expect(ofWeeks / eggsInYear.value).toBeGreaterThan(0.99);
  });
});

describe('eggs that are wanted', () => {
  it('say which weeks are short and how many hens would do', () => {
    const plan = planOf({ batch: { eggsWantedPerWeek: 60 } });
    const { shortOf, months } = plan.laying!;
    expect(shortOf!.length).toBeGreaterThan(0);
    for (const { from, to, weeks } of shortOf!) expect(addDays(from, 7 * weeks - 1)).toBe(to);
    const december = months.find(({ from }) => from === '2027-12-01')!;
    expect(december.hensUnlit!.value).toBeGreaterThan(december.hensLit!.value);
    // That many hens would lay what is wanted.
    const perHen = december.unlit.value / 12;
    expect(december.hensUnlit!.value * perHen).toBeGreaterThan(55);
    expect(plan.issues.map(({ code }) => code)).toContain('eggs-short');
  });

  it('size no flock by the molt', () => {
    const { months } = hens({ batch: { eggsWantedPerWeek: 60 } });
    expect(months.find(({ from }) => from === '2028-11-01')!.hensUnlit).toBeUndefined();
  });

  it('say nothing where nobody asked', () => {
    const plan = planOf();
    expect(plan.laying!.shortOf).toBeUndefined();
    expect(plan.issues.map(({ code }) => code)).not.toContain('eggs-short');
  });
});

describe('what a household tells of its own hens', () => {
  it('takes a year of its own in the place of the table', () => {
    const { years, own } = hens({ batch: { ownEggsPerHen: 180 } });
    expect(years[0]!.eggsPerHen.value).toBeCloseTo(180, 3);
    expect(own!.mark).toBe('computed');
  });

  it('is drawn toward what was counted, the more the longer it was', () => {
    const factor = (days: number) =>
      hens({
        eggCounts: [{ batchId: 'any', date: addDays('2028-02-29', days), days, eggs: 5 * days }],
      }).own!.value;
    expect(factor(60)).toBeLessThan(factor(7));
    expect(factor(7)).toBeLessThan(1);
  });

  it('says when a count lies before the first egg, and corrects nothing by it', () => {
    const plan = planOf({ eggCounts: [{ batchId: 'any', date: '2027-05-07', days: 7, eggs: 40 }] });
    expect(plan.laying!.own).toBeUndefined();
    expect(plan.laying!.counts).toHaveLength(1);
    expect(plan.issues.map(({ code }) => code)).toContain('eggs-not-expected');
  });
});

describe('what eggs cost and bring', () => {
  const pays = (eggDozen: string): unknown =>
    hens({ batch: { prices: { eggDozen, feedPerBag: { layer: '16' } } } }).paysUntil!.value;

  it('turns earlier at a lower price of eggs', () => {
    const [poor, good] = [pays('2.50'), pays('3.50')];
    expect(String(poor) < String(good)).toBe(true);
    expect(pays('0.50')).toBe('not even in the first year');
    expect(pays('20')).toBe('past laying year 4');
  });

  it('is said in feed where a price is missing', () => {
    const { paysUntil, years } = hens();
    expect(paysUntil).toBeUndefined();
    const feed = years.map(({ feedPerDozen }) => feedPerDozen.value);
    expect(feed).toEqual([...feed].sort((a, b) => a - b));
  });
});

describe('raising pullets', () => {
  it('tells the cockerels of a straight run by themselves', () => {
    const straight = planOf({ batch: { sex: 'straight-run' } });
    const pullets = planOf();
    const { feedToFirstEgg, cockerelFeed, cockerelLive } = straight.laying!;
    expect(feedToFirstEgg.value / pullets.laying!.feedToFirstEgg.value).toBeCloseTo(1, 1);
    expect(cockerelFeed!.value).toBeGreaterThan(30);
    expect(cockerelLive!.value).toBeGreaterThan(1);
    expect(straight.issues.map(({ code }) => code)).toContain('cockerels-leave');
    expect(pullets.laying!.cockerelFeed).toBeUndefined();
  });

  it('ends medicated feed before the earliest first egg', () => {
    const { lastMedicatedDay } = hens({ batch: { medicatedWithdrawalDays: 5 } });
    // Hatched 14 April, first eggs at 18 weeks at the earliest: 18 August, less 5 full days.
    expect(lastMedicatedDay!.value).toBe('2027-08-12');
  });

  it.each([
    ['layers-two', ['Starter-grower', 'Layer'], false],
    ['layers-all-flock', ['Starter-grower', 'All-flock'], true],
    ['layers-one', ['All-flock'], true],
  ])('feeds by %s: %p', (feedProgramId, names, hasShell) => {
    const plan = planOf({ batch: { feedProgramId } });
    expect(plan.feed.phases.map(({ name }) => name)).toEqual(names);
    expect(plan.laying!.oysterShell !== undefined).toBe(hasShell);
  });

  it('refuses a way of feeding or laying that is not the strain’s', () => {
    expect(() => planOf({ batch: { feedProgramId: 'broiler' } })).toThrow();
    expect(() => planOf({ batch: { layCurveId: 'old-breed' } })).toThrow();
  });
});
