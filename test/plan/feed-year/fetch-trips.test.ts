import { describe, expect, it } from '@jest/globals';
import { addDays } from '../../../shared/calendar/plain-date.js';
import { factsOfBought } from '../../../shared/farm/told-fact.js';
import { planAnimals } from '../../../shared/plan/farm/animal-plans.js';
import { planWork, workOfFarm } from '../../../shared/plan/farm/work-of-farm.js';
import { dayInWork } from '../../../shared/plan/feed-year/trip-in-work.js';
import { feedYear } from '../../../shared/plan/feed-year/feed-year.js';
import { isFetch } from '../../../shared/plan/tasks/fetches.js';
import { workPlanOf } from '../../../shared/plan/work/work-plan.js';
import { pictureOfFile } from '../../../src/cli/farm-file.js';
import { tables } from '../../support/factories.js';
import { boughtAsPlanned } from '../../support/told-as-planned.js';

const picture = pictureOfFile('seeds/farm.example.jsonc', tables);
const animals = planAnimals(picture, tables);
const fetchesOf = (of: typeof picture) =>
  workOfFarm(of, tables, animals)
    .work.flatMap(({ kind, id, tasks }) =>
      tasks.map((task) => ({ key: `${kind}/${id}/${task.id}`, task })),
    )
    .filter(({ key }) => isFetch(key));
const firstTrip = (of: typeof picture) =>
  fetchesOf(of)
    .filter(({ task }) => task.buys)
    .toSorted((a, b) => (a.task.start < b.task.start ? -1 : 1))[0]!;
const tripsOf = (of: typeof picture) =>
  feedYear(of, tables, animals, factsOfBought(of.feedBought ?? [])).trips;

describe('work that fetches feed', () => {
  it('is the trips of the year of feed: as many, on their days, with their bags', () => {
    const trips = tripsOf(picture);
    const last = String(trips.at(-1)!.on.value);
    const tasks = fetchesOf(picture)
      .map(({ task }) => task)
      .filter(({ start }) => start <= last)
      .toSorted((a, b) => (a.start < b.start ? -1 : 1));
    expect(tasks.map(({ start }) => start)).toEqual(trips.map(({ on }) => on.value));
    trips.forEach(({ lines }, k) => {
      for (const { bags, name } of lines)
        expect(tasks[k]!.name).toContain(`${bags.value} × ${name}`);
    });
  });

  it('stands on one day in the list of trips and in the plan of the work, no sooner than it is of use', () => {
    const { jobs } = planWork(picture, tables, animals);
    const days = tripsOf(picture).map((trip) => [dayInWork(trip, jobs), String(trip.on.value)]);
    const pieces = new Set(jobs.flatMap(({ buys, pieces: all }) => (buys ? all[0]?.date : [])));
    for (const [planned, on] of days) {
      expect(pieces).toContain(planned);
      expect(on! <= planned!).toBe(true);
    }
    expect(
      dayInWork({ on: tripsOf(picture)[0]!.on, from: 'Another seller' }, jobs),
    ).toBeUndefined();
  });

  it('is priced and ordered before any trip that brings it, one that others need sooner too', () => {
    const id = 'meat.price-and-order-feed';
    const orderOf = (trips: ReturnType<typeof tripsOf>) => {
      const early = { ...picture, today: '2027-03-01' };
      const { work } = workOfFarm(early, tables, { ...animals, trips });
      const of = work.find(({ tasks }) => tasks.some(({ templateId }) => templateId === id))!;
      return { of, task: of.tasks.find(({ templateId }) => templateId === id)! };
    };
    const trips = tripsOf(picture);
    const { of, task } = orderOf(trips);
    const along = trips.find(({ lines }) =>
      lines.some(({ eatenBy }) => eatenBy.includes(of.name)),
    )!;
    const sooner = addDays(task.start, -14);
    const pulled = trips.map((trip) =>
      trip === along ? { ...trip, on: { ...trip.on, value: sooner } as typeof trip.on } : trip,
    );
    const then = orderOf(pulled).task;
    expect([then.start, then.latestStart, then.spareDays]).toEqual([
      ...[addDays(sooner, -7), addDays(sooner, -1)],
      6,
    ]);
    expect(String(along.on.value) <= task.start).toBe(false);
    // A trip of today is none that was ordered for: it is ordered before it goes, the same day.
    const now = trips.map((trip) =>
      trip === along
        ? { ...trip, on: { ...trip.on, value: '2027-03-01' } as typeof trip.on }
        : trip,
    );
    expect(orderOf(now).task).toMatchObject({
      ...{ start: '2027-03-01', latestStart: '2027-03-01', spareDays: 0 },
    });
    const early = { ...picture, today: '2027-03-01' };
    const { jobs } = workPlanOf(workOfFarm(early, tables, { ...animals, trips: now }), 1);
    const ordered = jobs.find(({ key }) => key === `batch/${of.id}/${task.id}`)!;
    expect(ordered.pieces.map(({ date }) => date)).toEqual(['2027-03-01']);
  });

  it('leaves feed of chicks that are not ordered yet for a later trip, whatever others bring of its kind', () => {
    const meat = picture.batches.find(({ purpose }) => purpose === 'meat')!;
    const late = { ...meat, id: 'late', name: 'Late meat birds', arrivalDate: '2027-08-04' };
    const both = { ...picture, batches: [...picture.batches, late] };
    const planned = planAnimals(both, tables);
    const { trips } = feedYear(both, tables, planned, []);
    // Each is named only where it eats of the bags: it is there before they are used up.
    const arrivals = new Map(both.batches.map(({ name, arrivalDate }) => [name, arrivalDate]));
    const lines = trips.flatMap((trip) => trip.lines);
    for (const { eatenBy, lastsThrough } of lines)
      for (const name of eatenBy) expect(arrivals.get(name)! <= lastsThrough).toBe(true);
    expect(lines.filter(({ eatenBy }) => eatenBy.includes(late.name)).length).toBeGreaterThan(1);
    // What is stale by then serves no chick: their first feed is bought for them, in time.
    expect(trips.flatMap(({ firstFeed }) => firstFeed ?? [])).toContainEqual(
      expect.objectContaining({ batchId: late.id, by: '2027-08-03' }),
    );
    const { work } = workOfFarm(both, tables, { ...planned, trips });
    const tasks = work.find(({ id }) => id === late.id)!.tasks;
    const startOf = (id: string) => tasks.find(({ templateId }) => templateId === id)!.start;
    expect(startOf('meat.order-chicks-for-a-named-arrival')).toBe('2027-05-12'); // 84 days before
    // Two weeks before they come, no sooner: no trip before that brings any of it.
    expect(startOf('meat.price-and-order-feed')).toBe('2027-07-21');
    const first = trips.find((trip) =>
      trip.lines.some(({ eatenBy }) => eatenBy.includes(late.name)),
    );
    expect('2027-07-21' < String(first!.on.value)).toBe(true);
  });

  it('says of each trip what to bring, and is on to the one after it once that is told', () => {
    const [next, after] = tripsOf(picture);
    const { jobs } = planWork(picture, tables, animals);
    const brought = jobs
      .filter(({ buys }) => buys !== undefined)
      .toSorted((a, b) => (a.pieces[0]!.date < b.pieces[0]!.date ? -1 : 1));
    for (const [k, { lines }] of [next!, after!].entries())
      expect(brought[k]!.buys!.lines.map(({ name, amount }) => [name, amount])).toEqual(
        lines.map(({ name, bags }) => [name, bags.value]),
      );
    const [{ key, pieces }] = brought as [(typeof jobs)[number]];
    expect(pieces[0]!.date).toBe(next!.on.value);
    const told = [{ key, doneOn: pieces[0]!.date }];
    const then = {
      ...picture,
      today: pieces[0]!.date,
      progress: told,
      feedBought: boughtAsPlanned({ jobs }, told),
    };
    expect(tripsOf(then)[0]!.on.value).toBe(after!.on.value);
    expect(firstTrip(then).task.start).toBe(after!.on.value);
    // What was done goes by what was bought on it, and not by the batch whose task it was.
    const [layers, salt] = [
      { what: 'feed' as const, name: 'Layer feed', amount: 3, eachKg: 22.68, work: key },
      { what: 'minerals' as const, name: 'Salt block', amount: 1, work: key },
    ];
    const otherwise = {
      ...then,
      feedBought: [{ ...layers, id: 'b', date: then.today }],
      herdFeedBought: [
        {
          ...({ id: 'm', key: 'm', kind: 'bought', about: 'farm', on: then.today } as const),
          ...{ details: salt, toldAt: `${then.today}T12:00:00.000Z` },
        },
      ],
    };
    const made = planWork(otherwise, tables, animals).done.find((each) => each.key === key)!;
    expect(made.name).toBe('Fetch feed: 3 × Layer feed, 1 × Salt block');
    // Ticked by mistake: with the undo the trip is the next again.
    const undone = { ...then, progress: [], feedBought: [] };
    expect(firstTrip(undone).key).toBe(key);
  });

  it('brings what was ordered, however many birds it is for since, until the order is taken back', () => {
    const wanted = (birds: number, more: Partial<typeof picture> = {}) => {
      const batches = picture.batches.map((each) =>
        each.purpose === 'meat' ? { ...each, wantedBirds: birds } : each,
      );
      const now = { ...picture, ...more, batches };
      return { now, animals: planAnimals(now, tables) };
    };
    const first = wanted(50);
    const { jobs, keep } = workPlanOf(workOfFarm(first.now, tables, first.animals), 50);
    const isFirst = ({ key }: { key: string }) => key.endsWith('/meat.fetch-starter-feed');
    const ordered = jobs.find(isFirst)!.buys!;
    const key = jobs.find((job) => job.key.endsWith('/meat.price-and-order-feed'))!.key;
    const bought = (done: boolean) => {
      const progress = done ? [{ key, doneOn: picture.today }] : [];
      const { now, animals: planned } = wanted(80, { keptPlans: [keep], progress });
      const { trips } = feedYear(now, tables, planned, []);
      return trips.map(({ on, lines }) => ({
        on: on.value,
        lines: lines.map(({ name, bags }) => [name, bags.value]),
      }));
    };
    const stands = {
      on: ordered.on,
      lines: expect.arrayContaining(ordered.lines.map(({ name, amount }) => [name, amount])),
    };
    expect(ordered.lines.length).toBeGreaterThan(0);
    expect(bought(true)).toContainEqual(stands);
    expect(bought(false)).not.toContainEqual(stands);
    // More birds eat more: another trip brings it.
    const starter = (all: ReturnType<typeof bought>) =>
      all.flatMap(({ lines }) => lines).filter(([name]) => name === ordered.lines[0]!.name);
    const sum = (all: ReturnType<typeof bought>) =>
      starter(all).reduce((bags, [, each]) => bags + Number(each), 0);
    expect(sum(bought(true))).toBeGreaterThan(ordered.lines[0]!.amount);
  });

  it('stays the trip that it was, on whatever day the last plan had it', () => {
    const trips = fetchesOf(picture).filter(({ task }) => task.buys);
    const days = trips.map(({ task }) => task.start).toReversed();
    const jobs = Object.fromEntries(
      trips.map(({ key, task: { name, latestStart: latest } }, k) => [
        key,
        { name, latest, pieces: [{ date: days[k]!, minutes: 78, personIds: [] }] },
      ]),
    );
    const namesIn = (of: typeof picture) =>
      new Map(fetchesOf(of).map(({ key, task }) => [key, task.name]));
    const kept = [{ plannedOn: picture.today, jobs }];
    expect(1 < trips.length).toBe(true);
    expect(namesIn({ ...picture, keptPlans: kept })).toEqual(namesIn(picture));
  });

  it('of a batch that has no such work left waits for nothing of the batch that lends its own', () => {
    const { batches, today } = picture;
    const meat = batches.find(({ purpose }) => purpose === 'meat')!;
    const next = {
      ...meat,
      id: 'next',
      name: 'Meat birds of next year',
      arrivalDate: '2028-03-15',
    };
    const later = { ...picture, batches: [meat, next], herds: [], today: '2027-05-12' };
    const { tasks } = planAnimals(later, tables).batches[0]!.plan.tasks;
    const done = tasks
      .map(({ id }) => `batch/meat/${id}`)
      .filter(isFetch)
      .map((key) => ({ key, doneOn: today }));
    const then = { ...later, progress: done };
    const { jobs } = planWork(then, tables, planAnimals(then, tables));
    const lent = jobs.filter(
      ({ key, buys, pieces: [first] }) =>
        key.startsWith('batch/next/') && buys !== undefined && first!.date < '2027-12-01',
    );
    expect(lent.length).toBeGreaterThan(0);
    const pricing = jobs.find(({ key }) => key.endsWith('price-and-order-feed'))!;
    expect(pricing.lateDays).toBe(0);
    expect(pricing.latest > '2028-01-01').toBe(true);
  });
});
