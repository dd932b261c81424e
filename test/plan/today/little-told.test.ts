import { describe, expect, it } from '@jest/globals';
import { parse } from 'jsonc-parser';
import type { FarmPicture } from '../../../shared/farm/picture.js';
import { planAnimals } from '../../../shared/plan/farm/animal-plans.js';
import { workOfFarm } from '../../../shared/plan/farm/work-of-farm.js';
import { yearOfFarm } from '../../../shared/plan/farm/year-of-farm.js';
import { planPasture } from '../../../shared/plan/pasture/pasture-plan.js';
import type { BatchLine } from '../../../shared/plan/today/batch-line.js';
import { todayOf } from '../../../shared/plan/today/today.js';
import { workPlanOf } from '../../../shared/plan/work/work-plan.js';
import type { FarmDocumentDto } from '../../../src/documents/farm-document.dto.js';
import { pictureOfDocument } from '../../../src/picture/farm-document.js';
import { ofAnimal } from '../../../src/web/tell/what-to-tell.js';
import { readSeed } from '../../../src/reference/load-tables.js';
import { tables } from '../../support/factories.js';

const example = parse(readSeed('farm.example.jsonc'), undefined, {
  allowTrailingComma: true,
}) as FarmDocumentDto;
const meat = example.batches!.find(({ id }) => id === 'meat')!;

/** Meat birds of one day on the example farm, of which nobody tells anything. */
function on(today: string, arrivalDate: string, told: Partial<FarmPicture> = {}) {
  const document = { ...example, batches: [{ ...meat, arrivalDate }], today };
  const picture = { ...pictureOfDocument(document, tables, 0), ...told };
  const animals = planAnimals(picture, tables, planPasture(picture, tables));
  const { keep: _keep, ...work } = workPlanOf(workOfFarm(picture, tables, animals), 20);
  const day = todayOf(picture, tables, animals, work);
  const year = yearOfFarm(picture, tables, { animals, work, history: [] });
  const line = day.animals.find((each): each is BatchLine => each.id === 'meat');
  const { plan } = animals.batches.find(({ id }) => id === 'meat') ?? {};
  return { day, line, work, plan: plan!, year: year.rows.find(({ id }) => id === 'meat') };
}

describe('chicks of August that nobody has ordered', () => {
  const AUGUST = '2027-08-11';

  it.each(['2027-05-20', '2027-06-10', '2027-07-01'])('are for today, on %s', (today) => {
    const { day } = on(today, AUGUST);
    const asked = day.attention.find(({ key }) => key.includes('order-chicks'));
    expect(asked?.words).toMatch(/^order \d+ chicks today: the day for it was Wed, May 19$/);
    expect(asked?.text).toContain('The last day for it is Wed, Jul 14 (');
    expect(day.jobs.find(({ key }) => key.includes('order-chicks'))).toMatchObject({
      state: 'open',
    });
    expect(day.keyDates.filter(({ key }) => key.includes('order-chicks'))).toEqual([]);
  });

  it('are not asked for before their day, nor in today’s work on a day without post', () => {
    expect(
      on('2027-05-18', AUGUST)
        .day.attention.map(({ key }) => key)
        .join(),
    ).not.toContain('order-chicks');
    const sunday = on('2027-05-30', AUGUST).day;
    expect(sunday.jobs.map(({ key }) => key).join()).not.toContain('order-chicks');
    expect(sunday.attention.map(({ key }) => key).join()).toContain('order-chicks');
  });
});

describe('chicks that nobody told to have ordered, four weeks before they come', () => {
  const AUGUST = '2027-08-11';

  it('are asked for before anything else, with one touch, until it is told', () => {
    const { day } = on('2027-07-15', AUGUST);
    expect(day.attention[0]).toMatchObject({
      level: 'stop',
      words: expect.stringMatching(/^are the \d+ chicks of Wed, Aug 11 ordered\?$/),
      text: expect.stringContaining('the last day for it was Wed, Jul 14. If they are not'),
    });
    const key = day.attention[0]!.ordered!;
    expect(key).toContain('order-chicks');
    const asked = (told: Partial<FarmPicture>): boolean =>
      on('2027-07-20', AUGUST, told).day.attention.some(({ ordered }) => ordered === key);
    expect(asked({})).toBe(true);
    expect(asked({ progress: [{ key, doneOn: '2027-07-16' }] })).toBe(false);
  });
});

describe('chicks of which nothing was told since weeks after their last day', () => {
  const APRIL = '2027-04-07';
  const then = on('2027-07-20', APRIL);

  it('are asked about once, with touches, and nothing else is asked of them', () => {
    expect(then.line).toMatchObject({ stage: 'coming', wasToCome: APRIL });
    const ofThem = then.day.attention.filter(({ of }) => of === meat.name);
    expect(ofThem.map(({ words, came }) => [words, came?.on])).toEqual([
      ['have they come? They were to on Wed, Apr 7', APRIL],
    ]);
    expect(ofThem[0]!.came!.birds).toBeGreaterThan(meat.wantedBirds - 1);
    expect(then.work.jobs.filter(({ belongsTo }) => belongsTo?.id === 'meat')).toEqual([]);
    expect(ofAnimal(then.line!, 'us').map(({ kind, on: day }) => [kind, day])).toEqual([
      ['arrived', APRIL],
      ['note', undefined],
    ]);
  });

  it('are not on the year, and those that were told to be processed are', () => {
    expect(then.year).toBeUndefined();
    const birds = 50;
    const headChanges = [
      { batchId: 'meat', change: 'arrived', date: APRIL, birds },
      { batchId: 'meat', change: 'processed', date: '2027-06-01', birds },
    ] as const;
    const { line, year } = on('2027-07-20', APRIL, { headChanges });
    expect(line).toBeUndefined();
    expect(year?.dates).toContainEqual({ on: '2027-06-01', words: 'processing' });
    const [came] = headChanges;
    const half = (date: string, change: 'processed' | 'died') =>
      ({ batchId: 'meat', change, date, birds: 25 }) as const;
    const both = on('2027-07-20', APRIL, {
      headChanges: [came, half('2027-06-01', 'processed'), half('2027-06-08', 'processed')],
    }).year!;
    const processing = ({ dates }: typeof both): string[] =>
      dates.filter(({ words }) => words === 'processing').map((each) => each.on);
    expect(processing(both)).toEqual(['2027-06-01', '2027-06-08']);
    expect(both.bars.find(({ kind }) => kind === 'freezer')?.from).toBe('2027-06-01');
    const lost = [came, half('2027-06-01', 'processed'), half('2027-06-08', 'died')];
    expect(processing(on('2027-07-20', APRIL, { headChanges: lost }).year!)).toEqual([
      '2027-06-01',
    ]);
  });

  it('have work and questions again once they are told to have come, or a job of theirs as done', () => {
    const came = { batchId: 'meat', change: 'arrived', date: APRIL, birds: 50 } as const;
    const left = on('2027-07-20', APRIL, { headChanges: [came] });
    expect(left.line?.wasToLeave).toBeDefined();
    expect(left.day.attention.map(({ key }) => key)).toContain('left/meat');
    const { tasks } = on('2027-06-01', APRIL).plan.tasks;
    const done = tasks.find(({ start }) => APRIL < start)!;
    const progress = [{ key: `batch/meat/${done.id}`, doneOn: done.start }];
    expect(on('2027-07-20', APRIL, { progress }).line).toBeUndefined();
  });
});

describe('chicks of which nobody told that they came', () => {
  it('are asked about until it is told, or until it is asked whether they left', () => {
    const two = on('2027-04-20', '2027-04-07');
    expect(two.line).toMatchObject({ wasToCome: '2027-04-07' });
    expect(two.day.attention.find(({ key }) => key === 'came/meat')?.words).toBe(
      'have they come? They were to on Wed, Apr 7',
    );
    const { line, day } = on('2027-06-10', '2027-04-07');
    expect(line?.wasToLeave).toBeDefined();
    expect(day.attention.map(({ key }) => key)).not.toContain('came/meat');
  });
});
