import { describe, expect, it } from '@jest/globals';
import { addDays, daysBetween, weekdayOf } from '../../../shared/calendar/plain-date.js';
import type { Person } from '../../../shared/farm/farm.js';
import type { FarmPicture } from '../../../shared/farm/picture.js';
import { planBatch } from '../../../shared/plan/batch-plan.js';
import { planAnimals } from '../../../shared/plan/farm/animal-plans.js';
import { workOfFarm } from '../../../shared/plan/farm/work-of-farm.js';
import { calendarEntries } from '../../../shared/plan/work/calendar-entries.js';
import { workPlanOf } from '../../../shared/plan/work/work-plan.js';
import { fitAll } from '../../../shared/plan/work/fitted-work.js';
import type { ShortDay } from '../../../shared/plan/work/short-day.js';
import { shortDays } from '../../../shared/plan/work/short-days.js';
import { isWorthTelling } from '../../../shared/plan/work/worth-telling.js';
import type { WorkRequest } from '../../../shared/plan/work/work-request.js';
import { formatDate } from '../../../shared/units/dates.js';
import { tables } from '../../support/factories.js';
import { TEN_HOUSEHOLDS } from '../../support/ten-households.js';
import {
  cared,
  dayCalled,
  helper,
  isInTime,
  isMended,
  leftOf,
  taken,
} from '../../support/ways-taken.js';

const PLANS = 600;
const MORE_ON = /^(?:(\d+) h)? ?(?:(\d+) min)? ?more on (.*?)(?: from .*|, or.*)?\.$/;
/** The household with what a day that is short asks for: of those named the first, and a helper. */
function found(request: WorkRequest, { date, said }: ShortDay): WorkRequest[] {
  const { people } = request;
  const at = weekdayOf(date) - 1;
  const minutesOf = (pattern: RegExp): number[] => {
    const [, h = 0, min = 0] = pattern.exec(said) ?? [];
    return h === 0 && min === 0 ? [] : [60 * Number(h) + Number(min)];
  };
  const isNamed = ({ name }: Person): boolean =>
    new RegExp(` from (each of )?[^“]*${name}[^“]* for `).test(said);
  const named = people.filter(isNamed);
  const isOfEach = said.includes(' from each of ');
  const asked = isOfEach ? named : [named[0] ?? people.find(({ isChild }) => !isChild)!];
  const longer = minutesOf(/ find (?:(\d+) h)? ?(?:(\d+) min)? more/).map((minutes) => ({
    ...request,
    people: people.map((person) =>
      asked.includes(person) ? withMore(person, at, minutes / 60) : person,
    ),
  }));
  const helped = minutesOf(/ a helper with (?:(\d+) h)? ?(?:(\d+) min)?/).map((minutes) => {
    const hoursByWeekday = Array.from({ length: 7 }, (_, k) => (k === at ? minutes / 60 : 0));
    return { ...request, people: [...people, { ...helper, hoursByWeekday }] };
  });
  return [...longer, ...helped];
}

const withMore = (person: Person, at: number, moreH: number): Person => ({
  ...person,
  hoursByWeekday: (person.hoursByWeekday ?? tables.work.hoursByWeekday.values).map((hours, k) =>
    k === at ? hours + moreH : hours,
  ),
});

/** Days of each household whose own work asks for more hours than there are. */
const SHORT_DAYS: Record<string, number> = {
  ...{ 'one alone': 3, 'two with jobs': 4, 'three generations': 5, 'a milk cow': 14 },
  ...{
    'twins in May': 2,
    'a wet spring': 1,
    'a slot in July': 3,
    'no machine': 1,
    'four children': 6,
  },
};

/** Ways of each household that were tried as they were said. */
const TRIED: Record<string, number> = {
  ...{ 'one alone': 1, 'two with jobs': 1, 'three generations': 0, 'a milk cow': 4 },
  ...{ 'twins in May': 1, 'a wet spring': 3, 'away at calving': 3, 'a slot in July': 2 },
  ...{ 'no machine': 1, 'four children': 2 },
};

/** Work of a move out or a turn-out that lacks hours, and has them on a later day. */
const LATER: Record<string, number> = {
  ...{ 'one alone': 1, 'two with jobs': 2, 'three generations': 1, 'a milk cow': 5 },
  ...{ 'away at calving': 1, 'four children': 2, 'twins in May': 1, 'a slot in July': 1 },
};

/** Whether a day lacks whoever processes its birds, not hours of those who do. */
const isForHands = ({ keys }: ShortDay): boolean => keys[0]!.includes('.arrange-the-rest');

const dayOf = ({ farm, today }: WorkRequest, date: string): string =>
  formatDate(date, { units: farm.units, today });

describe.each(TEN_HOUSEHOLDS)('the household: %s', (name, picture: FarmPicture) => {
  const animals = planAnimals(picture, tables);
  const request = workOfFarm(picture, tables, animals);
  const plan = workPlanOf(request, PLANS);

  it('fits, and is in time, when what is offered is taken; animals are seen to', () => {
    expect(plan.jobs.length).toBeGreaterThan(15);
    const kept = { ...request, kept: plan.keep };
    let tried = 0;
    for (const job of plan.jobs.filter((each) => !isInTime(each) && !each.alreadyLate)) {
      expect([job.name, job.why.length, job.waysToFit.length]).not.toContain(0);
      for (const way of job.waysToFit) {
        const others = taken(kept, plan, job, way);
        if (others.length === 0) continue;
        tried++;
        const works = others.some((other) => isMended(plan, job, way, workPlanOf(other, PLANS)));
        expect([job.name, way, works]).toEqual([job.name, way, true]);
      }
    }
    for (const gap of plan.careGaps) {
      for (const way of gap.ways) {
        for (const other of cared(request, gap, way)) {
          tried++;
          const left = leftOf(gap, workPlanOf(other, 1));
          expect([way, left]).toEqual([way, []]);
        }
      }
    }
    expect([name, tried]).toEqual([name, Math.max(tried, TRIED[name]!)]);
  });

  it('lacks nothing on a day on which so many hours are found as are asked for, or a helper', () => {
    expect([name, plan.shortDays.length]).toEqual([name, SHORT_DAYS[name] ?? 0]);
    for (const day of plan.shortDays.filter((each) => !isForHands(each))) {
      const others = found(request, day);
      expect([day.said, others.length]).not.toContain(0);
      for (const other of others) {
        const { work, hours } = fitAll(other, 1);
        const left = shortDays(work.request, hours).filter(({ date }) => date === day.date);
        expect([day.said, left]).toEqual([day.said, []]);
      }
    }
  });

  it('has nobody wanting for birds that are processed once one of the ways named is taken', () => {
    for (const { said, keys } of plan.shortDays.filter(isForHands)) {
      const of = picture.batches.find(({ id }) => keys[0]!.startsWith(`batch/${id}/`))!;
      const { processingWays } = animals.batches.find(({ id }) => id === of.id)!.plan.leaving!;
      const ways = processingWays.filter(({ chosenBy }) => chosenBy);
      expect(ways.length).toBeGreaterThan(1);
      for (const { words, chosenBy } of ways) {
        expect(said).toContain(words);
        const batches = picture.batches.map((each) =>
          each === of ? ({ ...each, ...chosenBy } as typeof of) : each,
        );
        const chosen: FarmPicture = { ...picture, batches };
        const other = workOfFarm(chosen, tables, planAnimals(chosen, tables));
        const { shortDays: left, jobs } = workPlanOf(other, PLANS);
        expect([words, left.filter(isForHands)]).toEqual([words, []]);
        // The day, or the days, have their work.
        const work = jobs.filter(({ key }) => /\/process(?:ing|or)\./.test(key));
        expect([words, 5 < work.length]).toEqual([words, true]);
      }
    }
  });

  it('asks nobody for more than there is of their day until ten at night', () => {
    const ofWork = plan.jobs.flatMap(({ waysToFit }) => waysToFit);
    for (const said of ofWork) {
      const [, h = 0, min = 0, on] = MORE_ON.exec(said) ?? [];
      const weekday = on === undefined ? 7 : weekdayOf(dayCalled(request, on));
      const date = on === undefined ? undefined : dayCalled(request, on);
      const isAway = ({ away }: Person): boolean =>
        away.some(({ from, to }) => date !== undefined && from <= date && date <= to);
      const all = request.people.filter((person) => !person.isChild && !isAway(person));
      const each = all.map(({ startH, hoursByWeekday, byDay }) => {
        const starts = startH ?? tables.work.startH;
        const begins = weekday < 6 ? starts.weekday : starts.weekend;
        // Who is at home has the morning too, whenever their hours for the farm begin.
        const from = byDay === 'at-home' ? Math.min(begins, tables.work.outByDay.fromH) : begins;
        const hours = (hoursByWeekday ?? tables.work.hoursByWeekday.values)[weekday - 1]!;
        return from + hours + Number(h) + Number(min) / 60;
      });
      expect([said, Math.max(...each) <= 22]).toEqual([said, true]);
    }
    for (const { said, date } of plan.shortDays) {
      const [, h = 0, min = 0, from = ''] =
        / find (?:(\d+) h)? ?(?:(\d+) min)? more(.*?) for /.exec(said) ?? [];
      const named = request.people.filter((person) => from.includes(person.name));
      const weekday = weekdayOf(date);
      for (const { startH, hoursByWeekday, byDay } of named) {
        const begins = startH ?? tables.work.startH;
        const hours = (hoursByWeekday ?? tables.work.hoursByWeekday.values)[weekday - 1]!;
        const isHome = byDay === 'at-home' || 6 <= weekday;
        const ends = (isHome ? begins.weekend : begins.weekday) + hours + Number(h);
        expect([said, ends + Number(min) / 60 <= 22]).toEqual([said, true]);
      }
    }
  });

  it('makes hay in one dry spell, raked the day before it is baled', () => {
    const dayOf = (cut: string, id: string): string | undefined =>
      plan.jobs.find(({ key }) => key === `${cut}.hay.${id}`)?.pieces.at(-1)?.date;
    for (const { key, pieces } of plan.jobs) {
      const [cut, of] = key.split('.hay.');
      if (of !== 'mow' || !pieces[0]) continue;
      const [rake, bale] = [dayOf(cut!, 'rake')!, dayOf(cut!, 'bale')!];
      expect([key, daysBetween(rake, bale)]).toEqual([key, 1]);
      expect([key, daysBetween(pieces[0].date, bale) <= 4]).toEqual([key, true]);
    }
  });

  it('moves out, or turns out, on a later day with hours for it where that is offered', () => {
    const later = plan.jobs.flatMap(({ key, latest, later: to, waysToFit }) =>
      to ? [{ key, latest, ...to, waysToFit }] : [],
    );
    expect([name, later.length]).toEqual([name, LATER[name] ?? 0]);
    for (const { key, latest, kind, ofId, to, waysToFit } of later) {
      expect(waysToFit.join(' ')).toContain(dayOf(request, to));
      const moved: FarmPicture =
        kind === 'turn-out'
          ? { ...picture, herds: picture.herds.map((herd) => ({ ...herd, turnOutOn: to })) }
          : {
              ...picture,
              batches: picture.batches.map((batch) =>
                batch.id === ofId ? { ...batch, moveOutDate: to } : batch,
              ),
            };
      const { jobs } = workPlanOf(workOfFarm(moved, tables, planAnimals(moved, tables)), 200);
      const [first] = jobs.find((job) => job.key === key)!.pieces;
      const { shortHours } = jobs.find((job) => job.key === key)!;
      // What makes ready for the day moves with it, and may stand before it.
      expect([key, latest < first!.date, isWorthTelling(shortHours)]).toEqual([key, true, false]);
    }
  });

  it('says how often animals are looked at on real days: of hens that stay, to the end of the plan', () => {
    expect(plan.looks.length).toBeGreaterThan(3);
    for (const { from, to } of plan.looks)
      expect([from <= to, to <= plan.to]).toEqual([true, true]);
  });

  it('says in the calendar what is late, what it endangers and what would help', () => {
    const entries = calendarEntries(plan, picture.farm.units, animals.pasture);
    for (const job of plan.jobs.filter((each) => !isInTime(each))) {
      const [entry] = entries.filter(({ id }) => id === `${job.key}/1`);
      expect(entry!.title).toMatch(
        0 < job.lateDays ? /^\d+ days? late: / : job.pieces[0] ? /./ : /^No hours planned: /,
      );
      for (const said of [...job.waysToFit, job.ifLate ?? '']) expect(entry!.text).toContain(said);
    }
  });

  it('has each bird processed by somebody, in one of the ways offered', () => {
    for (const { id, plan: batch } of animals.batches) {
      for (const { chosenBy } of batch.leaving?.processingWays ?? []) {
        const { targetLiveKg: _none, ...chosen } = chosenBy ?? {};
        const batches = picture.batches.map((each) =>
          each.id === id ? { ...each, ...chosen } : each,
        );
        const { leaving } = planBatch({ ...picture, batches }, tables, id);
        expect(leaving!.birdsWithoutHands).toBeUndefined();
        for (const { untilH = 0 } of leaving!.processingDays) expect(untilH).toBeLessThan(21);
      }
    }
  });
});

it('makes nothing ready for a day of processing that nobody has the hands for', () => {
  const namesOf = (picture: FarmPicture): string[] =>
    planAnimals(picture, tables).batches.flatMap(({ plan }) =>
      plan.tasks.tasks.map(({ templateId }) => templateId),
    );
  const [, alone] = TEN_HOUSEHOLDS.find(([name]) => name === 'one alone')!;
  const readied = ['make-or-buy-ice', 'set-up-shade-tables-water-and', 'gather-equipment'];
  const asked = namesOf(alone);
  expect(asked).toContain('processing.arrange-the-rest');
  // Meat with a drug in it is nobody's to eat, whoever processes it.
  expect(asked).toContain('processing.check-withdrawal-dates-and-diary');
  for (const id of readied) expect(asked).not.toContain(`processing.${id}`);
  const helped = alone.batches.map((batch) => ({ ...batch, processingHelpers: 3 }));
  const withHelp = namesOf({ ...alone, batches: helped });
  expect(withHelp).not.toContain('processing.arrange-the-rest');
  for (const id of readied) expect(withHelp).toContain(`processing.${id}`);
});

it('says of birds that nobody has the hands for what would do, each way apart', () => {
  const [, alone] = TEN_HOUSEHOLDS.find(([name]) => name === 'one alone')!;
  const work = workOfFarm(alone, tables, planAnimals(alone, tables));
  const saidOf = (given: WorkRequest) => workPlanOf(given, 1).shortDays.find(isForHands)!.said;
  const [person] = alone.people;
  expect(saidOf(work)).toContain(`and the hours of ${person!.name} on that day`);
  expect(saidOf(work)).toMatch(/ are too few\. What would do: [^]+\. Or: [^]+\.$/);
  // Whom it could be said of is nobody who is grown up.
  const people = work.people.map((each) => ({ ...each, isChild: true }));
  expect(saidOf({ ...work, people })).toContain('and the hours on that day');
});

it('orders no birds before somebody is found for those nobody at home can process', () => {
  const [, alone] = TEN_HOUSEHOLDS.find(([name]) => name === 'one alone')!;
  const finishOf = (picture: FarmPicture) => {
    const { jobs } = workPlanOf(workOfFarm(picture, tables, planAnimals(picture, tables)), 1);
    return (id: string) => jobs.find(({ key }) => key.endsWith(id))!;
  };
  const on = finishOf(alone);
  const found = on('processing.arrange-the-rest');
  const order = on('meat.order-chicks-for-a-named-arrival');
  expect(found.latest < order.latest).toBe(true);
  expect(found.pieces.at(-1)!.date <= order.pieces[0]!.date).toBe(true);
  // Once they are ordered it is due for the processing alone: six weeks before it.
  const batches = alone.batches.map((batch) => ({ ...batch, orderedBirds: 43 }));
  const ordered = finishOf({ ...alone, batches })('processing.arrange-the-rest');
  expect(ordered.latest > found.latest).toBe(true);
  expect(ordered.lateDays).toBe(0);
});

// Kansas State University, calving management tips: on a regular schedule from the signs on.
it('asks somebody to stay at home for a calving once a cow is near, not for five weeks', () => {
  const [, picture] = TEN_HOUSEHOLDS.find(([name]) => name === 'a milk cow')!;
  const plan = workPlanOf(workOfFarm(picture, tables, planAnimals(picture, tables)), 1);
  const stays = plan.careGaps
    .filter(({ kind, of }) => kind === 'out-by-day' && of.includes('Cows'))
    .flatMap(({ ways }) => ways.filter((way) => way.includes('stays at home')));
  expect(stays).toHaveLength(1);
  expect(stays[0]).toContain('once a cow is near');
});

it('asks nobody who is away for more', () => {
  const [, picture] = TEN_HOUSEHOLDS.find(([name]) => name === 'one alone')!;
  const dueOn = addDays(picture.today, 4);
  const own = { ...picture.jobs[1]!, hours: 8, dueOn, noUseAfter: dueOn };
  const away = [{ from: picture.today, to: dueOn }];
  const people = picture.people.map((person) => ({ ...person, away }));
  const alone = { ...picture, people, batches: [], jobs: [own] };
  const plan = workPlanOf(workOfFarm(alone, tables, planAnimals(alone, tables)), 1);
  const [job] = plan.jobs.filter(({ key }) => key === `own/${own.id}`);
  expect(job!.waysToFit[0]).toMatch(/^A helper on .* for all 8 h of it\.$/);
});

it('leaves to children what they may do, where they have the time for it', () => {
  const [, picture] = TEN_HOUSEHOLDS.find(([name]) => name === 'four children')!;
  const plan = workPlanOf(workOfFarm(picture, tables, planAnimals(picture, tables)), PLANS);
  const children = picture.people.flatMap(({ id, isChild }) => (isChild ? [id] : []));
  const stones = plan.jobs.find(({ name }) => name === 'Pick up stones')!;
  expect(stones.lateDays).toBe(0);
  expect(stones.pieces.flatMap(({ personIds }) => personIds)).not.toHaveLength(0);
  for (const { personIds } of stones.pieces)
    expect(children).toEqual(expect.arrayContaining([...personIds]));
});
