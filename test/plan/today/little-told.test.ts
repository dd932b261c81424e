import { describe, expect, it } from '@jest/globals';
import { parse } from 'jsonc-parser';
import { planAnimals } from '../../../shared/plan/farm/animal-plans.js';
import { workOfFarm } from '../../../shared/plan/farm/work-of-farm.js';
import { planPasture } from '../../../shared/plan/pasture/pasture-plan.js';
import type { BatchLine } from '../../../shared/plan/today/batch-line.js';
import { todayOf } from '../../../shared/plan/today/today.js';
import { workPlanOf } from '../../../shared/plan/work/work-plan.js';
import type { FarmDocumentDto } from '../../../src/documents/farm-document.dto.js';
import { pictureOfDocument } from '../../../src/picture/farm-document.js';
import { readSeed } from '../../../src/reference/load-tables.js';
import { tables } from '../../support/factories.js';

const example = parse(readSeed('farm.example.jsonc'), undefined, {
  allowTrailingComma: true,
}) as FarmDocumentDto;
const meat = example.batches!.find(({ id }) => id === 'meat')!;

/** Meat birds of one day on the example farm, of which nobody tells anything. */
function on(today: string, arrivalDate: string) {
  const document = { ...example, batches: [{ ...meat, arrivalDate }], today };
  const picture = pictureOfDocument(document, tables, 0);
  const animals = planAnimals(picture, tables, planPasture(picture, tables));
  const { keep: _keep, ...work } = workPlanOf(workOfFarm(picture, tables, animals), 20);
  const day = todayOf(picture, tables, animals, work);
  return { day, line: day.animals.find((each): each is BatchLine => each.id === 'meat') };
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
