import { beforeAll, describe, expect, it, jest } from '@jest/globals';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { addDays } from '../../shared/calendar/plain-date.js';
import { withBatch, type FarmPicture } from '../../shared/farm/picture.js';
import { planAnimals, type AnimalPlans } from '../../shared/plan/farm/animal-plans.js';
import { batchCost } from '../../shared/plan/cost/batch-cost.js';
import { compareWork, planWork } from '../../shared/plan/farm/work-of-farm.js';
import { stopsOn } from '../../shared/plan/handover/sheet-stops.js';
import { sitterSheet } from '../../shared/plan/handover/sitter-sheet.js';
import { planPasture, type PasturePlan } from '../../shared/plan/pasture/pasture-plan.js';
import type { WorkPlan } from '../../shared/plan/work/planned-work.js';
import { pictureOfFile } from '../../src/cli/farm-file.js';
import { loadTables, PROJECT_ROOT, SEEDS_DIR } from '../../src/reference/load-tables.js';

jest.setTimeout(120_000);

/** The rows of the tables under “One result”, by their first cell. */
function rowsOfReadme(): ReadonlyMap<string, string> {
  const readme = readFileSync(join(PROJECT_ROOT, 'README.md'), 'utf8');
  const part = readme.slice(readme.indexOf('## One result'), readme.indexOf('## The terminal'));
  return new Map(
    part
      .split('\n')
      .filter((line) => line.startsWith('| ') && !/^\|[\s|-]+$/.test(line))
      .map((line) => line.split('|').map((cell) => cell.trim()))
      .map(([, name, ...cells]) => [name!, cells.join(' | ')]),
  );
}

const MONTHS = ['April', 'May', 'June', 'July', 'August', 'September'];
/** 1 June, as the README writes dates. */
const day = (date: unknown): string => {
  const [, month, of] = String(date).split('-').map(Number);
  return `${of} ${MONTHS[month! - 4]}`;
};
const whole = (value: number): string => Math.round(value).toLocaleString('en-US');

describe('the figures of the README', () => {
  const rows = rowsOfReadme();
  const tables = loadTables();
  let picture: FarmPicture;
  let animals: AnimalPlans;
  let pasture: PasturePlan;
  let work: WorkPlan;

  beforeAll(() => {
    picture = pictureOfFile(join(SEEDS_DIR, 'farm.example.jsonc'), tables);
    animals = planAnimals(picture, tables);
    pasture = animals.pasture!;
    work = planWork(picture, tables, animals);
  });

  const expectRow = (name: string, ...parts: readonly string[]): void => {
    for (const part of parts) expect(rows.get(name)).toContain(part);
  };

  it('are those of its costs', () => {
    const { breakEven, stop } = batchCost(picture, tables, picture.batches[0]!.id);
    const dollars = (minor: number): string => `${(minor / 100).toFixed(2)} dollars a kilogram`;
    const { best, bestAge, eachAtBest, goodFrom, goodTo } = stop!.stop!;
    expectRow(
      'Best day to process',
      `${day(best.value)}, at ${bestAge.value} days`,
      `${dollars(eachAtBest.value)} dressed`,
      `from ${String(day(goodFrom.value)).split(' ')[0]} to ${day(goodTo.value)}`,
    );
    expectRow('It must bring', `${dollars(breakEven.mustBring[1]!.withoutHours.value)} dressed`);
  });

  it('are those of the batch', () => {
    const { name, plan } = animals.batches[0]!;
    expect(name).toBe('Spring meat birds');
    const { birds, heat, outdoors, feed, leaving } = plan;
    const ordered = birds.orderSizes.map(({ value }) => value);
    expectRow('Birds to order', `${birds.toOrder.value} |`, '8 of 10');
    expectRow('Birds to order', `${ordered[0]} in 5, ${ordered.at(-1)} in 9`);
    const watts = 10 * Math.round(heat!.need.value / 10);
    expect(heat!.heatersNeeded.value).toBe(3);
    expectRow('Heat on the coldest expected night', `about ${watts} W, three 250 W lamps`);
    const out = `${day(outdoors.moveOut!.value)}, at ${outdoors.ageAtMove!.value} days`;
    expectRow('Out of the brooder', out);
    const bags = feed.phases.reduce((sum, phase) => sum + phase.bags.value, 0);
    expectRow('Feed to processing', `${whole(feed.total.value)} kg in ${bags} bags`);
    const { on, dressedAll, freezerNeed } = leaving!;
    expectRow('Processing', `${day(on.value)} |`, `${birds.atEnd.value} birds`);
    expectRow('Processing', `${whole(dressedAll.value)} kg dressed`);
    expectRow('Processing', `${whole(freezerNeed.value)} L of freezer`);
  });

  it('are those of the grass', () => {
    const { keyDates, moves, hay } = pasture;
    const [herd] = keyDates.herds;
    const first = pasture.paddocks.find(({ id }) => id === moves[0]!.paddockId)!;
    expectRow('Turn-out', `${day(herd!.turnOut!.value)} |`, `${first.name} first`);
    const stays = moves.map(({ days }) => days);
    expectRow('Moves', `${moves.length}, of ${Math.min(...stays)} to ${Math.max(...stays)} days`);
    expectRow('Feed beside grass', `${whole(hay.all.value)} kg of dry matter`);
    expectRow('Feed beside grass', `${hay.bales.value} round bales`);
  });

  it('are those of a dry late summer', () => {
    const rainShareByMonth = Array.from({ length: 12 }, (_, k) => (k === 6 || k === 7 ? 0.1 : 1));
    const dry = planPasture(
      { ...picture, pastureChoices: { ...picture.pastureChoices, rainShareByMonth } },
      tables,
    );
    const more = dry.hay.all.value - pasture.hay.all.value;
    const toBuy = dry.hay.toBuy.value - pasture.hay.toBuy.value;
    expectRow(
      'July and August at a tenth',
      `${whole(more)} kg more feed, ${whole(toBuy)} kg more hay to buy`,
    );
  });

  it('are those of the work', () => {
    const { jobs } = work;
    const spare = jobs.filter(({ spareDays }) => 0 < spareDays).length;
    const unfit = jobs.filter(({ pieces }) => pieces.length === 0).length;
    expectRow('Work', `${jobs.length} tasks and jobs, ${spare} with days to spare`);
    expectRow('Work', `no time for ${unfit} of them`);
  });

  it('are those of chicks a week later', () => {
    const [batch] = picture.batches;
    const moved = withBatch(picture, { ...batch!, arrivalDate: addDays(batch!.arrivalDate, 7) });
    const then = { picture: moved, animals: planAnimals(moved, tables, pasture) };
    const { changes, nowFits, noLongerFits } = compareWork(tables, { picture, animals }, then);
    const row = 'Meat chicks a week later';
    expectRow(row, `${changes.length} dates change`);
    expectRow(row, `time for ${nowFits.length} more, for ${noLongerFits.length} no longer`);
  });

  it('are those of the days away', () => {
    const { pages } = sitterSheet(
      picture.handovers[0]!,
      work,
      stopsOn(picture, tables, animals, picture.handovers[0]!),
      { people: picture.people, tables },
    );
    expect(pages).toHaveLength(4);
    expectRow('Four days with one person', 'four printed pages');
  });
});
