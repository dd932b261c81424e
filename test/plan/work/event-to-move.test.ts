import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { addDays } from '../../../shared/calendar/plain-date.js';
import type { Progress } from '../../../shared/farm/job.js';
import { workPlanOf } from '../../../shared/plan/work/work-plan.js';
import { planAnimals } from '../../../shared/plan/farm/animal-plans.js';
import { workOfFarm } from '../../../shared/plan/farm/work-of-farm.js';
import { keyDatesOf } from '../../../shared/plan/tasks/event.js';
import { newBrooder, newRequest, tables } from '../../support/factories.js';
import { newHerd, newPaddocks } from '../../support/pasture-factories.js';
import { newPicture, plannedBatch } from '../../support/pictures.js';
import { newBatchWork, newWork } from '../../support/season-factories.js';

const today = '2027-04-05';
const hours = (each: number) => [
  { id: 'a', name: 'Adult A', away: [], hoursByWeekday: Array<number>(7).fill(each) },
];

/** Cows of two people with little time, some days before they go out. */
function herdWork(onDay: string, turnOutOn?: string, progress: Progress[] = []) {
  const people = ['Ann', 'Ben'].map((name) => ({
    ...{ id: name, name, away: [] },
    hoursByWeekday: [2, 2, 2, 2, 2, 5, 3],
  }));
  const { farm, climate } = newRequest();
  const picture = newPicture({
    ...{ farm, climate, today: onDay, people, paddocks: newPaddocks(6) },
    ...{ herds: [newHerd(turnOutOn === undefined ? {} : { turnOutOn })], progress },
  });
  return workOfFarm(picture, tables, planAnimals(picture, tables));
}

const turnOutOf = (request: ReturnType<typeof herdWork>): string =>
  request.work.flatMap(({ events }) => events).find(({ id }) => id === 'event/h1/turn-out')!.date;

describe('a turn-out that comes before all is ready', () => {
  const usual = turnOutOf(herdWork('2027-04-01'));

  it.each([0, 1, 2, 4])(
    'is named with a later day that does when tried, %d days before it',
    (days) => {
      const onDay = addDays(usual, -days);
      const request = herdWork(onDay);
      const date = turnOutOf(request);
      const plan = workPlanOf(request, 500);
      const move = plan.eventsToMove.find(({ kind }) => kind === 'turn-out')!;
      expect(move).toMatchObject({ id: 'event/h1/turn-out', ofId: 'h1', from: date });
      expect(date < move.to!).toBe(true);
      for (const key of move.keys) {
        const job = plan.jobs.find((each) => each.key === key)!;
        if (0 < days) expect(job.waysToFit).toContain(move.said);
        // Nothing is planned after the day on which they go out; due today, that day follows it.
        const out = days === 0 ? move.to! : date;
        for (const piece of job.pieces) expect(piece.date <= out).toBe(true);
      }
      const later = workPlanOf(herdWork(onDay, move.to), 500);
      const due = turnOutOf(herdWork(onDay, move.to));
      expect(due >= move.to!).toBe(true);
      const lost = later.jobs.filter(
        ({ key, pieces, lostHours }) =>
          move.keys.includes(key) && (pieces.length === 0 || 0 < lostHours),
      );
      expect(lost.map(({ name }) => name)).toEqual([]);
    },
  );

  it('still asks for a fence that should have been walked long ago', () => {
    const { jobs } = workPlanOf(herdWork(addDays(usual, -1)), 20);
    expect(jobs.map(({ name }) => name)).toContain('Walk and repair perimeter fence');
  });

  // A month before is recommended so that they are used to eating it; none is stored, and more than two
  // weeks before do no more (MAGNESIUM_UNTIL, GRAZING_78, MAGNESIUM_TWO_WEEKS).
  describe('by the magnesium mineral alone', () => {
    const mineral = 'herd/h1/h1.turn-out.start-high-magnesium-mineral';
    const readying = [
      ...['buy-magnesium-mineral', 'walk-and-repair-perimeter-fence', 'lay-out-first-paddocks'],
      ...['clear-fence-line-and-test-charger-and', 'turn-on-and-flush-pasture-water'],
    ].map((id) => `herd/h1/h1.turn-out.${id}`);
    const begunBefore = (days: number, onDay = addDays(usual, -3)) => {
      const progress = [
        ...readying.map((key) => ({ key, doneOn: addDays(usual, -40) })),
        ...(days < 0 ? [] : [{ key: mineral, doneOn: addDays(usual, -days) }]),
      ];
      return workPlanOf(herdWork(onDay, undefined, progress), 200).eventsToMove;
    };

    it('keeps nobody in for weeks: some days later at most, with how people go about it', () => {
      for (const days of [3, -1]) {
        const [move] = begunBefore(days);
        expect(move).toMatchObject({ id: 'event/h1/turn-out', keys: [], from: usual });
        expect(move!.shortRun).toMatchObject({ days: days < 0 ? expect.any(Number) : 3 });
        expect(move!.shortRun!.days).toBeLessThanOrEqual(3);
        expect(move!.to).toBe(addDays(usual, 7));
        expect(move!.said).toContain(' of 30 days by ');
        for (const word of ['recommended', 'today', 'hay', 'wind, rain', 'ask the vet'])
          expect(move!.said).toContain(word);
      }
      // Twelve days of it: two more make the two weeks that do as much.
      expect(begunBefore(12)[0]!.to).toBe(addDays(usual, 2));
    });

    it('is still said after two weeks of it, without another day, and no more after thirty', () => {
      const [move] = begunBefore(20);
      expect(move!.to).toBeUndefined();
      expect(move!.said).toContain('20 of 30 days');
      expect(begunBefore(30)).toEqual([]);
    });

    it('stands beside what there is no time for', () => {
      const onDay = addDays(usual, -3);
      const { eventsToMove } = workPlanOf(herdWork(onDay), 200);
      expect(eventsToMove[0]!.shortRun).toBeUndefined();
      expect(eventsToMove[0]!.said).toMatch(/there is time for .* of 30 days by .*ask the vet/s);
    });
  });

  it('is not named where there is time', () => {
    expect(workPlanOf(herdWork(addDays(usual, -40)), 500).eventsToMove).toEqual([]);
  });
});

describe('birds that are to leave the brooder before all is ready', () => {
  const arrivalDate = '2027-05-03';

  /** A batch in a brooder of so many square meters, of one who is away until some days after the move. */
  function birdsWork(floorM2: number, moveOutDate?: string) {
    const brooder = newBrooder({ lengthM: floorM2, widthM: 1 });
    const own = moveOutDate === undefined ? {} : { moveOutDate };
    const batch = { ...{ arrivalDate, wantedBirds: 60, brooderId: brooder.id }, ...own };
    const plan = plannedBatch(newRequest({ today: arrivalDate, batch, facilities: [brooder] }));
    const of = { id: 'meat', name: 'Meat chicks' };
    const events = keyDatesOf({ id: 'meat', name: plan.name }, plan.tasks.events);
    return { ...of, kind: 'batch' as const, tasks: plan.tasks.tasks, events, birds: plan };
  }

  const outOf = ({ events }: ReturnType<typeof birdsWork>): string =>
    events.find(({ id }) => id === 'event/meat/move-out')!.date;
  const due = outOf(birdsWork(20));
  const away = [{ from: addDays(due, -20), to: addDays(due, -1) }];
  const plan = (work: ReturnType<typeof birdsWork>) =>
    workPlanOf(
      newWork({
        ...{ today: addDays(due, -15), work: [work] },
        people: hours(4).map((each) => ({ ...each, away })),
      }),
      200,
    );

  it('names the move with a later day that does when tried', () => {
    const [move] = plan(birdsWork(20)).eventsToMove;
    expect(move).toMatchObject({ id: 'event/meat/move-out', kind: 'move-out', from: due });
    expect(due < move!.to!).toBe(true);
    expect(plan(birdsWork(20, move!.to)).eventsToMove).toEqual([]);
  });

  it('does not keep them in a brooder that they have outgrown', () => {
    const work = birdsWork(4);
    expect(work.birds.space.spare?.value).toBe(0);
    const [move] = plan(work).eventsToMove;
    expect(move!.to).toBeUndefined();
    expect(move!.said).toContain('cannot wait');
  });
});

describe('work that makes ready for animals', () => {
  it('is never planned after they come, whatever the hours', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 60 }),
        fc.constantFrom(0, 0.5, 1, 2, 8),
        (days, each) => {
          const work = newBatchWork(addDays(today, days), today);
          const request = newWork({ work: [work], people: hours(each) });
          const { jobs } = workPlanOf(request, 20);
          for (const { id, noUseAfter } of work.tasks) {
            const job = jobs.find(({ key }) => key === `batch/meat/${id}`);
            const done = job?.pieces.at(-1)?.date;
            if (noUseAfter !== undefined && done !== undefined)
              expect(done <= noUseAfter).toBe(true);
          }
        },
      ),
      { numRuns: 15 },
    );
  });

  it('names the arrival as what to move, by as much as is enough when tried', () => {
    const planOn = (date: string) =>
      workPlanOf(newWork({ work: [newBatchWork(date, today)], people: hours(1) }), 200);
    const repair = ({ jobs }: ReturnType<typeof planOn>) =>
      jobs.find(({ name }) => name === 'Repair brooder and pasture pen')!;
    const now = repair(planOn('2027-04-14'));
    expect(now.lostHours).toBeGreaterThan(0);
    const move = now.waysToFit.find((way) => way.startsWith('Move “Test batch: chicks arrive” to'));
    const [, day, month] = /to [A-Z][a-z]+ (\d+) ([A-Z][a-z]+) or later/.exec(move!)!;
    const to = `2027-${month === 'Apr' ? '04' : '05'}-${day!.padStart(2, '0')}`;
    expect(repair(planOn(to)).lostHours).toBe(0);
  });
});
