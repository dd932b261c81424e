import { describe, expect, it } from '@jest/globals';
import { parse } from 'jsonc-parser';
import { addDays, daysBetween } from '../../../shared/calendar/plain-date.js';
import type { FarmPicture } from '../../../shared/farm/picture.js';
import { stopsOn } from '../../../shared/plan/handover/sheet-stops.js';
import { boughtInYear } from '../../../shared/plan/feed-year/trips-ahead.js';
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

const TRIES = 20;
const MEAT = 'meat';

function on(today: string, more: Partial<FarmPicture> = {}) {
  const picture = { ...pictureOfDocument({ ...example, today }, tables, 0), ...more };
  const animals = planAnimals(picture, tables, planPasture(picture, tables));
  const { keep: _keep, ...work } = workPlanOf(workOfFarm(picture, tables, animals), TRIES);
  const day = todayOf(picture, tables, animals, work);
  const plan = animals.batches.find(({ id }) => id === MEAT)?.plan;
  const line = day.animals.find((each): each is BatchLine => each.id === MEAT);
  return { picture, animals, day, work, line, plan };
}

const asked = ({ day }: ReturnType<typeof on>): boolean =>
  day.attention.some(({ key }) => key === `left/${MEAT}`);
const jobsOfProcessing = ({ work, plan }: ReturnType<typeof on>): string[] => {
  const ids = plan!.tasks.tasks
    .filter(({ event }) => event === 'processing')
    .map(({ id }) => `batch/${MEAT}/${id}`);
  return work.jobs.filter(({ key }) => ids.includes(key)).map(({ name }) => name);
};

const { plan: planned, line: before } = on('2027-06-10');
const leaves = String(planned!.leaving!.on.value);
const ARRIVED = planned!.arrivalDate;
const LAST = on(addDays(leaves, -1)).line!;

describe('meat birds of which nobody told that they left', () => {
  it.each([1, 3, 14])('are fed, watered and asked about %i days after their day', (days) => {
    const today = addDays(leaves, days);
    const told = on(today);
    expect(told.line).toMatchObject({ wasToLeave: leaves, stage: 'out' });
    expect(told.line!.feed!.amount.value).toBeCloseTo(Number(LAST.feed!.amount.value), 6);
    expect(told.line!.water!.value).toBeCloseTo(Number(LAST.water!.value), 6);
    // They weigh what the last of them did on their day, not what the first that were to go did.
    expect(told.line!.weighs).toEqual(on(leaves).line!.weighs);
    expect(asked(told)).toBe(true);
    expect(told.day.chores.some(({ of }) => of === told.line!.name)).toBe(true);
    // Nobody is told to kill them on an evening alone: on which day is asked for.
    expect(jobsOfProcessing(told)).toEqual([]);
  });

  it.each([1, 3, 14])(
    'are on the sitter’s sheet %i days after it, fed as on the page of the day',
    (days) => {
      const today = addDays(leaves, days);
      const { picture, animals, line } = on(today);
      const stop = stopsOn(picture, tables, animals, { from: today, to: today })(today).find(
        ({ id }) => id === MEAT,
      );
      expect(stop).toBeDefined();
      const fed = stop!.amounts.find(({ label }) => label === line!.feed!.amount.label)!;
      expect(fed.value).toBe(line!.feed!.amount.value);
    },
  );

  it('are fed by what is fetched too, as on the page of the day, until it is told', () => {
    const today = addDays(leaves, 1);
    const neededKg = (more: Partial<FarmPicture>) => {
      const { picture, animals } = on(today, more);
      const { problem } = boughtInYear(picture, tables, animals, []).year;
      return problem.items.reduce((sum, { needKg }) => sum + needKg.reduce((a, b) => a + b, 0), 0);
    };
    const progress = planned!.tasks.tasks
      .filter(({ templateId }) => templateId.includes('kill-scald-pluck-eviscerate'))
      .map(({ id }) => ({ key: `batch/${MEAT}/${id}`, doneOn: leaves }));
    const aDay = Number(on(today).line!.feed!.amount.value);
    // From today to two weeks after their day, the first days from the store or not.
    const more = neededKg({}) - neededKg({ progress });
    expect(more / aDay).toBeCloseTo(14, 3);
  });

  it('are on no sheet before they come, nor once they are taken to have left', () => {
    for (const today of [addDays(ARRIVED, -3), addDays(leaves, 15)]) {
      const { picture, animals } = on(today);
      const stops = stopsOn(picture, tables, animals, { from: today, to: today })(today);
      expect(stops.some(({ id }) => id === MEAT)).toBe(false);
    }
  });

  it('are asked whether they came two weeks after it, and not asked about before it', () => {
    expect(on(addDays(leaves, 15)).line).toMatchObject({ stage: 'coming', wasToCome: ARRIVED });
    expect(before!.wasToLeave).toBeUndefined();
    expect(on(leaves).line!.wasToLeave).toBeUndefined();
  });

  it('stay until it is told, where they were counted when they came', () => {
    const came = { id: 'a', batchId: MEAT, date: ARRIVED, change: 'arrived' as const, birds: 44 };
    const late = on(addDays(leaves, 17), { headChanges: [came] });
    // Those counted may go on another day than those planned.
    expect(late.line).toMatchObject({ wasToLeave: late.plan!.leaving!.on.value, stage: 'out' });
    expect(asked(late)).toBe(true);
    expect(jobsOfProcessing(late)).toEqual([]);
  });

  it('are gone once their killing is ticked off on every day of it', () => {
    const keys = planned!.tasks.tasks
      .filter(({ templateId }) => templateId.includes('kill-scald-pluck-eviscerate'))
      .map(({ id }) => `batch/${MEAT}/${id}`);
    const ticked = (some: readonly string[]) =>
      on(addDays(leaves, 1), { progress: some.map((key) => ({ key, doneOn: leaves })) });
    expect(1 < keys.length).toBe(true);
    expect(asked(ticked(keys.slice(1)))).toBe(true);
    const told = ticked(keys);
    expect(told.line).toBeUndefined();
    expect(asked(told)).toBe(false);
    expect(jobsOfProcessing(told).length).toBeGreaterThan(0);
  });

  it('are asked for their count once their killing is ticked off, until it is told', () => {
    const progress = planned!.tasks.tasks
      .filter(({ templateId }) => templateId.includes('kill-scald-pluck-eviscerate'))
      .map(({ id }) => ({ key: `batch/${MEAT}/${id}`, doneOn: leaves }));
    const counts = (days: number, more: Partial<FarmPicture> = {}) =>
      on(addDays(leaves, days), { progress, ...more }).day.attention.filter(
        ({ key }) => key === `uncounted/${MEAT}`,
      );
    const [count] = counts(1);
    expect(count).toMatchObject({ level: 'act', uncounted: { on: leaves, line: { id: MEAT } } });
    expect(count!.words).toMatch(/^processed on .+: how many were they\?$/);
    expect(on(leaves).day.attention.map(({ key }) => key)).not.toContain(`uncounted/${MEAT}`);
    expect(counts(15)).toEqual([]);
    // Three of the 44 were lost, and nobody told that either.
    for (const processed of [44, 41]) {
      const told = [
        { id: 'a', batchId: MEAT, date: ARRIVED, change: 'arrived', birds: 44 },
        { id: 'b', batchId: MEAT, date: leaves, change: 'processed', birds: processed },
      ] as FarmPicture['headChanges'];
      expect([processed, counts(1, { headChanges: told })]).toEqual([processed, []]);
      expect([processed, counts(1, { headChanges: told.slice(1) })]).toEqual([processed, []]);
    }
  });

  it('are gone once the last of them are told to be processed', () => {
    const today = addDays(leaves, 1);
    const birds = 44;
    const told = (processed: number) =>
      on(today, {
        headChanges: [
          { id: 'a', batchId: MEAT, date: ARRIVED, change: 'arrived', birds },
          { id: 'b', batchId: MEAT, date: leaves, change: 'processed', birds: processed },
        ] as FarmPicture['headChanges'],
      });
    const gone = told(birds);
    expect(gone.line).toBeUndefined();
    expect(asked(gone)).toBe(false);
    const some = told(birds - 10);
    // The others go on the next day that can be: nothing has to be asked.
    expect(some.line!.next!.on >= addDays(leaves, 1)).toBe(true);
    expect(Math.round(Number(some.line!.head.value))).toBe(10);
  });

  it('are all kept and asked about day by day, where they were to go on several', () => {
    const days = planned!.leaving!.processingDays;
    expect(1 < days.length).toBe(true);
    const first = days[0]!;
    const all = on(first.on).line!.head.value;
    for (const today of [addDays(first.on, 1), addDays(leaves, 5)]) {
      const { line, day } = on(today);
      expect(line!.head.value).toBeCloseTo(Number(all), 6);
      expect(day.attention.find(({ key }) => key === `left/${MEAT}/${first.on}`)?.words).toMatch(
        new RegExp(`^${first.birds} were to be processed on .+: were they\\?$`),
      );
    }
    // Between the days they go on growing, told or not.
    const weights = days.map((each) => on(each.on).line!.weighs!.liveKg!);
    expect([...weights].sort((a, b) => a - b)).toEqual(weights);
    expect(new Set(weights).size).toBe(days.length);
    const grown = planned!.daily.find(({ id }) => id === 'weight-mean')!.values;
    const next = addDays(first.on, 1);
    expect(on(next).line!.weighs!.liveKg).toBe(grown[daysBetween(ARRIVED, next)]);
    const killed = planned!.tasks.tasks.find(
      ({ templateId, start }) =>
        templateId.includes('kill-scald-pluck-eviscerate') && start === first.on,
    )!;
    const key = `batch/${MEAT}/${killed.id}`;
    const ticked = on(addDays(first.on, 1), { progress: [{ key, doneOn: first.on }] });
    expect(Number(ticked.line!.head.value)).toBeLessThan(Number(all));
    expect(ticked.day.attention.map((each) => each.key)).not.toContain(`left/${MEAT}/${first.on}`);
  });
});
