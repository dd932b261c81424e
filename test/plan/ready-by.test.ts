import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { addDays, daysBetween, weekdayOf } from '../../shared/calendar/plain-date.js';
import type { Facility } from '../../shared/farm/facility.js';
import type { Person } from '../../shared/farm/farm.js';
import { rowById } from '../../shared/tables/tables.js';
import { newBrooder, newRequest, tables } from '../support/factories.js';
import { foundReady, plannedBatch } from '../support/pictures.js';

const PLACES: readonly Facility[] = [
  newBrooder(),
  { kind: 'field-pen', id: 'pen', name: 'Pens', floorM2: 9, count: 2 },
  { kind: 'freezer', id: 'freezer', name: 'Freezer', liters: 300, usedL: 50 },
];
const IDS = { brooderId: 'brooder', penId: 'pen', freezerId: 'freezer' } as const;
/** Nights in which ducklings of four weeks can be out. */
const WARM = {
  ...{ lastFrost: '03-15', firstFrost: '11-15' },
  monthlyMinC: [2, 3, 6, 10, 15, 19, 21, 21, 18, 12, 7, 3],
  monthlyMaxC: [11, 13, 18, 23, 27, 31, 33, 33, 29, 24, 18, 12],
};
const meat = newRequest({ batch: IDS, facilities: PLACES });
const hens = newRequest({
  batch: { purpose: 'layers', strainId: 'brown-layer', sex: 'pullets' },
});

describe('readyBy', () => {
  it('has birds rested two days before they are eaten, at an age near the usual one', () => {
    const found = foundReady(meat, { goal: 'ready', on: '2027-07-04' });
    expect(found.processBy!.value).toBe('2027-07-02');
    const [best] = found.arrivals;
    expect(best!.endDate).toBe('2027-07-02');
    expect(weekdayOf(best!.arrivalDate)).toBe(3);
    const usual = rowById(tables.strains, 'fast-meat').leave.ageDays;
    expect(Math.abs(best!.leaveAgeDays! - usual)).toBeLessThanOrEqual(3);
  });

  it('gives a batch that ends on the slot when it is planned', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 0, max: 300 }),
        fc.integer({ min: 1, max: 6 }),
        (day, weekday) => {
          const on = addDays('2027-03-01', day);
          const found = foundReady(meat, { goal: 'slot', on, weekday });
          for (const { arrivalDate, leaveAgeDays, endDate } of found.arrivals) {
            expect(endDate).toBe(on);
            expect(weekdayOf(arrivalDate)).toBe(weekday);
            const batch = { ...meat.batch, arrivalDate, leaveAgeDays: leaveAgeDays! };
            expect(plannedBatch({ ...meat, batch }).leaving!.on.value).toBe(on);
          }
          expect(found.arrivals.length).toBeGreaterThanOrEqual(2);
        },
      ),
      { numRuns: 10 },
    );
  });

  it('processes on the weekday wished, before that day', () => {
    const batch = { ...meat.batch, processingWeekday: 6 };
    const found = foundReady({ ...meat, batch }, { goal: 'ready', on: '2027-11-25' });
    expect(found.processBy!.value).toBe('2027-11-20'); // the Saturday before 23 November
  });

  it('processes on a day with hands, when the day itself has none', () => {
    const people = [{ id: 'a', name: 'A', away: [], hoursByWeekday: [0, 0, 0, 0, 0, 9, 0] }];
    const found = foundReady({ ...meat, people }, { goal: 'ready', on: '2027-07-08' });
    expect(found.processBy!.value).toBe('2027-07-06'); // a Tuesday
    for (const { endDate } of found.arrivals) expect(endDate).toBe('2027-07-03');
  });

  it('has first eggs by a date', () => {
    const found = foundReady(hens, { goal: 'eggs', on: '2027-10-01' });
    for (const { arrivalDate, endDate, leaveAgeDays } of found.arrivals) {
      expect(endDate <= '2027-10-01').toBe(true);
      expect(leaveAgeDays).toBeUndefined();
      expect(arrivalDate < endDate).toBe(true);
    }
    expect(daysBetween(found.arrivals[0]!.endDate, '2027-10-01')).toBeLessThan(7);
  });

  it('says when it is too late, and when it could be', () => {
    const found = foundReady(meat, { goal: 'ready', on: '2026-12-24' });
    expect(found.arrivals.every(({ isTooLate }) => isTooLate)).toBe(true);
    expect(found.none).toContain('too late');
    expect(found.largest).toBeUndefined();
  });

  it('refuses eggs of meat birds, by the field', () => {
    expect(() => foundReady(meat, { goal: 'eggs', on: '2027-10-01' })).toThrow(
      expect.objectContaining({ problems: [expect.objectContaining({ field: 'goal' })] }),
    );
    expect(() => foundReady(hens, { goal: 'ready', on: 'soon' })).toThrow(
      expect.objectContaining({
        problems: [
          expect.objectContaining({ field: 'on' }),
          expect.objectContaining({ field: 'goal' }),
        ],
      }),
    );
  });
});

describe('the largest batch', () => {
  const largestOf = (facilities: readonly Facility[], people: readonly Person[] = []) =>
    foundReady(newRequest({ batch: IDS, facilities, people }), {
      goal: 'ready',
      on: '2027-07-04',
    }).largest!;
  const saturdays: Person = {
    id: 'a',
    name: 'A',
    away: [],
    hoursByWeekday: [0, 0, 0, 0, 0, 6, 0],
  };
  const other = (kind: Facility['kind'], more: object): readonly Facility[] =>
    PLACES.map((place) => (place.kind === kind ? ({ ...place, ...more } as Facility) : place));

  it('is stopped by whichever is smallest', () => {
    expect(largestOf(other('freezer', { liters: 100 })).limits[0]!.kind).toBe('freezer');
    expect(largestOf(other('field-pen', { count: 1, floorM2: 3 })).limits[0]!.kind).toBe('pens');
    expect(largestOf(other('brooder', { lengthM: 0.8, widthM: 0.8 })).limits[0]!.kind).toBe(
      'brooder',
    );
    expect(largestOf(PLACES, [saturdays]).limits[0]!.kind).toBe('hours');
    const plates = { heat: { kind: 'plate', wattsEach: 20, count: 1, thermostat: true } };
    expect(largestOf(other('brooder', plates)).limits[0]!.kind).toBe('heat');
  });

  it('knows the long days that the plan itself makes before it leaves birds to nobody', () => {
    const people = ['a', 'b'].map((id) => ({
      ...{ ...saturdays, id, name: id },
      hoursByWeekday: [2, 2, 2, 2, 2, 5, 3],
    }));
    const facilities = other('freezer', { liters: 3000 }).map((place) =>
      place.kind === 'brooder' ? { ...place, lengthM: 8, widthM: 4 } : place,
    );
    const { birds, limits } = largestOf(facilities, people);
    expect(limits.map(({ kind }) => kind)).toContain('hours');
    const { value: chicks } = limits.find(({ kind }) => kind === 'hours')!.chicks;
    const tooMany = (orderedBirds: number): boolean => {
      const request = newRequest({ batch: IDS, facilities, people });
      const [best] = foundReady(request, { goal: 'ready', on: '2027-07-04' }).arrivals;
      const { arrivalDate, leaveAgeDays } = best!;
      const batch = { ...request.batch, arrivalDate, leaveAgeDays: leaveAgeDays!, orderedBirds };
      const { issues } = plannedBatch({ ...request, batch });
      return issues.some(({ code }) => code === 'processing-too-much');
    };
    expect(birds.value).toBeLessThanOrEqual(chicks);
    // Chores of so many more birds take some of the hours.
    expect(tooMany(Math.floor(0.94 * chicks))).toBe(false);
    expect(tooMany(chicks + 4)).toBe(true);
  });

  it('fits when it is planned, and one bird more does not', () => {
    const { birds, limits } = largestOf(PLACES);
    expect(limits[0]!.kind).toBe('freezer');
    const freezerFull = (wantedBirds: number) => {
      const [best] = foundReady(meat, { goal: 'ready', on: '2027-07-04' }).arrivals;
      const { arrivalDate, leaveAgeDays } = best!;
      const batch = { ...meat.batch, arrivalDate, leaveAgeDays: leaveAgeDays!, wantedBirds };
      return plannedBatch({ ...meat, batch }).issues.some(({ code }) => code === 'freezer-full');
    };
    expect(freezerFull(birds.value)).toBe(false);
    expect(freezerFull(birds.value + 3)).toBe(true); // orders are whole chicks, losses are not
  });

  it('is stopped by gas heaters that warm so many on the coldest night, and not one more', () => {
    const gas = { heat: { kind: 'gas', wattsEach: 4000, count: 1, thermostat: true } };
    const places = other('brooder', { ...gas, lengthM: 6, widthM: 4 });
    const { limits } = largestOf(places);
    const { name, chicks } = limits.find(({ kind }) => kind === 'heat')!;
    expect(name).toBe('Gas heaters');
    const [best] = foundReady(meat, { goal: 'ready', on: '2027-07-04' }).arrivals;
    const { arrivalDate, leaveAgeDays } = best!;
    const needed = (orderedBirds: number): number => {
      const batch = { ...meat.batch, arrivalDate, leaveAgeDays: leaveAgeDays!, orderedBirds };
      return plannedBatch({ ...meat, facilities: places, batch }).heat!.need.value;
    };
    expect(chicks.value).toBeGreaterThan(0);
    expect(needed(chicks.value)).toBeLessThanOrEqual(4000);
    expect(needed(chicks.value + 1)).toBeGreaterThan(4000);
    const strong = { heat: { ...gas.heat, wattsEach: 200_000 } };
    expect(largestOf(other('brooder', strong)).limits.map(({ kind }) => kind)).not.toContain(
      'heat',
    );
    const weak = { heat: { ...gas.heat, wattsEach: 100 } };
    expect(largestOf(other('brooder', weak)).birds.value).toBe(0);
  });

  it('gives ducklings and poults the room of their own kind', () => {
    const bird = (strainId: string) =>
      foundReady(newRequest({ batch: { ...IDS, strainId }, facilities: PLACES, farm: WARM }), {
        goal: 'ready',
        on: '2027-09-01',
      }).largest!;
    const room = (strainId: string, kind: string) =>
      bird(strainId).limits.find((limit) => limit.kind === kind)!;
    const duck = tables.strains.find(({ species }) => species === 'duck')!.id;
    for (const kind of ['brooder', 'pens']) {
      const { chicks } = room(duck, kind);
      expect(chicks.value).toBeLessThan(room('fast-meat', kind).chicks.value);
    }
    // 18 m² of pens, 0.279 m² (3 ft²) a duck.
    const { chicks } = room(duck, 'pens');
    expect(chicks.value).toBeGreaterThanOrEqual(Math.floor(18 / 0.279));
  });
});
