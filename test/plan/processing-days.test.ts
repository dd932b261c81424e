import { describe, expect, it } from '@jest/globals';
import { addDays, daysBetween, weekdayOf } from '../../shared/calendar/plain-date.js';
import type { Batch } from '../../shared/farm/batch.js';
import type { Person } from '../../shared/farm/farm.js';
import type { LeavingPart } from '../../shared/plan/leaving.js';
import { lifeLineOf } from '../../shared/plan/story/life-line.js';
import { newBatch, newRequest } from '../support/factories.js';
import { plannedBatch } from '../support/pictures.js';

/** At work on weekdays. */
const WORKING: readonly Person[] = [
  { id: 'a', name: 'A', away: [], hoursByWeekday: [2, 2, 2, 2, 2, 9, 9] },
  { id: 'b', name: 'B', away: [], hoursByWeekday: [0, 0, 0, 0, 0, 8, 8] },
];

const plan = (batch: Partial<Batch>, people: readonly Person[] = WORKING) =>
  plannedBatch(newRequest({ batch: { leaveAgeDays: 56, ...batch }, people }));
const codes = (of: ReturnType<typeof plan>) => of.issues.map(({ code }) => code);

describe('the days of processing', () => {
  it('are the weekend before a working Tuesday, and the plan says so', () => {
    const found = plan({ wantedBirds: 60 });
    const { on } = found.leaving!;
    const byAge = on.inputs.find(({ label }) => label === 'By that age')!.value;
    expect([weekdayOf(String(byAge)), weekdayOf(String(on.value))]).toEqual([2, 7]);
    expect(found.leaving!.processingDays.map(({ on }) => weekdayOf(on))).toEqual([7]);
    expect(codes(found)).toContain('processing-weekday');
  });

  it('fall on the weekday that is wished, nearest to the age', () => {
    const found = plan({ wantedBirds: 40, processingWeekday: 6 });
    expect(found.leaving!.age.value).toBe(53); // Saturday 26 June, not Tuesday 29
    expect(found.leaving!.processingDays).toEqual([
      { on: '2027-06-26', birds: expect.any(Number), fromH: 8, untilH: 14.5, who: 'A, B' },
    ]);
    expect(codes(found)).not.toContain('processing-weekday');
  });

  it('come after the target weight is reached, never before', () => {
    const any = plan({ targetLiveKg: 2.4 }, []);
    for (const processingWeekday of [1, 2, 3, 4, 5, 6, 7]) {
      const found = plan({ targetLiveKg: 2.4, processingWeekday }, []);
      const later = found.leaving!.age.value - any.leaving!.age.value;
      expect(later).toBeGreaterThanOrEqual(0);
      expect(later).toBeLessThan(7);
      expect(weekdayOf(String(found.leaving!.on.value))).toBe(processingWeekday);
    }
  });

  // Two adults with evenings and five hours on Saturday.
  const EVENINGS = ['A', 'B'].map((name) => ({
    ...{ id: name, name, away: [], hoursByWeekday: [2, 2, 2, 2, 2, 5, 3] },
  }));

  it('take longer on a weekend rather than set up on a further one for few, and the plan says so', () => {
    const { leaving, issues } = plan({ wantedBirds: 66, leaveAgeDays: 54 }, EVENINGS);
    const { processingDays, birdsToProcess, birdsADay } = leaving!;
    expect(processingDays.map(({ on }) => weekdayOf(on))).toEqual([6, 6]);
    expect(processingDays.reduce((sum, { birds }) => sum + birds, 0)).toBe(birdsToProcess);
    const over = birdsToProcess - 2 * birdsADay!.value;
    expect(over).toBeGreaterThan(0);
    // Killing and cleaning of those takes less than to set up, clean and heat the water once more.
    const oneMore = 4.25;
    expect(over * 0.2125).toBeLessThan(oneMore);
    const said = issues.find(({ code }) => code === 'processing-weekday')!.text;
    expect(said).toMatch(/more for each than the hours you gave/);
    // So many hours more on that Saturday make one day of it, and a quarter of an hour less does not.
    const [, given] = /With 2 helpers, or with (.+) more for each of you, it is one day, Sat/.exec(
      said,
    )!;
    const longer = (h: number) =>
      plan({ wantedBirds: 66, leaveAgeDays: 54 }, withSaturdays(5 + hoursOf(given!) + h));
    const enough = longer(0);
    expect(enough.leaving!.processingDays.map(({ birds }) => birds)).toEqual([birdsToProcess]);
    expect(textsOf(enough)).not.toMatch(PAST_HOURS);
    expect(textsOf(longer(-0.25))).toMatch(PAST_HOURS);
  });

  const PAST_HOURS = /more for each than the hours you gave/;
  const textsOf = (of: ReturnType<typeof plan>) => of.issues.map(({ text }) => text).join(' ');
  const withSaturdays = (h: number): Person[] =>
    EVENINGS.map((each) => ({ ...each, hoursByWeekday: [2, 2, 2, 2, 2, h, 3] }));
  /** Of "1 h 35 min", "2 h" or "50 min". */
  const hoursOf = (said: string): number => {
    const [h, min] = ['h', 'min'].map((unit) => new RegExp(`(\\d+) ${unit}`).exec(said)?.[1] ?? 0);
    return Number(h) + Number(min) / 60;
  };

  it.each([
    [140, [2, 2, 2, 2, 2, 6, 6]],
    [76, [2, 2, 2, 2, 2, 5, 3]],
  ])('are never one day of seventeen or eleven hours: %i birds', (wantedBirds, hoursByWeekday) => {
    const people = EVENINGS.map((each) => ({ ...each, hoursByWeekday }));
    const found = plan({ wantedBirds, leaveAgeDays: 54 }, people);
    expect(found.leaving!.processingDays.length).toBeGreaterThan(1);
    expect(textsOf(found)).toMatch(/With \d helpers it is one day, [^,]+[.;]/);
    expect(textsOf(found)).not.toMatch(/more for each of you/);
  });

  it('are all somewhat longer before birds have nobody to process them, and the plan says so', () => {
    const batch = { wantedBirds: 90, leaveAgeDays: 54 };
    const found = plan(batch, EVENINGS);
    const { processingDays, birdsToProcess, birdsWithoutHands, processingWays } = found.leaving!;
    expect(birdsWithoutHands).toBeUndefined();
    expect(processingDays.map(({ on }) => weekdayOf(on))).toEqual([6, 6, 6]);
    expect(processingDays.reduce((sum, { birds }) => sum + birds, 0)).toBe(birdsToProcess);
    const counts = processingDays.map(({ birds }) => birds);
    expect(Math.max(...counts) - Math.min(...counts)).toBeLessThanOrEqual(1);
    for (const { fromH, untilH } of processingDays) expect(untilH! - fromH!).toBeLessThan(6.5);
    const said = found.issues.find(({ code }) => code === 'processing-all-longer')!.text;
    const [, given] = /That is up to (.+) more for each than the hours/.exec(said)!;
    const longer = (h: number) => plan(batch, withSaturdays(5 + hoursOf(given!) + h));
    expect(textsOf(longer(0))).not.toMatch(PAST_HOURS);
    expect(textsOf(longer(-0.25))).toMatch(PAST_HOURS);
    // What would spare it stands beside it, and does.
    const ids = processingWays.map(({ id }) => id);
    expect(ids).toEqual(['planned', 'helpers', 'grow-on', 'fewer', 'hired']);
    for (const { chosenBy } of processingWays.slice(1)) {
      const { targetLiveKg: _none, ...chosen } = chosenBy!;
      const tried = plan({ ...batch, ...chosen }, EVENINGS);
      expect(codes(tried)).not.toContain('processing-all-longer');
      expect(tried.leaving!.birdsWithoutHands).toBeUndefined();
    }
  });

  it('have ways to choose from only where something is said of them', () => {
    const six = withSaturdays(6);
    const found = [34, 35, 36, 37, 38, 40].map((wantedBirds) =>
      plan({ wantedBirds, processingWeekday: 6 }, six),
    );
    const isSaid = found.map((each) => codes(each).some((code) => code.startsWith('processing-')));
    expect(new Set(isSaid)).toEqual(new Set([true, false]));
    expect(found.map(({ leaving }) => 0 < leaving!.processingWays.length)).toEqual(isSaid);
    // One bird more than the hours hold is no word worth.
    const over = ({ leaving }: (typeof found)[0]) =>
      leaving!.birdsToProcess - leaving!.birdsADay!.value;
    expect(found.filter((each) => over(each) === 1 && isSaid[found.indexOf(each)])).toEqual([]);
    expect(found.map(over)).toContain(1);
  });

  it('are one long Saturday for fifty birds and two people who have six hours each', () => {
    const six = EVENINGS.map((each) => ({ ...each, hoursByWeekday: [3, 3, 3, 3, 3, 6, 4] }));
    const found = plan({ wantedBirds: 50, processingWeekday: 6 }, six);
    const [day, ...others] = found.leaving!.processingDays;
    expect(others).toEqual([]);
    expect(day!.untilH! - day!.fromH!).toBeLessThanOrEqual(10);
    expect(found.issues.find(({ code }) => code === 'processing-long')?.text).toMatch(
      /in one long day. That is up to .+ more for each than the hours you gave/,
    );
    expect(found.leaving!.processingWays.map(({ id }) => id)).toEqual([
      'helpers',
      'planned',
      'hired',
    ]);
    // Nobody who works away from home is asked for a longer evening.
    const out = six.map((each) => ({ ...each, hoursByWeekday: [6, 6, 6, 6, 6, 0, 0] }));
    const byDay = out.map((each) => ({ ...each, byDay: 'out' as const }));
    for (const { birds } of plan({ wantedBirds: 50 }, byDay).leaving!.processingDays)
      expect(birds).toBeLessThan(30);
  });

  it('take a third weekend rather than many more birds than a day has hands for', () => {
    const found = plan({ wantedBirds: 67, leaveAgeDays: 54 }, EVENINGS);
    const { processingDays, birdsADay, birdsToProcess } = found.leaving!;
    expect(processingDays.reduce((sum, { birds }) => sum + birds, 0)).toBe(birdsToProcess);
    expect(processingDays).toHaveLength(3);
    for (const { birds } of processingDays) expect(birds).toBeLessThanOrEqual(birdsADay!.value);
    // Those that are gone are not counted among the living, and drink nothing.
    const [alive, water] = ['alive', 'water-day'].map(
      (id) => found.daily.find((series) => series.id === id)!.values,
    ) as [number[], number[]];
    const gone = daysBetween(found.arrivalDate, processingDays[0]!.on);
    const left = alive[gone]! / alive[gone - 1]!;
    expect(left).toBeLessThan(0.8);
    // A day more of age changes thirst by far less than a third of the birds.
    expect(Math.abs(water[gone]! / water[gone - 1]! / left - 1)).toBeLessThan(0.15);
    expect(water.at(-1)! < 0.1 * water[gone - 1]!).toBe(alive.at(-1)! < 1);
    expect(alive.at(-1)).toBeLessThan(1);
  });

  it('are split when one is too short, with every bird on one of them', () => {
    const found = plan({ wantedBirds: 110, processingWeekday: 7 });
    const { processingDays, birdsToProcess } = found.leaving!;
    expect(processingDays.map(({ on }) => weekdayOf(on))).toEqual([6, 7]);
    expect(processingDays.reduce((sum, { birds }) => sum + birds, 0)).toBe(birdsToProcess);
    expect(codes(found)).toContain('processing-split');
    const kill = found.tasks.tasks.filter(({ id }) => id.startsWith('processing.kill'));
    expect(kill.map(({ start, units }) => [start, Math.round(units * 100)])).toEqual(
      processingDays.map(({ on, birds }) => [on, birds]),
    );
    // What is done once is hung once: before the first of them, or after the last.
    const once = (id: string) => found.tasks.tasks.filter((each) => each.templateId === id);
    for (const id of [
      'processing.fix-helpers-and-date',
      'processing.check-freezer-room-and-buy-bags',
    ]) {
      expect(once(id)).toHaveLength(1);
      expect(once(id)[0]!.end < processingDays[0]!.on).toBe(true);
    }
    const [closed] = once('processing.close-batch-account');
    expect(processingDays.at(-1)!.on < closed!.start).toBe(true);
  });

  const KILLING = [
    'processing.catch-and-crate-at-dawn',
    'processing.kill-scald-pluck-eviscerate',
    'processing.chill-below-40-f-log-temperature',
  ];

  it('leave nothing to kill of birds told to be processed; some sold that day settle nothing', () => {
    const before = plan({ orderedBirds: 50 }, []);
    const date = String(before.leaving!.on.value);
    const settled = (change: 'gone' | 'processed', birds: number): boolean[] =>
      plannedBatch(
        newRequest({
          batch: { leaveAgeDays: 56, orderedBirds: 50 },
          today: addDays(date, 1),
          headChanges: [
            { batchId: 'new', date: before.arrivalDate, change: 'arrived', birds: 50 },
            { batchId: 'new', date, change, birds },
          ],
        }),
      )
        .tasks.tasks.filter(({ templateId }) => KILLING.includes(templateId))
        .map((task) => task.isSettled === true);
    expect(settled('gone', 2)).toEqual([false, false, false]);
    expect(settled('processed', 48)).toEqual([true, true, true]);
  });

  it('are one with helpers enough', () => {
    const found = plan({ wantedBirds: 110, processingWeekday: 7, processingHelpers: 3 });
    expect(found.leaving!.processingDays).toHaveLength(1);
    expect(codes(found)).not.toContain('processing-split');
  });

  // Keepers with jobs process on Saturdays, on two of them where one is too short.
  it('are even ones on two weekends before three of one week', () => {
    const busy = WORKING.map((person) => ({
      ...person,
      hoursByWeekday: [2.5, 2.5, 2.5, 2.5, 2.5, 6.5, 4],
    }));
    const found = plan({ wantedBirds: 72, processingWeekday: 7 }, busy);
    const { processingDays, birdsToProcess, liveEach, liveAll } = found.leaving!;
    expect(processingDays.map(({ on }) => weekdayOf(on))).toEqual([6, 6]);
    const [first, second] = processingDays.map(({ birds }) => birds);
    expect(Math.abs(first! - second!)).toBeLessThanOrEqual(1);
    expect(first! + second!).toBe(birdsToProcess);
    // Those of the first are lighter, and eat no more from then on.
    const later = plan({ wantedBirds: 72, processingWeekday: 7, processing: 'hired' });
    expect(liveEach.value).toBeLessThan(later.leaving!.liveEach.value);
    expect(liveAll.value).toBeCloseTo(liveEach.value * birdsToProcess, 2);
    expect(found.feed.total.value).toBeLessThan(later.feed.total.value);
    // Each other way, taken up, is one day for all of them.
    const { processingWays } = found.leaving!;
    expect(processingWays.map(({ id }) => id)).toEqual(['helpers', 'planned', 'hired']);
    for (const { id, chosenBy } of processingWays) {
      if (id === 'planned') continue;
      const { targetLiveKg: _none, ...more } = chosenBy!;
      const chosen = plan({ wantedBirds: 72, processingWeekday: 7, ...more }, busy);
      expect(chosen.leaving!.processingDays).toHaveLength(1);
      expect(codes(chosen)).not.toContain('processing-split');
    }
    expect(processingWays[2]!.chosenBy).toMatchObject({ processingWeekday: 5 });
  });

  it('never hold more than there are hands for; what is over is said, and work to arrange', () => {
    const found = plan({ wantedBirds: 500, processingWeekday: 7 });
    expect(codes(found)).toContain('processing-too-much');
    const { processingDays, birdsToProcess, birdsWithoutHands, birdsADay } = found.leaving!;
    const done = processingDays.reduce((sum, { birds }) => sum + birds, 0);
    expect(done + birdsWithoutHands!).toBe(birdsToProcess);
    // On long days as well: nobody is at it into the evening.
    for (const { untilH } of processingDays) expect(untilH).toBeLessThan(20);
    expect(Math.max(...processingDays.map(({ birds }) => birds))).toBeGreaterThan(birdsADay!.value);
    // Each day has its own line of the batch's life, with how many birds it is for.
    const line = lifeLineOf(found, newBatch({})).filter(({ label }) => /^Processing/.test(label));
    expect(line.map(({ label }) => label)).toEqual([
      ...processingDays.map(({ birds }) => `Processing, ${birds} birds`),
      `Processing, ${birdsWithoutHands} that nobody has hands for`,
    ]);
    const rest = found.tasks.tasks.find(
      (each) => each.templateId === 'processing.arrange-the-rest',
    );
    expect(rest!.name).toContain(`${birdsWithoutHands} birds`);
    expect(rest!.end < processingDays[0]!.on).toBe(true);
  });

  it('buy ice where somebody processes, and none where nobody has hands', () => {
    const alone = [{ id: 'a', name: 'A', away: [], hoursByWeekday: [1, 1, 1, 1, 1, 1, 1] }];
    const labels = (people: readonly Person[]) =>
      plan({ wantedBirds: 40 }, people).bill.lines.map(({ label }) => label);
    expect(labels(WORKING)).toContain('Ice');
    expect(plan({ wantedBirds: 40 }, alone).leaving!.processingDays).toEqual([]);
    expect(labels(alone)).not.toContain('Ice');
  });

  // Two adults with evenings, five hours on Saturday and three on Sunday; one alone; one with hens.
  const evenings = { away: [], hoursByWeekday: [2, 2, 2, 2, 2, 5, 3] };
  const TOO_MUCH: readonly (readonly [string, Partial<Batch>, readonly Person[]])[] = [
    [
      'two with evenings',
      { wantedBirds: 102, leaveAgeDays: 56 },
      [
        { id: 'a', name: 'A', ...evenings },
        { id: 'b', name: 'B', ...evenings },
      ],
    ],
    ['one alone', { wantedBirds: 75, processingWeekday: 6 }, [{ id: 'a', name: 'A', ...evenings }]],
    ['a target weight', { wantedBirds: 90, targetLiveKg: 2.4 }, [WORKING[0]!]],
    ['slow birds', { wantedBirds: 150, strainId: 'slow-meat', leaveAgeDays: 84 }, WORKING],
  ];

  it.each(TOO_MUCH)('hold no fewer for a bird more than they can hold: %s', (_, batch, people) => {
    const held = (wantedBirds: number): number => {
      const { birdsToProcess, birdsWithoutHands = 0 } = plan(
        { ...batch, wantedBirds },
        people,
      ).leaving!;
      return birdsToProcess - birdsWithoutHands;
    };
    const flocks = Array.from({ length: 40 }, (_each, k) => batch.wantedBirds! + 5 * k);
    const all = flocks.map(held);
    // The chores of more birds take some of the hours.
    const fell = flocks.filter((_birds, k) => 0 < k && all[k]! < 0.95 * all[k - 1]!);
    expect(fell.map((birds) => [birds, all[flocks.indexOf(birds)]])).toEqual([]);
  });

  it.each(TOO_MUCH)('offer only what makes all of them fit: %s', (_, batch, people) => {
    const more = { ...batch, wantedBirds: 2 * batch.wantedBirds! };
    const many = { ...batch, wantedBirds: 5 * batch.wantedBirds! };
    const tooMuch = [batch, more, many].filter((asked) =>
      codes(plan(asked, people)).includes('processing-too-much'),
    );
    expect(tooMuch).toContain(many);
    for (const asked of tooMuch) {
      const found = plan(asked, people);
      const { processingWays } = found.leaving!;
      expect(processingWays.map(({ id }) => id)).toContain('hired');
      expect(processingWays.length).toBeGreaterThan(1);
      for (const { id, chosenBy } of processingWays) {
        const { targetLiveKg: _given, ...plain } = asked;
        const { targetLiveKg: _none, ...chosen } = chosenBy!;
        const tried = plan({ ...('targetLiveKg' in chosenBy! ? plain : asked), ...chosen }, people);
        expect([id, codes(tried).includes('processing-too-much')]).toEqual([id, false]);
        expect(tried.leaving!.birdsWithoutHands).toBeUndefined();
      }
    }
  });

  it('say what growing the last ones on costs', () => {
    const [, batch, people] = TOO_MUCH[0]!;
    const ways = plan(batch, people).leaving!.processingWays;
    expect(ways.find(({ id }) => id === 'grow-on')?.words).toMatch(/more feed.*live on average/);
  });

  it('are none where nobody has hours, with the work before them as ever', () => {
    const found = plan({ wantedBirds: 40 }, [
      { id: 'a', name: 'A', away: [], hoursByWeekday: [1, 1, 1, 1, 1, 1, 1] },
    ]);
    const { processingDays, birdsWithoutHands, birdsToProcess, liveEach } = found.leaving!;
    expect(processingDays).toEqual([]);
    expect(birdsWithoutHands).toBe(birdsToProcess);
    expect(liveEach.value).toBeGreaterThan(1);
    const ids = found.tasks.tasks.map(({ templateId }) => templateId);
    expect(ids).toContain('processing.close-batch-account');
    expect(ids).not.toContain('processing.kill-scald-pluck-eviscerate');
  });

  it('are one for a hired processor, whoever is at home', () => {
    const found = plan({ wantedBirds: 300, processing: 'hired' });
    expect(found.leaving!.processingDays).toHaveLength(1);
    expect(found.leaving!.birdsADay).toBeUndefined();
    // Who processes chills with ice of their own.
    expect(found.leaving!.iceDays).toEqual([]);
    expect(plan({ wantedBirds: 30 }).leaving!.iceDays).not.toEqual([]);
    expect(codes(found).filter((code) => code.startsWith('processing-'))).toEqual([]);
  });

  it('say that 300 birds are more than a day where nobody is named', () => {
    const found = plan({ wantedBirds: 300 }, []);
    expect(found.leaving!.processingDays).toHaveLength(1);
    expect(codes(found)).toContain('processing-hours');
    expect(codes(plan({ wantedBirds: 30 }, []))).not.toContain('processing-hours');
  });

  it('leave out whoever is away', () => {
    const away = [{ from: '2027-06-25', to: '2027-06-28' }];
    const found = plan(
      { wantedBirds: 40, processingWeekday: 6 },
      WORKING.map((person) => ({ ...person, away })),
    );
    expect(codes(found)).toContain('processing-weekday');
    expect(found.leaving!.processingDays.every(({ on }) => on < '2027-06-25')).toBe(true);
  });
});

describe('hands, stations and chores', () => {
  const SATURDAY = { wantedBirds: 40, processingWeekday: 6 };
  const most = (batch: Partial<Batch>) => plan({ ...SATURDAY, ...batch }).leaving!.birdsADay!.value;

  it('are as slow as the first time and plucking by hand make them', () => {
    expect(most({ processingIsFirst: true })).toBeLessThan(most({}));
    expect(most({ plucking: 'hand' })).toBeLessThan(most({ processingIsFirst: true }));
    const both = plan({ ...SATURDAY, plucking: 'hand', processingIsFirst: true });
    const names = both.tasks.tasks.map(({ templateId }) => templateId);
    expect(names).toEqual(
      expect.arrayContaining(['processing.pluck-by-hand', 'processing.first-time']),
    );
  });

  it('name the station that is slower than the hands', () => {
    const many = { ...SATURDAY, processingHelpers: 6 };
    expect(plan(many).leaving!.slowest).toBeUndefined();
    const oneCone = plan({ ...many, killingCones: 1 });
    expect(oneCone.leaving!.slowest).toContain('cone');
    expect(oneCone.leaving!.birdsAnHour!.value).toBeLessThanOrEqual(30); // 2 minutes at the least
    expect(codes(oneCone)).toContain('processing-station');
    expect(plan({ ...many, killingCones: 8 }).leaving!.slowest).toBeUndefined();
    // More hands than a cone can feed make no day longer.
    expect(most({ killingCones: 1, processingHelpers: 12 })).toBeLessThan(
      most({ processingHelpers: 12 }),
    );
  });

  it('are helped on the weekday on which helpers come', () => {
    const helped = { wantedBirds: 90, processingWeekday: 7, processingHelpers: 4 };
    const { processingDays } = plan({ ...helped, helpersWeekday: 6 }).leaving!;
    expect(processingDays.map(({ on }) => weekdayOf(on))).toEqual([6]);
    expect(processingDays[0]!.who).toContain('4 helpers');
  });

  it('leave to helpers their share of the work', () => {
    const kill = (processingHelpers: number) =>
      plan({ ...SATURDAY, processingHelpers }).tasks.tasks.find(
        ({ templateId }) => templateId === 'processing.kill-scald-pluck-eviscerate',
      )!;
    expect(kill(0).helped).toBeUndefined();
    const { hours, helped } = kill(2);
    expect(helped!.helpers).toBe(2);
    expect(helped!.hours).toBeGreaterThan(0.3 * hours);
    expect(helped!.hours).toBeLessThan(0.6 * hours);
  });

  it('leave to helpers no more than the hours for which they stay', () => {
    const evenings = { away: [], hoursByWeekday: [1, 1, 1, 1, 1, 5, 5] };
    const people = ['a', 'b'].map((id) => ({ ...evenings, id, name: id }));
    for (const processingHelpers of [1, 2, 3, 4, 6]) {
      const { tasks } = plan({ wantedBirds: 40, processingHelpers }, people).tasks;
      const { hours, helped } = tasks.find(
        ({ templateId }) => templateId === 'processing.kill-scald-pluck-eviscerate',
      )!;
      // Each is there as long as the two of the household, less what these do for other animals.
      const even = processingHelpers / (processingHelpers + 2);
      expect(helped!.hours / hours).toBeGreaterThanOrEqual(even - 1e-6);
      expect(helped!.hours / hours).toBeLessThan(even + 0.1);
    }
  });

  it('do the chores of that day first', () => {
    const alone = newRequest({ batch: { leaveAgeDays: 56, ...SATURDAY }, people: WORKING });
    const hens = { ...newBatch(), id: 'hens', purpose: 'layers', strainId: 'brown-layer' } as const;
    const both = plannedBatch({
      ...alone,
      batches: [{ ...hens, sex: 'pullets', wantedBirds: 200, arrivalDate: '2026-10-01' }],
    });
    const before = plannedBatch(alone).leaving!.birdsADay!.value;
    // Half an hour and half an hour for each hundred hens, by the template of daily care.
    expect(before - both.leaving!.birdsADay!.value).toBeGreaterThanOrEqual(4);
    expect(before - both.leaving!.birdsADay!.value).toBeLessThanOrEqual(10);
  });

  it('begin with gathering the equipment the week before', () => {
    const { tasks, leaving } = plan(SATURDAY);
    const gather = tasks.tasks.find(
      ({ templateId }) => templateId === 'processing.gather-equipment',
    );
    const ice = tasks.tasks.find(({ templateId }) => templateId === 'processing.make-or-buy-ice');
    const [day] = leaving!.processingDays;
    expect(daysBetween(gather!.start, day!.on)).toBeGreaterThanOrEqual(7);
    expect(daysBetween(ice!.end, day!.on)).toBe(1);
  });
});

describe('ice and chilling', () => {
  const leavingOn = (warmerK: number) => {
    const request = newRequest();
    const { climate } = request;
    const maxC = climate.meanMaxC.map((c) => c + warmerK);
    return plannedBatch({ ...request, climate: { ...climate, meanMaxC: maxC } }).leaving!;
  };

  it('takes more ice on a warmer day, from half of the carcass on', () => {
    const share = ({ ice, dressedAll }: LeavingPart): number => ice.value / dressedAll.value;
    const [cold, usual, hot] = [leavingOn(-20), leavingOn(0), leavingOn(20)].map(share);
    expect(cold).toBeCloseTo(0.5, 3);
    expect(hot).toBeLessThan(1);
    expect(usual).toBeGreaterThan(cold!);
    expect(usual).toBeLessThan(hot!);
  });

  it('tells the limit of the law apart from the time it takes', () => {
    const { chillLimit, chillTime } = leavingOn(0);
    expect(chillLimit.value).toBe(6);
    expect(chillTime.value).toBeLessThan(2);
    expect(chillTime.outside).toBeDefined(); // measured on lighter birds
  });
});
