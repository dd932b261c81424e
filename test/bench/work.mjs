/** Invented work of a household: jobs, people and days as many as an issue of speed asks for. */
import 'reflect-metadata';
import { readFileSync } from 'node:fs';
import { performance } from 'node:perf_hooks';
import { parse } from 'jsonc-parser';

const dist = (path) => new URL(`../../dist/${path}`, import.meta.url).href;
const { workNetwork } = await import(dist('shared/schedule/work-network.js'));
const { chancesOverYears } = await import(dist('shared/schedule/work-years.js'));
const { workOutlook } = await import(dist('shared/plan/farm/work-of-farm.js'));
const { planAnimals } = await import(dist('shared/plan/farm/animal-plans.js'));
const { pictureOfDocument } = await import(dist('src/picture/farm-document.js'));
const { loadTables } = await import(dist('src/reference/load-tables.js'));
const { seededRandom } = await import(dist('shared/schedule/random.js'));

const DAYS = 120;
const JOBS = 150;
const YEARS = 1000;
const SURE_SHARE = 0.9;

/** @param print prints one figure: name, value, unit, number of runs */
export function benchWork(print) {
  const problem = invented(seededRandom(1));
  const timed = (work) => {
    const start = performance.now();
    const value = work();
    return { value, ms: performance.now() - start };
  };
  const years = inventedYears(problem, seededRandom(2));
  const { order } = workNetwork(problem.jobs);
  const chances = timed(() => chancesOverYears(problem, order, years, SURE_SHARE));
  print('work, 1,000 years of days that suit, one core', chances.ms, 'ms', YEARS);
  const { picture, tables, animals } = household();
  const outlook = timed(() => workOutlook(picture, tables, animals, []));
  print('work, 1,000 years of weather of the example household, one core', outlook.ms, 'ms', YEARS);
}

/** The example household with its weather, as the terminal plans it. */
function household() {
  const document = parse(
    readFileSync(new URL('../support/examples/household.jsonc', import.meta.url), 'utf8'),
    undefined,
    { allowTrailingComma: true },
  );
  const tables = loadTables();
  const picture = pictureOfDocument(document, tables, 0);
  return { picture, tables, animals: planAnimals(picture, tables) };
}

function invented(random) {
  const whole = (below) => Math.floor(random() * below);
  const dry = dryDays(random);
  const workers = [0, 1, 2].map((w) => {
    const minutes = Int32Array.from({ length: DAYS }, (_, day) =>
      w === 1 && 40 < day && day < 45 ? 0 : 4 < day % 7 ? 360 : 120,
    );
    return { minutes, lightMinutes: minutes.map((m) => Math.min(m, 200)) };
  });
  const jobs = Array.from({ length: JOBS }, (_, i) => {
    const dueDay = 10 + whole(105);
    return {
      id: `job ${i}`,
      minutes: 15 * (1 + whole(24)),
      peopleNeeded: random() < 0.1 ? 2 : 1,
      able: random() < 0.3 ? [0, 1] : [0, 1, 2],
      ...(random() < 0.5 ? { smallestPieceMinutes: 60 } : {}),
      fromDay: Math.max(0, dueDay - 5 - whole(20)),
      dueDay,
      untilDay: Math.min(DAYS - 1, dueDay + whole(20)),
      ...(random() < 0.4 ? { suits: dry } : {}),
      waitsFor: 3 < i && random() < 0.4 ? [{ job: whole(i), days: whole(3) }] : [],
      lateCostPerDay: 1 + whole(10),
      lostCost: 50 + whole(500),
    };
  });
  return { days: DAYS, workers, jobs };
}

function inventedYears({ jobs }, random) {
  return Array.from({ length: YEARS }, () => {
    const dry = dryDays(random);
    return jobs.map((job) => (job.suits ? dry : undefined));
  });
}

const dryDays = (random) => Uint8Array.from({ length: DAYS }, () => (random() < 0.25 ? 1 : 0));
