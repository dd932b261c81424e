/** The picture of a farm with ten years behind it, read from the database and kept. */
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
const { Database } = await import(dist('src/database/database.js'));
const { PicturesService } = await import(dist('src/picture/pictures.service.js'));

const BATCHES = 8;
const HERDS = 4;
const PADDOCKS = 24;
const JOBS = 300;
const READING_DAYS = 3653;
const DAYS_BETWEEN_READINGS = 14;
const RUNS = 21;
const ROWS_AT_ONCE = 200;

/** @param print prints one figure: name, value, unit, number of runs */
export async function benchPicture(print) {
  const dataDir = mkdtempSync(join(tmpdir(), 'broodfold-bench-'));
  // The program reads its surroundings while it is built.
  delete process.env.DATABASE_URL;
  process.env.DATA_DIR = dataDir;
  const app = await createApp();
  await app.listen(0, '127.0.0.1');
  const url = await app.getUrl();
  const farmId = await tenYearsOf(app, url);
  const database = app.get(Database);
  const pictures = app.get(PicturesService, { strict: false });
  const path = `${url}/api/farms/${farmId}/picture`;
  const raise = () => database.write(farmId, async () => undefined);
  const ways = {
    service: () => pictures.of(farmId),
    HTTP: async () => (await fetch(path)).arrayBuffer(),
  };
  for (const [way, read] of Object.entries(ways)) {
    const cold = [];
    const kept = [];
    for (let i = 0; i < RUNS; i++) {
      await raise();
      cold.push(await timed(read));
      kept.push(await timed(read));
    }
    print(`picture of ten years, from the database, ${way}`, median(cold), 'ms', RUNS);
    print(`picture of ten years, kept, ${way}`, median(kept), 'ms', RUNS);
  }
  await app.close();
  delete process.env.DATA_DIR;
  rmSync(dataDir, { recursive: true, force: true });
}

/** The sample farm, its rows repeated; written as rows, because years cannot be told in one go. */
async function tenYearsOf(app, url) {
  const farm = await (await fetch(`${url}/api/farms/sample`, { method: 'POST' })).json();
  const source = app.get(DataSource);
  const repeat = async (name, count) => {
    const rows = source.getRepository(name);
    const some = await rows.findBy({ farmId: farm.id });
    const more = Array.from({ length: count - some.length }, (_, k) => ({
      ...some[k % some.length],
      id: randomUUID(),
      name: `${name} ${k}`,
    }));
    await rows.save(more, { chunk: ROWS_AT_ONCE });
    return [...some, ...more];
  };
  await repeat('BatchEntity', BATCHES);
  await repeat('HerdEntity', HERDS);
  const paddocks = await repeat('PaddockEntity', PADDOCKS);
  const today = plainDateAt(Date.now(), farm.timeZone);
  await source.getRepository('JobEntity').save(
    Array.from({ length: JOBS }, (_, k) => ({
      id: randomUUID(),
      farmId: farm.id,
      name: `Job ${k}`,
      details: { hours: 2, dueOn: addDays(today, k), priority: 'should' },
    })),
    { chunk: ROWS_AT_ONCE },
  );
  const days = Math.floor(READING_DAYS / DAYS_BETWEEN_READINGS);
  const readings = paddocks.flatMap((paddock) =>
    Array.from({ length: days }, (_, k) => {
      const on = addDays(today, -k * DAYS_BETWEEN_READINGS);
      const id = randomUUID();
      return {
        ...{ id, farmId: farm.id, kind: 'grass-reading', about: paddock.id, on, key: id },
        ...{ details: { heightCm: 8 + (k % 15) }, toldAt: `${on}T18:00:00.000Z` },
      };
    }),
  );
  await source.getRepository('ToldFactEntity').save(readings, { chunk: ROWS_AT_ONCE });
  return farm.id;
}

async function timed(work) {
  const start = performance.now();
  await work();
  return performance.now() - start;
}

const median = (values) => [...values].sort((a, b) => a - b)[Math.floor(values.length / 2)];
