import { describe, expect, it } from '@jest/globals';
import { addDays } from '../../shared/calendar/plain-date.js';
import type { Batch } from '../../shared/farm/batch.js';
import type { HeadChange } from '../../shared/farm/head-count.js';
import type { Coop } from '../../shared/farm/facility.js';
import { newBatch, newBrooder, newRequest } from '../support/factories.js';
import { plannedBatch } from '../support/pictures.js';

const planOf = (more: Parameters<typeof newRequest>[0] = {}) => plannedBatch(newRequest(more));
const tasksOf = (more: Parameters<typeof newRequest>[0] = {}) => planOf(more).tasks.tasks;
const ids = (more: Parameters<typeof newRequest>[0] = {}) =>
  tasksOf(more).map(({ templateId }) => templateId);
const LAYERS = {
  purpose: 'layers',
  strainId: 'brown-layer',
  sex: 'pullets',
  wantedBirds: 20,
} satisfies Partial<Batch>;
const coop: Coop = {
  ...{ kind: 'coop', id: 'coop', name: 'Coop', floorM2: 20, roostM: 20, nestBoxes: 20, runM2: 0 },
};

describe('tasks of a batch', () => {
  it.each([
    ['at home', {}],
    ['for hire', { processing: 'hired' as const }],
    ['layers', LAYERS],
    ['medicated', { ...LAYERS, medicatedWithdrawalDays: 5 }],
  ])('name only tasks there are and people outside as what they wait for: %s', (_, batch) => {
    const tasks = tasksOf({ batch });
    const names = new Set(tasks.map(({ name }) => name.split(': ')[0]!));
    const missing = tasks
      .flatMap(({ waitsFor }) => waitsFor)
      .filter((name) => !name.startsWith('the ') && !names.has(name.split(': ')[0]!));
    expect(missing).toEqual([]);
  });

  it.each([
    ['still open', '2027-09-01', true],
    ['taken as made', '2027-04-20', false],
  ])(
    'confirm the rule first where the order is %s, and never late for it',
    (_, arrivalDate, isOpen) => {
      const tasks = tasksOf({ today: '2027-04-05', batch: { arrivalDate } });
      const of = (id: string) => tasks.find(({ templateId }) => templateId === id)!;
      const order = of('meat.order-chicks-for-a-named-arrival');
      const rule = of('processing.confirm-rule-that-covers-you-and');
      expect(rule.end < order.start).toBe(isOpen);
      expect(rule.alreadyLate).toBe(false);
    },
  );

  it('of fetching the birds are over once they were told to have come, and open again without', () => {
    const TODAY = '2027-05-03';
    const came = { batchId: 'b', date: TODAY, change: 'arrived', birds: 78 } as const;
    const over = (headChanges: readonly HeadChange[], batch: Partial<Batch> = {}) =>
      tasksOf({ today: TODAY, batch: { arrivalDate: TODAY, ...batch }, headChanges })
        .filter(({ event, isOver }) => event === 'arrival' && isOver !== true)
        .map(({ templateId }) => templateId);
    const done = [
      'meat.confirm-dispatch-and-phone-number',
      'meat.collect-chicks',
      'meat.dip-beaks-count-and-place-chicks',
      'meat.price-and-order-feed',
      'meat.clean-disinfect-and-dry-brooder',
    ];
    const before = over([]);
    expect(before).toEqual(expect.arrayContaining(done));
    // What keeps them alive from now on stays: bedding and lamps, feed, the looks of the first day.
    const after = over([came]);
    expect(before.filter((id) => !after.includes(id)).sort()).toEqual([...done].sort());
    expect(after).toEqual(
      expect.arrayContaining([
        'meat.bed-brooder-hang-heat-two-ways',
        'meat.first-day-checks-every-2-to',
        // The brooder may not have stood yet: warming it is then what brings them over.
        'meat.preheat-brooder-and-check-floor-temperature',
      ]),
    );
  });

  it('are none for what a batch does not have', () => {
    const plain = ids({ batch: LAYERS });
    expect(plain).not.toContain('layers.stop-medicated-feed');
    expect(plain).not.toContain('layers.join-pullets-to-older-flock');
    expect(plain).toContain('layers.finish-coop-roosts-and-run');
    expect(ids({ batch: { ...LAYERS, joinsOlderFlock: true } })).toContain(
      'layers.join-pullets-to-older-flock',
    );
    const stands = ids({
      batch: { ...LAYERS, coopId: 'coop' },
      facilities: [newBrooder(), coop],
    });
    expect(stands).not.toContain('layers.finish-coop-roosts-and-run');
    expect(stands).not.toContain('layers.hang-nest-boxes');
    const short = ids({
      batch: { ...LAYERS, coopId: 'coop' },
      facilities: [newBrooder(), { ...coop, nestBoxes: 0 }],
    });
    expect(short).toContain('layers.hang-nest-boxes');
  });

  it('join an older flock when layers came months before', () => {
    const older = (arrivalDate: string) =>
      ids({ batch: LAYERS, batches: [{ ...newBatch({ ...LAYERS, arrivalDate }), id: 'old' }] });
    expect(older('2026-05-05')).toContain('layers.join-pullets-to-older-flock');
    expect(older('2027-04-20')).not.toContain('layers.join-pullets-to-older-flock');
  });

  it('join no older flock where they go to a coop of their own', () => {
    const into = (coopId: string) =>
      ids({
        batch: { ...LAYERS, coopId },
        facilities: [newBrooder(), { ...coop, id: 'old-coop' }, { ...coop, id: 'new-coop' }],
        batches: [
          { ...newBatch({ ...LAYERS, arrivalDate: '2026-05-05', coopId: 'old-coop' }), id: 'old' },
        ],
      });
    expect(into('old-coop')).toContain('layers.join-pullets-to-older-flock');
    expect(into('new-coop')).not.toContain('layers.join-pullets-to-older-flock');
  });

  it('book a processor once, and only where one is hired', () => {
    const booked = (processing: 'home' | 'hired') =>
      tasksOf({ batch: { processing } }).filter(({ name }) => /book|slot/i.test(name));
    expect(booked('home')).toEqual([]);
    expect(booked('hired').filter(({ name }) => /^Book/.test(name))).toHaveLength(1);
  });

  it('buy just the heaters that are missing, before the brooder is bedded and preheated', () => {
    const facilities = [
      newBrooder({ heat: { kind: 'lamp', wattsEach: 250, count: 1, thermostat: false } }),
    ];
    const plan = planOf({ batch: { brooderId: 'brooder' }, facilities });
    const missing = plan.heat!.toAdd;
    expect(missing).toBeGreaterThan(0);
    const buy = plan.tasks.tasks.find(({ templateId }) => templateId === 'meat.buy-heaters')!;
    expect(buy.name).toMatch(new RegExp(`${missing} more lamps?$`));
    const start = (id: string) => plan.tasks.tasks.find(({ templateId }) => templateId === id)!;
    const bed = start('meat.bed-brooder-hang-heat-two-ways');
    expect(buy.start < bed.start).toBe(true);
    expect(buy.latestStart < bed.latestStart).toBe(true);
    expect(buy.end < start('meat.preheat-brooder-and-check-floor-temperature').start).toBe(true);
    expect(ids({ batch: { brooderId: 'brooder' } })).not.toContain('meat.buy-heaters');
  });

  it('buy the heaters with the brooder, on one trip, where that is still to be built or bought', () => {
    const heat = { kind: 'lamp', wattsEach: 250, count: 1, thermostat: false } as const;
    const assumed = ['lengthM', 'heat.count'];
    const plan = planOf({
      batch: { brooderId: 'brooder' },
      facilities: [{ ...newBrooder({ heat }), assumed }],
    });
    const named = (id: string) =>
      plan.tasks.tasks.find(({ templateId }) => templateId === id)?.name;
    expect(named('meat.buy-heaters')).toBeUndefined();
    expect(named('meat.get-brooder-and-gear')).toContain(
      `; ${1 + plan.heat!.toAdd} lamps are needed`,
    );
  });

  it('harden off on every day from the plan’s date to the move', () => {
    const { outdoors, tasks } = planOf();
    const harden = tasks.tasks.find(({ templateId }) => templateId.endsWith('harden-off'))!;
    expect(harden.start).toBe(outdoors.hardenFrom!.value);
    expect(harden.end).toBe(addDays(String(outdoors.moveOut!.value), -1));
    expect(harden.isDaily).toBe(true);
  });

  it('turn the heat off by day only once the card asks for no more than the day gives', () => {
    const cool = tasksOf({ batch: { arrivalDate: '2027-03-10' } });
    const isCooling = ({ templateId }: { templateId: string }) =>
      templateId === 'meat.cool-chicks-down-to-outdoor-temperature';
    expect(cool.some(isCooling)).toBe(false);
    // Chicks of July: the day is soon as warm as the card.
    const plan = planOf({ batch: { arrivalDate: '2027-06-20', moveOutDate: '2027-08-01' } });
    const task = plan.tasks.tasks.find(isCooling)!;
    const day = plan.brooding!.steps.findLast(({ from }) => from <= task.start)!;
    const high = plan.daily.find(({ id }) => id === 'day-high')!;
    const index = (Date.parse(task.start) - Date.parse('2027-06-20')) / 86_400_000;
    expect(day.underHeater.value).toBeLessThanOrEqual(high.values[index]! + 0.9); // a step of the card
  });

  it('stop medicated feed as many days ahead as its label says', () => {
    const last = (batch: object) =>
      tasksOf({ batch: { ...batch, medicatedWithdrawalDays: 14 } }).find(({ templateId }) =>
        /medicated/.test(templateId),
      )!;
    const meat = planOf();
    expect(last({}).start).toBe(addDays(meat.lastDate, -14));
    expect(last({ processing: 'hired' }).start).toBe(addDays(meat.lastDate, -14));
    const firstEgg = String(planOf({ batch: LAYERS }).laying!.firstEgg.value);
    expect(last(LAYERS).start).toBe(addDays(firstEgg, -14));
    // A day later would be in the meat or the egg.
    for (const each of [last({}), last(LAYERS)])
      expect(each).toMatchObject({ latestStart: each.start, spareDays: 0 });
  });

  it('say of birds whose day is past to ask before they are eaten, not to stop their feed', () => {
    const said = (today: string): string =>
      planOf({ today, batch: { medicatedWithdrawalDays: 60 } }).issues.find(
        ({ code }) => code === 'withdrawal-short',
      )!.text;
    const { lastDate } = planOf();
    expect(said(addDays(lastDate, -3))).toContain('stop medicated feed today');
    expect(said(addDays(lastDate, 3))).toMatch(/ask a veterinarian/);
    expect(said(addDays(lastDate, 3))).not.toContain('stop medicated feed');
  });

  it('that got the chicks in are past once these are there, and not late', () => {
    const { tasks } = planOf({ today: '2027-05-10' });
    const before = tasks.tasks.filter(
      ({ event, offsetDays }) => event === 'arrival' && offsetDays < 0,
    );
    expect(before.length).toBeGreaterThan(5);
    for (const task of before) expect(task).toMatchObject({ isOver: true, alreadyLate: false });
    const care = tasks.tasks.find(
      ({ templateId }) => templateId === 'meat.brooder-care-days-1-to-7',
    )!;
    expect(care.alreadyLate).toBe(false);
    expect(care.isOver).toBeUndefined();
    expect(tasks.late).toBe(0);
  });

  const orderIn = (more: Parameters<typeof newRequest>[0]) => {
    const plan = planOf(more);
    const task = plan.tasks.tasks.find(({ templateId }) =>
      /order-chicks|choose-number/.test(templateId),
    );
    const isTaken = plan.issues.some(({ code }) => code === 'taken-as-ordered');
    return { isOver: task!.isOver === true, isLate: task!.alreadyLate, isTaken };
  };
  const [OPEN, TOLD] = [false, true].map((isOver) => ({ isOver, isLate: false, isTaken: false }));
  const LONG_BEFORE = '2027-01-02';
  const SOON = '2027-04-20';

  it.each([
    ['asks for the order in good time', LONG_BEFORE, {}, OPEN],
    ['is ordered by the day told', LONG_BEFORE, { orderDate: '2026-12-20' }, TOLD],
    ['is ordered by the number told', LONG_BEFORE, { orderedBirds: 60 }, TOLD],
    ['is to be ordered on a day to come', LONG_BEFORE, { orderDate: '2027-01-10' }, OPEN],
    ['is taken as ordered when it comes soon', SOON, {}, { ...TOLD, isTaken: true }],
    ['is told, and soon', SOON, { orderDate: '2027-01-10' }, TOLD],
  ])('%s', (_, today, batch, expected) => {
    expect(orderIn({ today, batch })).toEqual(expected);
    expect(orderIn({ today, batch: { ...LAYERS, ...batch } })).toEqual(expected);
  });

  it('of the hatch are past once chicks are there', () => {
    const batch = { origin: 'incubator', incubatorKindId: 'forced-air' } as const;
    const { tasks } = planOf({ today: '2027-05-06', batch: { ...batch, hatchToArrivalDays: 0 } });
    const hatch = tasks.tasks.filter(({ templateId }) =>
      /^hatch.(check|gather|run|set|turn|candle|lockdown|hatch-day)/.test(templateId),
    );
    expect(hatch.length).toBeGreaterThan(6);
    for (const task of hatch) expect(task).toMatchObject({ isOver: true, alreadyLate: false });
    expect(tasks.late).toBe(0);
  });

  it('are all past of meat birds that are long gone', () => {
    const { tasks } = planOf({ today: '2029-12-01', batch: { processing: 'hired' } });
    expect(tasks.tasks.filter(({ isOver }) => !isOver)).toEqual([]);
  });

  it('go on with the daily round of hens past their first laying year, until the last is gone', () => {
    const open = (headChanges: readonly HeadChange[]) =>
      plannedBatch(newRequest({ today: '2029-12-01', batch: LAYERS, headChanges }))
        .tasks.tasks.filter(({ isOver, event }) => !isOver && event !== 'delivery')
        .map(({ templateId }) => templateId);
    expect(open([])).toEqual(['layers.daily-layer-care-and-eggs']);
    const last = { batchId: 'new', date: '2029-11-30', birds: 3, isLast: true } as const;
    expect(open([{ change: 'gone', ...last }])).toEqual([]);
  });
});
