import { describe, expect, it } from '@jest/globals';
import { addDays } from '../../shared/calendar/plain-date.js';
import type { Batch } from '../../shared/farm/batch.js';
import type { Handover } from '../../shared/farm/handover.js';
import { FieldError } from '../../shared/problems/field-problem.js';
import { newBrooder, newRequest } from '../support/factories.js';
import { foundArrivals, plannedBatch, type BatchCase } from '../support/pictures.js';

const OWN = {
  origin: 'incubator',
  purpose: 'layers',
  strainId: 'heritage',
  sex: 'straight-run',
  hatchToArrivalDays: 0,
  wantedBirds: 12,
  arrivalDate: '2027-05-05',
} as const satisfies Partial<Batch>;

const planOf = (more: Partial<Batch> = {}, rest: Partial<Omit<BatchCase, 'batch' | 'farm'>> = {}) =>
  plannedBatch(newRequest({ ...rest, batch: { ...OWN, brooderId: 'brooder', ...more } }));
const hatchOf = (more: Partial<Batch> = {}) => planOf(more).hatching!;
const codesOf = ({ issues }: ReturnType<typeof planOf>) => issues.map(({ code }) => code);
const idsOf = ({ tasks }: ReturnType<typeof planOf>) => tasks.tasks.map(({ id }) => id);

describe('eggs set in an incubator', () => {
  it('are set 21 days before the hatch, shut up on day 18, candled after one week and two', () => {
    const { setOn, candleOn, incubator, hatchOn, keepFrom } = hatchOf();
    expect(setOn.value).toBe('2027-04-14');
    expect(candleOn.map(({ value }) => value)).toEqual(['2027-04-21', '2027-04-28']);
    expect(incubator!.lockdownOn.value).toBe('2027-05-02');
    expect(hatchOn.value).toBe('2027-05-05');
    expect(keepFrom.value).toBe('2027-04-07');
  });

  it('take 28 days of ducks and turkeys', () => {
    for (const strainId of ['pekin-duck', 'turkey']) {
      const { setOn, incubator } = hatchOf({ strainId, purpose: 'meat' });
      expect(setOn.value).toBe('2027-04-07');
      expect(incubator!.lockdownOn.value).toBe('2027-05-02');
    }
  });

  it('allow for clear eggs, for chicks that die and for every second being a cockerel', () => {
    const { eggsToSet, eggSizes, chicksExpected, share } = hatchOf();
    expect(share.value).toBe(0.7);
    // 12 hens ÷ (0.70 × 0.5 × 0.965) are 35.5 eggs on average, and about as many half of the times.
    expect(Math.abs(eggSizes[0]!.value - 35.5)).toBeLessThan(2);
    expect(eggSizes.map(({ value }) => value)).toEqual(
      [...eggSizes.map(({ value }) => value)].sort((a, b) => a - b),
    );
    expect(eggsToSet.value).toBe(eggSizes[1]!.value);
    expect(chicksExpected.value).toBe(Math.round(eggsToSet.value * 0.7));
    expect(chicksExpected.spread!.low).toBeLessThan(chicksExpected.value);
    expect(chicksExpected.spread!.high).toBeGreaterThan(chicksExpected.value);
  });

  it('need more than the same birds bought as chicks', () => {
    const { eggsToSet } = hatchOf({ purpose: 'meat' });
    const bought = planOf({ purpose: 'meat', origin: 'hatchery' }).birds.toOrder;
    expect(eggsToSet.value).toBeGreaterThan(bought.value / 0.7);
  });

  it('are enough eight times in ten', () => {
    const plan = planOf();
    expect(plan.birds.enough.value).toBeGreaterThanOrEqual(0.8);
    expect(plan.birds.enough.value).toBeLessThan(0.86);
  });

  it('go by the household’s own records: eggs really set, its share that hatched, chicks counted', () => {
    expect(hatchOf({ hatchPercent: 50 }).share).toMatchObject({
      value: 0.5,
      mark: 'computed',
      sources: ['EGG_STORAGE'],
    });
    const few = planOf({ eggsSet: 20 });
    expect(few.hatching!.eggs.value).toBe(20);
    expect(few.birds.chicksPlaced.value).toBe(14);
    expect(codesOf(few)).toContain('too-few-birds');
    expect(few.issues.find(({ code }) => code === 'too-few-birds')!.text).toContain(
      `Set ${few.hatching!.eggsToSet.value} eggs`,
    );
    expect(planOf({ orderedBirds: 31 }).birds.chicksPlaced.value).toBe(31);
  });

  it('lose by being kept for more than a week, and badly from two weeks on', () => {
    expect(codesOf(planOf())).not.toContain('eggs-kept-long');
    const kept = planOf({ oldestEggDays: 10 });
    expect(kept.hatching!.share.value).toBeCloseTo(0.694, 9);
    expect(kept.issues.find(({ code }) => code === 'eggs-kept-long')!.level).toBe('note');
    const old = planOf({ oldestEggDays: 14 });
    expect(old.issues.find(({ code }) => code === 'eggs-kept-long')!.level).toBe('act');
    expect(old.hatching!.share.outside).toContain('13 days');
    // The total says so as well.
    expect(old.hatching!.eggsToSet.outside).toContain('13 days');
  });

  it('hang their work on setting, candling, lockdown and the hatch', () => {
    const plan = planOf();
    const start = (id: string) => plan.tasks.tasks.find((task) => task.id === id)?.start;
    expect(start('hatch.set-eggs-incubator')).toBe('2027-04-14');
    expect(start('hatch.candle.1')).toBe('2027-04-21');
    expect(start('hatch.candle.2')).toBe('2027-04-28');
    expect(start('hatch.lockdown')).toBe('2027-05-02');
    expect(start('hatch.hatch-day')).toBe('2027-05-05');
    const turning = plan.tasks.tasks.find(({ id }) => id === 'hatch.turn-eggs')!;
    expect([turning.start, turning.end]).toEqual(['2027-04-15', '2027-05-01']);
    // Nothing is ordered or fetched from the post, and nobody waits for what there is not.
    expect(idsOf(plan)).not.toContain('layers.collect-count-and-place-pullets');
    const names = new Set(plan.tasks.tasks.map(({ name }) => name));
    const unknown = plan.tasks.tasks.flatMap(({ waitsFor }) =>
      waitsFor.filter((name) => !name.startsWith('the ') && !names.has(name)),
    );
    expect(unknown).toEqual([]);
    expect(plan.cautions).toContain('incubator');
    expect(plan.cautions).not.toContain('post');
  });

  it('still need a warm brooder', () => {
    const plan = planOf();
    expect(plan.heat?.brooderName).toBe('Brooder');
    expect(plan.brooding!.steps.length).toBeGreaterThan(3);
    expect(idsOf(plan)).toContain('layers.preheat-brooder');
  });

  it('are run by kind of incubator, as the guides print it', () => {
    const still = hatchOf({ incubatorKindId: 'still-air' }).incubator!;
    expect(still.airC.value).toBe(38.9);
    expect(still.where).toContain('tops of the eggs');
    expect(hatchOf().incubator!.airC.value).toBe(37.5);
  });

  it('say that a cross does not breed true, and that heritage birds do', () => {
    expect(codesOf(planOf({ strainId: 'brown-layer' }))).toContain('not-true-to-type');
    expect(codesOf(planOf())).not.toContain('not-true-to-type');
  });

  it('are priced by the egg', () => {
    const { lines } = planOf({ prices: { perEgg: '0.50', perBird: '9.00' } }).bill;
    const eggs = lines.find(({ label }) => label === 'Hatching eggs')!;
    expect(eggs.cost!.value).toBe(50 * hatchOf().eggs.value);
    expect(lines.map(({ label }) => label)).not.toContain('Birds');
  });

  it('are not held against the post by the finder, but against the days eggs take', () => {
    const request = newRequest({
      today: '2027-04-20',
      batch: { ...OWN, brooderId: 'brooder' },
      farm: { noDeliveryDates: ['2027-05-05'] },
    });
    const [first, ...later] = foundArrivals(request, { from: '2027-05-05', to: '2027-06-30' }).sort(
      (a, b) => (a.arrivalDate < b.arrivalDate ? -1 : 1),
    );
    const codes = (week: typeof first) => week!.reasons.map(({ code }) => code);
    expect(codes(first)).not.toContain('shipping');
    expect(codes(first)).toContain('lead-time');
    expect(codes(later.at(-1))).not.toContain('lead-time');
  });
});

describe('eggs under a broody hen', () => {
  const hen = { origin: 'hen' } as const;

  it('need so many hens at once', () => {
    const { hens, eggs } = hatchOf(hen);
    expect(hens!.value).toBe(Math.ceil(eggs.value / 10));
    expect(codesOf(planOf(hen))).toContain('several-hens');
    expect(codesOf(planOf({ ...hen, eggsSet: 10 }))).not.toContain('several-hens');
  });

  it('need no brooder, no heat and none of their work', () => {
    const plan = planOf(hen);
    expect(plan.brooding).toBeUndefined();
    expect(plan.heat).toBeUndefined();
    expect(plan.space.needs).toEqual([]);
    expect(plan.occupies).toEqual([]);
    expect(codesOf(plan)).not.toContain('no-brooder');
    expect(idsOf(plan).filter((id) => /brooder|heat|lamp/.test(id))).toEqual([]);
    expect(plan.cautions).toContain('broody-hen');
    expect(plan.cautions).not.toContain('heat-lamp');
    expect(idsOf(plan)).toContain('hatch.set-eggs-hen');
    expect(idsOf(plan)).not.toContain('hatch.lockdown');
  });

  it('leave the brooder free for another batch on the same days', () => {
    const other = { ...newRequest().batch, id: 'other', name: 'Other', brooderId: 'brooder' };
    const plan = planOf(hen, { facilities: [newBrooder()], batches: [other] } as never);
    expect(codesOf(plan)).not.toContain('place-taken');
  });

  it('keep the chicks warm until she leaves them', () => {
    const { outdoors } = planOf(hen);
    expect(outdoors.moveOut!.label).toBe('Without the hen');
    expect(outdoors.moveOut!.value >= addDays(OWN.arrivalDate, 42)).toBe(true);
  });

  it('are not planned of turkeys, and the refusal says why', () => {
    expect(() => planOf({ ...hen, purpose: 'meat', strainId: 'turkey' })).toThrow(FieldError);
    try {
      planOf({ ...hen, purpose: 'meat', strainId: 'turkey' });
    } catch (error) {
      expect((error as FieldError).problems).toEqual([
        expect.objectContaining({
          field: 'batch.origin',
          fix: expect.stringContaining('blackhead'),
        }),
      ]);
    }
  });
});

describe('own eggs', () => {
  const refused = (more: Partial<Batch>): string[] => {
    try {
      planOf(more);
      return [];
    } catch (error) {
      return (error as FieldError).problems.map(({ field }) => field);
    }
  };

  it('are refused as sexed chicks, or as chicks on the way', () => {
    expect(refused({ sex: 'pullets' })).toEqual(['batch.sex']);
    expect(refused({ hatchToArrivalDays: 1 })).toEqual(['batch.hatchToArrivalDays']);
    expect(refused({ incubatorKindId: 'tepid' })).toEqual(['batch.incubatorKindId']);
  });
});

describe('a hatch on days away', () => {
  const away = (from: string, to: string) => ({ away: [{ from, to }] });
  const people = [
    { id: 'a', name: 'Ann', ...away('2027-05-01', '2027-05-03') },
    { id: 'b', name: 'Ben', ...away('2027-05-02', '2027-05-02') },
  ];

  it('is said when both are away on the day of lockdown', () => {
    const { issues } = planOf({}, { people });
    const said = issues.filter(({ code }) => code === 'hatch-away');
    expect(said).toHaveLength(1);
    expect(said[0]!.text).toMatch(/^Lockdown is on .*everybody is away/);
  });

  it('is not said when one of them is there', () => {
    expect(
      codesOf(planOf({}, { people: [people[0]!, { id: 'b', name: 'Ben', away: [] }] })),
    ).not.toContain('hatch-away');
  });

  it('under a hen counts on the days of the hatch alone', () => {
    expect(codesOf(planOf({ origin: 'hen' }, { people }))).not.toContain('hatch-away');
    const both = [{ id: 'a', name: 'Ann', ...away('2027-05-04', '2027-05-08') }];
    expect(codesOf(planOf({ origin: 'hen' }, { people: both }))).toContain('hatch-away');
  });

  it('names the sitter who is in charge of it', () => {
    const handovers = [
      {
        ...{ id: 'h', name: 'Week off', sitter: 'Cleo', from: '2027-05-01', to: '2027-05-08' },
        ...{ hoursPerDay: 3, roundOrder: [], phones: [], whereabouts: [] },
      },
    ] as unknown as Handover[];
    const plan = planOf({}, { people, handovers });
    const said = plan.issues.filter(({ code }) => code === 'hatch-with-sitter');
    expect(said.map(({ text }) => text)).toEqual([
      expect.stringContaining('Lockdown'),
      expect.stringContaining('Cleo is in charge'),
    ]);
    expect(codesOf(plan)).not.toContain('hatch-away');
  });
});
