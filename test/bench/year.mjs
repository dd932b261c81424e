/** The year of a farm: put together from its plans, and an arrival that slides along it. */
import 'reflect-metadata';
import { readFileSync } from 'node:fs';
import { performance } from 'node:perf_hooks';
import { parse } from 'jsonc-parser';

const dist = (path) => new URL(`../../dist/${path}`, import.meta.url).href;
const { addDays } = await import(dist('shared/calendar/plain-date.js'));
const { planAnimals } = await import(dist('shared/plan/farm/animal-plans.js'));
const { planWork } = await import(dist('shared/plan/farm/work-of-farm.js'));
const { yearOfFarm } = await import(dist('shared/plan/farm/year-of-farm.js'));
const { slidPlan } = await import(dist('shared/plan/year/slid-plan.js'));
const { pictureOfDocument } = await import(dist('src/picture/farm-document.js'));
const { loadTables } = await import(dist('src/reference/load-tables.js'));

const DAYS = 240;
const RUNS = 21;

/** @param print prints one figure: name, value, unit, number of runs */
export function benchYear(print) {
  const tables = loadTables();
  const file = new URL('../../seeds/farm.example.jsonc', import.meta.url);
  const picture = pictureOfDocument(parse(readFileSync(file, 'utf8')), tables, Date.now());
  const animals = planAnimals(picture, tables);
  const work = planWork(picture, tables, animals);
  const put = timesOf(RUNS, () => yearOfFarm(picture, tables, { animals, work, history: [] }));
  print('year put together from the plans there are', put[Math.floor(RUNS / 2)], 'ms', RUNS);
  // Every day is another plan, as under a hand that drags; the first makes the plan as it is, too.
  const [batch] = picture.batches;
  const slid = timesOf(DAYS, (day) => {
    const arrivalDate = addDays(batch.arrivalDate, (day % 120) - 10);
    slidPlan({ picture, tables }, { batchId: batch.id, arrivalDate });
  });
  print('slid arrival planned again, with what it does', slid[DAYS / 2], 'ms', DAYS);
  print('slid arrival planned again, 95 of 100', slid[Math.floor(0.95 * DAYS)], 'ms', DAYS);
}

/** Times of some runs, the shortest first. */
function timesOf(runs, work) {
  return Array.from({ length: runs }, (_, run) => {
    const start = performance.now();
    work(run);
    return performance.now() - start;
  }).sort((a, b) => a - b);
}
