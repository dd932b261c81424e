import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { addDays } from '../../shared/calendar/plain-date.js';
import type { Batch } from '../../shared/farm/batch.js';
import type { Facility } from '../../shared/farm/facility.js';
import { batchRow } from '../../shared/plan/year/batch-row.js';
import { lifeLineOf } from '../../shared/plan/story/life-line.js';
import { FieldError } from '../../shared/problems/field-problem.js';
import { newBrooder, newRequest } from '../support/factories.js';
import { foundArrivals, plannedBatch } from '../support/pictures.js';

const STARTED = {
  purpose: 'layers',
  origin: 'started',
  strainId: 'brown-layer',
  sex: 'pullets',
  hatchToArrivalDays: 0,
  arrivalAgeWeeks: 16,
  wantedBirds: 20,
  arrivalDate: '2027-05-05',
  coopId: 'coop',
} as const satisfies Partial<Batch>;
const COOP = {
  ...({ kind: 'coop', id: 'coop', name: 'Coop' } as const),
  ...{ floorM2: 8, roostM: 6, nestBoxes: 5, runM2: 0 },
} satisfies Facility;

const requestOf = (more: Partial<Batch> = {}, rest: object = {}) =>
  newRequest({ facilities: [newBrooder(), COOP], ...rest, batch: { ...STARTED, ...more } });
const planOf = (more: Partial<Batch> = {}, rest: object = {}) =>
  plannedBatch(requestOf(more, rest));
const idsOf = ({ tasks }: ReturnType<typeof planOf>) => tasks.tasks.map(({ id }) => id);

describe('started pullets', () => {
  it('go into the coop on the day they come, without brooder, heat or a move', () => {
    const plan = planOf({ brooderId: 'brooder' });
    expect(plan.brooding).toBeUndefined();
    expect(plan.heat).toBeUndefined();
    expect(plan.space.needs).toEqual([]);
    expect(plan.outdoors.moveOut!.value).toBe('2027-05-05');
    expect(plan.occupies.map(({ facilityId, from }) => [facilityId, from])).toEqual([
      ['coop', '2027-05-05'],
    ]);
    expect(plan.issues.map(({ code }) => code)).not.toContain('no-brooder');
    expect(plan.bill.lines.map(({ label }) => label)).not.toContain('Heat');
    expect(plan.cautions).not.toContain('post');
  });

  it('come at the age that was said, and lay when hens of their kind do', () => {
    const plan = planOf();
    expect(plan.hatchDate).toBe(addDays('2027-05-05', -112));
    expect(plan.laying!.ageAtFirstEgg.value).toBe(132);
    expect(plan.words.young).toBe('pullets');
  });

  it('settle for a week before they lay when they come as old as hens that do', () => {
    expect(planOf({ arrivalAgeWeeks: 20 }).laying!.firstEgg.value).toBe('2027-05-12');
  });

  it('are hardly more to order than are wanted, and far fewer than chicks', () => {
    const { birds } = planOf({ wantedBirds: 100 });
    const chicks = planOf({ wantedBirds: 100, origin: 'hatchery', hatchToArrivalDays: 1 }).birds;
    expect(birds.toOrder.value).toBeLessThanOrEqual(102);
    expect(chicks.toOrder.value).toBeGreaterThan(104);
  });

  it('lose what the household says of their time here', () => {
    const { daily, laying } = planOf({ laterLossPercent: 10, orderedBirds: 100 });
    const alive = daily.find(({ id }) => id === 'alive')!.values;
    const eggDay = Number(laying!.ageAtFirstEgg.value) - 112;
    expect(alive[0]).toBe(100);
    expect(alive[eggDay]).toBeCloseTo(90, 6);
  });

  it('get no feed for a few days only', () => {
    expect(planOf().feed.phases.map(({ phaseId }) => phaseId)).toEqual(['developer', 'layer']);
    expect(planOf({ arrivalAgeWeeks: 20 }).feed.phases.map(({ phaseId }) => phaseId)).toEqual([
      'layer',
    ]);
  });

  it('cost what is typed for them: a chick’s price is none', () => {
    const products = [{ kind: 'chicks', id: 'c', name: 'Chicks', price: '4.20' }];
    const pullets = (plan: ReturnType<typeof planOf>) =>
      plan.bill.lines.find(({ label }) => label === 'Pullets');
    expect(pullets(planOf({}, { products }))!.price).toBeUndefined();
    expect(pullets(planOf({ prices: { perBird: '24' } }))!.price).toBe('24');
  });

  it('are kept apart from own hens, and join them when the days apart are over', () => {
    const plan = planOf({ joinsOlderFlock: true });
    expect(plan.issues.find(({ code }) => code === 'keep-apart')!.text).toContain(
      'apart from your own birds until Fri 4 Jun 2027',
    );
    const join = plan.tasks.tasks.find(({ id }) => id === 'started.join-older-flock')!;
    expect(join.start).toBe('2027-06-04');
  });

  it('stand on the year and the story from their arrival in the coop', () => {
    const plan = planOf();
    expect(batchRow('b', plan).bars.map(({ kind }) => kind)).toEqual(['coop', 'laying']);
    expect(lifeLineOf(plan, {}).map(({ label }) => label)).not.toContain('Out of the brooder');
  });

  it('are no worse for a day without post or a brooder, and worse for frost and for great heat', () => {
    const weeks = foundArrivals(requestOf(), { from: '2027-01-01', to: '2027-12-01' });
    const texts = weeks.flatMap(({ reasons }) => reasons.map(({ text }) => text)).join('\n');
    expect(texts).not.toMatch(/post|box|brooder|chick/i);
    const young = foundArrivals(requestOf({ arrivalAgeWeeks: 8 }), {
      from: '2027-01-01',
      to: '2027-12-01',
    });
    const coldIn = (month: string): number =>
      young
        .filter(({ arrivalDate }) => arrivalDate.startsWith(`2027-${month}`))
        .flatMap(({ reasons }) => reasons.filter(({ code }) => code === 'nights'))
        .reduce((sum, { points }) => sum + points, 0);
    expect(coldIn('01')).toBeGreaterThan(coldIn('07') + 1);
  });

  it.each([
    ['purpose', { purpose: 'meat' }],
    ['sex', { sex: 'straight-run' }],
    ['hatchToArrivalDays', { hatchToArrivalDays: 1 }],
    ['arrivalAgeWeeks', { arrivalAgeWeeks: 4 }],
    ['arrivalAgeWeeks', { arrivalAgeWeeks: 30 }],
  ] as const)('are refused by the field %s that does not go with them', (field, more) => {
    const plan = (): unknown => planOf(more);
    expect(plan).toThrow(FieldError);
    expect(plan).toThrow(field);
  });
});

it('no started batch has work of a brooder, of chicks or of a move', () => {
  fc.assert(
    fc.property(
      fc.record({
        strainId: fc.constantFrom('white-layer', 'brown-layer', 'heritage'),
        arrivalAgeWeeks: fc.integer({ min: 8, max: 20 }),
        wantedBirds: fc.integer({ min: 1, max: 500 }),
        days: fc.integer({ min: -200, max: 500 }),
        joinsOlderFlock: fc.boolean(),
      }),
      ({ days, ...more }) => {
        const arrivalDate = addDays('2026-11-25', days);
        const plan = planOf({ ...more, arrivalDate, brooderId: 'brooder' });
        const names = plan.tasks.tasks.map(({ name, ifLate }) => `${name} ${ifLate}`).join('\n');
        expect(names).not.toMatch(/brooder|chick|heat|lamp|harden|post office|starter feed/i);
        expect(idsOf(plan).filter((id) => id.includes('move-pullets'))).toEqual([]);
        expect(idsOf(plan)).toContain('started.shut-in');
        expect(plan.tasks.events.map(({ kind }) => kind)).not.toContain('move-out');
        const eggs = Number(plan.laying!.ageAtFirstEgg.value);
        expect(eggs).toBeGreaterThanOrEqual(7 * more.arrivalAgeWeeks + 7);
      },
    ),
    { numRuns: 60 },
  );
}, 60_000);
