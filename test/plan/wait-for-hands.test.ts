import { describe, expect, it } from '@jest/globals';
import { addDays, daysBetween, weekdayOf } from '../../shared/calendar/plain-date.js';
import type { Batch } from '../../shared/farm/batch.js';
import type { Person } from '../../shared/farm/farm.js';
import type { PlanRequest } from '../../shared/plan/request.js';
import { newBatch, newBrooder, newRequest } from '../support/factories.js';
import { plannedBatch } from '../support/pictures.js';

const [SATURDAY, SUNDAY] = [6, 7];

/** Two who have so many hours on a weekday, and none on those left out. */
const handsOn = (hours: Readonly<Record<number, number>>): Person[] =>
  ['Ann', 'Ben'].map((name) => ({
    ...{ id: name, name, away: [] },
    hoursByWeekday: Array.from({ length: 7 }, (_, k) => hours[k + 1] ?? 0),
  }));

const AT_HOME: readonly Person[] = ['Ann', 'Ben'].map((name) => ({
  ...{ id: name, name, away: [], byDay: 'at-home' },
}));

const plan = (
  batch: Partial<Batch>,
  people: readonly Person[],
  more: Partial<Pick<PlanRequest, 'facilities'>> = {},
) => plannedBatch({ ...newRequest({ batch: newBatch(batch), people }), ...more });

const FREEZER = { kind: 'freezer', id: 'f', name: 'Freezer', liters: 400, usedL: 0 } as const;

const weight = (targetLiveKg: number): Partial<Batch> => ({ wantedBirds: 30, targetLiveKg });
const WEIGHTS = [2, 2.1, 2.2, 2.3, 2.4, 2.5, 2.6, 2.7, 2.8];

const onOf = ({ leaving }: ReturnType<typeof plan>): string => String(leaving!.on.value);
const waitedSaid = ({ issues }: ReturnType<typeof plan>): string | undefined =>
  issues.find(({ code }) => code === 'processing-waits')?.text;

/** The day on which they weigh it, whoever is at home. */
const reachedOn = (batch: Partial<Batch>): string => onOf(plan(batch, []));

describe('birds that go by their weight', () => {
  it.each(WEIGHTS)('wait for the first Saturday with hands once they weigh %d kg', (kg) => {
    const found = plan(weight(kg), handsOn({ [SATURDAY]: 6 }));
    const reached = reachedOn(weight(kg));
    const on = onOf(found);
    const days = daysBetween(reached, on);
    expect([weekdayOf(on), 0 <= days, days < 7]).toEqual([SATURDAY, true, true]);
    expect(found.leaving!.liveEach.value).toBeGreaterThanOrEqual(kg);
    expect(found.lastDate).toBe(on);
    expect(found.leaving!.reached?.value).toBe(days === 0 ? undefined : reached);
    expect(waitedSaid(found) === undefined).toBe(days === 0);
    expect(found.issues.map(({ code }) => code)).not.toContain('processing-weekday');
  });

  it('say why they wait, and what they weigh then', () => {
    expect(waitedSaid(plan(weight(2.6), handsOn({ [SATURDAY]: 6 })))).toMatch(
      /^2\.60? kg live is reached on \w{3} .+; Sat .+ is the first day with hands for processing, when they weigh about .+ kg\.$/,
    );
  });

  it('wait for both days of a weekend where one does not hold them', () => {
    const batch = { ...weight(2.4), wantedBirds: 60 };
    const { leaving } = plan(batch, handsOn({ [SATURDAY]: 6, [SUNDAY]: 6 }));
    const days = leaving!.processingDays.map(({ on }) => on);
    expect(days.map(weekdayOf)).toEqual([SATURDAY, SUNDAY]);
    expect(days[0]! >= reachedOn(batch)).toBe(true);
  });

  it('are split around the day where the Saturdays after it are too few', () => {
    const batch = { ...weight(2.4), wantedBirds: 75 };
    const { leaving } = plan(batch, handsOn({ [SATURDAY]: 6 }));
    const days = leaving!.processingDays.map(({ on }) => on);
    const reached = reachedOn(batch);
    expect(days.length).toBeGreaterThan(1);
    expect([days[0]! < reached, reached <= days.at(-1)!]).toEqual([true, true]);
  });

  it.each<[string, Partial<Batch>, readonly Person[]]>([
    ['a slot is booked', { processing: 'hired', slotDate: '2027-06-16' }, handsOn({ 6: 6 })],
    ['a processor is hired', { processing: 'hired' }, handsOn({ 6: 6 })],
    ['the household wishes a weekday', { processingWeekday: 3 }, handsOn({ 6: 6 })],
    ['nobody is named', {}, []],
    ['nobody has hours', {}, handsOn({})],
    ['somebody is at home each day', {}, AT_HOME],
  ])('do not wait where %s', (_, more, people) => {
    const found = plan({ ...weight(2.6), ...more }, people);
    expect(waitedSaid(found)).toBeUndefined();
    expect(found.leaving!.reached).toBeUndefined();
    expect(found.lastDate).toBe(onOf(plan({ ...weight(2.6), ...more }, [])));
  });

  it('do not wait past the growth table', () => {
    const people = handsOn({ [SATURDAY]: 6 });
    const isOutside = (kg: number, who: readonly Person[]): boolean =>
      plan(weight(kg), who).issues.some(({ code }) => code === 'outside-table');
    const heavy = Array.from({ length: 20 }, (_, k) => 3.5 + k / 10);
    const early = heavy.filter((kg) => onOf(plan(weight(kg), people)) < reachedOn(weight(kg)));
    expect(early.length).toBeGreaterThan(0);
    for (const kg of early) expect([kg, isOutside(kg, people)]).toEqual([kg, isOutside(kg, [])]);
  });

  it('do not wait where the freezer would hold them on the day, and no longer then', () => {
    const people = handsOn({ [SATURDAY]: 6 });
    const inFreezer = (liters: number) =>
      plan({ ...weight(2.6), freezerId: 'f' }, people, {
        facilities: [newBrooder(), { ...FREEZER, liters }],
      });
    const roomy = inFreezer(1000);
    const needL = roomy.leaving!.freezerNeed.value;
    expect(onOf(inFreezer(1.01 * needL))).toBe(onOf(roomy));
    const tight = inFreezer(0.99 * needL);
    expect(onOf(tight)).toBe(addDays(onOf(roomy), -7));
    expect(tight.issues.map(({ code }) => code)).not.toContain('freezer-full');
    expect(waitedSaid(tight)).toBeUndefined();
    // Where they fit on no day they wait as ever, and the freezer is said.
    const small = inFreezer(0.3 * needL);
    expect(onOf(small)).toBe(onOf(roomy));
    expect(small.issues.map(({ code }) => code)).toContain('freezer-full');
  });
});
