import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { addDays } from '../../../shared/calendar/plain-date.js';
import { cowsByGroup, cowsWithHead, type Cow } from '../../../shared/farm/cow.js';
import type { PasturePlan } from '../../../shared/plan/pasture/pasture-plan.js';
import { herdDays } from '../../../shared/plan/pasture/herd-day.js';
import { herdStop } from '../../../shared/plan/handover/sheet-stops.js';
import { FieldError, type FieldProblem } from '../../../shared/problems/field-problem.js';
import { keyDatesOf } from '../../../shared/plan/tasks/event.js';
import { tables } from '../../support/factories.js';
import {
  newCow,
  newGroup,
  newHerd,
  newPaddocks,
  newPastureRequest,
} from '../../support/pasture-factories.js';
import { newPicture, plannedPasture, type PastureCase } from '../../support/pictures.js';

type More = Parameters<typeof newPastureRequest>[0];

const planOf = (more: More): PasturePlan => plannedPasture(newPastureRequest(more));
const sum = (values: readonly number[]): number => values.reduce((a, b) => a + b, 0);
const calvingsOf = (plan: PasturePlan) =>
  plan.keyDates.herds[0]!.calvings.map(({ due, cow }) => [due.value, cow?.name]);

describe('the need of a named cow', () => {
  const herds = [
    newHerd({
      groups: [newGroup({ classId: 'milk-cow', head: 5, weightKg: 450, milkKgPerDay: 8 })],
    }),
  ];

  // NRC 2001, from memory: 450 kg and 15 kg of milk with 5 % of fat, which is 17.25 kg at 4 %, in
  // week 12: 15.09 kg. The table's milk has 4.5 %, of which 16.05 kg are as much.
  it('is her own: a heavy milker eats 15.09 kg (NRC 2001, from memory), four others as before', () => {
    const heavy = newCow({ classId: 'milk-cow', milkKgPerDay: 17.25 / 1.075 });
    const plan = planOf({ herds, cows: [heavy] });
    const [others, hers] = plan.herds[0]!.groups;
    expect([others!.headByDay[0], hers!.headByDay[0]]).toEqual([4, 1]);
    expect(hers!.name).toBe(heavy.name);
    expect(hers!.eachKgByDay[0]).toBeCloseTo(15.09, 2);
    const alike = planOf({ herds });
    expect(others!.eachKgByDay).toEqual(alike.herds[0]!.groups[0]!.eachKgByDay);
    const each = others!.eachKgByDay[0]!;
    expect(Math.abs(plan.herds[0]!.needByDay[0]! - (4 * each + 15.09))).toBeLessThan(0.1);
    expect(plan.herds[0]!.needByDay[0]).toBeGreaterThan(alike.herds[0]!.needByDay[0]!);
    expect(plan.stocking.herds[0]!.head.value).toBe(5);
    expect(plan.stocking.herds[0]!.each.map(({ label }) => label)).toEqual([
      'One milk cow a day',
      `${heavy.name} a day`,
    ]);
  });

  it('is that of her group where nothing of hers is known', () => {
    const { cows, ...named } = planOf({ herds, cows: [newCow({ classId: 'milk-cow' })] }).herds[0]!;
    expect(cows).toEqual([{ id: 'cow', name: 'Clover' }]);
    expect(named).toEqual(planOf({ herds }).herds[0]);
  });

  it('is the same in all when what is given of each is what her group has', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...tables.cattle.classes.map(({ id }) => id)),
        fc.integer({ min: 1, max: 5 }),
        fc.integer({ min: 1, max: 5 }),
        fc.integer({ min: 200, max: 700 }),
        (classId, head, count, weightKg) => {
          const group = newGroup({ classId, head, weightKg, calvesOn: '2027-06-10' });
          const cows = Array.from({ length: Math.min(head, count) }, (_, k) =>
            newCow({ id: `c${k}`, classId, weightKg }),
          );
          const of = { herds: [newHerd({ groups: [group] })], paddocks: newPaddocks(2) };
          const [plain, named] = [planOf(of), planOf({ ...of, cows })];
          expect(sum(named.herds[0]!.needByDay)).toBeCloseTo(sum(plain.herds[0]!.needByDay), 6);
          expect(sum(named.herds[0]!.waterByDay)).toBeCloseTo(sum(plain.herds[0]!.waterByDay), 6);
          expect(named.tasks).toEqual(plain.tasks);
        },
      ),
      { numRuns: 10 },
    );
  });
});

describe('the calving of a named cow', () => {
  const groups = [
    newGroup({ classId: 'dry-cow', head: 2, calvesOn: '2027-05-20' }),
    newGroup({ classId: 'heifer', head: 3, calvesOn: '2027-06-01' }),
  ];
  const herds = [newHerd({ groups })];
  const early = newCow({ id: 'early', name: 'Bluebell', classId: 'dry-cow', bredOn: '2026-07-15' });

  // The printed table (test/pasture/gestation.test.ts) has 23 April, counting the service as day 1.
  it('is due 283 days after she was bred, a day after the printed date; the others keep theirs', () => {
    const plan = planOf({ herds, cows: [early] });
    expect(calvingsOf(plan)).toEqual([
      ['2027-05-20', undefined],
      ['2027-04-24', 'Bluebell'],
      ['2027-06-01', undefined],
    ]);
    expect(plan.keyDates.herds[0]!.calvings.map(({ head }) => head)).toEqual([1, 1, 3]);
  });

  // Torell, retrieved: 281 days for Angus.
  it('goes by her breed, and by the breed of her group where hers is not given', () => {
    const angus = [newHerd({ groups: [newGroup({ classId: 'dry-cow', breedId: 'angus' })] })];
    expect(calvingsOf(planOf({ herds: angus, cows: [early] }))).toEqual([
      ['2027-04-22', 'Bluebell'],
    ]);
    const all = { ...early, breedId: 'all' };
    expect(calvingsOf(planOf({ herds: angus, cows: [all] }))).toEqual([['2027-04-24', 'Bluebell']]);
  });

  it('takes the place of the group’s when every head has one, and no other id changes', () => {
    const idsOf = (plan: PasturePlan): string[] => [
      ...plan.tasks.map(({ id }) => id),
      ...keyDatesOf(plan.herds[0]!, plan.herds[0]!.events).map(({ id }) => id),
    ];
    // What is mown hangs on what the herd eats, and so on each cow.
    const choices = { makesHay: false };
    const late = { ...early, id: 'late', name: 'Clover', bredOn: '2026-08-20' };
    const before = new Set(idsOf(planOf({ herds, choices })));
    const one = idsOf(planOf({ herds, cows: [early], choices }));
    expect([...before].filter((id) => !one.includes(id))).toEqual([]);
    const two = idsOf(planOf({ herds, cows: [early, late], choices }));
    const gone = [...before].filter((id) => !two.includes(id));
    expect(gone).toContain('event/h1/calving-1');
    expect(gone.filter((id) => !/^h1\.c0\.|calving-1$/.test(id))).toEqual([]);
    const added = two.filter((id) => !before.has(id));
    expect(added).toContain('event/h1/calving-cow-late');
    expect(added.filter((id) => !/^cow-(early|late)\.|calving-cow-(early|late)$/.test(id))).toEqual(
      [],
    );
  });

  it('is called by her name among the key dates', () => {
    const { events } = planOf({ herds, cows: [early] }).herds[0]!;
    expect(keyDatesOf({ id: 'h1', name: 'Cows' }, events)).toContainEqual({
      ...{ id: 'event/h1/calving-cow-early', name: 'Cows: Bluebell, calving due' },
      date: '2027-04-24',
    });
  });

  it('tells her work from that of others, and that of groups of one class by their days', () => {
    const namesOf = (more: More) =>
      planOf(more).tasks.flatMap(({ name, templateId }) =>
        templateId === 'calving.pre-calving-vaccines-as-vet-advises' ? [name] : [],
      );
    const dry = { classId: 'dry-cow', head: 2 };
    const two = [newGroup({ ...dry, calvesOn: '2027-05-16' })];
    const rosa = newCow({ name: 'Rosa', classId: 'dry-cow', calvesOn: '2027-05-20' });
    const vaccines = 're-calving vaccines as vet advises';
    expect(namesOf({ herds: [newHerd({ groups: two })] })).toEqual([`P${vaccines}`]);
    expect(namesOf({ herds: [newHerd({ groups: two })], cows: [rosa] }).toSorted()).toEqual([
      `P${vaccines}: the others`,
      `Rosa: p${vaccines}`,
    ]);
    const heifers = [newGroup({ classId: 'heifer', head: 2, calvesOn: '2027-05-16' })];
    const both = [newGroup({ classId: 'dry-cow', head: 1 }), ...heifers];
    expect(namesOf({ herds: [newHerd({ groups: both })], cows: [rosa] }).toSorted()).toEqual([
      `P${vaccines}: heifer, in calf`,
      `Rosa: p${vaccines}`,
    ]);
    const groups = [...two, newGroup({ ...dry, calvesOn: '2027-06-10' })];
    expect(namesOf({ herds: [newHerd({ groups })] })).toEqual([
      expect.stringMatching(/: those due Sun,? 16 May$/),
      expect.stringMatching(/: those due Thu,? 10 Jun$/),
    ]);
  });

  // Told 12 days after the day they were due, of a herd that may calve for four weeks from it.
  it('asks for births as long as some may come, not a week after the day they were due', () => {
    const isOver = (calvesOn: string) =>
      planOf({ herds: [newHerd({ groups: [newGroup({ classId: 'dry-cow', calvesOn })] })] })
        .tasks.filter(({ spreadOver }) => spreadOver)
        .map((task) => task.isOver === true);
    const { today } = newPastureRequest({});
    expect(isOver(addDays(today, -12))).toEqual([false, false, false]);
    expect(isOver(addDays(today, -36))).toEqual([true, true, true]);
  });

  it('has tasks that name her and are counted for one head', () => {
    const tasks = planOf({ herds, cows: [early] }).tasks.filter(({ id }) => /^cow-/.test(id));
    expect(tasks.length).toBeGreaterThan(8);
    const navel = tasks.find(({ templateId }) => templateId === 'calving.navel-tag-record')!;
    expect(navel).toMatchObject({ name: 'Bluebell: navel, tag, record', hours: 0.4, units: 0.1 });
  });
});

it('tells the sitter by what each named cow is known', () => {
  const cows = [
    newCow({ id: 'a', name: 'Bluebell', earTag: 'A 03', notes: 'Leads the others.' }),
    newCow({ id: 'b', name: 'Clover', earTag: 'A 11' }),
    newCow({ id: 'c', name: 'Poppy' }),
  ];
  const stopOf = (more: More) => {
    const { tables: _tables, followers: _followers, choices, ...given } = newPastureRequest(more);
    const picture = newPicture({ ...given, pastureChoices: choices });
    const pasture = planOf(more);
    const [herd] = picture.herds;
    const day = herdDays(picture, tables, { pasture, on: pasture.from })(herd!);
    return herdStop(herd!, day, { picture, tables, pasture })!;
  };
  expect(stopOf({ cows }).named).toEqual([
    'Bluebell (ear tag A 03): Leads the others.',
    'Clover (ear tag A 11)',
    'Poppy',
  ]);
  expect(stopOf({})).not.toHaveProperty('named');
});

describe('the head that named cows are of', () => {
  it('leaves those without a name when a what-if takes it off', () => {
    const herds = [newHerd({ groups: [newGroup({ head: 2 })] })];
    const cows = ['a', 'b', 'c'].map((id) => newCow({ id }));
    const elsewhere = newCow({ id: 'd', herdId: 'gone' });
    expect(cowsWithHead(herds, [...cows, elsewhere]).map(({ id }) => id)).toEqual(['a', 'b']);
  });

  it('is given out group by group, never twice', () => {
    fc.assert(
      fc.property(
        fc.array(fc.record({ classId: fc.constantFrom('a', 'b'), head: fc.nat({ max: 3 }) })),
        fc.array(fc.constantFrom('a', 'b', 'c')),
        (groups, classes) => {
          const cows = classes.map((classId, k): Cow => newCow({ id: `${k}`, classId }));
          const { groups: taken, without } = cowsByGroup({ id: 'h1', groups }, cows);
          expect([...taken.flat(), ...without].map(({ id }) => id).sort()).toEqual(
            cows.map(({ id }) => id).sort(),
          );
          taken.forEach((own, g) => {
            expect(own.length).toBeLessThanOrEqual(groups[g]!.head);
            expect(own.every(({ classId }) => classId === groups[g]!.classId)).toBe(true);
          });
          const isFull = (classId: string): boolean =>
            groups.every(
              (group, g) => group.classId !== classId || taken[g]!.length === group.head,
            );
          expect(without.every(({ classId }) => isFull(classId))).toBe(true);
        },
      ),
    );
  });
});

describe('what is refused of a named cow', () => {
  const problemsOf = (...cows: Cow[]): readonly FieldProblem[] => {
    const given: PastureCase = newPastureRequest({
      herds: [newHerd({ groups: [newGroup({ head: 1 })] })],
      cows,
    });
    try {
      plannedPasture(given);
      return [];
    } catch (error) {
      return (error as FieldError).problems;
    }
  };

  it.each<[string, Partial<Cow>, object]>([
    ['a herd that is not there', { herdId: 'h9' }, { field: 'herdId', allowed: ['h1'] }],
    ['a class that her herd has not', { classId: 'heifer' }, { field: 'classId', given: 'heifer' }],
    ['a class that no table has', { classId: 'goat' }, { field: 'classId', code: 'not-allowed' }],
    ['an unknown breed', { breedId: 'goat' }, { field: 'breedId', given: 'goat' }],
    ['a birth to come', { bornOn: '2027-04-22' }, { field: 'bornOn', max: '2027-04-21' }],
    [
      'being bred before she was born',
      { bornOn: '2026-09-01', bredOn: '2026-07-28' },
      { field: 'bornOn', given: '2026-09-01', max: '2026-07-28' },
    ],
    ['a weight of a bus', { weightKg: 9000 }, { field: 'weightKg', max: 1500, unit: 'kg' }],
  ])('%s', (_name, more, { field, ...rest }: { field?: string }) => {
    const [problem, ...others] = problemsOf(newCow(more));
    expect(problem).toMatchObject({ ...rest, field: `cows.0.${field}` });
    expect(problem!.fix).toMatch(/\w{4}.*\.$/);
    expect(others).toEqual([]);
  });

  it('one more than there is head, and two of one id', () => {
    const two = [newCow(), newCow({ id: 'second', name: 'Bluebell' })];
    expect(problemsOf(...two)).toEqual([
      expect.objectContaining({ field: 'cows.1.herdId', code: 'out-of-bounds', given: 2, max: 1 }),
    ]);
    expect(problemsOf(newCow(), newCow())).toContainEqual(
      expect.objectContaining({ field: 'cows.1.id', code: 'conflict', given: 'cow' }),
    );
  });
});
