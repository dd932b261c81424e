import { describe, expect, it } from '@jest/globals';
import { addDays } from '../../../shared/calendar/plain-date.js';
import {
  workOutlookOf,
  type OutlookRequest,
  type WorkOutlook,
} from '../../../shared/plan/work/work-outlook.js';
import type { DailyWeather } from '../../../shared/weather/climate.js';
import { recordedFrost } from '../../../shared/weather/frost.js';
import { tables as real } from '../../support/factories.js';
import { newBatchWork, newOwnJob, newWork } from '../../support/season-factories.js';

type More = Parameters<typeof newWork>[0];
/** Forecasts that always hold, so that what is counted is the weather alone. */
const foreseen = structuredClone(real);
Object.assign(foreseen.work.forecast, { rightShares: Array(7).fill(1) });
function outlookOf(more: More, history: OutlookRequest['history'] = []): WorkOutlook {
  const work = newWork({ tables: foreseen, ...more });
  const recorded = recordedFrost(history, work.farm.latitudeDeg);
  return workOutlookOf(
    { ...work, climate: { ...work.climate, recordedFrost: recorded }, history },
    100,
  );
}
const jobIn = ({ jobs }: WorkOutlook, id: string) => jobs.find(({ key }) => key === `own/${id}`)!;

/** Daily weather that covers twelve springs and the year after each, in which it rains on the days that a year names. */
const years = (rains: (year: number, date: string) => boolean): DailyWeather[] =>
  Array.from({ length: 13 * 365 + 3 }, (_, i) => {
    const date = addDays('2010-01-01', i);
    const rainMm = rains(Number(date.slice(0, 4)), date.slice(5)) ? 9 : 0;
    return { date, minC: 5, maxC: 16, rainMm };
  });

describe('workOutlookOf', () => {
  const outside = newOwnJob({
    hours: 2,
    canBeSpread: false,
    notBefore: '2027-04-10',
    dueOn: '2027-04-12',
    noUseAfter: '2027-04-20',
    conditions: { noRain: true },
  });

  it('gives the share of measured years in which work is done by its date', () => {
    // In three of the twelve years it rains from 10 to 13 April: done on the 14th, too late.
    const history = years((year, day) => year % 4 === 1 && '04-10' <= day && day <= '04-13');
    const outlook = outlookOf({ ownJobs: [outside] }, history);
    expect(outlook).toMatchObject({ years: 12, isMeasured: true, hasRain: true });
    expect(jobIn(outlook, 'bed')).toMatchObject({
      chance: 0.75,
      lost: 0,
      usuallyBy: '2027-04-10',
      nearlyAlwaysBy: '2027-04-14',
      windowDays: 3,
      suitableDays: { tenth: 0, half: 3, ninetieth: 3 },
    });
    expect(jobIn(outlook, 'bed').standardError).toBeCloseTo(Math.sqrt((0.75 * 0.25) / 12), 12);
    expect(jobIn(outlook, 'bed').startBySafe).toBeUndefined(); // in 3 of 12 years no start is early enough
  });

  it('names the last day to begin for nine years in ten', () => {
    const job = { ...outside, notBefore: '2027-04-06' };
    const history = years((year, day) => year === 2012 && '04-07' <= day && day <= '04-12');
    // One year of twelve is less than one in ten: begin on the due day and it is done in the rest.
    expect(jobIn(outlookOf({ ownJobs: [job] }, history), 'bed').startBySafe).toBe('2027-04-12');
    const two = years((year, day) => year < 2012 && '04-07' <= day && day <= '04-12');
    expect(jobIn(outlookOf({ ownJobs: [job] }, two), 'bed').startBySafe).toBe('2027-04-06');
  });

  it('names it for as many years as a household calls nearly always', () => {
    const tables = structuredClone(foreseen);
    Object.assign(tables.judgements.work.sureShare, { value: 0.75 });
    const job = { ...outside, notBefore: '2027-04-06' };
    const two = years((year, day) => year < 2012 && '04-07' <= day && day <= '04-12');
    const outlook = outlookOf({ ownJobs: [job], tables }, two);
    // Two of twelve years are fewer than one in four: begin on the due day.
    expect(jobIn(outlook, 'bed').startBySafe).toBe('2027-04-12');
    expect(outlook.sureShare).toBe(0.75);
  });

  it('draws years where the record is shorter than ten, and says so', () => {
    const short = years(() => false).slice(0, 5);
    const outlook = outlookOf({ ownJobs: [outside] }, short);
    expect(outlook).toMatchObject({ years: 100, isMeasured: false });
    const { chance, standardError } = jobIn(outlook, 'bed');
    expect(chance).toBeGreaterThan(0.5);
    expect(chance).toBeLessThan(1);
    expect(standardError).toBeCloseTo(Math.sqrt((chance * (1 - chance)) / 100), 12);
  });

  it('gives the same chances again, and keeps to the forecast in every year', () => {
    const season = newWork({ ownJobs: [{ ...outside, notBefore: '2027-04-05' }] });
    const forecast = Array.from({ length: 8 }, (_, k) => ({
      date: addDays('2027-04-05', k),
      minC: 4,
      maxC: 14,
      rainMm: 12,
    }));
    const wet = { ...season, climate: { ...season.climate, forecast }, history: [] };
    const outlook = workOutlookOf(wet, 40);
    expect(jobIn(outlook, 'bed').chance).toBe(0); // rain is forecast for all its days
    expect(workOutlookOf(wet, 40)).toEqual(outlook);
  });

  it('counts work that asks nothing of a day as sure when there are hours', () => {
    const outlook = outlookOf({ work: [newBatchWork('2027-05-05', '2027-04-05')] });
    const order = outlook.jobs.find(({ key }) => key.includes('price-and-order-feed'))!;
    expect(order).toMatchObject({ chance: 1, standardError: 0, lost: 0 });
    expect(order.suitableDays).toBeUndefined();
  });

  it('expects more workable days in May than in March', () => {
    const { workable } = outlookOf({ today: '2027-03-01' });
    const of = (month: string): number =>
      Math.max(...workable.filter(({ from }) => from.slice(5, 7) === month).map((w) => w.half));
    expect(of('05')).toBeGreaterThan(of('03'));
    workable.forEach(({ tenth, half, ninetieth, days }) => {
      expect(tenth).toBeLessThanOrEqual(half);
      expect(half).toBeLessThanOrEqual(ninetieth);
      expect(ninetieth).toBeLessThanOrEqual(days);
    });
  });

  it('gives frost dates of the measured years', () => {
    const { frost } = outlookOf(
      {},
      years(() => false).map((day) => ({
        ...day,
        minC: day.date.slice(5) === '05-02' ? -1 : 5,
      })),
    );
    const freeze = frost.find(({ thresholdC }) => thresholdC === 0)!;
    expect(freeze).toMatchObject({ basis: 'record', springs: { all: 13, withFrost: 13 } });
    expect(freeze.last).toEqual({ usual: '05-02', safe: '05-02' });
    expect(freeze.first).toBeUndefined();
  });

  it('has the household’s own frost dates, usual or safe, and harder frosts within them', () => {
    for (const frostDatesAre of ['usual', 'safe'] as const) {
      const own = { lastFrost: '05-20', firstFrost: '09-28', frostDatesAre };
      const { frost } = outlookOf({ farm: own });
      const at = (low: number) => frost.find(({ thresholdC }) => thresholdC === low)!;
      expect(at(0)).toMatchObject({
        basis: 'nights',
        last: { [frostDatesAre]: '05-20' },
        first: { [frostDatesAre]: '09-28' },
      });
      for (const kind of ['usual', 'safe'] as const) {
        expect(at(-2.2).last![kind] < at(0).last![kind]).toBe(true);
        expect(at(0).last![kind] < at(2.2).last![kind]).toBe(true);
        expect(at(0).first![kind] < at(-2.2).first![kind]).toBe(true);
        expect(at(2.2).first![kind] < at(0).first![kind]).toBe(true);
      }
    }
  });

  it('tells fewer years in time where forecasts fail, and that part is done all the same', () => {
    const spread = { ...outside, id: 'spread', hours: 6, canBeSpread: true, dueOn: '2027-04-20' };
    const history = years((year, day) => year % 2 === 0 && day !== '04-15');
    const held = outlookOf({ ownJobs: [{ ...outside, dueOn: '2027-04-20' }, spread] }, history);
    const failing = outlookOf({ ownJobs: [outside], tables: real }, history);
    // In six of twelve years one day suits, which is enough for two hours and not for six.
    expect(jobIn(held, 'bed').chance).toBe(1);
    expect(jobIn(held, 'spread')).toMatchObject({ chance: 0.5, lost: 0.5, partly: 0.5 });
    expect(jobIn(held, 'spread').partOfIt).toBeGreaterThan(0.2);
    expect(jobIn(failing, 'bed').chance).toBeLessThan(0.5 + 1e-9);
  });

  it('tells of work that is allowed on a few days how many of them suit, while they are far', () => {
    const few = { ...outside, notBefore: '2027-05-10', dueOn: '2027-05-12' };
    const near = { ...outside, id: 'near', notBefore: '2027-04-08', dueOn: '2027-04-10' };
    const plain = { ...few, id: 'plain', conditions: {} };
    const history = years((_, day) => day === '05-10');
    const outlook = outlookOf({ ownJobs: [few, near, plain] }, history);
    expect(jobIn(outlook, 'bed')).toMatchObject({
      isFewDays: true,
      windowDays: 3,
      suitableDays: { half: 2 },
    });
    expect(jobIn(outlook, 'bed').suitableDays!.share).toBeCloseTo(2 / 3, 12);
    expect(jobIn(outlook, 'near').isFewDays).toBe(false);
    expect(jobIn(outlook, 'plain').isFewDays).toBe(false);
  });

  describe('of work that is unlikely to be done in time', () => {
    const people = [{ id: 'a', name: 'Adult A', away: [], hoursByWeekday: [1, 1, 1, 1, 1, 4, 0] }];
    const dry = years(() => false);
    const inApril = { notBefore: '2027-04-12', dueOn: '2027-04-18', noUseAfter: '2027-04-30' };
    const job = (id: string, more: Parameters<typeof newOwnJob>[0]) =>
      newOwnJob({ id, name: id, canBeSpread: false, conditions: {}, ...inApril, ...more });
    const lacks = (ownJobs: ReturnType<typeof job>[], history = dry) => {
      const found = jobIn(outlookOf({ ownJobs, people }, history), 'it');
      return [found.lacks, found.waitsFor?.name];
    };

    it('says what it lacks: weather, hours, dates, or what is before it', () => {
      const wet = years((year, day) => 2012 < year && '04-11' < day && day < '04-19');
      expect(lacks([job('it', { hours: 1, conditions: { noRain: true } })], wet)[0]).toBe(
        'weather',
      );
      expect(lacks([job('it', { hours: 6 })])).toEqual(['dates', undefined]); // four at most
      const other = job('other', { hours: 4, priority: 'must' });
      expect(lacks([job('it', { hours: 3 }), other])).toEqual(['hours', undefined]);
      const late = job('late', { hours: 3, notBefore: '2027-04-22', dueOn: '2027-05-01' });
      expect(lacks([job('it', { hours: 1, waitsForId: 'late' }), late])[0]).toBe('dates');
      const often = job('often', { hours: 1, conditions: { noRain: true } });
      expect(lacks([job('it', { hours: 1, waitsForId: 'often' }), often], wet)).toEqual([
        'before',
        'often',
      ]);
    });

    it('finds what raises its odds most, by playing the same years again', () => {
      const longer = job('it', { hours: 5, canBeSpread: true, notBefore: '2027-04-17' });
      const alone = jobIn(outlookOf({ ownJobs: [longer], people }, dry), 'it');
      // Four hours on the Saturday and none on the Sunday.
      expect(alone.chance).toBe(0);
      const sure = { chance: 1, gain: 1, standardError: 0 };
      const helper = { kind: 'helper', date: '2027-04-17', ...sure };
      expect(alone.better).toContainEqual(helper);
      expect(alone.better).toContainEqual({
        ...{ kind: 'hour-a-week', personId: 'a', name: 'Adult A' },
        ...sure,
      });
      const rival = job('rival', { hours: 4, dueOn: '2027-04-17', notBefore: '2027-04-17' });
      const ownJobs = [rival, { ...longer, hours: 4 }];
      const { chance, better } = jobIn(outlookOf({ ownJobs, people }, dry), 'it');
      expect(chance).toBe(0);
      expect(better).toContainEqual(helper);
      expect(better).toContainEqual({
        ...{ kind: 'without', key: 'own/rival', name: 'rival', date: '2027-04-17' },
        ...sure,
      });
    });
  });

  it('is told how far it is', () => {
    const told: number[] = [];
    const request = { ...newWork({ ownJobs: [outside] }), history: [] };
    workOutlookOf({ ...request, onPlayed: (share) => told.push(share) }, 10);
    expect(told.length).toBeGreaterThan(1);
    expect(told).toEqual([...told].sort((a, b) => a - b));
    expect(told.at(-1)).toBeLessThanOrEqual(1);
  });
});
