/** Chances of the sample household’s work over HTTP, and how they hold in years that were not played. */
import 'reflect-metadata';
import { performance } from 'node:perf_hooks';
import { clearInterval, setInterval } from 'node:timers';

const dist = (path) => new URL(`../../dist/${path}`, import.meta.url).href;
const { planAnimals } = await import(dist('shared/plan/farm/animal-plans.js'));
const { workOfFarm } = await import(dist('shared/plan/farm/work-of-farm.js'));
const { workOutlookOf } = await import(dist('shared/plan/work/work-outlook.js'));
const { loadTables } = await import(dist('src/reference/load-tables.js'));

const PROGRESS_MS = 100;
/** Jobs by the chance that is told of them. */
const BANDS = [
  [0, 0.3],
  [0.3, 0.7],
  [0.7, 0.9],
  [0.9, 1.01],
];

/** @param print prints one figure: name, value, unit, number of runs */
export async function benchChances(url, print) {
  const json = async (path, init) => (await fetch(`${url}/api/farms${path}`, init)).json();
  const { id } = await json('/sample', { method: 'POST' });
  const seen = new Set();
  const polling = setInterval(
    () => void json(`/${id}/work/outlook/progress`).then(({ played }) => seen.add(played)),
    PROGRESS_MS,
  );
  const start = performance.now();
  const outlook = await json(`/${id}/work/outlook`);
  const ms = performance.now() - start;
  clearInterval(polling);
  const errors = outlook.jobs.map(({ standardError }) => standardError);
  const helped = outlook.jobs.filter(({ better }) => 0 < better.length);
  print('chances of the sample household, opened cold, and what would raise them', ms, 'ms', 1);
  print('chances, pieces of work', outlook.jobs.length, 'jobs', outlook.years);
  print('chances, largest standard error', Math.max(...errors), 'share', outlook.years);
  print('chances, unlikely work for which something helps', helped.length, 'jobs', outlook.years);
  print('chances, times that their progress was seen to move', seen.size, 'times', 1);
  heldBack(await json(`/${id}/picture`), print);
}

/** Chances told from some drawn years, counted in as many others. */
function heldBack(picture, print) {
  const tables = loadTables();
  // What would help is not asked: no work is called unlikely.
  tables.judgements.work.likelyShare.value = 0;
  const work = workOfFarm(picture, tables, planAnimals(picture, tables));
  const jobsOf = (seed) => workOutlookOf({ ...work, history: [], seed }).jobs;
  const start = performance.now();
  const told = jobsOf(1);
  print('chances alone, in the thread that asks', performance.now() - start, 'ms', 1);
  const counted = new Map(jobsOf(2).map(({ key, chance }) => [key, chance]));
  for (const [from, to] of BANDS) {
    const jobs = told.filter(({ chance }) => from <= chance && chance < to);
    const mean = jobs.reduce((sum, { key }) => sum + counted.get(key), 0) / jobs.length;
    const name = `chances, years not played in which work is in time, told ${from} to ${Math.min(1, to)}`;
    print(name, mean, 'share', jobs.length);
  }
}
