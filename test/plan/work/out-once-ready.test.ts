import { describe, expect, it } from '@jest/globals';
import { addDays, daysBetween } from '../../../shared/calendar/plain-date.js';
import type { Progress } from '../../../shared/farm/job.js';
import type { FarmPicture } from '../../../shared/farm/picture.js';
import { planAnimals } from '../../../shared/plan/farm/animal-plans.js';
import { workOfFarm } from '../../../shared/plan/farm/work-of-farm.js';
import { todayOf } from '../../../shared/plan/today/today.js';
import { workPlanOf } from '../../../shared/plan/work/work-plan.js';
import { newRequest, tables } from '../../support/factories.js';
import { newHerd, newPaddocks } from '../../support/pasture-factories.js';
import { newPicture } from '../../support/pictures.js';

const TRIES = 50;
const READYING = [
  'walk-and-repair-perimeter-fence',
  'clear-fence-line-and-test-charger-and',
  'turn-on-and-flush-pasture-water',
  'lay-out-first-paddocks',
].map((id) => `herd/h1/h1.turn-out.${id}`);

/** Cows of two people with mornings and evenings, on a day. */
function dayOf(today: string, more: Partial<FarmPicture> = {}) {
  const people = ['Ann', 'Ben'].map((name) => ({
    ...{ id: name, name, away: [] },
    hoursByWeekday: [2, 2, 2, 2, 2, 5, 3],
  }));
  const { farm, climate } = newRequest();
  const picture = newPicture({
    ...{ farm, climate, today, people, paddocks: newPaddocks(6), herds: [newHerd()] },
    ...more,
  });
  const animals = planAnimals(picture, tables);
  const plan = workPlanOf(workOfFarm(picture, tables, animals), TRIES);
  const turnOut = String(animals.pasture!.keyDates.herds[0]!.turnOut?.value);
  const day = todayOf(picture, tables, animals, plan);
  return { plan, day, turnOut, herd: day.animals.find(({ kind }) => kind === 'herd')! };
}

const usual = dayOf('2027-04-01').turnOut;
const before = dayOf(addDays(usual, -1));
const kept = [before.plan.keep];
const done = (keys: readonly string[], doneOn: string): Progress[] =>
  keys.map((key) => ({ key, doneOn }));

describe('a herd that the grass has go out today, with fence and water undone', () => {
  const { plan, day, turnOut, herd } = dayOf(usual, { keptPlans: kept });
  const [move] = plan.eventsToMove;

  it('goes out on the day after it is done, within a week', () => {
    expect(turnOut).toBe(usual);
    expect(move).toMatchObject({ kind: 'turn-out', from: usual, isPutOff: true });
    const days = daysBetween(usual, move!.to!);
    expect(days).toBeGreaterThan(0);
    expect(days).toBeLessThanOrEqual(7);
    for (const key of READYING) {
      const { pieces } = plan.jobs.find((job) => job.key === key)!;
      expect(pieces.length).toBeGreaterThan(0);
      for (const { date } of pieces) expect(date <= move!.to!).toBe(true);
    }
  });

  it('has one answer: the line of the herd, the work and what is asked name that day', () => {
    expect(herd.next).toMatchObject({ on: move!.to });
    expect(herd).not.toHaveProperty('on');
    const out = plan.jobs.find(({ key }) => key.endsWith('feed-hay-first-then-turn-out-in'))!;
    expect(out.pieces[0]!.date).toBe(move!.to);
    expect(day.chores.filter(({ goes }) => goes)).toEqual([]);
    expect(day.chores.some(({ name }) => /hay/.test(name))).toBe(true);
    const asked = day.attention.filter(({ words }) => /out on|not all is ready/.test(words));
    expect(asked.map(({ words }) => words)).toEqual([
      expect.stringMatching(/^out on .+, once all is ready; done already\?$/),
    ]);
    expect(asked[0]!.later).toBeUndefined();
    // Are they out already, that is told from there.
    expect(asked[0]!.out).toMatchObject({ herdId: 'h1', paddockId: expect.any(String) });
  });

  it('goes out today once it is told done', () => {
    const all = plan.eventsToMove[0]!.keys;
    const then = dayOf(usual, { progress: done(all, addDays(usual, -1)) });
    expect(then.plan.eventsToMove.filter(({ isPutOff }) => isPutOff)).toEqual([]);
    expect(then.herd).toMatchObject({ on: { since: usual, isToCome: true } });
  });
});

describe('a herd that was told to be out', () => {
  const out = {
    herds: [newHerd({ inPaddockId: 'p1', inSince: usual })],
    grazings: [{ herdId: 'h1', paddockId: 'p1', from: usual }],
    keptPlans: kept,
  };

  it('is not to go out later any more, and what made ready for it has no day', () => {
    const { plan, day } = dayOf(usual, out);
    expect(plan.eventsToMove).toEqual([]);
    for (const key of READYING) {
      expect(plan.jobs.find((job) => job.key === key)?.pieces).toEqual([]);
      // It is asked after: nothing goes away untold.
      expect(day.jobs.find((job) => job.key === key)?.overSince).toBeDefined();
    }
  });

  it('is asked after two weeks later, until it is told', () => {
    const first = dayOf(usual, out).plan.keep;
    const today = addDays(usual, 15);
    const asked = dayOf(today, { ...out, keptPlans: [first] }).day.jobs;
    const over = asked.filter(({ overSince }) => overSince !== undefined).map(({ key }) => key);
    expect(over).toEqual(expect.arrayContaining(READYING));
    const told = dayOf(today, { ...out, keptPlans: [first], progress: done(READYING, usual) });
    expect(told.day.jobs.filter(({ key }) => READYING.includes(key))).toEqual([]);
  });
});
