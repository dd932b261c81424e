/**
 * Prints one JSON line for each figure: name, value, unit, n. Medians over many runs.
 * Needs `npm run build` once. Nothing here is a test: speed is measured, never asserted.
 */
import { spawn } from 'node:child_process';
import { gzipSync } from 'node:zlib';
import { mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { createServer } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import autocannon from 'autocannon';
import { parse } from 'jsonc-parser';
import 'reflect-metadata';
import { benchChances } from './chances.mjs';
import { benchOthersWait } from './others-wait.mjs';
import { benchOpenedCold } from './opened-cold.mjs';
import { benchPicture } from './picture.mjs';
import { benchRation } from './ration.mjs';
import { benchRecord } from './record.mjs';
import { benchTodayPage } from './today-page.mjs';
import { benchWriters } from './writers.mjs';
import { benchYear } from './year.mjs';

const dist = (path) => new URL(`../../dist/${path}`, import.meta.url).href;
const { planBatch } = await import(dist('shared/plan/batch-plan.js'));
const { findArrivals } = await import(dist('shared/plan/arrival-finder.js'));
const { planPasture } = await import(dist('shared/plan/pasture/pasture-plan.js'));
const { pastureOfFarm } = await import(dist('shared/plan/pasture/pasture-of-farm.js'));
const { pastureContext, grazingProblem } = await import(
  dist('shared/plan/pasture/pasture-context.js')
);
const { grassYears } = await import(dist('shared/plan/pasture/grass-years.js'));
const { graze } = await import(dist('shared/pasture/grazier.js'));
const { climateFromMonthlyMeans } = await import(dist('shared/weather/climate.js'));
const { loadTables } = await import(dist('src/reference/load-tables.js'));
// The proof is a tool of the tests, not of the program: it is compiled here.
await import('@swc-node/register/esm-register');
const { benchFeed } = await import('./feed.ts');
const { benchHeldBackYears } = await import('./held-back-years.ts');
const { benchWorkGap } = await import('./work-gap.ts');
const { benchWorkSpeed } = await import('./work-speed.ts');
const { bestGrazing } = await import('../support/best-grazing.ts');
const { newPicture } = await import('../support/pictures.ts');
const { SMALL_CASES, smallCase } = await import('../support/small-cases.ts');

const print = (name, value, unit, n) =>
  console.log(JSON.stringify({ name, value: Math.round(value * 1000) / 1000, unit, n }));
const median = (values) => [...values].sort((a, b) => a - b)[Math.floor(values.length / 2)];

const order = parse(
  readFileSync(new URL('../support/examples/order.jsonc', import.meta.url), 'utf8'),
);
const tables = loadTables();
const farm = order.farm;
const pictureOf = (batch) =>
  newPicture({
    farm,
    climate: climateFromMonthlyMeans(
      farm.monthlyMinC,
      farm.monthlyMaxC,
      tables.heat.coldNightMarginK.value,
    ),
    facilities: order.facilities,
    people: order.people,
    today: order.today,
    batches: [{ ...order.batch, id: 'batch', ...batch }],
  });
const meat = pictureOf({ wantedBirds: 100, leaveAgeDays: 81 });
const layers = pictureOf({
  leaveAgeDays: 81,
  purpose: 'layers',
  strainId: 'brown-layer',
  sex: 'pullets',
  coopId: 'hen-house',
  wantedBirds: 20,
});

function time(name, unit, runs, work) {
  for (let i = 0; i < runs / 2; i++) work();
  const times = [];
  for (let i = 0; i < runs; i++) {
    const start = performance.now();
    work();
    times.push(performance.now() - start);
  }
  print(name, median(times), unit, runs);
}

time('plan, 100 meat birds over 80 days', 'ms', 1000, () => planBatch(meat, tables, 'batch'));
time('plan, 20 layers to the end of the laying year', 'ms', 400, () =>
  planBatch(layers, tables, 'batch'),
);
time('arrival finder, one year', 'ms', 60, () =>
  findArrivals(meat, tables, 'batch', { from: '2027-01-01', to: '2027-12-31' }),
);
await benchFeed(print);
benchWorkSpeed(print);
await benchWorkGap(print);
if (process.env.REFERENCE_DATA) benchHeldBackYears(process.env.REFERENCE_DATA, print);
benchYear(print);
await benchRation(print);
pastures();
await endpoints();
await benchRecord(print);
await benchPicture(print);
await chances();
await openedCold();
await othersWait();
await todayPage();
await benchWriters(print, {
  start: (dataDir, env) => startServer('dist/src/main.js', dataDir, '/api/farms', env),
  stop,
});
firstLoad();

/** Grass and cattle: a season walked, its cost by paddocks and days, and a whole plan. */
function pastures() {
  const sample = JSON.parse(
    readFileSync(new URL('../../seeds/sample-farm.json', import.meta.url), 'utf8'),
  );
  const rain = sample.farm.monthlyRainMm;
  const pasture = (paddocks, herds, to = '2027-12-15') =>
    newPicture({
      farm: sample.farm,
      climate: climateFromMonthlyMeans(sample.farm.monthlyMinC, sample.farm.monthlyMaxC, 7, rain),
      today: '2026-11-25',
      paddocks: Array.from({ length: paddocks }, (_, k) => ({
        ...sample.paddocks[k % sample.paddocks.length],
        id: `p${k}`,
        soilId: tables.soils[k % tables.soils.length].id,
      })),
      herds: Array.from({ length: herds }, (_, k) => ({
        id: `h${k}`,
        name: `Herd ${k}`,
        groups: [{ classId: 'cow-calf', head: 4 }],
      })),
      pastureChoices: { to },
    });
  const walk = (picture) => graze(grazingProblem(pastureContext(pastureOfFarm(picture, tables))));
  const big = pasture(24, 2);
  time('season walked, 24 paddocks and 2 herds, day by day', 'ms', 40, () => walk(big));
  for (const paddocks of [6, 12, 24, 48]) {
    const request = pasture(paddocks, 1);
    time(`season by paddocks: ${paddocks}`, 'ms', 40, () => walk(request));
  }
  for (const to of ['2027-05-15', '2027-07-30', '2027-12-15']) {
    const request = pasture(24, 1, to);
    time(`season by days: 24 paddocks to ${to}`, 'ms', 40, () => walk(request));
  }
  for (const each of SMALL_CASES) {
    const { walkKg, bestKg, needKg, orders } = bestGrazing(smallCase(each));
    const name = `from grass, of the proven best: ${each.paddocks} paddocks, ${each.head} head, ${each.from} to ${each.to}`;
    print(name, (needKg - walkKg) / (needKg - bestKg), 'ratio', orders);
  }
  time('twenty years of weather as they unfold, 12 paddocks', 'ms', 4, () =>
    grassYears(pasture(12, 1), tables),
  );
  time('pasture plan of 12 paddocks, moves and hay', 'ms', 10, () =>
    planPasture(pasture(12, 1), tables),
  );
  // As the page asks it: the plan stands, and one thing of it is otherwise.
  const dryAugust = Array.from({ length: 12 }, (_, month) => (month === 7 ? 0.1 : 1));
  const asked = pasture(12, 1);
  const dry = { ...asked.pastureChoices, rainShareByMonth: dryAugust };
  time('what-if of 12 paddocks: a dry August', 'ms', 10, () =>
    planPasture({ ...asked, pastureChoices: dry }, tables),
  );
  for (const [paddocks, herds] of [
    [6, 1],
    [12, 1],
    [24, 1],
    [24, 2],
  ]) {
    const { saved } = planPasture(pasture(paddocks, herds), tables).hay;
    print(
      `fed by hand less than by a plain rule: ${paddocks} paddocks, ${herds} herds`,
      saved.value,
      'kg',
      1,
    );
  }
}

/** Preview against an endpoint of the same framework that returns a constant, in the same run. */
async function endpoints() {
  const dataDir = mkdtempSync(join(tmpdir(), 'broodfold-bench-'));
  const starts = [];
  for (let i = 0; i < 5; i++) {
    const { child, ms } = await startServer('dist/src/main.js', dataDir, '/api/farms');
    starts.push(ms);
    await stop(child);
  }
  print('process start to first answered request', median(starts), 'ms', starts.length);

  const program = await startServer('dist/src/main.js', dataDir, '/api/farms');
  const bare = await startServer('test/bench/bare.mjs', dataDir, '/');
  const body = JSON.stringify(order);
  const load = { connections: 8, duration: 4 };
  const post = (requests) =>
    autocannon({
      ...load,
      url: `${program.url}/api/plans/preview`,
      method: 'POST',
      headers: { 'content-type': 'application/json' },
      ...(requests ? { requests } : { body }),
    });
  const rates = { bare: [], same: [], changing: [] };
  // Every request of this list asks for something else, and more than are kept, as a slider does.
  const changing = Array.from({ length: 4000 }, (_, i) => ({
    method: 'POST',
    body: JSON.stringify({ ...order, batch: { ...order.batch, wantedBirds: 20 + i } }),
  }));
  for (let round = 0; round < 3; round++) {
    rates.bare.push((await autocannon({ ...load, url: bare.url })).requests.average);
    rates.same.push((await post()).requests.average);
    rates.changing.push((await post(changing)).requests.average);
  }
  print('bare endpoint returning a constant', median(rates.bare), 'requests/s', 3);
  print('preview, the same order again', median(rates.same), 'requests/s', 3);
  print('preview, another order each time', median(rates.changing), 'requests/s', 3);
  print(
    'preview over bare, the same order again',
    median(rates.same) / median(rates.bare),
    'ratio',
    3,
  );
  print(
    'preview over bare, another order each time',
    median(rates.changing) / median(rates.bare),
    'ratio',
    3,
  );
  print('resident memory after the load', residentMB(program.child.pid), 'MB', 1);
  await Promise.all([stop(program.child), stop(bare.child)]);
  rmSync(dataDir, { recursive: true, force: true });
}

/** Chances of the sample household, on a service of their own. */
async function chances() {
  const dataDir = mkdtempSync(join(tmpdir(), 'broodfold-bench-'));
  const { child, url } = await startServer('dist/src/main.js', dataDir, '/api/farms');
  await benchChances(url, print);
  await stop(child);
  rmSync(dataDir, { recursive: true, force: true });
}

/** Farms of which nothing is planned yet, on a service of their own. */
async function openedCold() {
  const dataDir = mkdtempSync(join(tmpdir(), 'broodfold-bench-'));
  const start = () => startServer('dist/src/main.js', dataDir, '/api/farms');
  await benchOpenedCold(print, { start, stop });
  rmSync(dataDir, { recursive: true, force: true });
}

/** Plain requests while heavy ones are answered, on a service of their own. */
async function othersWait() {
  const dataDir = mkdtempSync(join(tmpdir(), 'broodfold-bench-'));
  const { child, url } = await startServer('dist/src/main.js', dataDir, '/api/farms');
  await benchOthersWait(url, print);
  await stop(child);
  rmSync(dataDir, { recursive: true, force: true });
}

/** The page that a farm opens on, in a browser. */
async function todayPage() {
  const dataDir = mkdtempSync(join(tmpdir(), 'broodfold-bench-'));
  const { child, url } = await startServer('dist/src/main.js', dataDir, '/api/farms');
  await benchTodayPage(url, print);
  await stop(child);
  rmSync(dataDir, { recursive: true, force: true });
}

async function startServer(file, dataDir, path, more = {}) {
  const port = await freePort();
  const url = `http://127.0.0.1:${port}`;
  const start = performance.now();
  const env = { ...process.env };
  delete env.DATABASE_URL;
  const child = spawn(process.execPath, [file], {
    env: { ...env, PORT: String(port), DATA_DIR: dataDir, ...more },
    stdio: ['ignore', 'ignore', 'inherit'],
  });
  for (;;) {
    const response = await fetch(url + path).catch(() => undefined);
    if (response?.ok) return { child, url, ms: performance.now() - start };
    await new Promise((resolve) => setTimeout(resolve, 5));
  }
}

function stop(child) {
  const gone = new Promise((resolve) => child.once('exit', resolve));
  child.kill();
  return gone;
}

function freePort() {
  return new Promise((resolve) => {
    const server = createServer().listen(0, '127.0.0.1', () => {
      const { port } = server.address();
      server.close(() => resolve(port));
    });
  });
}

function residentMB(pid) {
  const status = readFileSync(`/proc/${pid}/status`, 'utf8');
  return Number(/VmRSS:\s+(\d+)/.exec(status)[1]) / 1024;
}

/** Scripts that the first screen loads: the entry and what it imports at once. */
function firstLoad() {
  const folder = new URL('../../dist/web/', import.meta.url);
  const html = readFileSync(new URL('index.html', folder), 'utf8');
  const named = [...html.matchAll(/(?:src|href)="\/?\.?\/?(assets\/[^"]+\.js)"/g)].map((m) => m[1]);
  const bytes = named.reduce(
    (sum, name) => sum + gzipSync(readFileSync(new URL(name, folder))).length,
    0,
  );
  print('page, first-load JavaScript, gzipped', bytes / 1000, 'kB', named.length);
  const all = readdirSync(new URL('assets/', folder)).filter((name) => name.endsWith('.js'));
  print(
    'page, all JavaScript, gzipped',
    all.reduce(
      (sum, name) => sum + gzipSync(readFileSync(new URL(`assets/${name}`, folder))).length,
      0,
    ) / 1000,
    'kB',
    all.length,
  );
}
