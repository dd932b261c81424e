import type { NestExpressApplication } from '@nestjs/platform-express';
import type { AddressInfo } from 'node:net';
import request from 'supertest';
import type { DataSource } from 'typeorm';
import type { EmptyDatabase, TestDatabase } from './databases.js';
import { service, serviceEnv } from './outside.js';

export const TABLES = [
  'farms',
  'facilities',
  'products',
  'suppliers',
  'people',
  'batches',
  'weather_days',
  'paddocks',
  'herds',
  'jobs',
  'kept_plans',
  'told_facts',
  'handovers',
  'cows',
  'photos',
] as const;
export type RowCounts = Record<(typeof TABLES)[number], number>;

/** The whole service on an empty database, listening on a port of its own. */
export interface TestApp {
  /** Address of the service, without a slash at its end. */
  readonly url: string;
  readonly api: ReturnType<typeof request>;
  readonly nest: NestExpressApplication;
  readonly source: DataSource;
  readonly rows: (table: keyof RowCounts, where?: Record<string, unknown>) => Promise<Row[]>;
  readonly counts: () => Promise<RowCounts>;
  /** Everything in every table, as text: equal only when nothing was changed. */
  readonly contents: () => Promise<string>;
  readonly close: () => Promise<void>;
}

/** A row as the database holds it: lists and details are JSON text. */
export type Row = Record<string, unknown>;

/** Starts the service on an empty database, which goes when it is closed. */
export async function openApp(
  database: TestDatabase,
  settings: Readonly<Record<string, string>> = {},
): Promise<TestApp> {
  const place = await database.empty();
  const app = await startApp(place, settings);
  return {
    ...app,
    close: async () => {
      await app.close();
      await place.remove();
    },
  };
}

/** Starts the service on a database. Settings are read while it is built, then put back. */
export async function startApp(
  place: EmptyDatabase,
  settings: Readonly<Record<string, string>> = {},
): Promise<TestApp> {
  const nest = await withEnv({ ...place.env, ...settings }, async () => {
    const built = await service.createApp();
    await built.init();
    return built;
  });
  await nest.listen(0, '127.0.0.1');
  const { port } = nest.getHttpServer().address() as AddressInfo;
  const url = `http://127.0.0.1:${port}`;
  const source = nest.get(service.DataSource);

  const rows = async (
    table: keyof RowCounts,
    where: Record<string, unknown> = {},
  ): Promise<Row[]> => {
    const all: Row[] = await source.query(`SELECT * FROM "${table}"`);
    return all.filter((row) => Object.entries(where).every(([name, value]) => row[name] === value));
  };
  return {
    url,
    api: request(url),
    nest,
    source,
    rows,
    counts: async () => {
      const each = TABLES.map((table) => `(SELECT COUNT(*) FROM "${table}") AS "${table}"`);
      const [row] = (await source.query(`SELECT ${each.join()}`)) as [Record<string, unknown>];
      return Object.fromEntries(TABLES.map((table) => [table, Number(row[table])])) as RowCounts;
    },
    contents: async () => {
      const all: string[] = [];
      for (const table of TABLES) {
        const lines = (await rows(table)).map((row) => `${table} ${JSON.stringify(row)}`);
        all.push(...lines.sort());
      }
      return all.join('\n');
    },
    close: () => nest.close(),
  };
}

async function withEnv<T>(
  env: Readonly<Record<string, string | undefined>>,
  work: () => Promise<T>,
): Promise<T> {
  const before = Object.fromEntries(Object.keys(env).map((name) => [name, serviceEnv[name]]));
  setEnv(env);
  try {
    return await work();
  } finally {
    setEnv(before);
  }
}

function setEnv(env: Readonly<Record<string, string | undefined>>): void {
  for (const [name, value] of Object.entries(env)) {
    if (value === undefined) delete serviceEnv[name];
    else serviceEnv[name] = value;
  }
}
