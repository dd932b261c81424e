import { describe, expect, it } from '@jest/globals';
import { addDays } from '../../../shared/calendar/plain-date.js';
import type { FarmPicture, NamedBatch } from '../../../shared/farm/picture.js';
import { toldProblems } from '../../../shared/farm/told-kinds.js';
import { isKeptOut, keptOutUntil, type Treatment } from '../../../shared/farm/treated.js';
import type { FactOf, ToldFact } from '../../../shared/farm/told-fact.js';
import { waitedToday } from '../../../shared/plan/medicines.js';
import { stopsOn } from '../../../shared/plan/handover/sheet-stops.js';
import { planAnimals } from '../../../shared/plan/farm/animal-plans.js';
import { yearCounts } from '../../../shared/plan/record/year-counts.js';
import { animalLines } from '../../../shared/plan/today/animal-lines.js';
import { eggsWentTooSoon } from '../../../shared/plan/today/eggs-went.js';
import { medicineAlarms } from '../../../shared/plan/today/medicine-alarms.js';
import { workPlanOf } from '../../../shared/plan/work/work-plan.js';
import { newRequest, tables } from '../../support/factories.js';
import { newGroup, newHerd, newPaddocks } from '../../support/pasture-factories.js';
import { newPicture } from '../../support/pictures.js';
import { newWork } from '../../support/season-factories.js';

const TODAY = '2027-06-21';
const { batch: ordered, farm, climate, facilities } = newRequest({});
const batch: NamedBatch = { ...ordered, id: 'meat', arrivalDate: '2027-05-05', orderedBirds: 80 };
const given = (more: Partial<Treatment>): Treatment => ({
  ...{ id: 'med', about: 'milk', date: TODAY, product: 'Of the label', meatDays: 21 },
  ...more,
});
const cows = [{ id: 'd', herdId: 'milk', name: 'Daisy', classId: 'milk-cow' }];
const herds = [
  newHerd({ id: 'milk', name: 'Cows', groups: [newGroup({ classId: 'milk-cow', head: 2 })] }),
];
const onFarm = (more: Partial<FarmPicture>) => {
  const picture = newPicture({ farm, climate, facilities, today: TODAY, ...more });
  const { batches, pasture } = planAnimals(picture, tables);
  const animals = animalLines(picture, tables, { batches, ...(pasture ? { pasture } : {}) });
  const { keep: _keep, ...plan } = workPlanOf(newWork({ today: TODAY, climate }), 20);
  const judged = tables.judgements.alarms;
  const looked = { picture, plan, batches, pasture, animals, judged };
  return {
    batches,
    looked,
    said: animals[0]?.medicines?.map(({ said }) => said),
    alarms: medicineAlarms(looked),
  };
};
const ofHerd = (treatment: Partial<Treatment>, more: Partial<FarmPicture> = {}) =>
  onFarm({ herds, cows, paddocks: newPaddocks(4), treatments: [given(treatment)], ...more });
const ofBirds = (treatment: Partial<Treatment>, more: Partial<FarmPicture> = {}) =>
  onFarm({ batches: [batch], treatments: [given({ about: 'meat', ...treatment })], ...more });

describe('the days that a medicine is waited for', () => {
  it('are at least 45 whole days for a label of 45 (dairy-cattle.extension.org)', () => {
    const treatment = given({ date: '2027-01-01', meatDays: 45 });
    expect(keptOutUntil(treatment, 'meat')).toBe('2027-02-15');
    expect(isKeptOut(treatment, 'meat', '2027-02-15')).toBe(true);
    expect(isKeptOut(treatment, 'meat', '2027-02-16')).toBe(false);
  });

  it('end on the last day of all that was given, and on none where the days of one were not told', () => {
    const waited = (...treatments: Treatment[]) =>
      waitedToday(newPicture({ farm, climate, today: TODAY, treatments }), 'milk', { milk: true });
    const short = given({ meatDays: 0, milkDays: 2 });
    const long = given({ meatDays: 0, milkDays: 4 });
    expect(waited(short, long)).toEqual([{ what: 'milk', until: addDays(TODAY, 4) }]);
    expect(waited(short, given({ meatDays: 0 }))).toEqual([{ what: 'milk' }]);
    // Long ago, it is asked for no more, and is unknown all the same.
    const old = given({ date: addDays(TODAY, -60), meatDays: 0 });
    expect(waited(short, old)).toEqual([{ what: 'milk' }]);
    expect(waited(old)).toEqual([]);
  });

  it('are none where the label asks for none, and none of what was not told', () => {
    expect(keptOutUntil(given({ meatDays: 0 }), 'meat')).toBeUndefined();
    expect(keptOutUntil(given({}), 'milk')).toBeUndefined();
  });
});

describe('a cow that had medicine', () => {
  it('stands with her milk and meat beside the herd, until each is over', () => {
    const told = { cowId: 'd', milkDays: 4 };
    expect(ofHerd({ ...told }).said).toEqual([
      expect.stringMatching(
        /^No milk through .*25.*, no meat through .*12.*: Of the label, given .* to Daisy$/,
      ),
    ]);
    expect(ofHerd({ ...told, date: addDays(TODAY, -5) }).said![0]).toMatch(/^No meat through/);
    expect(ofHerd({ ...told, date: addDays(TODAY, -22) }).said).toBeUndefined();
  });

  it('is an alarm while her milk is kept out, once, and of milk whose days nobody told', () => {
    const [milk, ...more] = ofHerd({ cowId: 'd', milkDays: 4 }).alarms;
    expect(more).toEqual([]);
    expect(milk).toMatchObject({
      level: 'stop',
      words: 'milk of Daisy is not to be used: medicine',
    });
    const next = ofHerd({ cowId: 'd', milkDays: 4, date: addDays(TODAY, -1) }).alarms;
    expect(next[0]!.key).toBe(milk!.key);
    expect(ofHerd({ cowId: 'd', milkDays: 0 }).alarms).toEqual([]);
    expect(ofHerd({ cowId: 'd' }).alarms[0]!.text).toMatch(/Read the days on the label/);
  });

  it('is an alarm where her class leaves within the days, and not the day after them', () => {
    const leaving = (leavesOn: string) => ({
      herds: [
        newHerd({ id: 'milk', groups: [newGroup({ classId: 'milk-cow', head: 2, leavesOn })] }),
      ],
    });
    const told = { cowId: 'd', milkDays: 0 };
    expect(ofHerd(told, leaving(addDays(TODAY, 21))).alarms).toHaveLength(1);
    expect(ofHerd(told, leaving(addDays(TODAY, 22))).alarms).toEqual([]);
  });
});

describe('eggs that went while a medicine ran', () => {
  const hens = { about: 'meat', eggDays: 10 };
  const went = (more: Partial<FactOf<'eggs-gone'>> = {}): FactOf<'eggs-gone'> => ({
    ...{ id: 'e', key: 'e', kind: 'eggs-gone', about: 'meat', on: TODAY },
    ...{ toldAt: `${TODAY}T08:00:00.000Z`, details: { eggs: 24, how: 'sold' }, ...more },
  });
  const alarmsOf = (gone: FactOf<'eggs-gone'>, treatment: Partial<Treatment> = {}) => {
    const { picture } = ofBirds({ ...hens, ...treatment }).looked;
    return eggsWentTooSoon(picture, [gone]);
  };

  it('are asked about, with who is to be told', () => {
    const [alarm, ...more] = alarmsOf(went());
    expect(more).toEqual([]);
    expect(alarm).toMatchObject({ level: 'stop', words: '24 eggs sold while a medicine ran' });
    expect(alarm!.text).toMatch(/^No eggs through .*1.*laid since.*tell the buyer today/);
    const given = alarmsOf(went({ details: { eggs: 6, how: 'given' } }));
    expect(given[0]!.text).toMatch(/tell who has them today/);
  });

  it('are none after the last day, before the first, of other hens, or where the label asks for none', () => {
    expect(alarmsOf(went(), { date: addDays(TODAY, -10) })).toHaveLength(1);
    expect(alarmsOf(went(), { date: addDays(TODAY, -11) })).toEqual([]);
    expect(alarmsOf(went({ on: addDays(TODAY, -1) }))).toEqual([]);
    expect(alarmsOf(went({ about: 'others' }))).toEqual([]);
    expect(alarmsOf(went(), { eggDays: 0 })).toEqual([]);
  });
});

describe('cattle that went while a medicine ran', () => {
  type Went = NonNullable<FarmPicture['cattleLeft']>[number];
  const went = (details: Went['details'], more: Partial<Went> = {}): Went => ({
    ...{ id: 'w', key: 'w', kind: 'cattle-left', about: 'milk', on: TODAY },
    ...{ toldAt: `${TODAY}T08:00:00.000Z`, details, ...more },
  });
  const alarmsOf = (treatment: Partial<Treatment>, left: Went, there: FarmPicture['cows'] = []) =>
    ofHerd({ milkDays: 0, ...treatment }, { cows: there, cattleLeft: [left] }).alarms;

  it('are an alarm where they were slaughtered, sold or given away within the days, a named cow too', () => {
    const slaughtered = went({ how: 'slaughtered', head: 1 });
    expect(alarmsOf({}, slaughtered)).toEqual([
      expect.objectContaining({ level: 'stop', words: 'slaughtered while a medicine ran' }),
    ]);
    expect(alarmsOf({ head: 1 }, slaughtered)[0]!.text).toMatch(/may be among those/);
    expect(alarmsOf({}, went({ how: 'given', head: 1 }))[0]).toMatchObject({
      words: 'given away while a medicine ran',
      text: expect.stringMatching(/Tell who has them today/),
    });
    const daisy = went({ how: 'sold', head: 1, cowId: 'd' });
    expect(alarmsOf({ cowId: 'd' }, daisy)[0]!.text).toMatch(/Tell the buyer today/);
  });

  it('are an alarm where nobody said which of her herd it was, and none once she is known not to be it', () => {
    const one = went({ how: 'slaughtered', head: 1 });
    const [alarm, ...more] = alarmsOf({ cowId: 'd' }, one, cows);
    expect(more).toEqual([]);
    expect(alarm!.text).toMatch(/She may be it: see which/);
    expect(alarmsOf({ cowId: 'd' }, { ...one, about: 'other' }, cows)).toEqual([]);
    const calf = went({ how: 'slaughtered', head: 1, classId: 'stocker' });
    expect(alarmsOf({ cowId: 'd' }, calf, cows)).toEqual([]);
    const died = went({ how: 'died', head: 1, cowId: 'd' }, { id: 'v', key: 'v' });
    const both = { cows, cattleLeft: [died, one] };
    expect(ofHerd({ milkDays: 0, cowId: 'd' }, both).alarms).toEqual([]);
  });

  it('are none where they died, went after the days, or another cow had it', () => {
    expect(alarmsOf({}, went({ how: 'died', head: 1 }))).toEqual([]);
    const late = went({ how: 'sold', head: 1 }, { on: addDays(TODAY, 22) });
    expect(alarmsOf({}, late)).toEqual([]);
    const on = addDays(TODAY, 21);
    expect(alarmsOf({}, went({ how: 'sold', head: 1 }, { on }))).toHaveLength(1);
    expect(alarmsOf({ cowId: 'd' }, went({ how: 'sold', head: 1, cowId: 'e' }), cows)).toEqual([]);
  });
});

describe('the sheet of a sitter', () => {
  it('says first what of a treated cow is not to be used, on its days', () => {
    const treatments = [given({ cowId: 'd', milkDays: 4, meatDays: 0 })];
    const picture = newPicture({ farm, climate, today: TODAY, herds, cows, treatments });
    const { batches } = planAnimals(picture, tables);
    const on = stopsOn(picture, tables, { batches }, { from: TODAY, to: addDays(TODAY, 9) });
    expect(on(addDays(TODAY, 4))[0]!.actions[0]).toMatch(/^No milk through .* to Daisy\.$/);
    expect(on(addDays(TODAY, 5))[0]!.actions[0]).toMatch(/^The two milkings/);
  });
});

describe('birds that had medicine', () => {
  const leaves = String(ofBirds({}).batches[0]!.plan.leaving!.on.value);

  it('are an alarm where they are processed within the days by the plan, or as it was told', () => {
    const before = (days: number) => ofBirds({ meatDays: days }, { today: addDays(leaves, -3) });
    const on = (days: number) =>
      ofBirds({ meatDays: days, date: addDays(leaves, -3) }, { today: addDays(leaves, -3) });
    expect(before(0).alarms).toEqual([]);
    expect(on(3).alarms.map(({ words }) => words)).toEqual([
      expect.stringMatching(/^medicine runs past .*, when they leave$/),
    ]);
    expect(on(2).alarms).toEqual([]);
    const told = { id: 'p', batchId: 'meat', date: TODAY, change: 'processed', birds: 3 } as const;
    expect(ofBirds({ meatDays: 2 }, { headChanges: [told] }).alarms).toEqual([
      expect.objectContaining({ words: 'processed while a medicine ran' }),
    ]);
  });
});

describe('birds that leave on several days', () => {
  it('are an alarm by the first of them that the medicine runs past', () => {
    const last = String(ofBirds({}).batches[0]!.plan.leaving!.on.value);
    const today = addDays(last, -8);
    const { looked } = ofBirds({ meatDays: 3, date: today }, { today });
    const on = (...dates: string[]) =>
      medicineAlarms({
        ...looked,
        batches: looked.batches.map((each) => ({
          ...each,
          plan: {
            ...each.plan,
            leaving: {
              ...each.plan.leaving!,
              processingDays: dates.map((date) => ({ on: date, birds: 40 })),
            },
          },
        })),
      });
    expect(on(last)).toEqual([]);
    expect(on(addDays(today, 4), last)).toEqual([]);
    expect(on(addDays(today, 2), last)).toHaveLength(1);
  });

  it('are an alarm when all of them are in the freezer', () => {
    const all = { id: 'p', batchId: 'meat', date: TODAY, change: 'processed', birds: 80 } as const;
    const { alarms, looked } = ofBirds({ meatDays: 2 }, { headChanges: [all] });
    expect(looked.animals).toEqual([]);
    expect(alarms).toEqual([
      expect.objectContaining({ words: 'processed while a medicine ran', of: batch.name }),
    ]);
  });
});

describe('a cow that is put to another herd', () => {
  it('takes the days of her medicine along', () => {
    const both = [
      ...herds,
      newHerd({ id: 'dry', name: 'Others', groups: [newGroup({ head: 1 })] }),
    ];
    const moved = { herds: both, cows: [{ ...cows[0]!, herdId: 'dry' }] };
    const { looked } = ofHerd({ cowId: 'd', milkDays: 0 }, moved);
    const has = (id: string) => looked.animals.find((line) => line.id === id)!.medicines;
    expect(has('milk')).toBeUndefined();
    expect(has('dry')).toHaveLength(1);
  });

  const along = { cowId: 'd', wentAlong: true, milkDays: 4 };

  it('may be the one of her old herd that had it: only a cow named as it was told is said to', () => {
    expect(ofHerd({ ...along, head: 1 }).said![0]).toMatch(/to one that may be Daisy$/);
    expect(ofHerd({ ...along, head: 3 }).said![0]).toMatch(/to 3 of which Daisy may be one$/);
    expect(ofHerd({ cowId: 'd', head: 1, milkDays: 4 }).said![0]).toMatch(/ to Daisy$/);
  });

  it('leaves it on nobody once she is gone; her sale within its days is asked about', () => {
    const sold = {
      ...{ id: 'w', key: 'w', kind: 'cattle-left' as const, about: 'milk', on: TODAY },
      ...{
        toldAt: `${TODAY}T08:00:00.000Z`,
        details: { how: 'sold' as const, head: 1, cowId: 'd' },
      },
    };
    const gone = { cows: [], cattleLeft: [sold] };
    for (const told of [along, { cowId: 'd', milkDays: 4 }]) {
      const { said, alarms } = ofHerd(told, gone);
      expect(said).toBeUndefined();
      expect(alarms.map(({ words }) => words)).toEqual(['sold while a medicine ran']);
    }
    const nameless = ofHerd(along, { cows: [] });
    expect([nameless.said, nameless.alarms]).toEqual([undefined, []]);
    // Without her name she still stands where she was treated.
    expect(ofHerd({ cowId: 'd', milkDays: 4 }, { cows: [] }).said).toHaveLength(1);
  });
});

describe('what is told of a medicine', () => {
  const farmKnows = { today: TODAY, batchIds: ['meat'], herdIds: ['milk'], paddockIds: [] };
  const wrong = (about: string, details: object) =>
    toldProblems(
      {
        kind: 'treated',
        about,
        on: TODAY,
        details: { product: 'Of the label', meatDays: 3, ...details },
      },
      farmKnows,
    ).map(({ field }) => field);

  it('is refused where it cannot be so, with its field', () => {
    expect(wrong('milk', { milkDays: 2, cowId: 'd' })).toEqual([]);
    expect(wrong('meat', { eggDays: 2 })).toEqual([]);
    expect(wrong('meat', { milkDays: 2 })).toEqual(['details.milkDays']);
    expect(wrong('milk', { eggDays: 2 })).toEqual(['details.eggDays']);
    expect(wrong('milk', { cowId: 'd', head: 2 })).toEqual(['details.head']);
    expect(wrong('milk', { meatDays: 401 })).toEqual(['details.meatDays']);
    expect(wrong('milk', { meatDays: 1.5 })).toEqual(['details.meatDays']);
    expect(wrong('milk', { product: undefined })).toEqual(['details.product']);
    expect(wrong('none', {})).toEqual(['about']);
  });

  it('is refused where more milk was kept out than there was', () => {
    const milked = { kind: 'milked', about: 'milk', on: TODAY } as const;
    const of = (details: object) =>
      toldProblems({ ...milked, details: { liters: 8, ...details } }, farmKnows);
    expect(of({ keptOutL: 8 })).toEqual([]);
    expect(of({ keptOutL: 9 })).toMatchObject([{ field: 'details.keptOutL', given: 9, max: 8 }]);
  });
});

describe('the count of a year', () => {
  const fact = (kind: string, about: string, on: string, details: object, k = 0): ToldFact =>
    ({
      id: `${kind}${on}${k}`,
      key: `${kind}${on}`,
      kind,
      about,
      on,
      details,
      toldAt: on,
    }) as ToldFact;

  it('has milk that was kept out apart, and no liter or egg more or fewer', () => {
    const facts = [
      fact('treated', 'milk', '2026-12-30', { product: 'P', meatDays: 9, milkDays: 3 }),
      fact('milked', 'milk', '2027-01-02', { liters: 10 }),
      fact('milked', 'milk', '2027-01-03', { liters: 11 }),
      fact('milked', 'milk', '2027-01-04', { liters: 12, keptOutL: 5 }),
      fact('treated', 'hens', '2027-03-01', { product: 'P', meatDays: 9, eggDays: 2 }),
      fact('eggs-counted', 'hens', '2027-02-28', { days: 1, eggs: 7 }),
      fact('eggs-counted', 'hens', '2027-03-03', { days: 1, eggs: 8 }),
      fact('eggs-counted', 'hens', '2027-03-05', { days: 2, eggs: 13 }),
      fact('eggs-counted', 'other', '2027-03-02', { days: 1, eggs: 4 }),
    ];
    const { eggs, milkL, milkKeptOutL } = yearCounts(2027, facts, 'USD');
    expect([milkL, milkKeptOutL]).toEqual([11 + 12 - 5, 10 + 5]);
    expect([eggs.counted, eggs.keptOut]).toEqual([7 + 13 + 4, 8]);
  });

  it('goes by the rule of the day: what nobody told the days of is kept out, as Today says', () => {
    const facts = [
      fact('treated', 'hens', '2027-03-01', { product: 'P', meatDays: 9 }),
      fact('eggs-counted', 'hens', '2027-02-28', { days: 1, eggs: 7 }),
      fact('eggs-counted', 'hens', '2027-03-02', { days: 1, eggs: 8 }),
      fact('treated', 'milk', '2027-03-01', { product: 'P', meatDays: 9 }),
      fact('milked', 'milk', '2027-03-02', { liters: 10 }),
      fact('treated', 'one', '2027-03-01', { product: 'P', meatDays: 9, milkDays: 3, cowId: 'd' }),
      fact('milked', 'one', '2027-03-02', { liters: 6 }),
      fact('milked', 'one', '2027-03-03', { liters: 6, keptOutL: 0 }),
      fact('milked', 'one', '2027-03-05', { liters: 6 }),
    ];
    const { eggs, milkL, milkKeptOutL, milkNotSaid } = yearCounts(2027, facts, 'USD');
    expect([eggs.counted, eggs.keptOut]).toEqual([7, 8]);
    expect([milkL, milkKeptOutL, milkNotSaid]).toEqual([18, 10, 1]);
  });
});
