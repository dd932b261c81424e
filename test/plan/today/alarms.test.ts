import { describe, expect, it } from '@jest/globals';
import { addDays } from '../../../shared/calendar/plain-date.js';
import type { Batch } from '../../../shared/farm/batch.js';
import type { FeedProduct } from '../../../shared/farm/product.js';
import type { FarmPicture } from '../../../shared/farm/picture.js';
import { formatValue } from '../../../shared/units/format.js';
import { planAnimals } from '../../../shared/plan/farm/animal-plans.js';
import { alarmsIn, alarmsOf } from '../../../shared/plan/today/alarms.js';
import { animalLines } from '../../../shared/plan/today/animal-lines.js';
import type { Alarm } from '../../../shared/plan/today/looked-at.js';
import { attentionOf } from '../../../shared/plan/today/attention.js';
import { workPlanOf } from '../../../shared/plan/work/work-plan.js';
import { newBrooder, newRequest, tables } from '../../support/factories.js';
import { newGroup, newHerd, newPaddocks, newReading } from '../../support/pasture-factories.js';
import { newPicture } from '../../support/pictures.js';
import { newOwnJob, newWork } from '../../support/season-factories.js';

const TODAY = '2027-05-12';
const { batch: ordered, farm, climate, facilities } = newRequest({});
const batch = { ...ordered, id: 'chicks', arrivalDate: '2027-05-05', orderedBirds: 80 } as Batch & {
  id: string;
};

type More = Partial<FarmPicture>;
const looked = (more: More) => {
  const picture = newPicture({ farm, climate, facilities, today: TODAY, ...more });
  const { batches, pasture } = planAnimals(picture, tables);
  const animals = animalLines(picture, tables, { batches, ...(pasture ? { pasture } : {}) });
  const request = newWork({ today: TODAY, climate: picture.climate, ownJobs: picture.jobs });
  const { keep: _keep, ...plan } = workPlanOf(request, 20);
  return { picture, plan, batches, pasture, animals, judged: tables.judgements.alarms };
};
const alarms = (more: More): Alarm[] => alarmsOf(looked(more));
const keys = (more: More): string[] => alarms(more).map(({ key }) => key);

describe('alarms of chicks', () => {
  const seen = (underHeatC: number, date = TODAY): More => ({
    batches: [batch],
    brooderLooks: [{ id: 'look', batchId: 'chicks', date, underHeatC }],
  });

  it('are quiet while all is well', () => {
    expect(alarms({ batches: [batch] })).toEqual([]);
  });

  it('sound when the thermometer is far from what is wanted, and stop at a degree or two', () => {
    const { animals } = looked({ batches: [batch] });
    const line = animals[0]!;
    const wanted = line.kind === 'batch' ? Number(line.heat!.wanted.value) : 0;
    // “Lower the heat” would be read as less of it.
    expect(alarms(seen(wanted - 8))[0]).toMatchObject({
      ...{ level: 'stop', isAlarm: true },
      text: expect.stringMatching(/^They need more heat: hang it lower/),
    });
    expect(alarms(seen(wanted + 8))[0]).toMatchObject({
      level: 'act',
      text: expect.stringMatching(/^They need less heat: hang it higher/),
    });
    expect(keys(seen(wanted - 2))).toEqual([]);
    expect(keys(seen(wanted - 8, addDays(TODAY, -2)))).toEqual([]);
  });

  it('sound every night that the heaters there are too few for, with what they come to', () => {
    const january = { ...batch, arrivalDate: '2027-01-06', brooderId: 'brooder' };
    const today = '2027-01-07';
    const withLamps = (count: number): More => ({
      today,
      batches: [january],
      facilities: [
        newBrooder({ heat: { kind: 'lamp', wattsEach: 250, count, thermostat: false } }),
      ],
    });
    const wantedOf = (of: ReturnType<typeof looked>) => {
      const [line] = of.animals;
      return line?.kind === 'batch' ? line.heat : undefined;
    };
    for (const count of [0, 1]) {
      const of = looked(withLamps(count));
      const { tooCold, wanted } = wantedOf(of)!;
      expect(tooCold!.value).toBeLessThan(Number(wanted.value) - 3);
      const [first] = attentionOf(of);
      expect(first).toMatchObject({ level: 'stop', isAlarm: true });
      expect(first!.key).toContain('cold-tonight');
      expect(first!.words).toContain(formatValue(tooCold!.value, 'degC', farm));
    }
    expect(wantedOf(looked(withLamps(12)))!.tooCold).toBeUndefined();
  });

  it('speak of the box indoors, not of a brooder that is still to be built when they come', () => {
    const heat = { kind: 'lamp', wattsEach: 250, count: 1, thermostat: false } as const;
    const assumed = newBrooder({ heat, assumed: ['lengthM'] });
    const came = { id: 'came', batchId: 'chicks', date: '2027-01-07', change: 'arrived' } as const;
    const at = (today: string, progress: FarmPicture['progress'] = []) => {
      const of = looked({
        ...{ today, progress, facilities: [assumed] },
        batches: [{ ...batch, arrivalDate: '2027-01-07', brooderId: 'brooder' }],
        headChanges: [{ ...came, birds: 80 }],
      });
      const [line] = of.animals;
      return { of, heat: line?.kind === 'batch' ? line.heat : undefined };
    };
    const first = at('2027-01-07');
    expect(first.heat).toMatchObject({ isToBuild: true });
    const box = alarmsOf(first.of);
    expect(box.map(({ key }) => key)).toEqual([
      `alarm/box-indoors/chicks/${first.heat!.wanted.value}`,
    ]);
    const warm = formatValue(Number(first.heat!.wanted.value), 'degC', farm);
    expect(box[0]).toMatchObject({ level: 'stop' });
    expect(box[0]!.words).toContain(warm);
    const names = first.of.batches[0]!.plan.tasks.tasks.map(({ name }) => name);
    expect(names.findIndex((name) => name.startsWith('Build or buy'))).toBeLessThan(
      names.findIndex((name) => name.includes('bring the chicks over')),
    );
    expect(names.join()).toContain('bring the chicks over');
    const key = 'batch/chicks/meat.get-brooder-and-gear';
    const built = at('2027-01-08', [{ key, doneOn: '2027-01-08' }]);
    expect(built.heat!.isToBuild).toBeUndefined();
    expect(alarmsOf(built.of)[0]!.key).toContain('cold-tonight');
  });

  it('come before everything else of the day, and not once they were seen', () => {
    const asked = looked(seen(10));
    const attention = attentionOf(asked);
    expect(attention[0]).toMatchObject({ isAlarm: true });
    expect(alarmsIn(attention)).toEqual([attention[0]]);
  });

  it('sound once for each number of dead, in the place of the plain warning', () => {
    const died = (birds: number): More => ({
      batches: [batch],
      headChanges: [
        { batchId: 'chicks', date: batch.arrivalDate, change: 'arrived', birds: 80 },
        { batchId: 'chicks', date: TODAY, change: 'died', birds },
      ],
    });
    expect(keys(died(12))).toEqual(['alarm/losses/chicks/12']);
    expect(keys(died(13))).toEqual(['alarm/losses/chicks/13']);
    const all = attentionOf(looked(died(12))).map(({ key }) => key);
    expect(all.filter((key) => key.includes('losses'))).toEqual(['alarm/losses/chicks/12']);
  });
});

describe('alarms of feed', () => {
  const opened = (bags: number): More => {
    const feedOpenings = [-9, -6, -3, 0].map((days, k) => ({
      ...{ id: `f${k}`, batchId: 'old', date: addDays(TODAY, days), bags, bagKg: 5 },
    }));
    const old = { ...batch, id: 'old', arrivalDate: addDays(TODAY, -28) };
    return { batches: [old], feedOpenings };
  };
  const feedAlarms = (more: More) => keys(more).filter((key) => key.includes('/feed/'));

  it('sound when far more is used than planned, in the place of the plain warning', () => {
    expect(feedAlarms(opened(11))).toEqual(['alarm/feed/old/165']);
    expect(feedAlarms(opened(7))).toEqual([]);
    const all = attentionOf(looked(opened(11))).filter(({ words }) => /feed/.test(words));
    expect(all.filter(({ isAlarm }) => !isAlarm).map(({ words }) => words)).toEqual([]);
  });
});

describe('an alarm of feed that is out', () => {
  const old = { ...batch, id: 'old', arrivalDate: addDays(TODAY, -28) };
  const bought = (amount: number, daysAgo = 6): More => ({
    batches: [old],
    feedBought: [{ id: 'b', date: addDays(TODAY, -daysAgo), amount, eachKg: 20 }],
  });
  const outs = (more: More) => alarms(more).filter(({ key }) => key.includes('feed-out'));
  const dayKg = (): number => {
    const [line] = looked({ batches: [old] }).animals;
    return line!.kind === 'batch' ? Number(line!.feed!.amount.value) : 0;
  };

  it('sounds when what was bought does not last to a trip, once for each purchase', () => {
    const days = 8;
    const bags = Math.ceil((days * dayKg()) / 20);
    const [alarm] = outs(bought(bags));
    expect(alarm).toMatchObject({ key: 'alarm/feed-out/b', isAlarm: true, of: 'Feed' });
    expect(alarm!.text).toMatch(/is left of what you told as bought/);
    // Three weeks of feed, of which six days are gone.
    expect(outs(bought(Math.ceil((21 * dayKg()) / 20) + 5))).toEqual([]);
  });

  it.each([
    ['lay', 300],
    ['lay on after the year that is planned of them', 700],
  ])('sounds for hens that %s', (_, daysAgo) => {
    const arrivalDate = addDays(TODAY, -daysAgo);
    const layers = { purpose: 'layers', strainId: 'brown-layer', sex: 'pullets' } as const;
    const batches = [{ ...batch, ...layers, id: 'old', arrivalDate }];
    const [alarm] = outs({ ...bought(5), batches });
    expect(alarm).toMatchObject({ key: 'alarm/feed-out/b', of: 'Feed' });
    expect(outs({ ...bought(80), batches })).toEqual([]);
  });

  it('is silent where no purchase was told, or more was opened than bought', () => {
    expect(outs({ batches: [old] })).toEqual([]);
    const opened = [{ id: 'f', batchId: 'old', date: addDays(TODAY, -3), bags: 9, bagKg: 20 }];
    const last = { id: 'g', batchId: 'old', date: TODAY, bags: 1, bagKg: 20 };
    expect(outs({ ...bought(2), feedOpenings: [...opened, last] })).toEqual([]);
  });

  const feed = (name: string, phaseId: string): FeedProduct => ({
    ...{ id: name, kind: 'feed', name, phaseIds: [phaseId], bagKg: 20, price: '18.00' },
  });
  it('sounds for the one kind that is out, whatever is left of another', () => {
    const { phases } = looked({ batches: [old] }).batches[0]!.plan.feed;
    const grower = phases.findLast(({ starts }) => String(starts.value) <= TODAY)!;
    const of = (name: string, amount: number) => ({
      ...{ id: name, date: addDays(TODAY, -1), amount, eachKg: 20, name },
    });
    const both = (growerBags: number): More => ({
      batches: [old, { ...batch, id: 'young' }],
      feedBought: [of('Chick starter', 40), of('Grower pellets', growerBags)],
      products: [feed('Chick starter', 'starter'), feed('Grower pellets', grower.phaseId)],
    });
    const [alarm, ...others] = outs(both(Math.ceil((3 * dayKg()) / 20)));
    expect(alarm!.words).toMatch(/^Grower pellets is out on /);
    expect(others).toEqual([]);
    // Nobody says who eats what has another name: then all of it is one feed, and there is plenty.
    const unnamed = both(Math.ceil((3 * dayKg()) / 20));
    expect(outs({ ...unnamed, feedBought: [...unnamed.feedBought!, of('Something', 1)] })).toEqual(
      [],
    );
  });

  it('is silent where somebody fetches feed before that', () => {
    const asked = looked(bought(Math.ceil((8 * dayKg()) / 20)));
    const trip = { key: 'batch/old/meat.fetch-feed.2', pieces: [{ date: TODAY }] };
    const jobs = [...asked.plan.jobs, trip as unknown as (typeof asked.plan.jobs)[number]];
    const keysThen = alarmsOf({ ...asked, plan: { ...asked.plan, jobs } }).map(({ key }) => key);
    expect(keysThen.filter((key) => key.includes('feed-out'))).toEqual([]);
  });

  type Plan = ReturnType<typeof looked>['plan'];
  const KEY = 'batch/old/meat.fetch-feed.2';
  const feedWords = (given: More, trip: object, list: readonly object[] = []): string[] => {
    const asked = looked(given);
    const jobs = [...asked.plan.jobs, { key: KEY, ...trip } as unknown as Plan['jobs'][number]];
    const changes = { since: addDays(TODAY, -1), list } as unknown as NonNullable<Plan['changes']>;
    const all = alarmsOf({ ...asked, plan: { ...asked.plan, jobs, changes } });
    return all.filter(({ key }) => /feed-(out|sooner)/.test(key)).map(({ words }) => words);
  };

  it('is not silent because of a trip that brings another feed', () => {
    const { phases } = looked({ batches: [old] }).batches[0]!.plan.feed;
    const now = phases.findLast(({ starts }) => String(starts.value) <= TODAY)!;
    const few = bought(Math.ceil((8 * dayKg()) / 20)).feedBought![0]!;
    const given: More = {
      batches: [old],
      feedBought: [{ ...few, name: 'Pellets' }],
      products: [feed('Pellets', now.phaseId), feed('Starter', 'no-phase-of-now')],
    };
    const brings = (name: string) => ({
      pieces: [{ date: TODAY }],
      buys: { lines: [{ what: 'feed', name, amount: 1, eachKg: 20 }] },
    });
    expect(feedWords(given, brings('Pellets'))).toEqual([]);
    expect(feedWords(given, brings('Starter'))).toEqual([
      expect.stringMatching(/^Pellets is out on /),
    ]);
  });

  it('says that a trip was put forward because feed does not last to the day it was on', () => {
    const few = bought(Math.ceil((8 * dayKg()) / 20));
    const trip = { pieces: [{ date: TODAY }] };
    const change = (more: object) => [{ key: KEY, name: 'Fetch', why: '', to: TODAY, ...more }];
    const sooner = [expect.stringMatching(/^fetch feed sooner: by /)];
    const wasLate = change({ kind: 'moved', from: addDays(TODAY, 20) });
    expect(feedWords(few, trip, wasLate)).toEqual(sooner);
    // New by itself it is no trip put forward: the plan did not know of these animals, or of the trip.
    const isNew = change({ kind: 'new' });
    expect(feedWords(few, trip, isNew)).toEqual([]);
    const other = (more: object) => [
      ...isNew,
      { key: `${KEY}.2`, name: 'Fetch', why: '', kind: 'gone', ...more },
    ];
    expect(feedWords(few, trip, other({ from: addDays(TODAY, 20) }))).toEqual(sooner);
    expect(feedWords(few, trip, other({ from: TODAY }))).toEqual([]);
    const ofOthers = { key: 'batch/others/meat.fetch-feed', from: addDays(TODAY, 20) };
    expect(feedWords(few, trip, other(ofOthers))).toEqual([]);
    // It was in time before, too.
    expect(feedWords(few, trip, change({ kind: 'moved', from: TODAY }))).toEqual([]);
    // There is plenty.
    expect(feedWords(bought(200), trip, wasLate)).toEqual([]);
  });
});

describe('an alarm of medicated feed', () => {
  const withWithdrawal = (arrivalDate: string): More => ({
    batches: [{ ...batch, arrivalDate, medicatedWithdrawalDays: 40 }],
  });
  const all = (more: More) =>
    attentionOf(looked(more)).filter(({ words }) => /medicated feed/.test(words));

  it('sounds once the birds are there, in the place of the plain warning', () => {
    expect(all(withWithdrawal(batch.arrivalDate))).toMatchObject([
      { isAlarm: true, level: 'stop', key: expect.stringMatching(/^alarm\/withdrawal\/chicks\//) },
    ]);
    const before = all(withWithdrawal(addDays(TODAY, 5)));
    expect(before).toHaveLength(1);
    expect(before[0]!.isAlarm).toBeUndefined();
    expect(all({ batches: [batch] })).toEqual([]);
  });
});

describe('alarms of grass', () => {
  const paddocks = newPaddocks(4, { areaM2: 1500, forageId: 'mixed' });
  const [oak] = paddocks;
  const herds = [newHerd({ groups: [newGroup({ head: 5 })] })];
  const grazing = { herdId: herds[0]!.id, paddockId: oak!.id, from: addDays(TODAY, -2) };
  const read = (heightCm: number): More => ({
    ...{ paddocks, herds, grazings: [grazing] },
    readings: [{ id: 'r', paddockId: oak!.id, date: TODAY, heightCm }],
  });

  it('sound when it was grazed below what is to be left, not at it', () => {
    expect(keys(read(3))).toContain(`alarm/too-low/${oak!.id}/${TODAY}`);
    expect(keys(read(9)).filter((key) => key.includes('too-low'))).toEqual([]);
  });

  it('sound when a herd is back before grass was ready', () => {
    const early = [
      { ...grazing, from: addDays(TODAY, -9), to: addDays(TODAY, -5) },
      { ...grazing, from: TODAY },
    ];
    expect(keys({ paddocks, herds, grazings: early })).toContain(
      `alarm/too-soon/${oak!.id}/${TODAY}`,
    );
  });
});

describe('the alarm of a herd on grass before its turn-out', () => {
  const paddocks = newPaddocks(4, { areaM2: 1500, forageId: 'mixed' });
  const place = { inPaddockId: 'p1', inSince: '2027-04-10' };
  const onDay = (today: string, from = '2027-04-10', classId = 'cow-calf') => {
    const herds = [newHerd({ ...place, inSince: from, groups: [newGroup({ classId, head: 3 })] })];
    const grazings = [{ herdId: 'h1', paddockId: 'p1', from }];
    return alarms({ today, paddocks, herds, grazings }).filter(({ key }) => /early/.test(key));
  };

  it('says how long before it is, with what kills cows in milk on it', () => {
    const [early, ...more] = onDay('2027-04-10');
    expect(more).toEqual([]);
    expect(early!.words).toMatch(
      /^in Paddock 1 before its grass is ready, \d+ days before turn-out$/,
    );
    expect(early!.text).toMatch(/high-magnesium mineral now/);
    expect(onDay('2027-04-11')[0]!.key).toBe(early!.key);
    expect(onDay('2027-04-10', '2027-04-10', 'stocker')[0]!.text).not.toMatch(/magnesium/);
  });

  it('is none of cattle that stood there all winter, or once it is tall enough', () => {
    expect(onDay('2027-04-10', '2026-12-01')).toEqual([]);
    expect(onDay('2027-06-10')).toEqual([]);
  });
});

describe('alarms of the garden', () => {
  it('sound in a forecast night that harms what was put out, and only then', () => {
    const tender = newOwnJob({ id: 'tomatoes', name: 'Set out tomatoes', harmedAtOrBelowC: 0 });
    const forecast = (minC: number) =>
      [0, 1, 2].map((k) => ({ date: addDays(TODAY, k), minC, maxC: 15, rainMm: 0 }));
    const night = (minC: number, isOut: boolean): More => ({
      climate: { ...climate, forecast: forecast(minC) },
      jobs: [tender],
      progress: isOut ? [{ key: 'own/tomatoes', doneOn: addDays(TODAY, -3) }] : [],
    });
    expect(keys(night(-1, true))).toEqual([`alarm/frost/${TODAY}`]);
    expect(keys(night(4, true))).toEqual([]);
    expect(keys(night(-1, false))).toEqual([]);
  });

  it('sound for berries in bloom from -2.2 °C on: open flowers are harmed at 28 °F', () => {
    const covers = tables.jobSets
      .find(({ id }) => id === 'berries')!
      .jobs.find(({ id }) => id === 'covers')!;
    const job = newOwnJob({
      id: 'covers',
      name: covers.name,
      harmedAtOrBelowC: covers.harmedAtOrBelowC!,
    });
    const night = (minC: number): More => ({
      climate: {
        ...climate,
        forecast: [0, 1].map((k) => ({ date: addDays(TODAY, k), minC, maxC: 12 })),
      },
      jobs: [job],
      progress: [{ key: 'own/covers', doneOn: addDays(TODAY, -10) }],
    });
    expect(keys(night(-2.2))).toEqual([`alarm/frost/${TODAY}`]);
    expect(keys(night(-1))).toEqual([]);
  });
});

describe('grass that nobody has measured', () => {
  it('is asked about shortly before turn-out, after all that presses, until one height is told', () => {
    const paddocks = newPaddocks(4);
    const asked = (more: More) =>
      attentionOf(
        looked({
          today: '2027-05-07',
          paddocks,
          herds: [newHerd({ groups: [newGroup()] })],
          ...more,
        }),
      ).filter(({ words }) => words === 'how tall is the grass?');
    expect(asked({})).toMatchObject([{ level: 'note', of: 'Grass', place: { kind: 'pasture' } }]);
    // Nobody walks it under snow.
    expect(asked({ today: '2027-01-10' })).toEqual([]);
    expect(asked({ readings: [newReading({ date: '2027-05-06' })] })).toEqual([]);
    const pressing = { batches: [{ ...batch, arrivalDate: '2027-05-09' }] };
    const all = attentionOf(
      looked({ today: '2027-05-07', paddocks, herds: [newHerd()], ...pressing }),
    );
    expect(all.length).toBeGreaterThan(1);
    expect(all.at(-1)).toMatchObject({ words: 'how tall is the grass?' });
  });
});
