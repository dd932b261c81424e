import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { addDays, daysBetween, weekdayOf } from '../../shared/calendar/plain-date.js';
import { whyNot, type ArrivalSearch, type ArrivalWeek } from '../../shared/plan/arrival-finder.js';
import type { PlanRequest } from '../../shared/plan/request.js';
import { FieldError } from '../../shared/problems/field-problem.js';
import { climateFromDaily } from '../../shared/weather/climate.js';
import { newBatch, newBrooder, newRequest, tables } from '../support/factories.js';
import { notFiniteIn } from './not-finite.js';
import { foundBetter, plannedBatch, foundArrivals } from '../support/pictures.js';

const YEAR: ArrivalSearch = { from: '2027-01-01', to: '2027-12-31' };
const request = newRequest({ batch: { brooderId: 'brooder' } });
const reason = (week: ArrivalWeek, code: string): string =>
  week.reasons
    .filter((r) => r.code === code)
    .map((r) => r.text)
    .join(' ');
const on = (weeks: readonly ArrivalWeek[], date: string): ArrivalWeek =>
  weeks.find((w) => w.arrivalDate === date)!;

describe('findArrivals', () => {
  it('gives every Wednesday of the span, in order', () => {
    const weeks = foundArrivals(request, YEAR);
    expect(weeks).toHaveLength(52);
    expect(weeks[0]!.arrivalDate).toBe('2027-01-06');
    weeks.forEach((week, k) => {
      expect(weekdayOf(week.arrivalDate)).toBe(3);
      expect(daysBetween(weeks[0]!.arrivalDate, week.arrivalDate)).toBe(7 * k);
    });
  });

  it('ranks them 1 to n, each once, by falling score and then by date', () => {
    const spans = fc.tuple(
      fc.integer({ min: 0, max: 400 }),
      fc.integer({ min: 0, max: 300 }),
      fc.integer({ min: 1, max: 7 }),
      fc.constantFrom(
        ...tables.strains.flatMap((s) => s.purposes.map((purpose) => [s.id, purpose] as const)),
      ),
    );
    fc.assert(
      fc.property(spans, ([start, length, weekday, [strainId, purpose]]) => {
        const from = addDays('2026-12-01', start);
        const weeks = foundArrivals(newRequest({ batch: { strainId, purpose } }), {
          from,
          to: addDays(from, length),
          weekday,
        });
        const byRank = [...weeks].sort((a, b) => a.rank - b.rank);
        expect(byRank.map((w) => w.rank)).toEqual(weeks.map((_, k) => k + 1));
        for (let k = 1; k < byRank.length; k++) {
          const [better, worse] = [byRank[k - 1]!, byRank[k]!];
          expect(better.score).toBeGreaterThanOrEqual(worse.score);
          if (better.score === worse.score)
            expect(better.arrivalDate < worse.arrivalDate).toBe(true);
        }
        for (const week of weeks) {
          expect(week.score).toBeGreaterThanOrEqual(0);
          expect(week.score).toBeLessThanOrEqual(100);
          expect(weekdayOf(week.arrivalDate)).toBe(weekday);
          const lost = week.reasons.reduce((sum, r) => sum + r.points, 0);
          expect(week.score).toBe(Math.max(0, Math.round(100 - lost)));
        }
        expect(notFiniteIn(weeks)).toEqual([]);
      }),
      { numRuns: 60 },
    );
  });

  it('agrees with the plan of a week on its move and its end', () => {
    for (const week of foundArrivals(request, { from: '2027-03-01', to: '2027-09-30' })) {
      const plan = plannedBatch({
        ...request,
        batch: { ...request.batch, arrivalDate: week.arrivalDate },
      });
      expect(week.moveOutDate).toBe(plan.outdoors.moveOut?.value);
      expect(week.leavingDate).toBe(plan.leaving!.on.value);
    }
  });

  it('likes late spring better than midwinter in a cold place', () => {
    const weeks = foundArrivals(request, YEAR);
    expect(on(weeks, '2027-05-12').score).toBeGreaterThan(on(weeks, '2027-01-06').score);
    expect(['04', '05', '06', '07']).toContain(
      weeks.find((w) => w.rank === 1)!.arrivalDate.slice(5, 7),
    );
  });

  // Keepers' rule (second-hand): pullets of spring lay by fall; those of late summer wait for the light.
  it('likes spring better than late summer for pullets', () => {
    const batch = { purpose: 'layers', strainId: 'brown-layer', sex: 'pullets' } as const;
    const weeks = foundArrivals(newRequest({ batch }), YEAR);
    const [spring, summer] = [on(weeks, '2027-04-21'), on(weeks, '2027-08-18')];
    expect(spring.score).toBeGreaterThan(summer.score + 10);
    expect(reason(summer, 'light')).toMatch(/with \d+ h.* of daylight: short days hold/);
    expect(reason(summer, 'later-nights')).toMatch(/about \d+ nights are too cold/);
    expect(weeks.find(({ rank }) => rank === 1)!.arrivalDate.slice(5, 7)).toMatch(/03|04|05/);
  });

  it('speaks of cold weather only where the first frost is near', () => {
    const weeks = foundArrivals(request, YEAR).filter((w) => reason(w, 'cold') !== undefined);
    const said = weeks.filter((w) => reason(w, 'cold').endsWith('before cold weather.'));
    expect(said.length).toBeGreaterThan(0);
    for (const { leavingDate } of said) expect(leavingDate.slice(5, 7)).toMatch(/08|09|10/);
    expect(
      weeks.some((w) => / is not cold work: an expected high of /.test(reason(w, 'cold'))),
    ).toBe(true);
  });

  it('says that a hired processor may not work on a holiday', () => {
    const [week] = foundArrivals(request, YEAR);
    const publicHolidays = [{ date: week!.leavingDate!, name: 'Memorial Day' }];
    const said = (processing: 'home' | 'hired') =>
      reason(
        foundArrivals(
          { ...request, publicHolidays, batch: { ...request.batch, processing } },
          YEAR,
        )[0]!,
        'cold',
      );
    expect(said('hired')).toContain('(Memorial Day: ask whether the processor works)');
    expect(said('home')).not.toContain('Memorial');
  });

  it('takes points off for people away, and more when nobody is left', () => {
    const away = [{ from: '2027-05-10', to: '2027-05-20' }];
    const score = (people: PlanRequest['people']): number =>
      on(foundArrivals({ ...request, people }, YEAR), '2027-05-12').score;
    const nobodyAway = score([{ id: 'a', name: 'A', away: [] }]);
    const oneAway = score([
      { id: 'a', name: 'A', away },
      { id: 'b', name: 'B', away: [] },
    ]);
    const allAway = score([
      { id: 'a', name: 'A', away },
      { id: 'b', name: 'B', away },
    ]);
    expect(nobodyAway).toBeGreaterThan(oneAway);
    expect(oneAway).toBeGreaterThan(allAway);
  });

  it('names the batch that holds the brooder', () => {
    const other = newBatch({ name: 'Others', arrivalDate: '2027-05-05', brooderId: 'brooder' });
    const weeks = foundArrivals({ ...request, batches: [{ ...other, id: 'others' }] }, YEAR);
    expect(reason(on(weeks, '2027-05-12'), 'places')).toMatch(/^Brooder is held by Others until /);
    expect(reason(on(weeks, '2027-08-04'), 'places')).toBe('Brooder and pens are free.');
  });

  it('expects no post on Sundays and holidays', () => {
    const noDeliveryDates = ['2027-05-12', '2027-05-20'];
    const weeks = foundArrivals({ ...request, farm: { ...request.farm, noDeliveryDates } }, YEAR);
    expect(reason(on(weeks, '2027-05-12'), 'shipping')).toContain('No post on Wed 12 May');
    expect(reason(on(weeks, '2027-05-19'), 'shipping')).toContain('a late box would wait');
    const sundays = foundArrivals(request, { ...YEAR, weekday: 7 });
    for (const week of sundays) expect(reason(week, 'shipping')).toContain('No post on Sun');
  });

  it('gives a chance between 0 and 1, with daily history and without', () => {
    const typed = foundArrivals(request, YEAR).flatMap((w) => w.moveOutChance ?? []);
    expect(typed.length).toBeGreaterThan(10);
    expect(typed.every((chance) => 0 <= chance && chance <= 1)).toBe(true);
    const history = Array.from({ length: 3652 }, (_, i) => {
      const minC =
        4 -
        12 * Math.cos((2 * Math.PI * (i - 20)) / 365.25) +
        4 * Math.sin(i * 1.7) * Math.cos(i * 0.9);
      return { date: addDays('2015-01-01', i), minC, maxC: minC + 11 };
    });
    const climate = climateFromDaily(history, { way: 'csv', label: 'Synthetic' });
    const weeks = foundArrivals({ ...request, climate }, YEAR).filter(
      (w) => w.moveOutDate !== undefined,
    );
    expect(weeks.length).toBeGreaterThan(10);
    for (const week of weeks) {
      expect(week.moveOutChance).toBeGreaterThanOrEqual(0);
      expect(week.moveOutChance).toBeLessThanOrEqual(1);
    }
  });

  it('ignores a move date that was fixed for another arrival', () => {
    const fixed = newRequest({
      batch: { brooderId: 'brooder', moveOutDate: '2027-05-30', orderDate: '2027-05-01' },
    });
    expect(foundArrivals(fixed, YEAR)).toEqual(foundArrivals(request, YEAR));
  });

  it.each([
    [{ from: 'soon', to: '2027-12-31' }, 'from'],
    [{ from: '2027-01-01', to: '2027-02-30' }, 'to'],
    [{ from: '2027-05-02', to: '2027-05-01' }, 'to'],
    [{ from: '2027-01-01', to: '2029-06-01' }, 'to'],
    [{ from: '2027-01-01', to: '2027-02-01', weekday: 0 }, 'weekday'],
    [{ from: '2027-01-01', to: '2027-02-01', weekday: 8 }, 'weekday'],
    [{ from: '2027-01-01', to: '2027-02-01', weekday: 2.5 }, 'weekday'],
  ])('refuses the search %p and names %s', (search, field) => {
    let error: unknown;
    try {
      foundArrivals(request, search);
    } catch (thrown) {
      error = thrown;
    }
    expect(error).toBeInstanceOf(FieldError);
    expect((error as FieldError).problems.map((p) => p.field)).toEqual([field]);
  });

  it('gives an empty list for a span without that weekday', () => {
    expect(foundArrivals(request, { from: '2027-05-06', to: '2027-05-07' })).toEqual([]);
  });
});

describe('betterWeek', () => {
  const around = (arrivalDate: string, today = '2027-01-02') =>
    foundBetter(newRequest({ today, batch: { brooderId: 'brooder', arrivalDate } }));

  it('is the best of the season that was meant, with what speaks most against the day picked', () => {
    const found = around('2027-03-05')!;
    expect(found.now.arrivalDate).toBe('2027-03-05');
    const days = daysBetween('2027-03-05', found.best.arrivalDate);
    expect(Math.abs(days)).toBeLessThanOrEqual(56);
    expect(found.best.score).toBeGreaterThanOrEqual(found.now.score + 10);
    expect(found.now.reasons.map(({ text }) => text)).toContain(found.because);
    const ofYear = foundArrivals(request, YEAR).find(({ rank }) => rank === 1)!;
    expect(around(ofYear.arrivalDate)).toBeUndefined();
  });

  it('sends winter chicks to a week in which they do go out, and says what winter heat costs', () => {
    const { now, best, because, heat } = around('2026-12-04', '2026-11-29')!;
    expect(now.moveOutDate).toBeUndefined();
    expect(because).toMatch(/^No nights are warm enough to move out before the end.* all \d+ days/);
    expect(best.moveOutDate).toBeDefined();
    expect(best.score).toBeGreaterThan(now.score + 10);
    expect(heat!.bestMinor).toBeLessThan(heat!.nowMinor);
  });

  it('holds short notice against no day that somebody picked', () => {
    const { arrivalDate } = foundArrivals(request, YEAR).find(({ rank }) => rank === 1)!;
    expect(around(arrivalDate, addDays(arrivalDate, -5))).toBeUndefined();
  });

  it('is none where chicks can no longer be ordered for another week', () => {
    expect(around('2027-03-05', '2027-05-04')).toBeUndefined();
  });
});

describe('whyNot', () => {
  const weeks = foundArrivals(request, YEAR);
  const best = weeks.find((w) => w.rank === 1)!;
  const reader = { ...request.farm, today: request.today };

  it('says of the best week that it is the best', () => {
    expect(whyNot(weeks, best.arrivalDate, reader)).toContain('is the best week of the span');
  });

  it('says how well it suits, which is the best, and every reason against another week, the heaviest first', () => {
    const january = on(weeks, '2027-01-13');
    const text = whyNot(weeks, '2027-01-15', reader); // any day of that week
    expect(text).toMatch(/^Wed 13 Jan 2027 is a .*week.*; .* is the best/);
    expect(text).not.toContain('point');
    const against = january.reasons.filter((r) => 0 < r.points).sort((a, b) => b.points - a.points);
    expect(against.length).toBeGreaterThan(0);
    let at = 0;
    for (const each of against) {
      expect(text.indexOf(each.text)).toBeGreaterThanOrEqual(at);
      at = text.indexOf(each.text);
    }
  });

  it('says so when the date is outside the span', () => {
    expect(whyNot(weeks, '2030-01-01', reader)).toBe(
      'That week is not in the span that was searched.',
    );
    expect(whyNot([], '2027-05-05', reader)).toBe(
      'That week is not in the span that was searched.',
    );
  });

  it('takes points off the weeks whose cold nights the heaters cannot meet, and says so', () => {
    const weak = newRequest({
      batch: { brooderId: 'brooder' },
      facilities: [
        newBrooder({ heat: { kind: 'lamp', wattsEach: 250, count: 1, thermostat: false } }),
      ],
    });
    const weeks = foundArrivals(weak, YEAR);
    const january = on(weeks, '2027-01-06').reasons.find((r) => r.code === 'heater')!;
    expect(january.text).toMatch(/far too little|add heat/);
    expect(january.points).toBeGreaterThan(0);
    for (const week of weeks) {
      const plan = plannedBatch({
        ...weak,
        batch: { ...weak.batch, arrivalDate: week.arrivalDate },
      });
      const heater = week.reasons.find((r) => r.code === 'heater')!;
      expect(heater.points === 0).toBe(plan.heat!.enough);
    }
  });

  it('holds noons in the brooder against summer weeks of a hot place, as a plan of that week does', () => {
    const hot = newRequest({
      batch: { brooderId: 'brooder' },
      farm: {
        lastFrost: '03-01',
        firstFrost: '11-20',
        monthlyMinC: [4, 6, 9, 13, 18, 22, 24, 23, 20, 14, 8, 5],
        monthlyMaxC: [15, 17, 21, 26, 31, 35, 37, 37, 33, 27, 21, 16],
      },
    });
    const weeks = foundArrivals(hot, YEAR);
    const noon = (date: string) => on(weeks, date).reasons.find((r) => r.code === 'brooder-hot')!;
    expect(noon('2027-07-07').points).toBeGreaterThan(noon('2027-04-07').points);
    expect(noon('2027-07-07').text).toMatch(/on a hot noon .* in danger above/);
    expect(noon('2027-01-06').points).toBe(0);
    expect(noon('2027-01-06').text).toMatch(
      /^A usual hot noon is not too hot .* Hotter days come\.$/,
    );
    expect(on(weeks, '2027-04-07').score).toBeGreaterThan(on(weeks, '2027-07-07').score);
    expect(reason(on(weeks, '2027-07-07'), 'shipping')).toContain('far too hot if it waits');
    for (const { arrivalDate } of weeks) {
      const batch = { ...hot.batch, arrivalDate };
      const dangers = plannedBatch({ ...hot, batch }).issues;
      // A plan looks at the weeks with heat, the finder at those without as well.
      if (dangers.some(({ code, level }) => code === 'brooder-hot' && level !== 'note'))
        expect(noon(arrivalDate).points).toBeGreaterThan(0);
    }
  });
});
