/**
 * An entry told, the numbers of its batch or herd as the page then shows them, the record read, and
 * the size of the database, on a farm with one to ten years of records.
 */
import 'reflect-metadata';
import { randomUUID } from 'node:crypto';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { performance } from 'node:perf_hooks';
import { replaceEqualDeep } from '@tanstack/react-query';
import { DataSource } from 'typeorm';

const dist = (path) => new URL(`../../dist/${path}`, import.meta.url).href;
const { addDays, plainDateAt } = await import(dist('shared/calendar/plain-date.js'));
const { createApp } = await import(dist('src/app.js'));
const { Database } = await import(dist('src/database/database.js'));
const { TablesService } = await import(dist('src/reference/tables.service.js'));
const { planBatch } = await import(dist('shared/plan/batch-plan.js'));
const { withChanged } = await import(dist('shared/farm/picture-since.js'));
const { planPasture } = await import(dist('shared/plan/pasture/pasture-plan.js'));

/** Facts there are when it is measured: of one, two, five and ten years of a busy farm. */
const FACTS_A_YEAR = 10_000;
const YEARS = [1, 2, 5, 10];
const RUNS = 40;
const ROWS_AT_ONCE = 500;

/**
 * On SQLite; where BENCH_DATABASE_URL names an empty database of PostgreSQL, on that as well.
 *
 * @param print prints one figure: name, value, unit, number of runs
 */
export async function benchRecord(print) {
  await benchOn('SQLite', undefined, print);
  const url = process.env.BENCH_DATABASE_URL;
  if (url) await benchOn('PostgreSQL', url, print);
}

async function benchOn(database, url, print) {
  const dataDir = mkdtempSync(join(tmpdir(), 'broodfold-bench-'));
  // The program reads its surroundings while it is built.
  if (url === undefined) delete process.env.DATABASE_URL;
  else process.env.DATABASE_URL = url;
  process.env.DATA_DIR = dataDir;
  const app = await createApp();
  await app.listen(0, '127.0.0.1');
  const base = `${await app.getUrl()}/api/farms`;
  const farm = await (await fetch(`${base}/sample`, { method: 'POST' })).json();
  const farmUrl = `${base}/${farm.id}`;
  const batches = await (await fetch(`${farmUrl}/batches`)).json();
  const today = plainDateAt(Date.now(), farm.timeZone);
  const there = batches.find(({ arrivalDate }) => arrivalDate < today);
  const [herd] = await (await fetch(`${farmUrl}/herds`)).json();
  const paddocks = await (await fetch(`${farmUrl}/paddocks`)).json();
  const { tables } = app.get(TablesService);
  const told = { from: 0 };
  let last;
  let mark = '';
  // What did not change is not sent, and stays what it was, as in the page.
  const picture = async () => {
    const answer = await fetch(`${farmUrl}/picture?since=${mark}`);
    const parts = await answer.json();
    mark = answer.headers.get('mark');
    const whole = answer.headers.has('since') ? withChanged(last, parts) : parts;
    return (last = replaceEqualDeep(last, whole));
  };
  const ask = async (path) => (await fetch(`${farmUrl}/${path}`)).arrayBuffer();
  const now = [];
  const say = async (fact) => now.push(...(await post(`${farmUrl}/told`, fact)));
  const tell = () => say(waterOf(there.id, today));
  const weigh = () => say(weighingOf(there.id, today));
  // Not to where they stand by what is written into the years: the first paddock.
  const move = () => say(moveOf(herd.id, paddocks[1].id, today));
  const facts = app.get(DataSource).getRepository('ToldFactEntity');
  // Each entry finds ten years of records, not hundreds of weighings and moves of one day.
  const unsay = async () => {
    for (const { id } of now.splice(0)) {
      await fetch(`${farmUrl}/told/${id}`, { method: 'DELETE' });
      await facts.delete({ id });
    }
  };
  const ways = {
    'an entry that no plan goes by, saved': tell,
    'an entry that plans go by, saved': weigh,
    'an entry, and how its batch went with it': async () => {
      await weigh();
      await ask(`record/batches/${there.id}`);
    },
    // As the page does it: the picture is read again, and planned where it is shown.
    'an entry, and the plan of its batch': async () => {
      await weigh();
      planBatch(await picture(), tables, there.id);
    },
    'a move, and where its herd stands': async () => {
      await move();
      await ask('herds');
      await picture();
    },
    'a move, and the plan of its herd': async () => {
      await move();
      planPasture(await picture(), tables);
    },
    'the day with all work, after an entry': async () => {
      await weigh();
      return () => ask('today');
    },
    'the picture of the farm, after an entry': async () => {
      await weigh();
      return () => ask('picture');
    },
    'the record, 200 facts': () => ask('told?history=true&ticks=false'),
    'the counts of a year': () => ask(`record/years/${today.slice(0, 4)}`),
  };
  const stored = await app.get(DataSource).getRepository('BatchEntity').findBy({ farmId: farm.id });
  for (const years of YEARS) {
    await addBatches(app, stored, { told, years });
    const ids = { herd: herd.id, paddocks: paddocks.map(({ id }) => id) };
    await fill(app, farm.id, { stored, ids, today, told, to: years * FACTS_A_YEAR });
    const ofYears = `${years} ${years === 1 ? 'year' : 'years'} on ${database}`;
    print(`size of the database, ${ofYears}`, (await sizeBytes(app)) / 1e6, 'MB', 1);
    // As a change that is no telling: what was read before no longer goes.
    await app.get(Database).write(farm.id, () => Promise.resolve());
    // Connections that ended while rows were written are noticed first.
    await new Promise((resolve) => setTimeout(resolve, 1000));
    for (const [name, way] of Object.entries(ways)) {
      const times = [];
      let processorMs = 0;
      for (let i = 0; i < RUNS; i++) {
        const before = process.cpuUsage();
        times.push(await timed(way));
        const { user, system } = process.cpuUsage(before);
        processorMs += (user + system) / 1000;
        await unsay();
      }
      times.sort((a, b) => a - b);
      const of = `${name}, ${ofYears}`;
      print(`${of}, median`, times[RUNS / 2], 'ms', RUNS);
      print(`${of}, p95`, times[0.95 * RUNS], 'ms', RUNS);
      // With everything before it that does not count in the time; free of who else uses the machine.
      print(`${of}, processor`, processorMs / RUNS, 'ms', RUNS);
    }
  }
  await fetch(farmUrl, { method: 'DELETE' });
  await app.close();
  delete process.env.DATA_DIR;
  delete process.env.DATABASE_URL;
  rmSync(dataDir, { recursive: true, force: true });
}

/** Bytes of all rows with their indexes, empty room within included. */
async function sizeBytes(app) {
  const source = app.get(DataSource);
  if (source.options.type === 'better-sqlite3') {
    const [{ bytes }] = await source.query(
      'SELECT page_count * page_size AS "bytes" FROM pragma_page_count(), pragma_page_size()',
    );
    return bytes;
  }
  const tables = source.entityMetadatas.map(({ tableName }) => tableName);
  const [{ bytes }] = await source.query(
    'SELECT SUM(pg_total_relation_size(quote_ident(t)::regclass)) AS "bytes" FROM unnest($1::text[]) t',
    [tables],
  );
  return Number(bytes);
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
  return answer.json();
};

const waterOf = (about, on) => ({ kind: 'water-drunk', about, on, details: { liters: 9 } });
const weighingOf = (about, on) => ({
  ...{ kind: 'weighed', about, on, details: { birds: 5, averageKg: 2 } },
  isBeside: true,
});

const moveOf = (about, paddockId, on) => ({ kind: 'herd-move', about, on, details: { paddockId } });

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
  ['herd-move', 'herd', {}],
  ['grass-reading', 'paddock', { heightCm: 15 }],
];

/** Each year has batches of its own. */
const idIn = (id, year) => (year === 0 ? id : `${id}-${year}`);

async function addBatches(app, stored, { told, years }) {
  const rows = [];
  for (let year = Math.max(1, told.from / FACTS_A_YEAR); year < years; year++)
    for (const { arrivalDate, ...row } of stored)
      rows.push({
        ...{ ...row, id: idIn(row.id, year), name: `${row.name} ${year}` },
        arrivalDate: addDays(arrivalDate, -365 * year),
      });
  if (rows.length === 0) return;
  // Copies: what is inserted is given ids back, and of many rows not always its own.
  const copies = rows.map((row) => ({ ...row }));
  await app.get(DataSource).getRepository('BatchEntity').insert(copies);
  // They are over: what came is gone.
  const facts = rows.flatMap(({ id: about, farmId, arrivalDate }) =>
    ['arrived', 'gone'].map((kind, k) => {
      const id = randomUUID();
      const on = addDays(arrivalDate, 60 * k);
      const details = { birds: 20, ...(kind === 'gone' ? { how: 'sold' } : {}) };
      const row = {
        id,
        key: id,
        farmId,
        kind,
        about,
        on,
        details,
        toldAt: `${on}T12:00:00.00${k}Z`,
      };
      return { ...row, saidBy: null, replaces: null, takenBackAt: null };
    }),
  );
  await app.get(DataSource).getRepository('ToldFactEntity').insert(facts);
}

/** Written as rows, because years cannot be told in one go. */
async function fill(app, farmId, { stored, ids, today, told, to }) {
  const facts = app.get(DataSource).getRepository('ToldFactEntity');
  const rows = [];
  for (let k = told.from; k < to; k++) {
    const turn = Math.floor(k / KINDS.length);
    // A herd is led on every third day.
    const said = KINDS[k % KINDS.length];
    const [kind, of, details] = said[0] === 'herd-move' && 0 < turn % 3 ? KINDS.at(-1) : said;
    const day = Math.floor((k * 365) / FACTS_A_YEAR);
    const on = addDays(today, -1 - day);
    const batchId = idIn(stored[k % stored.length].id, Math.floor(k / FACTS_A_YEAR));
    const about =
      of === undefined
        ? batchId
        : /round|done/.test(of)
          ? `batch/${batchId}/${of}`
          : ({ herd: ids.herd, paddock: ids.paddocks[turn % ids.paddocks.length] }[of] ?? of);
    const toldAt = new Date(Date.now() - 1e9 - k * 3e6).toISOString();
    const id = randomUUID();
    const more = of === 'herd' ? { paddockId: ids.paddocks[(turn / 3) % ids.paddocks.length] } : {};
    const row = { id, farmId, kind, about, on, details: { ...details, ...more }, toldAt, key: id };
    rows.push({ ...row, saidBy: null, replaces: null, takenBackAt: null });
  }
  told.from = to;
  for (let k = 0; k < rows.length; k += ROWS_AT_ONCE)
    await facts.insert(rows.slice(k, k + ROWS_AT_ONCE));
}
