import { describe, expect, it } from '@jest/globals';
import { addDays } from '../../../shared/calendar/plain-date.js';
import {
  workOutlookOf,
  type OutlookRequest,
  type WorkOutlook,
} from '../../../shared/plan/work/work-outlook.js';
import type { DailyWeather } from '../../../shared/weather/climate.js';
import { tables as real } from '../../support/factories.js';
import { newBatchWork, newOwnJob, newWork } from '../../support/season-factories.js';

type More = Parameters<typeof newWork>[0];
const outlookOf = (more: More, history: OutlookRequest['history'] = []): WorkOutlook =>
  workOutlookOf({ ...newWork(more), history }, 400);
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
    const tables = structuredClone(real);
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
    expect(outlook).toMatchObject({ years: 400, isMeasured: false });
    const { chance, standardError } = jobIn(outlook, 'bed');
    expect(chance).toBeGreaterThan(0.5);
    expect(chance).toBeLessThan(1);
    expect(standardError).toBeCloseTo(Math.sqrt((chance * (1 - chance)) / 400), 12);
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
    const outlook = workOutlookOf(wet, 200);
    expect(jobIn(outlook, 'bed').chance).toBe(0); // rain is forecast for all its days
    expect(workOutlookOf(wet, 200)).toEqual(outlook);
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
});
