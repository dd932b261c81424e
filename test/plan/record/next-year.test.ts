import { describe, expect, it } from '@jest/globals';
import { addDays } from '../../../shared/calendar/plain-date.js';
import type { FarmPicture, NamedBatch } from '../../../shared/farm/picture.js';
import { headChangesOf, type HeadsChanged, type ToldFact } from '../../../shared/farm/told-fact.js';
import type { HowItWent } from '../../../shared/plan/record/how-it-went.js';
import { learnedFromBatches } from '../../../shared/plan/record/own-batches.js';
import { nextYear, tiedAnew } from '../../../shared/plan/record/next-year.js';
import { newRequest, tables } from '../../support/factories.js';
import { newHerd, newPaddock } from '../../support/pasture-factories.js';
import { newPicture } from '../../support/pictures.js';
import { newOwnJob } from '../../support/season-factories.js';

const { batch: ordered, farm, climate, facilities } = newRequest({});
const CAME = '2027-05-05';
const batch = {
  ...ordered,
  ...{ id: 'meat', name: 'Spring 2027', arrivalDate: CAME, orderedBirds: 100, leaveAgeDays: 49 },
  ...{ moveOutDate: addDays(CAME, 25), orderDate: '2027-03-01' },
} as NamedBatch;

let k = 0;
const fact = (kind: ToldFact['kind'], day: number, details: object): ToldFact =>
  ({
    ...{ id: `f${++k}`, key: `f${k}`, kind, about: 'meat', on: addDays(CAME, day), details },
    toldAt: `${addDays(CAME, day)}T10:00:00.000Z`,
  }) as ToldFact;

const over = (firstWeek: number, later: number): ToldFact[] => [
  fact('arrived', 0, { birds: 100 }),
  fact('died', 3, { birds: firstWeek }),
  fact('died', 20, { birds: later }),
  fact('processed', 49, { birds: 100 - firstWeek - later, liveKg: 200 }),
];

const next = (facts: readonly ToldFact[], more: Partial<FarmPicture> = {}) =>
  nextYear(
    newPicture({
      ...{ farm, climate, facilities, today: '2027-12-01', batches: [batch] },
      headChanges: headChangesOf(facts as HeadsChanged[]),
      ...more,
    }),
    tables,
    { year: 2027, facts },
  );

describe('a year begun from the one before it', () => {
  it('brings each batch again on its weekday, with nothing of what was fixed for the old one', () => {
    const [again] = next([]).batches;
    expect(again).toMatchObject({ ofId: 'meat', plannedFor: CAME, learned: [] });
    // Nobody has told that they came.
    expect(again!.cameOn).toBeUndefined();
    const [late] = next([fact('arrived', 1, { birds: 100 })]).batches;
    expect(late).toMatchObject({ plannedFor: CAME, cameOn: addDays(CAME, 1) });
    expect(again!.next).toMatchObject({ name: 'Spring 2028', arrivalDate: '2028-05-03' });
    for (const gone of ['id', 'orderedBirds', 'orderDate', 'moveOutDate'])
      expect(again!.next).not.toHaveProperty(gone);
  });

  it('plans with losses drawn from the usual toward the own, and says so', () => {
    const losses = tables.losses.find(({ id }) => id === strainLosses())!;
    const [again] = next(over(10, 4)).batches;
    // The usual counts as 50 birds beside the 100 of the farm.
    const drawn = (died: number, usual: number) => (100 * (died + (50 * usual) / 100)) / 150;
    expect(again!.next.firstWeekLossPercent).toBeCloseTo(drawn(10, losses.firstWeekPercent), 1);
    expect(again!.next.laterLossPercent).toBeCloseTo(drawn(4, losses.laterPercent), 1);
    expect(again!.learned[0]).toMatch(/^10 of 100 were lost in the first week \(one batch\)/);
  });

  it('leaves alone what the household typed, and birds that are not over yet', () => {
    const typed = { ...batch, firstWeekLossPercent: 2, laterLossPercent: 1, weightFactor: 1 };
    const [own] = next(over(10, 4), { batches: [typed] }).batches;
    expect(own!.next).toMatchObject({ firstWeekLossPercent: 2, laterLossPercent: 1 });
    const [open] = next(over(10, 4).slice(0, 3)).batches;
    expect(open!.learned).toEqual([]);
  });

  it('takes the eggs of hens that lay, once a season of them was counted', () => {
    const hens = (days: number) => {
      const eggs = { id: 'eggs-per-hen', label: 'Eggs a hen', unit: 'eggs', days } as const;
      const went: HowItWent = {
        ...{ batchId: 'hens', name: 'Hens', strain: 'Layer', isOver: false },
        ...{ arrivedOn: CAME, upTo: '2028-05-01', plannedEggsPerHen: 250 },
        purpose: 'layers',
        lines: [{ ...eggs, planned: 100, actual: 81 }],
      };
      const asked = { purpose: 'layers', strainId: 'brown-layer' } as const;
      const batches = [{ ...batch, ...asked, id: 'hens' }];
      return learnedFromBatches(asked, { batches, went: [went], facts: [] }, tables, farm);
    };
    // Half the way, by their logarithms: √0.81 = 0.9 of 250.
    expect(hens(120).values).toEqual({ ownEggsPerHen: 225 });
    expect(hens(120).words[0]).toMatch(/^Your hens laid 81 % of the plan \(one flock\)/);
    expect(hens(30)).toEqual({ values: {}, words: [] });
  });

  it('takes the weight of birds that left at their age, half the way after one batch', () => {
    const facts = over(0, 2);
    const [again] = next(facts).batches;
    const planned = /They weighed (\d+) % .* planned with (\d+) %/.exec(again!.learned.join(' '))!;
    const [was, is] = [Number(planned[1]), Number(planned[2])];
    expect(is).toBeCloseTo(100 * Math.sqrt(was / 100), -0.5);
    const early = facts.map((each) =>
      each.kind === 'processed' ? { ...each, on: addDays(CAME, 40) } : each,
    );
    expect(next(early).batches[0]!.next).not.toHaveProperty('weightFactor');
  });

  it('knows what comes already, and moves jobs with their ties', () => {
    const there = { ...batch, id: 'new', name: 'Ordered', arrivalDate: '2028-05-10' };
    const job = newOwnJob({
      ...{ id: 'fence', dueOn: '2027-05-01', notBefore: '2027-04-20', waitsForId: 'posts' },
      tiedTo: { eventId: 'event/meat/arrival', on: CAME },
    });
    const { batches, jobs } = next([], { batches: [batch, there], jobs: [job] });
    expect(batches.map(({ ofId, isThere }) => [ofId, isThere])).toEqual([['meat', 'Ordered']]);
    expect(jobs[0]!.next).toMatchObject({ dueOn: '2028-04-29', notBefore: '2028-04-18' });
    const ids = { batchIds: new Map([['meat', 'made']]), jobIds: new Map<string, string>() };
    const made = tiedAnew(jobs[0]!.next, ids);
    expect(made.tiedTo).toEqual({ eventId: 'event/made/arrival', on: '2028-05-03' });
    expect(made).not.toHaveProperty('waitsForId');
    const alone = { batchIds: new Map<string, string>(), jobIds: new Map([['posts', 'p2']]) };
    expect(tiedAnew(jobs[0]!.next, alone)).toMatchObject({ waitsForId: 'p2' });
    expect(tiedAnew(jobs[0]!.next, alone)).not.toHaveProperty('tiedTo');
  });

  it('asks about the calvings of cattle that stay, once those of the old year are over', () => {
    const cows = { classId: 'beef-cow', head: 6, calvesOn: '2027-04-10' };
    const heifers = { classId: 'heifer', head: 2, calvesOn: '2027-12-30' };
    const sold = { ...cows, head: 1, leavesOn: '2027-11-01' };
    const herd = newHerd({ id: 'h', groups: [cows, heifers, sold] });
    const daisy = { id: 'd', name: 'Daisy', herdId: 'h', classId: 'beef-cow' };
    const again = next([], { herds: [herd], cows: [{ ...daisy, calvesOn: '2027-03-01' }] });
    const asked = { was: '2027-04-10', calvesOn: '2028-04-09' }; // 365 days over a leap day
    const daisys = { was: '2027-03-01', calvesOn: '2028-02-29' };
    expect(again.herds).toEqual([
      {
        ...{ ofId: 'h', name: herd.name, groups: [], isThere: false },
        calvings: [
          { of: { group: 0 }, who: '6 head', ...asked },
          { of: { cowId: 'd' }, who: 'Daisy', ...daisys },
        ],
      },
    ]);
  });

  it('brings cattle and days of paddocks again, but no wet ground and nothing twice', () => {
    const stockers = { classId: 'stocker', head: 12, weightKg: 250 };
    const came = { ...stockers, arrivesOn: '2027-05-10', leavesOn: '2027-10-04' };
    const cows = { classId: 'beef-cow', head: 6, bredOn: '2027-06-20' };
    const herd = newHerd({ id: 'h', groups: [cows, came], turnOutOn: '2027-05-01' });
    const hay = { from: '2027-05-20', to: '2027-06-15', why: 'hay' } as const;
    const wet = { from: '2027-04-01', to: '2027-04-12', why: 'wet' } as const;
    const beds = { harvestOn: '2027-07-07', lastHarvestOn: '2027-09-08' };
    const paddocks = [
      newPaddock({ id: 'p', name: 'Hill', closedDays: [hay, wet], ...beds }),
      newPaddock({ id: 'q', name: 'Oak', closedDays: [wet] }),
    ];
    const again = next([], { herds: [herd], paddocks });
    expect(again.herds).toEqual([
      {
        ...{ ofId: 'h', name: herd.name, turnOutOn: '2028-04-29', isThere: false },
        groups: [{ ...stockers, arrivesOn: '2028-05-08', leavesOn: '2028-10-02' }],
      },
    ]);
    expect(again.paddocks).toEqual([
      {
        ...{ ofId: 'p', name: 'Hill', harvestOn: '2028-07-05', lastHarvestOn: '2028-09-06' },
        closedDays: [{ from: '2028-05-18', to: '2028-06-13', why: 'hay' }],
      },
    ]);
    const there = { ...herd, groups: [came, again.herds[0]!.groups[0]!] };
    const shut = {
      ...paddocks[0]!,
      closedDays: [hay, again.paddocks[0]!.closedDays[0]!],
      ...later,
    };
    const twice = next([], { herds: [there], paddocks: [shut] });
    expect([twice.herds[0]!.isThere, twice.paddocks]).toEqual([true, []]);
  });

  it('brings no cattle twice that came over already, though a calving is to be asked about', () => {
    const stockers = { classId: 'stocker', head: 12, weightKg: 250, arrivesOn: '2027-05-10' };
    const heifers = { ...stockers, classId: 'heifer', head: 3 };
    const cows = { classId: 'beef-cow', head: 6, calvesOn: '2027-04-10' };
    const groups = [cows, stockers, heifers, { ...stockers, arrivesOn: '2028-05-08' }];
    const [again] = next([], { herds: [newHerd({ id: 'h', groups })] }).herds;
    expect(again!.calvings).toHaveLength(1);
    expect(again!.isThere).toBe(false);
    expect(again!.groups).toEqual([{ ...heifers, arrivesOn: '2028-05-08' }]);
  });
});

/** A harvest that is still to come is not moved away. */
const later = { harvestOn: '2027-12-20', lastHarvestOn: '2027-12-24' };

const strainLosses = (): string => tables.strains.find(({ id }) => id === batch.strainId)!.losses;
