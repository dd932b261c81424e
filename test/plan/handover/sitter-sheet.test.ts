import { describe, expect, it } from '@jest/globals';
import { addDays } from '../../../shared/calendar/plain-date.js';
import type { CattleGroup } from '../../../shared/farm/herd.js';
import type { OwnJob } from '../../../shared/farm/job.js';
import type { Handover } from '../../../shared/farm/handover.js';
import {
  phoneLines,
  phonesToWrite,
  sitterSheet,
  visitLine,
  whoIsThereText,
} from '../../../shared/plan/handover/sitter-sheet.js';
import { SPOT_UNDER_HEAT } from '../../../shared/plan/heat-instructions.js';
import { bagsOpened, bagWords } from '../../../shared/plan/handover/bags-to-open.js';
import type { BatchPlan } from '../../../shared/plan/batch-plan.js';
import { formatValue } from '../../../shared/units/format.js';
import { heatActions } from '../../../shared/plan/handover/sheet-heat.js';
import { handoverProblems } from '../../../shared/plan/handover/check-handover.js';
import { overOnPage } from '../../../shared/plan/handover/over-on-page.js';
import { newOnPage } from '../../../shared/plan/handover/new-on-page.js';
import { visitsOf } from '../../../shared/plan/handover/sheet-extras.js';
import { batchStop, herdStop, type SheetStop } from '../../../shared/plan/handover/sheet-stops.js';
import { herdDays } from '../../../shared/plan/pasture/herd-day.js';
import { workPlanOf } from '../../../shared/plan/work/work-plan.js';
import { newBrooder, newFarm, newRequest, tables } from '../../support/factories.js';
import { newBatchWork, newOwnJob, newWork } from '../../support/season-factories.js';
import { newGroup, newHerd, newPaddocks } from '../../support/pasture-factories.js';
import { newPicture, plannedBatch } from '../../support/pictures.js';

const today = '2027-05-05';
const handover: Handover = {
  id: 'h',
  personId: 'b',
  from: '2027-05-10',
  to: '2027-05-13',
  hoursPerDay: 3,
  roundOrder: ['meat'],
  phones: [{ who: 'Vet', number: '555 0100' }],
  whereabouts: [],
};
const work = [newBatchWork('2027-05-06', today)];
const batch = plannedBatch(
  newRequest({ today, batch: { arrivalDate: '2027-05-06', wantedBirds: 60 } }),
);
const withBrooder = plannedBatch(
  newRequest({ today, batch: { arrivalDate: '2027-05-06', brooderId: 'brooder' } }),
);
const onFarm = (date: string) => ({
  facilities: [],
  ...{ tables, farm: newFarm() },
  reader: { units: 'us' as const, currency: 'USD', today: date },
  away: handover,
});
const stop = (date: string) => batchStop({ id: 'meat', plan: batch }, date, onFarm(date));
const phase = (phaseId: string, starts: string, bagKg: number) => ({
  phaseId,
  bagKg,
  starts: { value: starts },
});
const sheetOf = (more: Partial<Handover> = {}, season: Parameters<typeof newWork>[0] = {}) => {
  const given = { ...handover, ...more };
  const plan = workPlanOf(newWork({ today, work, handovers: [given], ...season }), 100);
  return {
    plan,
    sheet: sitterSheet(given, plan, (date) => [stop(date)].flatMap((s) => s ?? []), {
      people: season.people ?? newWork({}).people,
      tables,
    }),
  };
};

describe('sitterSheet', () => {
  it('tells what of a day is not as on the day before, by stop', () => {
    const { sheet } = sheetOf();
    const [first, second] = sheet.pages;
    const [of] = second!.stops;
    const job = { key: 'j', name: 'Mend the gate', hours: 1 };
    const more = { ...of!, actions: [...of!.actions, 'Move the pen.'] };
    const next = { ...second!, stops: [more, ...second!.stops.slice(1)], jobs: [job] };
    const { isNew, isAny } = newOnPage(next, { ...next, stops: [of!], jobs: [] });
    expect(isAny).toBe(true);
    expect(isNew(of!.name, 'Move the pen.')).toBe(true);
    expect(isNew('Other birds', of!.actions[0]!)).toBe(true);
    expect(isNew(of!.name, of!.actions[0]!)).toBe(false);
    expect(isNew(undefined, 'Mend the gate')).toBe(true);
    // The same day twice, and the first of all.
    expect(newOnPage(next, next).isAny).toBe(false);
    expect(newOnPage(first!, undefined).isAny).toBe(false);
  });

  it('says what is over since the day before, and not what only rests for a day', () => {
    const [first] = sheetOf().sheet.pages;
    const chore = (name: string) => ({ key: name, name, hours: 1, of: 'Hens' });
    const meat = { what: 'meat' as const, until: addDays(first!.date, 9) };
    const eggs = { what: 'eggs' as const, until: addDays(first!.date, -1) };
    const hens: SheetStop = {
      ...{ id: 'hens', name: 'Hens', amounts: [], carried: [], actions: [] },
      ...{ lookFor: [], cautions: [], isHeated: true, keptOut: [eggs, meat] },
    };
    const { isHeated: _heat, ...cool } = hens;
    const before = {
      ...first!,
      ...{ stops: [hens, { ...hens, id: 'ducks', name: 'Ducks' }], home: [], away: ['Ada'] },
      chores: [chore('Candle'), chore('Move the pen'), { ...chore('Bathe'), of: 'Ducks' }],
    };
    const page = {
      ...first!,
      ...{ stops: [{ ...cool, keptOut: [meat] }], home: ['Ada'], away: [], chores: [] },
    };
    const next = { ...page, chores: [chore('Move the pen')] };
    expect(overOnPage(page, before, [next])).toEqual([
      'Ada is back at home.',
      'Hens: no heat any more.',
      'Hens: the wait after medicine is over for eggs.',
      'Ducks: no longer on the round.',
      'Candle, Hens: not any more.',
    ]);
    expect(overOnPage(next, page, [])).toEqual([]);
    expect(overOnPage(page, undefined, [next])).toEqual([]);
  });

  it('says that a wait after medicine is over only where the label told its days, and they are past', () => {
    const [first] = sheetOf().sheet.pages;
    const page = { ...first!, date: '2027-06-10', stops: [{ ...stop('2027-05-10')!, id: 'meat' }] };
    const overOf = (until: { until?: string }): string[] =>
      overOnPage(
        { ...page, home: [], chores: [] },
        {
          ...{ ...page, away: [], chores: [] },
          stops: [{ ...page.stops[0]!, keptOut: [{ what: 'eggs' as const, ...until }] }],
        },
        [],
      );
    expect(overOf({ until: '2027-06-09' })).toEqual([
      expect.stringMatching(/medicine is over for eggs/),
    ]);
    // Nobody asks for its days any more; or they laid none on the day before.
    expect(overOf({})).toEqual([]);
    expect(overOf({ until: '2027-06-10' })).toEqual([]);
  });

  it('marks in a brooder what is done otherwise, and not each day that they eat a little more', () => {
    const [first] = sheetOf().sheet.pages;
    const pageOf = (date: string) => ({
      ...{ ...first!, chores: [], jobs: [] },
      stops: [batchStop({ id: 'meat', plan: withBrooder }, date, onFarm(date))!],
    });
    const marked = Array.from({ length: 19 }, (_, k) => addDays('2027-05-07', k + 1)).flatMap(
      (date) => {
        const page = pageOf(date);
        const { isNew, isAny } = newOnPage(page, pageOf(addDays(date, -1)));
        const [{ name, carried, actions }] = page.stops as [SheetStop];
        const lines = [...carried, ...actions].filter((line) => isNew(name, line));
        expect([date, isAny]).toEqual([date, 0 < lines.length]);
        return lines.length === 0 ? [] : [{ date, said: lines.join(' ') }];
      },
    );
    expect(marked.length).toBeLessThan(9);
    const all = marked.map(({ said }) => said).join(' ');
    expect(all).toMatch(/fill morning and evening/);
    expect(all).toMatch(/Change to bigger drinkers/);
  });

  it('says what is missing of whom it is for and whom to call, and leaves no line blank', () => {
    const { personId: _person, ...nobody } = handover;
    const plan = workPlanOf(newWork({ today, work, handovers: [nobody] }), 20);
    expect(
      sitterSheet({ ...nobody, sitter: ' ' }, plan, () => [], { people: [], tables }).sitter,
    ).toBe('name missing');
    expect(phoneLines([])).toEqual(['no phone number is given: write down the vet’s and your own']);
    const given = [
      { who: 'Vet', number: ' ' },
      { who: '', number: '' },
      { who: '', number: '555 0100' },
    ];
    expect(phoneLines(given)).toEqual(['Vet (number missing)', 'name missing 555 0100']);
  });

  it('has lines to write numbers on: those of household, vet and neighbor that are missing', () => {
    expect(phonesToWrite([])).toEqual(['The household', 'The vet', 'A neighbor']);
    const given = [
      { who: 'Vet Dr. Hay', number: '' },
      { who: 'Ada', number: '555 0100' },
    ];
    expect(phonesToWrite(given)).toEqual(['Vet Dr. Hay', 'A neighbor']);
  });

  it('says on which days a bag is opened, from a full one that stands open', () => {
    const days = {
      arrivalDate: '2027-05-01',
      lastDate: '2027-05-06',
      birds: {},
      feed: { phases: [phase('a', '2027-05-01', 10)] },
    };
    const eaten = (...values: number[]) => ({ ...days, daily: [{ id: 'feed-day', values }] });
    const away = { from: '2027-05-02', to: '2027-05-06' };
    // 10 kg last through 5 May; of the sixth day's 4 kg two come out of the next.
    const plan = eaten(9, 3, 3, 3, 1, 4) as unknown as BatchPlan;
    expect(bagsOpened(plan, away)).toEqual(['2027-05-06']);
    const more = [phase('a', '2027-05-01', 10), phase('b', '2027-05-04', 10)];
    const changed = { ...plan, feed: { phases: more } } as unknown as BatchPlan;
    expect(bagsOpened(changed, away)).toEqual(['2027-05-04']);
    const say = (date: string) => date.slice(8);
    const words = (on: string) => bagWords(['2027-05-06'], { from: away.from, on, say });
    expect(words('2027-05-05')).toMatch(/^no new one today, the next on 06 /);
    expect(words('2027-05-06')).toMatch(/^open a new one today, what is open lasts/);
  });

  it('has a page for every day, with amounts of that day out of the batch’s own plan', () => {
    const { sheet } = sheetOf();
    expect(sheet.pages.map(({ date }) => date)).toEqual([
      '2027-05-10',
      '2027-05-11',
      '2027-05-12',
      '2027-05-13',
    ]);
    const [meat] = sheet.pages[2]!.stops;
    const day = 6; // days after arrival
    for (const [label, id] of [
      ['Feed of the flock in the day', 'feed-day'],
      ['Drinking water in the day', 'water-day'],
      ['Under the heat, chick height', 'under-heater'],
    ] as const) {
      const series = batch.daily.find((each) => each.id === id)!;
      expect(meat!.amounts.find((a) => a.label === label)!.value).toBeCloseTo(
        series.values[day]!,
        5,
      );
    }
    expect(meat!.lookFor.length).toBeGreaterThan(0);
    expect(meat!.cautions).toContain('salmonella');
  });

  it('says on one line when to come, as the rounds of the day and the looks ask for', () => {
    const { sheet, plan } = sheetOf();
    for (const page of sheet.pages) {
      const asked = new Set(page.chores.flatMap(({ rounds = [] }) => rounds));
      expect([...asked].filter((round) => !page.visits.includes(round))).toEqual([]);
      expect(page.visits.length).toBeGreaterThan(1);
    }
    expect(plan.looks.some(({ everyH }) => everyH < 12)).toBe(true);
    expect(visitLine(sheet.pages[0]!)).toEqual([
      'Come morning, noon, evening and last thing at night.',
    ]);
    expect(visitsOf([{ rounds: ['evening'] }], Infinity)).toEqual(['evening']);
    expect(visitsOf([{}], 12)).toEqual(['morning', 'evening']);
  });

  it('says what to do first when something goes wrong with what is there', () => {
    const { inTrouble } = tables.work;
    expect(sheetOf().sheet.troubles).toEqual([inTrouble.heat, inTrouble.birds]);
    const herd: SheetStop = { ...stop('2027-05-10')!, isHerd: true };
    const { plan } = sheetOf();
    const sheet = sitterSheet(handover, plan, () => [herd], { people: [], tables });
    expect(sheet.troubles).toEqual(expect.arrayContaining([inTrouble.cattle, inTrouble.fence]));
    expect(sheet.troubles).not.toContain(inTrouble.birds);
    // When to call at a calving stands in one row; it is said where calves are awaited.
    const call = tables.cautions.calving!.text;
    expect(sheet.troubles).not.toContain(call);
    const due: SheetStop = { ...herd, mayCalve: true };
    const jobs = [newOwnJob({ setId: 'hives' })];
    const both = sitterSheet(handover, plan, () => [due], { people: [], jobs, tables }).troubles;
    expect(both).toEqual(expect.arrayContaining([call, inTrouble.hives]));
    const hours = /half an hour|for an hour/;
    expect(Object.values(inTrouble).filter((each) => hours.test(String(each)))).toEqual([]);
  });

  it('says on which day bigger feeders and drinkers stand there', () => {
    const on = (day: number) =>
      stop(addDays('2027-05-06', day))!.actions.filter((each) => /drinkers|feeders/i.test(each));
    const [drinkers, feeders] = [0, 1].map((k) => (day: number) => on(day).slice(1)[k]!);
    // Rows of the table: drinkers of two sizes at 0 and 7 days of age, feeders at 0 and 14; chicks come a day old.
    const size = (said: string) => /\(([\d.]+ \S+), assumed\)/.exec(said)![1]!;
    expect(size(drinkers!(5))).not.toBe(size(drinkers!(6)));
    expect(drinkers!(6)).toContain(
      `Change to bigger drinkers today (${size(drinkers!(5))} until now).`,
    );
    expect([5, 7].map((day) => drinkers!(day).includes('Change'))).toEqual([false, false]);
    expect(feeders!(13)).toContain('Change to bigger feeders today');
    expect(feeders!(13).endsWith('Due today.')).toBe(true);
  });

  it('sets the heat of a usual night otherwise where that is warmer, and says when it is set', () => {
    const night = withBrooder.heat!.weeks[0]!.night;
    const reader = { units: 'us', currency: 'USD', today } as const;
    const said = (words: string) =>
      heatActions(withBrooder, '2027-05-10', reader, { ...night, words }).join(' ');
    expect(said('one on')).toMatch(/On a usual night, .* around them: one on/);
    expect(said(night.words)).not.toContain('On a usual night');
    expect(said('one on')).toContain('set at the last round');
  });

  it('has young plants watered from when they are sown indoors to when they are set out', () => {
    const sow = newOwnJob({ id: 'sow', name: 'Start tomatoes indoors', dueOn: '2027-05-08' });
    const out = newOwnJob({
      ...{ id: 'out', name: 'Plant tomatoes', dueOn: '2027-06-02', notBefore: '2027-05-25' },
      ...{ waitsForId: 'sow', waitDays: 0, harmedAtOrBelowC: 2.2 },
    });
    const water = (jobs: readonly OwnJob[], done: readonly string[]) => {
      const open = jobs.filter(({ id }) => !done.includes(id));
      const { plan } = sheetOf({}, { ownJobs: open });
      const sheet = sitterSheet(handover, plan, () => [], { people: [], jobs, tables });
      return sheet.troubles.includes(tables.work.inTrouble.seedlings);
    };
    expect(water([sow, out], ['sow'])).toBe(true);
    // Done long ago, it is not among the jobs any more.
    expect(water([out], [])).toBe(true);
    expect(water([sow, out], ['sow', 'out'])).toBe(false);
    expect(water([{ ...sow, dueOn: '2027-05-22', notBefore: '2027-05-20' }, out], [])).toBe(false);
    expect(water([], [])).toBe(false);
  });

  it('says who of the household is at home each day, and who is away', () => {
    const [a, b] = newWork({}).people;
    const third = { ...a!, id: 'c', name: 'C', away: [{ from: '2027-05-12', to: '2027-05-20' }] };
    const people = [a!, b!, third];
    const { sheet } = sheetOf({ personId: b!.id, awayIds: [a!.id] }, { people });
    expect(sheet.pages.map(({ home, away }) => [home, away])).toEqual([
      [['C'], [a!.name]],
      [['C'], [a!.name]],
      [[], [a!.name, 'C']],
      [[], [a!.name, 'C']],
    ]);
    expect(whoIsThereText(sheet.pages[0]!)).toBe(`At home: C. Away: ${a!.name}.`);
    // Left out, all but whoever is in charge are away.
    expect(sheetOf({}, { people }).sheet.pages[0]!.away).toEqual([a!.name, 'C']);
  });

  it('says how warm the spot under the heat may be, beside the air that it is set by', () => {
    const { actions, lookFor } = batchStop({ id: 'meat', plan: withBrooder }, '2027-05-10', {
      facilities: [],
      ...{ tables, farm: newFarm() },
      reader: { units: 'us', currency: 'USD' },
      away: handover,
    })!;
    const { underHeat } = withBrooder.heat!.weeks[0]!.night;
    const spot = formatValue(underHeat!.value, 'degC', { units: 'us', currency: 'USD' });
    expect(actions.join(' ')).toContain(`spot under the heat about ${spot}`);
    expect(lookFor).toContain(SPOT_UNDER_HEAT);
  });

  it('says how to make it warmer with the heat there is', () => {
    const said = (kind: 'lamp' | 'plate' | 'gas'): string => {
      const heat = { kind, wattsEach: 250, count: 2, thermostat: false } as const;
      const request = newRequest({
        batch: { brooderId: 'brooder' },
        facilities: [newBrooder({ heat })],
      });
      return plannedBatch(request).brooding!.lookFor.join(' ');
    };
    expect(said('lamp')).toContain('a lamp never nearer than');
    expect(said('plate')).toContain('Lower the plate until it touches their backs');
    expect(said('gas')).toContain('Turn the heater up');
    expect(`${said('plate')} ${said('gas')}`).not.toContain('lamp');
  });

  it('says how high the lamps hang, and on the day they are hung higher to what', () => {
    const { heat } = withBrooder;
    // The second week as if its nights were milder.
    const weeks = heat!.weeks.map((week, k) =>
      k === 1 ? { ...week, lampHeight: { ...week.lampHeight!, value: 60 } } : week,
    );
    const reader = { units: 'metric', currency: 'EUR', today } as const;
    const on = (date: string): string =>
      heatActions({ ...withBrooder, heat: { ...heat!, weeks } }, date, reader)[0]!;
    const low = formatValue(weeks[0]!.lampHeight!.value, 'cm', reader);
    expect(on(weeks[0]!.from)).toMatch(
      new RegExp(`hang ${low} above the bedding; from .* at 60 cm\\.`),
    );
    expect(on(weeks[1]!.from)).toContain(`hang 60 cm above the bedding from today (${low} until`);
  });

  it('gives nobody else hours on those days, and the sitter no more than said', () => {
    const { plan } = sheetOf({}, { ownJobs: [newOwnJob({ hours: 40, dueOn: '2027-06-20' })] });
    for (let k = 0; k < 4; k++) {
      const date = addDays(handover.from, k);
      const pieces = plan.jobs.flatMap((job) => job.pieces).filter((piece) => piece.date === date);
      expect(new Set(pieces.flatMap(({ personIds }) => personIds))).toEqual(new Set(['b']));
      const chores = plan.chores[5 + k]!.reduce((sum, { hours }) => sum + hours, 0);
      const sum = pieces.reduce((hours, piece) => hours + piece.hours, chores);
      expect(sum).toBeLessThanOrEqual(3 + 0.01);
    }
  });

  it('keeps the hours of those who stay, whose work is not on the sheet', () => {
    const { personId: _one, ...stranger } = handover;
    const piecesOf = (who: string, awayIds?: string[]) => {
      const job = newOwnJob({
        ...{ hours: 1, canBeSpread: false, personIds: [who] },
        ...{ notBefore: '2027-05-10', dueOn: '2027-05-13', noUseAfter: '2027-05-13' },
      });
      const given = { ...stranger, sitter: 'Neighbor', ...(awayIds ? { awayIds } : {}) };
      const plan = workPlanOf(newWork({ today, work, ownJobs: [job], handovers: [given] }), 100);
      const { pages } = sitterSheet(given, plan, () => [], { people: [], tables });
      expect(pages.flatMap(({ jobs }) => jobs.map(({ key }) => key))).not.toContain('own/bed');
      return plan.jobs.find(({ key }) => key === 'own/bed')!.pieces.length;
    };
    expect(piecesOf('b', ['a'])).toBe(1);
    expect(piecesOf('a', ['a'])).toBe(0);
    expect(piecesOf('b')).toBe(0); // nobody said who is away: all are
  });

  it('keeps the hours of one of the household who is in charge, where none are said for them', () => {
    const { hoursPerDay: _of, ...keeps } = handover;
    const hours = [1, 2, 3, 4, 5, 6, 7];
    const people = newWork({}).people.map((each) => ({ ...each, hoursByWeekday: hours }));
    const plan = workPlanOf(newWork({ today, work, people, handovers: [keeps] }), 100);
    const { pages } = sitterSheet(keeps, plan, () => [], { people, tables });
    // 10 May 2027 is a Monday.
    expect(pages.map(({ hoursAvailable }) => hoursAvailable)).toEqual([1, 2, 3, 4]);
  });

  it('moves what can be moved out of those days', () => {
    const job = newOwnJob({
      hours: 2,
      canBeSpread: false,
      notBefore: '2027-05-10',
      dueOn: '2027-05-20',
      personIds: ['a'],
    });
    const { plan } = sheetOf({}, { ownJobs: [job] });
    const [piece] = plan.jobs.find(({ key }) => key === 'own/bed')!.pieces;
    expect(piece!.date > handover.to).toBe(true);
  });

  it('says what can wait, and when a day holds more than its hours', () => {
    const wide = newOwnJob({
      hours: 2,
      canBeSpread: false,
      notBefore: '2027-05-12',
      personIds: ['a'],
    });
    const { sheet } = sheetOf({}, { ownJobs: [wide] });
    expect(sheet.canWait).toContainEqual({ name: 'Dig the long bed', latest: '2027-05-20' });
    const tight = sheetOf({ hoursPerDay: 0.2 }).sheet;
    expect(tight.pages.every(({ isTooMuch }) => isTooMuch)).toBe(true);
    expect(tight.pages[0]!.hoursAvailable).toBe(0.2);
  });

  it('names what is done after these days and late, and what comes before all is ready', () => {
    const busy = newOwnJob({
      ...{ hours: 6, canBeSpread: false, personIds: ['b'], ifLate: 'Seed dries out' },
      ...{ notBefore: '2027-05-10', dueOn: '2027-05-11', noUseAfter: '2027-06-20' },
    });
    const people = [
      { ...newWork({}).people[0]!, id: 'a' },
      { id: 'b', name: 'Ben', away: [], hoursByWeekday: [0, 0, 0, 0, 0, 8, 8] },
    ];
    const { plan, sheet } = sheetOf({}, { people, ownJobs: [busy] });
    const job = plan.jobs.find(({ key }) => key === 'own/bed')!;
    expect(0 < job.lateDays && handover.to < job.pieces[0]!.date).toBe(true);
    expect(sheet.late).toEqual([
      {
        ...{ key: 'own/bed', name: 'Dig the long bed', latest: '2027-05-11' },
        doneOn: job.pieces.at(-1)!.date,
        ...(job.ifLate === undefined ? {} : { ifLate: job.ifLate }),
      },
    ]);
    expect(sheet.canWait.map(({ name }) => name)).not.toContain('Dig the long bed');
    expect(sheet.tooSoon).toEqual([]);

    const [little] = people.map((person) => ({
      ...{ ...person, hoursByWeekday: Array<number>(7).fill(0.5) },
    }));
    const early = { from: '2027-05-04', to: '2027-05-08' };
    const soon = sheetOf(early, { people: [little!] });
    const [move] = soon.plan.eventsToMove;
    expect(soon.sheet.tooSoon).toEqual([
      {
        ...{ name: move!.name, on: '2027-05-06' },
        said: `not ready before it: ${move!.names.join('; ')}. ${move!.said}`,
      },
    ]);
  });

  it('leaves to who comes in only chores and what animals depend on', () => {
    const { personId: _one, ...stranger } = handover;
    const ownJobs = [
      newOwnJob({
        hours: 1,
        notBefore: '2027-05-10',
        dueOn: '2027-05-13',
        noUseAfter: '2027-05-13',
      }),
    ];
    const plan = workPlanOf(
      newWork({ today, work, ownJobs, handovers: [{ ...stranger, sitter: 'Neighbor' }] }),
      100,
    );
    expect(plan.people.at(-1)).toEqual({ id: 'sitter-h', name: 'Neighbor' });
    expect(plan.jobs.find(({ key }) => key === 'own/bed')!.pieces).toEqual([]);
    expect(plan.chores[6]!.every(({ personId }) => personId === 'sitter-h')).toBe(true);
  });

  it('names work that is due on a day and has no hours', () => {
    const lost = newOwnJob({
      hours: 9,
      canBeSpread: false,
      notBefore: '2027-05-11',
      dueOn: '2027-05-11',
      noUseAfter: '2027-05-11',
    });
    const { sheet } = sheetOf({}, { ownJobs: [lost] });
    expect(sheet.pages[1]!.noHours.map(({ key }) => key)).toEqual(['own/bed']);
    expect(sheet.fitsNowhere.map(({ name }) => name)).toContain('Dig the long bed');
  });
});

describe('batchStop', () => {
  it('is not there before arrival or after the last day', () => {
    expect(stop('2027-05-05')).toBeUndefined();
    expect(stop(addDays(batch.lastDate, 1))).toBeUndefined();
    expect(stop(batch.lastDate)).toBeDefined();
  });

  it('says that they move out, and looks for other things from then on', () => {
    const out = String(batch.outdoors.moveOut!.value);
    expect(stop(out)!.actions).toContain('They move out of the brooder today.');
    expect(stop(out)!.actions.at(-1)).toMatch(/at dusk in/);
    expect(stop('2027-05-08')!.actions.join(' ')).toMatch(/See that the heat works/);
    expect(stop(out)!.lookFor).toEqual(tables.work.lookFor.outdoorBirds);
    expect(stop(out)!.amounts.map(({ label }) => label)).not.toContain(
      'Under the heat, chick height',
    );
  });

  it('has birds let out of a coop, and nobody opens a pen that is moved', () => {
    const facilities = [
      { id: 'pen', kind: 'field-pen' as const, name: 'Pen', floorM2: 10, count: 2 },
    ];
    const homed = plannedBatch(
      newRequest({ today, facilities, batch: { arrivalDate: '2027-05-06', penId: 'pen' } }),
    );
    const actionsOf = (plan: BatchPlan) =>
      batchStop({ id: 'meat', plan }, batch.lastDate, {
        ...{ facilities, tables, farm: newFarm(), away: handover },
        reader: { units: 'us', currency: 'USD', today: batch.lastDate },
      })!.actions.filter((said) => /at dusk in|Move the pen/.test(said));
    expect(actionsOf(homed)).toEqual(['Move the pen once.']);
    expect(actionsOf(batch)).toEqual([expect.stringMatching(/at dusk in/)]);
  });
});

describe('a sheet of cattle', () => {
  it('says to break the ice where the night freezes, and not in summer', () => {
    const herds = [newHerd()];
    const said = (from: string) => {
      const picture = newPicture({ ...newWork({ today: from }), herds, today: from });
      const day = herdDays(picture, tables, { pasture: undefined, on: from })(herds[0]!);
      const stop = herdStop(herds[0]!, day, { picture, tables, pasture: undefined })!;
      const given = { ...handover, from, to: from };
      const plan = workPlanOf(newWork({ today: from, handovers: [given] }), 20);
      const sheet = sitterSheet(given, plan, () => [stop], { people: [], tables });
      const lookFor = sheet.pages[0]!.stops[0]!.lookFor.join(' ');
      return [lookFor.includes('Ice on the trough'), sheet.cautions.includes('cattle-ice')];
    };
    expect(said('2027-01-10')).toEqual([true, true]);
    expect(said('2027-07-10')).toEqual([false, false]);
  });
});

describe('herdStop', () => {
  const herd = newHerd({ groups: [newGroup({ classId: 'milk-cow', head: 2 })] });
  const stopOf = (classId: string, more: Partial<CattleGroup> = {}) => {
    const herds = [newHerd({ groups: [newGroup({ classId, head: 2, ...more })] })];
    const picture = newPicture({ ...newWork({ today }), herds, today });
    const day = herdDays(picture, tables, { pasture: undefined, on: '2027-12-10' })(herd);
    return herdStop(herds[0]!, day, { picture, tables, pasture: undefined })!;
  };

  it('has hay as bales with the weight of one, and the milkings of a cow in milk', () => {
    // seeds/pasture.json: the last of the bales is the one of 5 × 5 ft, 499 kg or 1,100 lb.
    expect(stopOf('milk-cow').carried[0]).toMatch(
      /^Hay: a bale \(round, 5 × 5 ft, 499 kg\) lasts them \d+ days from the day it was put out/,
    );
    expect(stopOf('milk-cow').actions[0]).toMatch(/^The two milkings/);
    expect(stopOf('dry-cow').actions).toEqual([]);
  });

  it('counts calves that were born, says when others are due, and makes none up', () => {
    const calves = (...of: Parameters<typeof stopOf>) =>
      stopOf(...of).amounts.find(({ label }) => label === 'Calves beside them')?.value;
    // It is December 10: born in October; due in two weeks; due in spring; nobody has told.
    expect(calves('cow-calf', { calvesOn: '2027-10-05' })).toBe(2);
    const soon = stopOf('cow-calf', { calvesOn: '2027-12-24' });
    expect(soon.actions[0]).toMatch(/^Calves are due around Fri 24 Dec/);
    expect(calves('cow-calf', { calvesOn: '2027-12-24' })).toBeUndefined();
    expect(stopOf('cow-calf', { calvesOn: '2028-04-20' }).actions).toEqual([]);
    expect(calves('cow-calf')).toBeUndefined();
    expect(stopOf('cow-calf').actions[0]).toMatch(/not written down: count cows and calves/);
    expect(calves('dry-cow')).toBeUndefined();
  });

  it('has cows that may calve overdue, and with no date known though nothing is said of them', () => {
    const overdue = stopOf('dry-cow', { calvesOn: '2027-11-01' });
    expect(overdue).toMatchObject({
      actions: [expect.stringMatching(/no calf is told.* overdue: .*call your veterinarian/)],
      mayCalve: true,
    });
    expect(stopOf('heifer')).toMatchObject({ actions: [], mayCalve: true });
    expect(stopOf('dry-cow', { calvesOn: '2028-04-20' }).mayCalve).toBeUndefined();
    expect(stopOf('stocker').mayCalve).toBeUndefined();
  });

  it('names paddock and strip of every day, and a stay but once on its first', () => {
    const cows = newHerd({ groups: [newGroup({ classId: 'dry-cow', head: 2 })] });
    const picture = newPicture({ ...newWork({ today }), herds: [cows], today });
    const stays = { herdId: cows.id, longestDays: 2 };
    const moves = [
      { ...stays, paddockId: 'c', from: '2027-05-07', to: '2027-05-10' },
      { ...stays, paddockId: 'h', from: '2027-05-11', to: '2027-05-12' },
    ];
    const paddocks = [
      { id: 'c', name: 'Creek' },
      { id: 'h', name: 'Hill' },
    ];
    const pasture = { moves, paddocks, herds: [] } as never;
    const actionsOn = (on: string) => {
      const day = herdDays(picture, tables, { pasture: undefined, on })(cows);
      return herdStop(cows, day, { picture, tables, pasture })!.actions;
    };
    const stay = 'They stay in Creek until Mon 10 May.';
    expect(actionsOn('2027-05-07')).toEqual(['They come into Creek today.', stay]);
    expect(actionsOn('2027-05-08')).toEqual([stay]);
    expect(actionsOn('2027-05-09')).toEqual(['Today the next strip of Creek.', stay]);
    expect(actionsOn('2027-05-10')).toEqual(['Tomorrow they go into Hill.']);
  });
});

describe('where a herd is by its sheet, on a day without a stay', () => {
  it('is where it was told to stand, until the first stay of the plan is over', () => {
    const cows = newHerd({ inPaddockId: 'p1', inSince: today });
    const paddocks = newPaddocks(2);
    const whereOf = (on: string, herd = cows) => {
      const picture = newPicture({ ...newWork({ today }), herds: [herd], paddocks, today });
      const move = { herdId: cows.id, paddockId: 'p2', longestDays: 3 };
      const moves = [{ ...move, from: '2027-05-20', to: '2027-05-22' }];
      const day = herdDays(picture, tables, { pasture: undefined, on })(herd);
      const pasture = { moves, paddocks, herds: [] } as never;
      return herdStop(herd, day, { picture, tables, pasture })!.where;
    };
    expect(whereOf('2027-05-10')).toBe('in Paddock 1, with hay');
    expect(whereOf('2027-05-21')).toBe('Paddock 2');
    expect(whereOf('2027-05-25')).toBe('not on grass');
    expect(whereOf('2027-05-10', newHerd())).toBe('not on grass');
  });
});

describe('handoverProblems', () => {
  const people = [
    { id: 'a', name: 'Adult A', away: [] },
    { id: 'b', name: 'Adult B', away: [{ from: '2027-06-01', to: '2027-06-05' }] },
  ];
  const reader = { units: 'us', today: '2027-05-01' } as const;
  const fields = (more: Partial<Handover>, others: Handover[] = []): string[] =>
    handoverProblems({ ...handover, ...more }, { people, others, reader }).map(
      ({ field }) => field,
    );

  it('refuses dates the wrong way round, a month and more, and nobody', () => {
    expect(fields({})).toEqual([]);
    expect(fields({ to: '2027-05-09' })).toEqual(['to']);
    expect(fields({ to: '2027-06-20' })).toContain('to');
    const { personId: _one, ...stranger } = handover;
    const found = handoverProblems(stranger, { people, others: [], reader });
    expect(found.map(({ field }) => field)).toEqual(['sitter']);
    expect(fields({ personId: 'ghost' })).toEqual(['personId']);
    expect(fields({ personId: 'b', awayIds: ['b'] })).toEqual(['awayIds']);
  });

  it('refuses days that are handed over already, or on which the sitter is away', () => {
    expect(fields({ id: 'new' }, [handover])).toEqual(['from']);
    expect(fields({}, [handover])).toEqual([]); // itself, changed
    expect(fields({ from: '2027-06-05', to: '2027-06-07' })).toEqual(['personId']);
  });

  it('names the days as the farm writes them', () => {
    const [days] = handoverProblems(
      { ...handover, id: 'new' },
      { people, others: [handover], reader },
    );
    expect(days!.fix).toMatch(
      /^Some of these days are on another sheet, from \w+, May \d+ to \w+, May/,
    );
    const [away] = handoverProblems(
      { ...handover, from: '2027-06-05', to: '2027-06-07' },
      { people, others: [], reader: { units: 'metric', today: '2026-12-01' } },
    );
    expect(away!.fix).toContain('away from Tue 1 Jun 2027 to Sat 5 Jun 2027');
  });
});
