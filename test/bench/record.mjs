/** An entry told, and the record read, on a farm with up to ten years of records. */
import 'reflect-metadata';
import { randomUUID } from 'node:crypto';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { performance } from 'node:perf_hooks';
import { DataSource } from 'typeorm';

const dist = (path) => new URL(`../../dist/${path}`, import.meta.url).href;
const { addDays, plainDateAt } = await import(dist('shared/calendar/plain-date.js'));
const { createApp } = await import(dist('src/app.js'));

/** Facts there are when it is measured: a year of a busy farm, and ten; a farm holds 100,000. */
const SIZES = [9_500, 95_000];
const FACTS_A_YEAR = 9_500;
const RUNS = 40;
const ROWS_AT_ONCE = 500;

/** @param print prints one figure: name, value, unit, number of runs */
export async function benchRecord(print) {
  const dataDir = mkdtempSync(join(tmpdir(), 'broodfold-bench-'));
  // The program reads its surroundings while it is built.
  delete process.env.DATABASE_URL;
  process.env.DATA_DIR = dataDir;
  const app = await createApp();
  await app.listen(0, '127.0.0.1');
  const base = `${await app.getUrl()}/api/farms`;
  const farm = await (await fetch(`${base}/sample`, { method: 'POST' })).json();
  const farmUrl = `${base}/${farm.id}`;
  const batches = await (await fetch(`${farmUrl}/batches`)).json();
  const today = plainDateAt(Date.now(), farm.timeZone);
  const there = batches.find(({ arrivalDate }) => arrivalDate < today);
  const told = { from: 0 };
  const ask = async (path) => (await fetch(`${farmUrl}/${path}`)).arrayBuffer();
  const tell = () => post(`${farmUrl}/told`, waterOf(there.id, today));
  const weigh = () => post(`${farmUrl}/told`, weighingOf(there.id, today));
  const ways = {
    'an entry that no plan goes by, saved': tell,
    'an entry that plans go by, saved': weigh,
    'how its batch went, after an entry': async () => {
      await weigh();
      return () => ask(`record/batches/${there.id}`);
    },
    'the record, 200 facts': () => ask('told?history=true&ticks=false'),
    'the counts of a year': () => ask(`record/years/${today.slice(0, 4)}`),
  };
  for (const size of SIZES) {
    await fill(app, farm.id, { ids: batches.map(({ id }) => id), today, told, to: size });
    // Connections that ended while rows were written are noticed first.
    await new Promise((resolve) => setTimeout(resolve, 1000));
    for (const [name, way] of Object.entries(ways)) {
      const times = [];
      for (let i = 0; i < RUNS; i++) times.push(await timed(way));
      times.sort((a, b) => a - b);
      print(`${name}, ${size} facts, median`, times[RUNS / 2], 'ms', RUNS);
      print(`${name}, ${size} facts, p95`, times[0.95 * RUNS], 'ms', RUNS);
    }
  }
  await app.close();
  delete process.env.DATA_DIR;
  rmSync(dataDir, { recursive: true, force: true });
}

/** Time of a way; where it answers a function, what came before does not count. */
async function timed(way) {
  const before = performance.now();
  const rest = await way();
  if (typeof rest !== 'function') return performance.now() - before;
  const after = performance.now();
  await rest();
  return performance.now() - after;
}

const post = async (url, fact) => {
  const answer = await fetch(url, {
    method: 'POST',
    headers: { 'content-type': 'application/json' },
    body: JSON.stringify({ facts: [fact] }),
  });
  if (!answer.ok) throw new Error(await answer.text());
};

const waterOf = (about, on) => ({ kind: 'water-drunk', about, on, details: { liters: 9 } });
const weighingOf = (about, on) => ({
  ...{ kind: 'weighed', about, on, details: { birds: 5, averageKg: 2 } },
  isBeside: true,
});

/** A day's telling: mostly ticks of chores, then what is counted and measured daily. */
const KINDS = [
  ...Array.from({ length: 14 }, (_, k) => ['chore-done', `round-${k}`, {}]),
  ['eggs-counted', undefined, { days: 1, eggs: 12 }],
  ['eggs-gone', undefined, { eggs: 12, how: 'sold', money: '5.00' }],
  ['water-drunk', undefined, { liters: 9 }],
  ['feed-opened', undefined, { bags: 1 }],
  ['rained', 'ground', { mm: 2 }],
  ['note', 'farm', { text: 'Nothing new.' }],
  ['ground-check', 'ground', { isWorkable: true }],
  ['bought', 'farm', { what: 'feed', amount: 1, eachKg: 20, money: '18.50' }],
  ['work-progress', 'done', { hours: 1, reckonedHours: 1 }],
];

/** Written as rows, because years cannot be told in one go. */
async function fill(app, farmId, { ids, today, told, to }) {
  const facts = app.get(DataSource).getRepository('ToldFactEntity');
  const rows = [];
  for (let k = told.from; k < to; k++) {
    const [kind, of, details] = KINDS[k % KINDS.length];
    const on = addDays(today, -1 - Math.floor((k * 365) / FACTS_A_YEAR));
    const id = ids[k % ids.length];
    const about = of === undefined ? id : /round|done/.test(of) ? `batch/${id}/${of}` : of;
    const toldAt = new Date(Date.now() - 1e9 - k * 3e6).toISOString();
    const row = { id: randomUUID(), farmId, kind, about, on, details, toldAt, key: randomUUID() };
    rows.push({ ...row, saidBy: null, replaces: null, takenBackAt: null });
  }
  told.from = to;
  for (let k = 0; k < rows.length; k += ROWS_AT_ONCE)
    await facts.insert(rows.slice(k, k + ROWS_AT_ONCE));
}
