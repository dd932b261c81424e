import { describe, expect, it } from '@jest/globals';
import { addDays, daysBetween, monthOf } from '../../../shared/calendar/plain-date.js';
import type { GrassReading } from '../../../shared/farm/paddock.js';
import type { Mowing } from '../../../shared/farm/mowing.js';
import { isOddReading } from '../../../shared/pasture/odd-reading.js';
import { expectedHeight } from '../../../shared/plan/pasture/expected-height.js';
import type { PastureRequest } from '../../../shared/plan/pasture/pasture-request.js';
import { pastureSpan, type PastureSpan } from '../../../shared/plan/pasture/pasture-span.js';
import {
  seasonSwards,
  type SeasonSward,
  type SeasonSwards,
} from '../../../shared/plan/pasture/season-swards.js';
import { seasonWeather } from '../../../shared/plan/pasture/season-weather.js';
import { climateFromMonthlyMeans } from '../../../shared/weather/climate.js';
import { growOn, massOf } from '../../../shared/pasture/sward.js';
import { newFarm } from '../../support/factories.js';
import {
  newPaddock,
  newPaddocks,
  newPastureRequest,
  newHerd,
  newReading,
} from '../../support/pasture-factories.js';
import { plannedPasture } from '../../support/pictures.js';

interface Season {
  readonly span: PastureSpan;
  readonly all: SeasonSwards;
  readonly own: SeasonSward;
  readonly at: (date: string) => number;
}
function seasonOf(request: PastureRequest): Season {
  const span = pastureSpan(request);
  const all = seasonSwards(request, span, seasonWeather(request, span));
  return { span, all, own: all.swards[0]!, at: (date) => daysBetween(span.first, date) };
}
/** Mass on a day of a stand left alone from day 0 on, heights that were read minded. */
function massOn({ own: { sward }, at }: Season, date: string): number {
  const state = { ...sward.start };
  for (let day = 0; day < at(date); day++) growOn(sward, state, day);
  return massOf(state);
}
const grownKgPerHa = ({ own, at }: Season, from: string, to: string): number =>
  own.growth.subarray(at(from), at(to)).reduce((a, b) => a + b, 0);
const shares = (month: number, share: number): number[] =>
  Array.from({ length: 12 }, (_, m) => (m + 1 === month ? share : 1));

describe('seasonSwards', () => {
  const usual = seasonOf(newPastureRequest());

  it('leaves readings of more than five years ago out, as if they had never been taken', () => {
    const old = [newReading({ date: '2019-04-22' }), newReading({ id: 'r0', date: '2022-04-10' })];
    const of = (readings: NonNullable<PastureRequest['readings']>): unknown => {
      const { swards, farmGrowth } = seasonOf(newPastureRequest({ readings })).all;
      return [farmGrowth, swards.map(({ usualFrom: _, ...sward }) => sward)];
    };
    expect(of(old)).toEqual(of([]));
    expect(of([...old, newReading()])).toEqual(of([newReading()]));
  });

  it('begins spring with the same stand, however far into the next winter the plan goes', () => {
    const startOf = (to: string): number =>
      massOf(seasonOf(newPastureRequest({ choices: { to } })).own.sward.start);
    for (const to of ['2027-12-31', '2028-02-15', '2028-04-15'])
      expect(startOf(to)).toBeCloseTo(startOf('2027-12-15'), 6);
  });

  it('grows on in a mild fall what was read in it, and what the herds left when they went on hay', () => {
    const mild = climateFromMonthlyMeans(
      [-2, 0, 4, 8, 13, 17, 20, 19, 15, 9, 3, -1],
      [9, 11, 17, 22, 26, 30, 32, 31, 28, 23, 16, 11],
      6,
    );
    const startOf = (more: Partial<PastureRequest>): number =>
      massOf(seasonOf(newPastureRequest({ climate: mild, ...more })).own.sward.start);
    const readOn = (date: string): number => startOf({ readings: [newReading({ date })] });
    expect(readOn('2026-10-01')).toBeGreaterThan(readOn('2026-11-15') + 100);
    expect(readOn('2026-11-15')).toBeGreaterThan(readOn('2026-12-20') + 100);
    const onHay = (onHaySince: string): number => startOf({ choices: { onHaySince } });
    expect(onHay('2026-11-01')).toBeGreaterThan(onHay('2026-11-25') + 100);
    expect(onHay('2026-10-17')).toBeCloseTo(startOf({}), 6);
    // What was read after they went on hay is nearer.
    const readings = [newReading({ date: '2026-12-20' })];
    const { own } = seasonOf(
      newPastureRequest({ climate: mild, readings, choices: { onHaySince: '2026-11-25' } }),
    );
    expect(massOf(own.sward.start)).toBeCloseTo(readings[0]!.heightCm * own.kgPerHaCm, 6);
    const closedDays = [{ from: '2026-08-15', to: '2027-01-10', why: 'stockpile' as const }];
    const kept = { paddocks: [newPaddock({ closedDays })], choices: { onHaySince: '2026-11-25' } };
    expect(startOf(kept)).toBeCloseTo(startOf({}), 6);
  });

  it('lets no reading of summer grow into winter where herds are told to have grazed after it', () => {
    const readings = [newReading({ date: '2026-07-15', heightCm: 20 })];
    const of = (more: Partial<PastureRequest>): { kgPerHa: number; heightKnown: string } => {
      const { sward, heightKnown } = seasonOf(newPastureRequest(more)).own;
      return { kgPerHa: massOf(sward.start), heightKnown };
    };
    const told = (from: string, to?: string): ReturnType<typeof of> =>
      of({
        readings,
        paddocks: [newPaddock(to === undefined ? {} : { lastGrazedOn: to })],
        grazings: [{ herdId: 'h1', paddockId: 'p1', from, ...(to === undefined ? {} : { to }) }],
      });
    const usualStart = of({});
    expect(told('2026-06-01', '2026-06-10')).toEqual(of({ readings }));
    expect(of({ readings }).kgPerHa).toBeGreaterThan(usualStart.kgPerHa + 300);
    expect(told('2026-08-01', '2026-08-10')).toEqual(usualStart);
    const residual = usual.own.sward.residualKgPerHa;
    const late = told('2026-11-10', '2026-11-20');
    expect(late.heightKnown).toBe('last-grazing');
    expect(late.kgPerHa).toBeLessThanOrEqual(usualStart.kgPerHa);
    expect(told('2026-11-10').kgPerHa).toBeCloseTo(residual, 6);
    // What is read while a herd is in is what it has left by then.
    const low = [newReading({ date: '2026-12-20', heightCm: 9 })];
    const stay = { herdId: 'h1', paddockId: 'p1', from: '2026-11-10' };
    expect(of({ readings: low, grazings: [stay] })).toEqual(of({ readings: low }));
  });

  it('asks about a first height that nothing could have grown to by then, and about no low one', () => {
    const odd = (heightCm: number): boolean =>
      plannedPasture(
        newPastureRequest({ readings: [newReading({ date: '2027-04-20', heightCm })] }),
      ).issues.some(({ code }) => code === 'reading-odd');
    expect([80, 8, 2].map(odd)).toEqual([true, false, false]);
  });

  it('grows nothing in winter, most in May or June, and less in the heat than then', () => {
    expect(usual.all.farmGrowth).toBe(1);
    const month = (m: number): number =>
      grownKgPerHa(usual, `2027-0${m}-01`, `2027-0${m + 1}-01`) / 30;
    expect(month(1)).toBe(0);
    expect(Math.max(month(5), month(6))).toBeGreaterThan(50);
    expect(month(8)).toBeLessThan(0.7 * Math.max(month(5), month(6)));
  });

  it('grows less after two dry months and nothing else before them', () => {
    const none = shares(8, 0).map((share, m) => (m === 6 ? 0 : share));
    const dry = seasonOf(newPastureRequest({ choices: { rainShareByMonth: none } }));
    expect(massOn(dry, '2027-07-01')).toBe(massOn(usual, '2027-07-01'));
    expect(grownKgPerHa(dry, '2027-08-15', '2027-09-15')).toBeLessThan(
      0.8 * grownKgPerHa(usual, '2027-08-15', '2027-09-15'),
    );
    for (let i = usual.at('2027-08-01'); i < dry.span.days; i++) {
      expect(dry.own.usualGrowth[i]).toBe(usual.own.usualGrowth[i]);
      expect(dry.own.depletionMm![i]!).toBeGreaterThanOrEqual(usual.own.depletionMm![i]!);
    }
  });

  it('grows less on a thin stand than on a good one, and no more on an excellent one', () => {
    const stands = (['fair', 'good', 'excellent'] as const).map((stand) =>
      newPaddock({ id: stand, stand }),
    );
    const [fair, good, excellent] = seasonOf(
      newPastureRequest({ paddocks: stands }),
    ).all.swards.map(({ growth }) => growth.reduce((a, b) => a + b, 0));
    expect(fair!).toBeLessThan(0.9 * good!);
    expect(excellent!).toBeCloseTo(good!, 6);
  });

  it('grows never less for more rain', () => {
    const grown = [0, 0.25, 0.5, 0.75, 1, 1.5, 3].map((share) =>
      grownKgPerHa(
        seasonOf(newPastureRequest({ choices: { rainShareByMonth: shares(7, share) } })),
        '2027-07-01',
        '2027-09-15',
      ),
    );
    for (let k = 1; k < grown.length; k++)
      expect(grown[k]!).toBeGreaterThanOrEqual(grown[k - 1]! - 1e-9);
    expect(grown[0]!).toBeLessThan(0.9 * grown[4]!);
  });

  it('is slowed more by a dry July on sand than on loam, and more on loam than on silt loam', () => {
    const left = (soilId: string): number => {
      const { own, at } = seasonOf(
        newPastureRequest({
          paddocks: [newPaddock({ soilId })],
          choices: { rainShareByMonth: shares(7, 0) },
        }),
      );
      return grownKgPerHa({ own, at } as Season, '2027-07-20', '2027-08-10');
    };
    expect(left('sand')).toBeLessThan(left('loam'));
    expect(left('loam')).toBeLessThan(left('silt-loam'));
  });

  it('takes the weather that was measured, and has no water balance where no rain is known', () => {
    const request = newPastureRequest();
    const frost = Array.from({ length: 10 }, (_, k) => ({
      date: addDays('2027-04-25', k),
      minC: -6,
      maxC: 2,
      rainMm: 0,
    }));
    const cold = seasonOf({ ...request, climate: { ...request.climate, forecast: frost } });
    expect(grownKgPerHa(cold, '2027-04-25', '2027-05-05')).toBeLessThan(
      0.3 * grownKgPerHa(usual, '2027-04-25', '2027-05-05'),
    );
    expect(massOn(cold, '2027-04-25')).toBe(massOn(usual, '2027-04-25'));
    const { meanRainMm: _, ...noRain } = request.climate;
    const unknown = seasonOf({ ...request, climate: noRain });
    expect(unknown.own.depletionMm).toBeUndefined();
    expect(grownKgPerHa(unknown, '2027-07-01', '2027-09-01')).toBeGreaterThanOrEqual(
      grownKgPerHa(usual, '2027-07-01', '2027-09-01'),
    );
  });

  it('takes readings since mid-winter on their days, in whatever order they come', () => {
    const early = newReading({ id: 'a', date: '2027-04-05', heightCm: 20 });
    const late = newReading({ id: 'b', date: '2027-04-21', heightCm: 11 });
    for (const readings of [
      [early, late],
      [late, early],
    ]) {
      const { own, at } = seasonOf(newPastureRequest({ readings }));
      expect(own.sward.readings.map(({ day }) => day)).toEqual([
        at('2027-04-05'),
        at('2027-04-21'),
      ]);
      expect(own.sward.readings[1]!.kgPerHa).toBeCloseTo(11 * own.kgPerHaCm, 9);
      expect(own.reading).toEqual(late);
      expect(own.heightKnown).toBe('reading');
    }
  });

  it('goes by the residual after a grazing that came later than the reading', () => {
    const request = newPastureRequest({
      readings: [newReading({ date: '2027-04-10', heightCm: 22 })],
      paddocks: [newPaddock({ lastGrazedOn: '2027-04-20' })],
    });
    const { own, at } = seasonOf(request);
    expect(own.sward.readings.at(-1)).toMatchObject({
      day: at('2027-04-21'),
      kgPerHa: own.sward.residualKgPerHa,
      isGrazed: true,
    });
  });

  it('counts readings of one paddock for all like it, and for half in others', () => {
    const slow = [
      newReading({ id: 'a', date: '2027-05-01', heightCm: 10 }),
      newReading({ id: 'b', date: '2027-05-15', heightCm: 11 }),
    ];
    const [read, like, other] = newPaddocks(3);
    const paddocks = [read!, like!, { ...other!, forageId: 'tall-fescue' }];
    const request = newPastureRequest({ today: '2027-05-20', paddocks });
    const factors = (of: PastureRequest): number[] =>
      seasonOf(of).all.swards.map(({ sward }) => sward.ground.growthFactor);
    expect(factors(request)).toEqual([1, 1, 1]);
    const [own, ofLike, ofOther] = factors({ ...request, readings: slow });
    expect(own).toBeLessThan(0.95);
    expect(own).toBeGreaterThan(0.8);
    expect(ofLike).toBe(own);
    expect(1 - ofOther!).toBeLessThan(0.6 * (1 - own!));
    expect(ofOther).toBeLessThan(0.99);
    expect(seasonOf({ ...request, readings: slow }).all.swards[1]!.reading).toBeUndefined();
  });

  it('goes by what was read last year as well, and by this year more than once', () => {
    const walks = (year: number) =>
      [10, 13, 16].map((heightCm, k) =>
        newReading({ id: `${year}${k}`, date: `${year}-05-0${1 + 4 * k}`, heightCm }),
      );
    const of = (readings: NonNullable<PastureRequest['readings']>) =>
      seasonOf(newPastureRequest({ today: '2027-05-20', readings })).all;
    const [last, both] = [of(walks(2026)), of([...walks(2026), ...walks(2027)])];
    expect([last.pairs, both.pairs]).toEqual([2, 4]);
    expect(last.farmGrowth).not.toBe(1);
    expect(Math.abs(both.farmGrowth - 1)).toBeGreaterThan(Math.abs(last.farmGrowth - 1));
  });

  it('takes no growth from readings with a grazing between them', () => {
    const readings = [
      newReading({ id: 'a', date: '2027-05-01', heightCm: 10 }),
      newReading({ id: 'b', date: '2027-05-15', heightCm: 14 }),
    ];
    const request = newPastureRequest({
      today: '2027-05-20',
      readings,
      paddocks: [newPaddock({ lastGrazedOn: '2027-05-08' })],
    });
    expect(seasonOf(request).all).toMatchObject({ pairs: 0, farmGrowth: 1 });
  });

  it('takes none either where the stay or the mowing between them was not the last', () => {
    const readings = [
      newReading({ id: 'a', date: '2027-05-01', heightCm: 10 }),
      newReading({ id: 'b', date: '2027-05-15', heightCm: 14 }),
    ];
    const paddock = newPaddock({ lastGrazedOn: '2027-05-19' });
    const of = { paddockId: paddock.id, herdId: 'herd' };
    const request = (more: Partial<PastureRequest>) =>
      newPastureRequest({ today: '2027-05-20', readings, paddocks: [paddock], ...more });
    const last = { ...of, from: '2027-05-18', to: '2027-05-19' };
    expect(seasonOf(request({ grazings: [last] })).all.pairs).toBe(1);
    const between = { ...of, from: '2027-05-07', to: '2027-05-08' };
    expect(seasonOf(request({ grazings: [between, last] })).all.pairs).toBe(0);
    const mown = { ...of, id: 'm', date: '2027-05-08' } as Mowing;
    expect(seasonOf(request({ grazings: [last], mowings: [mown] })).all.pairs).toBe(0);
  });

  it('says how far the last reading was off what had been expected', () => {
    const first = newReading({ id: 'a', date: '2027-05-01', heightCm: 10 });
    const at = (heightCm: number) =>
      seasonOf(
        newPastureRequest({
          today: '2027-05-20',
          readings: [first, newReading({ id: 'b', date: '2027-05-15', heightCm })],
        }),
      ).own;
    expect(at(13).expectedAtReading!).toBeGreaterThan(10 * at(13).kgPerHaCm);
    const alone = seasonOf(newPastureRequest({ today: '2027-05-20', readings: [first] })).own;
    expect(alone.expectedAtReading).toBeUndefined();
  });

  it('shuts a paddock on the days it was said to be shut', () => {
    const closed = [{ from: '2027-06-01', to: '2027-06-03', why: 'hay' as const }];
    const { own, at } = seasonOf(
      newPastureRequest({ paddocks: [newPaddock({ closedDays: closed })] }),
    );
    const shut = [...own.sward.isClosed].flatMap((is, i) => (is === 0 ? [] : [i]));
    expect(shut).toEqual([at('2027-06-01'), at('2027-06-02'), at('2027-06-03')]);
  });

  it('rests longer by the household’s factor', () => {
    const { own } = usual;
    expect(own.sward.leastRestDays).toBe(own.forage.restDays.fast);
    const longer = seasonOf(newPastureRequest({ choices: { restFactor: 1.5 } })).own;
    expect(longer.sward.leastRestDays).toBe(Math.round(1.5 * own.forage.restDays.fast));
  });
});

describe('the southern half of the world', () => {
  const north = seasonOf(newPastureRequest({ today: '2027-03-01' }));
  const farm = newFarm();
  const turn = (months: readonly number[]): number[] => [...months.slice(6), ...months.slice(0, 6)];
  const south = seasonOf(
    newPastureRequest({
      today: '2027-09-01',
      farm: {
        latitudeDeg: -farm.latitudeDeg,
        monthlyMinC: turn(farm.monthlyMinC),
        monthlyMaxC: turn(farm.monthlyMaxC),
      },
    }),
  );

  it('plans from September to the middle of June', () => {
    expect(south.span.first).toBe('2027-07-01');
    expect(addDays(south.span.first, south.span.from)).toBe('2027-09-01');
    expect(addDays(south.span.first, south.span.to - 1)).toBe('2028-06-15');
    expect(north.span.first).toBe('2027-01-01');
    expect(addDays(north.span.first, north.span.from)).toBe('2027-03-01');
    expect(addDays(north.span.first, north.span.to - 1)).toBe('2027-12-15');
  });

  it.each([
    ['2027-08-31', '2027-07-01'],
    ['2028-02-10', '2027-07-01'],
    ['2028-04-30', '2027-07-01'],
    ['2028-05-01', '2028-07-01'],
  ])('plans on %s the season that begins on %s', (today, first) => {
    const span = pastureSpan({ farm: newFarm({ latitudeDeg: -35 }), today, choices: {} });
    expect(span.first).toBe(first);
  });

  it('grows half a year later: every month what the north grows six months before', () => {
    const sum = ({ own, span }: Season, month: number): number => {
      const days = [...own.growth].filter((_, i) => monthOf(addDays(span.first, i)) === month);
      return days.reduce((a, b) => a + b, 0) / days.length;
    };
    for (const month of [3, 4, 5, 6, 7, 8, 9, 10, 11]) {
      const there = ((month + 5) % 12) + 1;
      // Months of 30 and 31 days change places, and the sun is 3 % nearer in January than in July.
      expect(Math.abs(sum(south, there) - sum(north, month))).toBeLessThan(
        4 + 0.1 * sum(north, month),
      );
    }
  });
});

describe('a height that cannot be', () => {
  const readings = (heightCm: number) => [
    newReading({ id: 'r1', date: '2027-04-12', heightCm: 9 }),
    newReading({ id: 'r2', date: '2027-04-20', heightCm }),
  ];
  const codes = (heightCm: number) =>
    plannedPasture(newPastureRequest({ readings: readings(heightCm) })).issues.map(
      ({ code }) => code,
    );

  it('is asked about: 80 for 8, and nothing where the grass is usual', () => {
    expect(codes(80)).toContain('reading-odd');
    expect(codes(11)).not.toContain('reading-odd');
    expect(codes(8)).not.toContain('reading-odd');
  });

  it('moves nothing until it is said to be right, and then all of it', () => {
    const at = (...more: Partial<GrassReading>[]) =>
      plannedPasture(
        newPastureRequest({
          today: '2027-05-01',
          readings: more.map((each, k) => newReading({ id: `r${k + 1}`, ...each })),
        }),
      );
    const first = { date: '2027-04-12', heightCm: 9 };
    const slip = { date: '2027-04-20', heightCm: 80 };
    const moves = at(first).moves;
    expect(at(first, slip).moves).toEqual(moves);
    const sure = at(first, { ...slip, isSure: true });
    expect(sure.moves).not.toEqual(moves);
    expect(sure.issues.map(({ code }) => code)).not.toContain('reading-odd');
    // After a slip a true height looks odd: only the slip is left out.
    const after = { date: '2027-04-28', heightCm: 13 };
    const told = at(first, slip, after);
    expect(told.moves).toEqual(at(first, after).moves);
    const asked = told.issues.filter(({ code }) => code === 'reading-odd');
    expect(asked.map(({ text }) => /April 20|Apr 20|20 Apr/.test(text))).toEqual([true]);
    // Many in a unit that was not meant end, and none of them is gone by.
    const days = ['04-02', '04-05', '04-08', '04-11', '04-14', '04-17', '04-20', '04-23'];
    const wild = days.map((day, k) => ({
      ...{ date: `2027-${day}`, heightCm: k % 2 === 0 ? 90 + k : 1 },
    }));
    const none = at(...wild);
    expect(none.moves.length).toBeGreaterThan(0);
    expect(none.issues.some(({ code }) => code === 'reading-odd')).toBe(true);
  });
});

describe('a height of days ago that the plan leaves out', () => {
  const first = newReading({ id: 'r1', date: '2027-04-25', heightCm: 8 });
  const told = (...more: Partial<GrassReading>[]) =>
    plannedPasture(
      newPastureRequest({
        today: '2027-05-20',
        readings: [
          first,
          ...more.map((each) => newReading({ id: 'r2', date: '2027-05-05', ...each })),
        ],
      }),
    );

  it('is carried with what was expected on its day, so that it can be said to be right', () => {
    for (const heightCm of [26, 30, 34]) {
      const plan = told({ heightCm });
      const [own, ...others] = plan.leftOut!;
      expect(others).toEqual([]);
      expect(own).toMatchObject({ id: 'r2', paddockId: 'p1', date: '2027-05-05' });
      const expectedCm = expectedHeight(plan, 'p1', '2027-05-05')!;
      expect(expectedCm).toBe(own!.expectedCm);
      expect(isOddReading(heightCm, expectedCm, newPastureRequest().tables.judgements.grass)).toBe(
        true,
      );
      // Today's grass is another matter: by it nobody would be asked.
      expect(expectedHeight(plan, 'p1', plan.today)).toBeGreaterThan(1.3 * expectedCm);
    }
    expect(told({ heightCm: 30, isSure: true }).leftOut).toBeUndefined();
    expect(expectedHeight(told(), 'p1', '2027-05-05')).toBeUndefined();
  });

  it('is taken back where it was told: in the walk, or with its move', () => {
    const text = (more: Partial<GrassReading>): string =>
      told({ heightCm: 34, ...more }).issues.find(({ code }) => code === 'reading-odd')!.text;
    expect(text({})).toContain('delete it there');
    const ofMove = text({ isOfMove: true });
    expect(ofMove).not.toContain('delete it there');
    expect(ofMove).toContain('take that move back under The record, What was told');
  });
});

describe('a height that does not go with the moves', () => {
  const stay = { herdId: 'h1', paddockId: 'p1', from: '2027-06-01', to: '2027-06-03' };
  const codes = (heightCm: number, grazings = [stay]): string[] =>
    plannedPasture(
      newPastureRequest({
        ...{ today: '2027-06-06', grazings },
        herds: [{ ...newHerd(), inPaddockId: 'p2', inSince: '2027-06-04' }],
        paddocks: newPaddocks(6, { areaM2: 1000 }).map((own) =>
          own.id === 'p1' && 0 < grazings.length ? { ...own, lastGrazedOn: '2027-06-03' } : own,
        ),
        readings: [
          newReading({ id: 'r1', date: '2027-06-01', heightCm: 20 }),
          newReading({ id: 'r2', date: '2027-06-04', heightCm }),
        ],
      }),
    ).issues.map(({ code }) => code);

  it('is asked about on the day after a stay: 12 in where 4 were left, not what they left', () => {
    expect(codes(30.5)).toContain('reading-odd');
    expect(codes(12)).not.toContain('reading-odd');
    expect(codes(30.5, [])).not.toContain('reading-odd');
  });
});
