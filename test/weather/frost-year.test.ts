import { describe, expect, it } from '@jest/globals';
import {
  frostYear,
  movedBy,
  ownDayApart,
  type FrostTurn,
} from '../../shared/weather/frost-year.js';

const DAYS = 366;
/** Nights that know nothing of each other. */
const ASKED = { atOrBelowC: 0, fewShare: 0.1, likeness: 0 };
/** Standard deviations below the average that one night of ten is (any normal table). */
const TENTH = 1.2816;

/** Mild all year, warmest on day 200, but for single nights with a spread of 1 °C. */
function year(single: Readonly<Record<number, number>>) {
  const lowC = new Float64Array(DAYS).fill(15);
  lowC[200] = 16;
  for (const [day, c] of Object.entries(single)) lowC[Number(day)] = c;
  return { lowC, sdC: new Float64Array(DAYS).fill(1) };
}

describe('frostYear', () => {
  it('is safe from the night that freezes in one year of ten, and usual from that of every second', () => {
    // Slots count from 0: slot 139 is 19 May of a leap year.
    const { last, first } = frostYear(
      year({ 120: 0, 139: TENTH - 1e-3, 260: TENTH - 1e-3, 280: 0 }),
      ASKED,
    );
    expect(last).toEqual({ usual: '04-30', safe: '05-19' });
    expect(first).toEqual({ usual: '10-07', safe: '09-17' });
  });

  it('has no dates where it does not freeze, or the warmest night does', () => {
    expect(frostYear(year({}), ASKED)).toEqual({});
    expect(frostYear(year({ 200: 0 }), { ...ASKED, atOrBelowC: 15 })).toEqual({});
  });
});

describe('a turn of the year on the household’s own day', () => {
  const onOwnDay = (turn: FrostTurn, own: string, isSafe: boolean): FrostTurn =>
    movedBy(turn, ownDayApart(turn, own, isSafe));

  it('keeps the days between the usual and the safe date', () => {
    const turn = { usual: '05-10', safe: '05-28' };
    expect(onOwnDay(turn, '05-20', false)).toEqual({ usual: '05-20', safe: '06-07' });
    expect(onOwnDay(turn, '06-01', true)).toEqual({ usual: '05-14', safe: '06-01' });
    expect(onOwnDay({ usual: '01-02', safe: '12-30' }, '01-01', false)).toEqual({
      usual: '01-01',
      safe: '12-29',
    });
  });
});
