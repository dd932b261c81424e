import { describe, expect, it } from '@jest/globals';
import { addDays } from '../../shared/calendar/plain-date.js';
import type { CalvingTold } from '../../shared/farm/calving-told.js';
import type { Cow } from '../../shared/farm/cow.js';
import { calvesBeside, calvingSeasons, mayCalve } from '../../shared/pasture/calving-season.js';
import { withNamedCows } from '../../shared/pasture/named-cows.js';
import { calvingSaid } from '../../shared/plan/calving-said.js';
import { tables } from '../support/factories.js';
import { newCow, newGroup, newHerd } from '../support/pasture-factories.js';

const DUE = '2027-04-15';
const herdOf = (cows: Cow[] = [], calvesOn = DUE) =>
  withNamedCows(newHerd({ groups: [newGroup({ classId: 'dry-cow', head: 3, calvesOn })] }), cows);
const born = (date: string, more: Partial<CalvingTold> = {}): CalvingTold => ({
  ...{ herdId: 'h1', date, calves: 1 },
  ...more,
});
const two = [born('2027-04-12'), born('2027-04-14')];
const said = (date: string, facts: readonly CalvingTold[], herd = herdOf()) =>
  calvingSaid(calvingSeasons(herd, facts, date, tables), {
    ...{ date, units: 'metric', judged: tables.judgements.alarms },
  });
const beside = (date: string, facts: readonly CalvingTold[], herd = herdOf()) =>
  calvesBeside(herd, facts, date, tables);

describe('calvings of a herd that were told', () => {
  it('are the calves beside their cows, where none is told those that are due', () => {
    expect(beside('2027-04-20', two)).toBe(2);
    expect(beside('2027-04-20', [born('2027-04-12', { calves: 0, dead: 1 })])).toBe(0);
    expect(beside('2027-04-13', two)).toBe(1);
    expect(beside('2027-04-20', [])).toBe(3);
    // Weaned by then, of the year before, and of another herd.
    expect(beside('2027-12-20', two)).toBe(0);
    expect(beside('2027-04-20', [born('2026-05-02'), born(DUE, { herdId: 'other' })])).toBe(3);
  });

  it('leave the others awaited until all are told, and overdue past the last usual day', () => {
    expect(said('2027-04-20', two)).toEqual([
      expect.stringMatching(/^2 of 3 have calved, 1 to come, due around .*15 Apr: look for a cow/),
    ]);
    // Ten days either side hold nearly all: the 25th is the last.
    expect(said('2027-04-25', two)[0]).toMatch(/1 to come/);
    // Straining is told as the caution beside it tells it, not by the water bag alone.
    const straining = /half an hour of hard straining brings nothing \(an hour in a heifer\)/;
    expect(tables.cautions.calving!.text).toMatch(straining);
    expect(said('2027-04-25', two)[0]).toMatch(straining);
    expect(said('2027-04-26', two)[0]).toMatch(/1 is overdue .*call your veterinarian\.$/);
    expect(said('2028-02-01', two)).toEqual([]); // the next are near
    expect(said('2027-04-20', [...two, born('2027-04-16')])).toEqual([]);
    expect(said('2027-04-20', [])[0]).toMatch(/^Calves were due .* none is told yet/);
    // Of a herd of which no calf is told at all it is asked for a month past the last usual day.
    expect(said('2027-04-26', [])).toEqual([
      expect.stringMatching(/^3 cows were due around .* no calf is told: tell what came/),
    ]);
    const silent = [20, 40].map((days) => said(addDays('2027-04-26', days), []).length);
    expect(silent).toEqual([1, 0]);
  });

  it('may come early, late and where no date is known, until all are told', () => {
    const may = (date: string, facts: readonly CalvingTold[], herd = herdOf()) =>
      mayCalve(herd, facts, date, tables);
    // A month early, overdue with none told, and one of three still to come.
    expect(['2027-03-15', '2027-04-26', '2027-06-30'].map((date) => may(date, []))).toEqual(
      Array(3).fill(true),
    );
    expect(may('2027-04-20', two)).toBe(true);
    expect(may('2027-04-20', [...two, born('2027-04-16')])).toBe(false);
    expect(may('2027-01-05', [])).toBe(false);
    const ofClass = (classId: string) =>
      withNamedCows(newHerd({ groups: [newGroup({ classId, head: 3 })] }), []);
    expect(may('2027-04-20', [], ofClass('dry-cow'))).toBe(true);
    expect(may('2027-04-20', [], ofClass('stocker'))).toBe(false);
  });

  it('stay overdue until that is told, however long it is', () => {
    const march = herdOf([], '2027-03-01');
    const one = [born('2027-03-02')];
    for (const date of ['2027-04-10', '2027-04-25', '2027-06-30'])
      expect(said(date, one, march)).toEqual([
        expect.stringMatching(/^1 of 3 has calved, 2 are overdue .*call your veterinarian\.$/),
      ]);
    expect(said('2027-04-25', [...one, ...two], march)).toEqual([]);
  });

  it('are her own where a cow is named, with twins too, and never hers where she is not', () => {
    const clover = newCow({ classId: 'dry-cow', calvesOn: '2027-04-18' });
    const herd = herdOf([clover]);
    expect(said('2027-04-20', two, herd)).toEqual([expect.stringMatching(/^Clover was due/)]);
    const twins = [1, 2].map(() => born('2027-04-17', { cowId: 'cow' }));
    expect(said('2027-04-20', [...twins, two[0]!], herd)).toEqual([
      expect.stringMatching(/^1 of 2 has calved, 1 to come/),
    ]);
  });
});
