import { describe, expect, it } from '@jest/globals';
import { addDays, daysBetween } from '../../../shared/calendar/plain-date.js';
import { herdsNow, rowsAhead, sayHerdNow } from '../../../shared/plan/pasture/herd-now.js';
import { moveHeads } from '../../../shared/plan/pasture/move-quantities.js';
import { nothingToGrazeOf } from '../../../shared/plan/pasture/nothing-to-graze.js';
import type { PasturePlan } from '../../../shared/plan/pasture/pasture-plan.js';
import {
  newGroup,
  newHerd,
  newPaddocks,
  newPastureRequest,
} from '../../support/pasture-factories.js';
import { plannedPasture } from '../../support/pictures.js';

const plan: PasturePlan = plannedPasture(
  newPastureRequest({
    herds: [newHerd({ name: 'Cows', groups: [newGroup({ head: 3 })] })],
    paddocks: newPaddocks(6, { areaM2: 6000 }),
  }),
);
/** The same plan, read on another day. */
const on = (today: string): PasturePlan => ({ ...plan, today });
const said = (read: PasturePlan): string =>
  sayHerdNow(read, herdsNow(read)[0]!, (date) => `<${date}>`);
const nameOf = (id: string): string => plan.paddocks.find((each) => each.id === id)!.name;

describe('where a herd is', () => {
  it('is its paddock on every day of every stay, until the last of them, and the next after it', () => {
    const stays = plan.moves.slice(0, 4);
    expect(stays).toHaveLength(4);
    for (const { from, to, paddockId } of stays) {
      for (const day of [from, to]) {
        expect(said(on(day))).toContain(`Cows: in ${nameOf(paddockId)} until <${to}>`);
      }
    }
    const [first, second] = stays;
    expect(herdsNow(on(first!.to))[0]!.next!.from > first!.to).toBe(true);
    expect(second!.from > first!.to).toBe(true);
  });

  it('is off grass before the season, with the day and the paddock it goes out to', () => {
    const first = plan.moves[0]!;
    expect(said(on('2000-01-01'))).toBe(
      `Cows: not on grass yet; out on <${first.from}>, ${nameOf(first.paddockId)} first.`,
    );
    expect(said(on('2099-01-01'))).toBe('Cows: no grazing ahead in this plan.');
  });
});

it('lists ahead what is not over, and neither closing nor birds', () => {
  const day = plan.moves[2]!.to;
  const rows = rowsAhead(on(day));
  expect(rows.length).toBeGreaterThan(3);
  expect(rows.every(({ to }) => day <= to)).toBe(true);
  expect(rows.filter(({ kind }) => kind === 'shut' || kind === 'birds')).toEqual([]);
});

it('keeps its turn-out, and the work of it, on the day on which the move out is told', () => {
  const out = plan.moves[0]!;
  const told = (today: string): PasturePlan =>
    plannedPasture(
      newPastureRequest({
        today,
        herds: [
          newHerd({
            ...{ name: 'Cows', groups: [newGroup({ head: 3 })] },
            ...{ inPaddockId: out.paddockId, inSince: out.from },
          }),
        ],
        grazings: [{ herdId: 'h1', paddockId: out.paddockId, from: out.from }],
        paddocks: newPaddocks(6, { areaM2: 6000 }),
      }),
    );
  const days = [out.from, addDays(out.from, 1)].map(told);
  for (const { keyDates, tasks } of days) {
    expect(keyDates.herds[0]!.turnOut!.value).toBe(out.from);
    expect(tasks.filter(({ id }) => id.startsWith('h1.turn-out.')).length).toBeGreaterThan(10);
    const settled = tasks.filter(({ isSettled }) => isSettled).map(({ id }) => id);
    expect(settled).toEqual(['h1.turn-out.feed-hay-first-then-turn-out-in']);
  }
});

describe('a herd that was told into grass before it is tall enough', () => {
  const wentIn = '2027-04-04';
  const at = (today: string, isTold = true, inSince = wentIn): PasturePlan =>
    plannedPasture(
      newPastureRequest({
        today,
        herds: [
          newHerd({
            ...{ name: 'Cows', groups: [newGroup({ head: 3 })] },
            ...(isTold ? { inPaddockId: 'p1', inSince } : {}),
          }),
        ],
        ...(isTold ? { grazings: [{ herdId: 'h1', paddockId: 'p1', from: inSince }] } : {}),
        paddocks: newPaddocks(6, { areaM2: 2700 }),
      }),
    );

  it.each([wentIn, '2027-04-10', '2027-04-20'])('is told one thing of it on %s', (today) => {
    const read = at(today);
    const first = read.moves[0]!;
    expect(said(read)).toBe(
      `Cows: in Paddock 1, where there is nothing to graze now. Take them off it, or keep them on hay in one part of it, until <${addDays(first.from, -1)}>, then ${nameOf(first.paddockId)}.`,
    );
    // Its rest begins when they are out of it, and is said with that condition.
    const back = read.moves.find(({ paddockId }) => paddockId === 'p1')!;
    expect(back.restDays).toBe(daysBetween(today, back.from));
    expect(moveHeads(read, back).rest!.label).toBe('Rest before, if they leave it today');
    const next = read.moves.find((move) => move.paddockId === 'p1' && back.from < move.from)!;
    expect(moveHeads(read, next).rest!.label).toBe('Rest before');
  });

  it.each([
    ['2026-12-20', 'if they are out of it as the season begins'],
    ['2027-02-10', 'if they are out of it as the season begins'],
    ['2027-03-10', 'if they leave it today'],
  ])('is not sent off the paddock it winters on, on hay, on %s', (today, condition) => {
    const read = at(today, true, '2026-11-10');
    expect(read.from).toBe(today < '2027-03-01' ? '2027-03-01' : today);
    expect(nothingToGrazeOf(read, 'h1')).toBeUndefined();
    expect(said(read)).not.toContain('nothing to graze');
    const back = read.moves.find(({ paddockId }) => paddockId === 'p1')!;
    expect(moveHeads(read, back).rest!.label).toBe(`Rest before, ${condition}`);
  });

  it('is asked out of the paddock it wintered on when that is soon to be grazed', () => {
    const early = at('2027-03-10', true, '2026-11-10');
    const back = early.moves.find(({ paddockId }) => paddockId === 'p1')!;
    const soon = at(addDays(back.from, -back.restAskedDays), true, '2026-11-10');
    expect(nothingToGrazeOf(soon, 'h1')).toBeDefined();
  });

  it('has its turn-out, and the hay until then, still to come; what it bit is gone', () => {
    const [told, kept] = [at('2027-04-20'), at('2027-04-20', false)];
    expect(told.moves[0]!.start).toBe('turn-out');
    expect(told.keyDates.herds[0]!.turnOut!.value).toBe(kept.keyDates.herds[0]!.turnOut!.value);
    expect(told.paddocks[0]!.mass.value).toBeLessThan(kept.paddocks[0]!.mass.value);
    expect(told.paddocks[1]!.mass.value).toBe(kept.paddocks[1]!.mass.value);
  });
});
