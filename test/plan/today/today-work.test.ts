import { describe, expect, it } from '@jest/globals';
import { addDays, weekdayOf } from '../../../shared/calendar/plain-date.js';
import type { Progress } from '../../../shared/farm/job.js';
import type { FarmPicture } from '../../../shared/farm/picture.js';
import { attentionOf } from '../../../shared/plan/today/attention.js';
import {
  freeToday,
  todayChores,
  todayHours,
  todayJobs,
} from '../../../shared/plan/today/today-work.js';
import { todayGround, todayWeather } from '../../../shared/plan/today/today-weather.js';
import { withTicks, type Today } from '../../../shared/plan/today/today.js';
import { whoIsAway } from '../../../shared/plan/today/who-is-away.js';
import type { PlannedJob, WorkPlan } from '../../../shared/plan/work/planned-work.js';
import type { EventToMove } from '../../../shared/plan/work/event-to-move.js';
import { workPlanOf } from '../../../shared/plan/work/work-plan.js';
import { tables } from '../../support/factories.js';
import { newPicture } from '../../support/pictures.js';
import type { PasturePlan } from '../../../shared/plan/pasture/pasture-plan.js';
import { newHerd } from '../../support/pasture-factories.js';
import { newBatchWork, newOwnJob, newWork } from '../../support/season-factories.js';

const today = '2027-04-05'; // a Monday
const person = { id: 'a', name: 'Adult A', away: [], hoursByWeekday: [2, 2, 2, 2, 2, 2, 2] };
const bed = newOwnJob({ hours: 1.5, priority: 'must', canBeSpread: false });
const gate = newOwnJob({ id: 'gate', name: 'Mend the gate', hours: 1, canBeSpread: false });

const worked = (more: Parameters<typeof newWork>[0] = {}) => {
  const request = newWork({ people: [person], ownJobs: [bed, gate], ...more });
  const { keep: _keep, ...plan } = workPlanOf(request, 50);
  const picture: FarmPicture = newPicture({ ...request, jobs: request.ownJobs });
  return { plan, picture };
};

describe('the work of today', () => {
  it('says who, how long and by when, and the hours of those who are there', () => {
    const { plan, picture } = worked();
    const jobs = todayJobs(plan, picture);
    expect(jobs).toHaveLength(1); // both take 2.5 hours, and there are 2
    expect(jobs[0]).toMatchObject({
      people: ['Adult A'],
      state: 'open',
      dueWords: 'due by Thu 20 May',
    });
    const hours = todayHours(picture, tables, { chores: [], jobs });
    expect(hours.had.value).toBe(2);
    expect(hours.used.value).toBe(jobs[0]!.hours);
  });

  it('says who does a round that nobody has hours for: the one at home, or who of several can', () => {
    const second = { ...person, id: 'b', name: 'Adult B' };
    const child = { ...person, id: 'c', name: 'Child', isChild: true };
    const saidOf = (people: FarmPicture['people']) => {
      const { plan, picture } = worked({ people });
      const chore = { key: 'round', name: 'Look at them', hours: 0.5, minutes: 30 };
      const chores = [[chore]] as unknown as WorkPlan['chores'];
      return todayChores({ ...plan, chores }, picture, undefined).map((each) => [
        each.person,
        each.anyOf,
      ]);
    };
    expect(saidOf([person, child])).toEqual([[person.name, undefined]]);
    expect(saidOf([person, second])).toEqual([[undefined, 'Adult A or Adult B']]);
    const away = [{ from: today, to: today }];
    expect(saidOf([person, { ...second, away }])).toEqual([[person.name, undefined]]);
    expect(saidOf([child])).toEqual([[undefined, undefined]]);
  });

  it('counts no hours of children beside those of adults, and theirs where no adult is named', () => {
    const child = { ...person, id: 'c', name: 'Child', isChild: true };
    const hadBy = (people: FarmPicture['people']) =>
      todayHours(worked({ people }).picture, tables, { chores: [], jobs: [] }).had;
    const had = hadBy([person, child]);
    expect(had.value).toBe(2);
    expect(had.inputs.map(({ label }) => label)).toEqual(['Adult A']);
    const { picture } = worked({ people: [person, child] });
    const chores = [person, child].map(({ name }, k) => ({
      ...{ key: name, name: 'Feed', hours: 0.25 + k, person: name },
    }));
    expect(todayHours(picture, tables, { chores, jobs: [] }).used.value).toBe(0.25);
    expect(hadBy([child]).value).toBe(hadBy([{ ...child, isChild: false }]).value);
  });

  it('keeps what was ticked off in sight, with the hours it took, and gives those to nothing else', () => {
    const { plan, picture } = worked({
      progress: [{ key: 'own/bed', doneOn: today, hours: 1.25 }],
    });
    const jobs = todayJobs(plan, picture);
    expect(jobs).toEqual([expect.objectContaining({ key: 'own/bed', state: 'done', hours: 1.25 })]);
    // Of the two hours 45 minutes are left: the gate takes an hour and waits for tomorrow.
    expect(plan.jobs.find(({ key }) => key === 'own/gate')!.pieces[0]!.date).toBe(
      addDays(today, 1),
    );
    expect(todayHours(picture, tables, { chores: [], jobs }).used.value).toBe(1.25);
  });

  it('counts of work done in two goes only the hours of today', () => {
    const used = (progress: readonly Progress[]): number => {
      const { plan, picture } = worked({ progress });
      const jobs = todayJobs(plan, picture).filter(({ key }) => key === 'own/bed');
      return todayHours(picture, tables, { chores: [], jobs }).used.value;
    };
    const whole = used([{ key: 'own/bed', doneOn: today }]);
    expect(used([{ key: 'own/bed', doneOn: today, hoursDone: 1 }])).toBe(whole - 1);
    // What was done of it in the morning is of today as well.
    const part = { partOn: today, partHours: 0.5 };
    expect(used([{ key: 'own/bed', doneOn: today, hoursDone: 1, ...part }])).toBe(whole - 0.5);
  });

  it('says of work for animals who else has the hours for it, and of no other', () => {
    const second = { ...person, id: 'b', name: 'Adult B' };
    const child = { ...person, id: 'c', name: 'Child', isChild: true };
    const { plan, picture } = worked({ people: [person, second, child] });
    const ofHens = (job: PlannedJob): PlannedJob => ({
      ...job,
      belongsTo: { kind: 'batch', id: 'hens', name: 'Hens' },
    });
    const jobs = plan.jobs.map((job) => (job.key === 'own/bed' ? ofHens(job) : job));
    const asked = { ...plan, jobs };
    const [bedOf] = jobs.find(({ key }) => key === 'own/bed')!.pieces;
    const free = freeToday(picture, tables, asked);
    expect(free.map(({ name }) => name)).toEqual(['Adult A', 'Adult B']);
    // Each has two hours; the gate takes one of them, so that only somebody without it has 1.5 left.
    const other = bedOf!.personIds[0] === person.id ? second : person;
    const taken = free.find(({ id }) => id === other.id)!.hours < 1.5;
    const found = todayJobs(asked, picture, { free }).find(({ key }) => key === 'own/bed')!;
    expect(found.others ?? []).toEqual(taken ? [] : [other.name]);
    const idle = free.map((each) => ({ ...each, hours: 2 }));
    const [own, hens] = ['own/gate', 'own/bed'].map((key) =>
      todayJobs(asked, picture, { free: idle }).find((job) => job.key === key),
    );
    expect(hens!.others).toEqual([other.name]);
    expect(own?.others).toBeUndefined();
    // What its animals can have later can wait; what is due today for them cannot.
    expect(hens!.forAnimals).toBeUndefined();
    const due = plan.jobs.map((job) => ({ ...ofHens(job), latest: today }));
    expect(todayJobs({ ...plan, jobs: due }, picture)[0]!.forAnimals).toBe(true);
  });

  it('says of what fits only in part how long all of it is', () => {
    const tomorrow = addDays(today, 1);
    const long = newOwnJob({ hours: 13, dueOn: today, noUseAfter: tomorrow });
    const people = [{ ...person, away: [{ from: tomorrow, to: tomorrow }] }];
    const { plan, picture } = worked({ ownJobs: [long], people });
    expect(todayJobs(plan, picture)).toMatchObject([{ hours: 2, hoursInAll: 13 }]);
  });

  it('says of work that two are at how long each is, and takes it for one piece of the day', () => {
    const second = {
      ...person,
      id: 'b',
      name: 'Adult B',
      hoursByWeekday: Array<number>(7).fill(1),
    };
    const long = newOwnJob({ hours: 9, dueOn: today });
    const { plan, picture } = worked({ ownJobs: [long], people: [person, second] });
    expect(todayJobs(plan, picture)).toMatchObject([
      { hours: 3, hoursInAll: 9, people: ['Adult A 2 h', 'Adult B 1 h'] },
    ]);
  });

  it('does not show what was ticked off yesterday', () => {
    const { plan, picture } = worked({
      progress: [{ key: 'own/bed', doneOn: addDays(today, -1) }],
    });
    expect(todayJobs(plan, picture).map(({ key }) => key)).toEqual(['own/gate']);
  });

  it('keeps what was put off in sight, and says when the rest of it is', () => {
    const { plan, picture } = worked({
      progress: [{ key: 'own/bed', notBefore: addDays(today, 1), hoursDone: 0.5 }],
    });
    expect(todayJobs(plan, picture)).toContainEqual(
      expect.objectContaining({
        key: 'own/bed',
        state: 'later',
        hoursDone: 0.5,
        restOn: addDays(today, 1),
      }),
    );
  });

  it('shows what is due and has no hours below what is planned', () => {
    const due = newOwnJob({ id: 'roof', hours: 9, dueOn: today, canBeSpread: false });
    const { plan, picture } = worked({ ownJobs: [due, gate] });
    const jobs = todayJobs(plan, picture);
    expect(jobs.map(({ key, hasNoHours }) => [key, hasNoHours])).toEqual([
      ['own/gate', undefined],
      ['own/roof', true],
    ]);
  });
});

describe('work that is late in heaps', () => {
  it('begins with what matters most, and then with what is late since yesterday', () => {
    const late = (id: string, daysAgo: number, priority: 'must' | 'should' | 'could') =>
      newOwnJob({
        ...{ id, priority, hours: 9, canBeSpread: false },
        ...{ dueOn: addDays(today, -daysAgo), noUseAfter: addDays(today, -daysAgo) },
      });
    const ownJobs = [
      late('old', 60, 'should'),
      late('could', 1, 'could'),
      late('new', 2, 'should'),
      late('must', 30, 'must'),
    ];
    const { plan, picture } = worked({ ownJobs });
    expect(todayJobs(plan, picture).map(({ key }) => key)).toEqual([
      ...['own/must', 'own/new', 'own/old', 'own/could'],
    ]);
  });
});

describe('who is away', () => {
  it('is said with the last of the days that follow one another', () => {
    const until = (...away: { from: string; to: string; isIll?: boolean }[]) =>
      whoIsAway({ today, people: [{ ...person, away }] });
    const [before, first, next] = [
      { from: addDays(today, -3), to: addDays(today, -1) },
      { from: addDays(today, -1), to: addDays(today, 1) },
      { from: addDays(today, 2), to: addDays(today, 4) },
    ];
    expect(until(before, next)).toEqual([]);
    expect(until({ ...first, isIll: true })[0]!.isIll).toBe(true);
    expect(until(first)).toEqual([{ name: 'Adult A', to: addDays(today, 1) }]);
    expect(until(next, first)).toEqual([{ name: 'Adult A', to: addDays(today, 4) }]);
  });
});

describe('what chicks wait for', () => {
  it('comes before other work of the day, and what is over below all of it', () => {
    const at = { hours: 0.25, dueOn: today };
    const over = { dueOn: addDays(today, -9), noUseAfter: addDays(today, -9) };
    const { plan, picture } = worked({
      ownJobs: [
        newOwnJob({ ...at, id: 'swarm', name: 'Check for swarm cells', ...over }),
        newOwnJob({ ...at, id: 'hives', name: 'Paint hives' }),
        newOwnJob({ ...at, id: 'preheat', name: 'Preheat the brooder' }),
        newOwnJob({ ...at, id: 'roof', name: 'Mend the roof', hours: 9, canBeSpread: false }),
      ],
    });
    const jobs = plan.jobs.map((job): PlannedJob =>
      job.key === 'own/preheat' ? { ...job, animalsNeedIt: true, latest: addDays(today, 1) } : job,
    );
    const of = todayJobs({ ...plan, jobs }, picture);
    expect(of.map(({ key }) => key)).toEqual([
      ...['own/preheat', 'own/hives', 'own/roof', 'own/swarm'],
    ]);
    expect(of.map(({ overSince }) => overSince)).toEqual([
      ...[undefined, undefined, undefined, addDays(today, -9)],
    ]);
  });

  it('gives the last of its reasons whole, where a name in it has a semicolon', () => {
    const { plan, picture } = worked({ ownJobs: [gate] });
    const why =
      'Due; “Health work (castration; tags and horns)” should be done before it, and there is no time for all of that.';
    const jobs = plan.jobs.map((job): PlannedJob => ({ ...job, why }));
    expect(todayJobs({ ...plan, jobs }, picture)[0]!.dueWords).toBe(
      '“Health work (castration; tags and horns)” should be done before it, and there is no time for all of that',
    );
  });
});

describe('work on a day on which the ground was found too wet', () => {
  const wet = [{ date: today, isWorkable: false }];

  it('says that it is the ground, and not the time, where work waits for dry ground', () => {
    const beds = newOwnJob({
      ...{ id: 'beds', name: 'Spade the beds', hours: 1, notBefore: addDays(today, -3) },
      ...{ dueOn: today, noUseAfter: today },
      conditions: { dryGround: true },
    });
    const { plan, picture } = worked({ ownJobs: [beds], groundChecks: wet });
    const [job] = todayJobs(plan, picture);
    expect(job).toMatchObject({ hasNoHours: true, unfitToday: 'ground too wet' });
    expect(job).not.toHaveProperty('isOnWetGround');
  });

  it('asks of work in the soil that was not told to wait, and of no other', () => {
    const [spade, chimney] = ['Spade the beds', 'Clean the chimney'].map((name, k) =>
      newOwnJob({ id: `job-${k}`, name, hours: 0.5, dueOn: today }),
    );
    const { plan, picture } = worked({ ownJobs: [spade!, chimney!], groundChecks: wet });
    const asked = new Map(todayJobs(plan, picture).map((job) => [job.name, job.isOnWetGround]));
    expect(asked).toEqual(
      new Map([
        ['Spade the beds', true],
        ['Clean the chimney', undefined],
      ]),
    );
  });

  it('goes by what a job says of the ground before it goes by its name', () => {
    const jobOf = (name: string, more: object) =>
      newOwnJob({
        id: name.toLowerCase().replace(/\W/g, '-'),
        name,
        hours: 0.5,
        dueOn: today,
        ...more,
      });
    const { plan, picture } = worked({
      ownJobs: [
        jobOf('Order seed', { setId: 'garden-beds' }),
        jobOf('Peppers out', { conditions: { soilAtLeastC: -20 } }),
        jobOf('Paint the garden gate', { conditions: { dryGround: false } }),
      ],
      groundChecks: wet,
    });
    const asked = todayJobs(plan, picture).filter(({ isOnWetGround }) => isOnWetGround);
    expect(asked.map(({ name }) => name)).toEqual(['Peppers out']);
  });
});

describe('ticks of chores', () => {
  it('are those of that day', () => {
    const chores = ['a', 'b'].map((key) => ({ key, name: key, of: 'Cows', hours: 0.5 }));
    const day = { chores, attention: [] } as unknown as Today;
    expect(
      withTicks(
        day,
        new Map([
          ['b', undefined],
          ['c', 'Ben'],
        ]),
      ).chores.map(({ isDone }) => isDone),
    ).toEqual([false, true]);
  });
});

describe('the weather of today', () => {
  const forecast = [
    { date: today, minC: 4, maxC: 12, rainMm: 0 },
    { date: addDays(today, 1), minC: -1, maxC: 8, rainMm: 0 },
    { date: addDays(today, 2), minC: 2, maxC: 9, rainMm: 14 },
  ];

  it('takes the colder of two lows for tonight, and finds the next rain', () => {
    const { plan, picture } = worked();
    const { climate } = picture;
    const forecasted = { ...climate, forecast };
    const known = worked({ climate: forecasted }).plan;
    const weather = todayWeather({ climate: forecasted, today, tables }, known);
    expect(weather).toMatchObject({ isForecast: true, forecastTo: addDays(today, 2) });
    expect(weather.tonight.value).toBe(-1);
    expect(weather.tonight.spread).toBeUndefined();
    expect(weather.high.value).toBe(12);
    expect(weather.rain!.on).toBe(addDays(today, 2));
    expect(weather.rain!.amount.value).toBe(14);
    const usual = todayWeather({ climate, today, tables }, plan);
    expect(usual.isForecast).toBe(false);
    expect(usual.rain).toBeUndefined();
    // Typed monthly averages: one night in ten is 6 °C colder.
    expect(usual.tonight.spread!.high - usual.tonight.spread!.low).toBeCloseTo(6, 0);
  });

  it('takes no rain, and no dry days, from nights of which only the low is known', () => {
    const { climate } = worked().picture;
    const cold = forecast.map(({ date }) => ({ date, minC: -9, maxC: 3 }));
    const typed = { ...climate, forecast: cold };
    for (const rainy of [0, 20]) {
      const { plan } = worked({ climate: typed });
      const rainMm = plan.weather.rainMm.map(() => rainy);
      const as = { ...plan, weather: { ...plan.weather, rainMm } };
      const weather = todayWeather({ climate: typed, today, tables }, as);
      expect(weather).toMatchObject({ isForecast: true, tonight: { value: -9 } });
      expect(weather).not.toHaveProperty('rain');
      expect(weather).not.toHaveProperty('forecastTo');
      expect(todayGround({ climate: typed, today }, as)).not.toHaveProperty('changesOn');
    }
  });

  it('says what was found of the ground, and when the forecast turns it', () => {
    const { picture } = worked();
    const climate = { ...picture.climate, forecast };
    const dry = worked({ climate, groundChecks: [{ date: today, isWorkable: true }] }).plan;
    expect(todayGround({ climate, today }, dry)).toMatchObject({
      found: true,
      isWorkable: true,
      changesOn: addDays(today, 2),
    });
  });
});

describe('what needs attention', () => {
  const cows = { kind: 'herd', id: 'cows', name: 'Cows' } as never;
  const look = (more: Parameters<typeof newWork>[0], animals = [cows]) =>
    attentionOf({
      ...worked(more),
      ...{ batches: [], pasture: undefined, animals, judged: tables.judgements.alarms },
    });

  it('is a day on which everybody is away, unless somebody is in charge', () => {
    const from = addDays(today, 3);
    const away = [{ from, to: addDays(today, 9) }];
    const alone = { people: [{ ...person, away }], work: [newBatchWork(today, today)] };
    const isNobodyThere = ({ key }: { key: string }) => key.startsWith('care/nobody-there');
    expect(look(alone)[0]).toMatchObject({ level: 'stop', by: from, place: { kind: 'away' } });
    expect(look(alone).some(isNobodyThere)).toBe(true);
    expect(look({ ...alone, work: [] }).some(isNobodyThere)).toBe(false);
    const handovers = [
      {
        ...{ id: 'h', sitter: 'Neighbor', hoursPerDay: 2, from, to: addDays(today, 9) },
        ...{ roundOrder: [], phones: [], whereabouts: [] },
      },
    ];
    expect(look({ ...alone, handovers }).some(isNobodyThere)).toBe(false);
  });

  it('is a day to be taken off for chicks, four weeks before, and no earlier', () => {
    const atWork = { people: [{ ...person, startH: { weekday: 17, weekend: 8 } }] };
    const wednesday = (weeks: number) => addDays(today, 7 * weeks + ((10 - weekdayOf(today)) % 7));
    const said = (on: string) =>
      look({ ...atWork, work: [newBatchWork(on, today)] }).filter(({ key }) =>
        key.startsWith('care/out-by-day'),
      );
    const on = wednesday(3);
    expect(said(on)).toMatchObject([{ level: 'act', by: on }]);
    expect(said(on)[0]!.text).toContain('ask for that day off');
    expect(said(wednesday(5))).toEqual([]);
  });

  it('is work for which there is no time within two weeks, and none beyond', () => {
    const barn = (days: number) =>
      newOwnJob({
        id: 'barn',
        hours: 30,
        dueOn: addDays(today, days),
        noUseAfter: addDays(today, days),
        canBeSpread: false,
      });
    const found = (days: number) =>
      look({ ownJobs: [barn(days)] }).filter(({ key }) => key === 'work/own/barn');
    expect(found(10)).toEqual([
      expect.objectContaining({ by: addDays(today, 10), words: 'no time for “Dig the long bed”' }),
    ]);
    expect(found(20)).toEqual([]);
  });

  it('is an arrival before all is ready, once, with the day that would do', () => {
    const little = { ...person, hoursByWeekday: [1, 1, 1, 1, 1, 1, 1] };
    const found = look({
      people: [little],
      ownJobs: [],
      work: [newBatchWork(addDays(today, 7), today)],
    });
    const soon = found.filter(({ key }) => key.startsWith('too-soon/'));
    expect(soon).toHaveLength(1);
    expect(soon[0]!.words).toMatch(/^not all is ready by Mon 12 Apr, \w+ \d+ \w+ would do$/);
    expect(soon[0]!.later).toBeUndefined();
    const name = 'Repair brooder and pasture pen';
    expect(soon[0]!.text).toContain(name);
    expect(found.filter(({ words }) => words.includes(name))).toEqual([]);
  });

  it('is a turn-out before all is ready, with the day that a touch sets', () => {
    const { plan, picture } = worked({ ownJobs: [] });
    const move: EventToMove = {
      kind: 'turn-out',
      ...{ id: 'event/cows/turn-out', ofId: 'cows', name: 'Cows: turn-out' },
      ...{ from: addDays(today, 3), to: addDays(today, 8) },
      ...{ keys: [], names: ['Mend'], said: 'Wait.' },
    };
    const others = { batches: [], pasture: undefined, animals: [cows] };
    const asked = { ...others, picture, judged: tables.judgements.alarms };
    const found = attentionOf({ ...asked, plan: { ...plan, eventsToMove: [move] } });
    expect(found.find(({ key }) => key === 'too-soon/event/cows/turn-out')).toMatchObject({
      ...{ level: 'act', later: { kind: 'turn-out', ofId: 'cows', to: addDays(today, 8) } },
      text: 'Not ready before it: “Mend”. Wait.',
    });
  });

  it('asks once whether a herd is out, on the day of a turn-out whose mineral began late', () => {
    const { plan, picture } = worked({ ownJobs: [] });
    const move: EventToMove = {
      kind: 'turn-out',
      ...{ id: 'event/h1/turn-out', ofId: 'h1', name: 'Cows: turn-out', from: today },
      ...{ keys: [], names: [], said: 'Eleven of 30 days.' },
    };
    const herd = newHerd({ id: 'h1' });
    const pasture = {
      ...{ keyDates: { herds: [{ herdId: 'h1', turnOut: { value: today } }] } },
      ...{ moves: [], issues: [], paddocks: [], hay: {} },
    } as unknown as PasturePlan;
    const outIn = (shortRun: Pick<EventToMove, 'shortRun'>) => {
      const events = { ...plan, eventsToMove: [{ ...move, ...shortRun }] };
      const of = { picture: { ...picture, herds: [herd] }, plan: events, pasture };
      const judged = tables.judgements.alarms;
      return attentionOf({ ...of, batches: [], animals: [], judged })
        .filter(({ out }) => out)
        .map(({ key }) => key);
    };
    const shortRun = { name: 'Mineral', days: 11, fullDays: 30, isBegun: true };
    expect(outIn({ shortRun })).toEqual(['turn-out/h1']);
    // What is to be done before stands in place of the question, and has its button.
    expect(outIn({})).toEqual(['too-soon/event/h1/turn-out']);
  });

  it('is not mineral that was begun late and goes on, until the day before they go out', () => {
    const { plan, picture } = worked({ ownJobs: [] });
    const saidOn = (days: number, more: Partial<EventToMove> = {}, isBegun = true) => {
      const move: EventToMove = {
        kind: 'turn-out',
        ...{ id: 'event/h1/turn-out', ofId: 'h1', name: 'Cows: turn-out' },
        ...{ from: addDays(today, days), keys: [], names: [], said: 'Twenty of 30 days.' },
        ...{ shortRun: { name: 'Mineral', days: 20, fullDays: 30, isBegun }, ...more },
      };
      const of = { picture, batches: [], pasture: undefined, animals: [] };
      const judged = tables.judgements.alarms;
      return attentionOf({ ...of, judged, plan: { ...plan, eventsToMove: [move] } })
        .map(({ key }) => key)
        .filter((key) => key.startsWith('too-soon/'));
    };
    const said = ['too-soon/event/h1/turn-out'];
    expect([10, 5, 2].map((days) => saidOn(days))).toEqual([[], [], []]);
    expect([1, 0].map((days) => saidOn(days))).toEqual([said, said]);
    // Mineral still to be put out, or a later day to choose, is something to act on.
    expect(saidOn(10, {}, false)).toEqual(said);
    expect(saidOn(10, { to: addDays(today, 12) })).toEqual(said);
  });

  it('is work that must be done and is late, until it is done', () => {
    const late = newOwnJob({
      ...{ id: 'roof', name: 'Mend the roof', hours: 30, priority: 'must' },
      dueOn: addDays(today, -1),
      noUseAfter: addDays(today, 60),
    });
    const found = look({ ownJobs: [late] }).find(({ key }) => key === 'work/own/roof')!;
    expect(found.words).toMatch(/^“Mend the roof” is planned \d+ days late$/);
    expect(found.by).toBeUndefined();
    const due = look({ ownJobs: [{ ...late, dueOn: today }] });
    const ofToday = due.find(({ key }) => key === 'work/own/roof')!;
    expect(ofToday.words).toMatch(/^“Mend the roof” is due today and planned \d+ days late$/);
    expect(ofToday.by).toBeUndefined();
  });
});
