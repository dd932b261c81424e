import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import { chmodSync, mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { createServer, type AddressInfo, type Server } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { programThatEnds, startProgram, type ProgramOptions } from '../support/program.js';
import { service } from '../support/outside.js';

const { DataSource, whyNotStarted } = service;

const postgres = process.env['TEST_DATABASE_URL'];
let folder: string;
let taken: Server;
let takenPort: string;

beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), 'broodfold-start-'));
  chmodSync(folder, 0o755);
  taken = createServer().listen(0, '127.0.0.1');
  await new Promise((resolve) => taken.once('listening', resolve));
  takenPort = String((taken.address() as AddressInfo).port);
});
afterAll(() => {
  taken.close();
  rmSync(folder, { recursive: true, force: true });
});

/** One sentence or two on one line, the exit code 1, no stack, and nothing tried again. */
async function expectRefusal(
  env: Record<string, string>,
  words: RegExp,
  options?: ProgramOptions,
): Promise<void> {
  const { exitCode, said } = await programThatEnds({ DATA_DIR: folder, ...env }, options);
  expect({ exitCode, said }).toMatchObject({ exitCode: 1, said: expect.stringMatching(words) });
  expect(said.trim().split('\n')).toHaveLength(1);
  expect(said).not.toMatch(/\n\s+at |node_modules|retry/i);
}

const folderWith = async (
  name: string,
  make: (file: string) => void | Promise<void>,
): Promise<string> => {
  const own = join(folder, name);
  mkdirSync(own);
  await make(join(own, 'broodfold.sqlite'));
  return own;
};

async function makeDatabase(file: string, ...statements: string[]): Promise<void> {
  const source = new DataSource({ type: 'better-sqlite3', database: file });
  await source.initialize();
  for (const statement of statements) await source.query(statement);
  await source.destroy();
}

describe('a start that cannot be', () => {
  it.each([
    ['an address of another computer', { HOST: '192.0.2.1' }, /^HOST is "192\.0\.2\.1", which/],
    ['a name that is not known', { HOST: 'nowhere.invalid' }, /^HOST is "nowhere\.invalid", a/],
    ['a setting that cannot be read', { PORT: 'abc' }, /^PORT is "abc", but must be/],
  ])('for %s says so', (_what, env, words) => expectRefusal(env, words));

  it('for a port that is taken names the port', () =>
    expectRefusal({ PORT: takenPort }, new RegExp(`^Port ${takenPort} is taken\\.`)));

  it('for a port that this user may not take names the port', () => {
    const error = Object.assign(new Error(), { code: 'EACCES', syscall: 'listen', port: 80 });
    expect(whyNotStarted(error, { PORT: '80' })).toMatch(/^Port 80 may not be used/);
  });

  it('for a data folder that is a file names it', () => {
    writeFileSync(join(folder, 'file'), '');
    return expectRefusal({ DATA_DIR: join(folder, 'file') }, /a file is in its place/);
  });

  it('for a data folder where none can be made says so at once', async () => {
    // What the system shows of its processes takes no folders from anybody.
    const env = { DATA_DIR: '/proc/broodfold/data' };
    await expectRefusal(env, /^The data folder \/proc\/broodfold\/data cannot be written/);
  });

  it('for a data folder in a folder that may not be written names it', () => {
    mkdirSync(join(folder, 'closed'), { mode: 0o555 });
    const env = { DATA_DIR: join(folder, 'closed', 'data') };
    return expectRefusal(env, /closed\/data cannot be written/, { isPlainUser: true });
  });

  it('for a data folder that may not be written names the database', async () => {
    const own = await folderWith('read-only', (file) => makeDatabase(file));
    chmodSync(own, 0o555);
    const words = /cannot be opened for writing/;
    await expectRefusal({ DATA_DIR: own }, words, { isPlainUser: true });
  });

  it('for a file that is no database says so', async () => {
    const own = await folderWith('text', (file) =>
      writeFileSync(file, 'Dear diary, '.repeat(1000)),
    );
    await expectRefusal({ DATA_DIR: own }, /is not a database of Broodfold/);
  });

  it('for a damaged database says so', async () => {
    const own = await folderWith('damaged', async (file) => {
      const rows = Array.from({ length: 2000 }, (_, i) => `('row ${i}')`).join();
      await makeDatabase(file, 'CREATE TABLE t (x)', `INSERT INTO t VALUES ${rows}`);
      writeFileSync(file, readFileSync(file).fill(0xff, 8192, 16384));
    });
    await expectRefusal({ DATA_DIR: own }, /broodfold\.sqlite is damaged\. .*copy/);
  });

  it('for a database of a later program says so', async () => {
    const own = await folderWith('later', (file) =>
      makeDatabase(
        file,
        'CREATE TABLE migrations (id integer, timestamp bigint, name varchar)',
        "INSERT INTO migrations VALUES (1, 9999999999999, 'Later9999999999999')",
      ),
    );
    await expectRefusal({ DATA_DIR: own }, /made by a later Broodfold .*Later9999999999999/);
  });

  it('for a disk without room says so', () =>
    expectRefusal({ DATA_DIR: join(folder, 'full') }, /is full/, { mostBlocks: 40 }));

  it('for a PostgreSQL that is not there names the place', () =>
    expectRefusal(
      { DATABASE_URL: 'postgres://u:p@127.0.0.1:1/farm' },
      /^PostgreSQL at 127\.0\.0\.1:1 cannot be reached/,
    ));
});

// PostgreSQL is tried where there is one, as everywhere.
const describeOn = (whole: string): void =>
  describe('a start that PostgreSQL refuses', () => {
    const changed = (change: (url: URL) => void): string => {
      const url = new URL(whole);
      change(url);
      return url.href;
    };

    it('for a wrong password says so', () =>
      expectRefusal(
        { DATABASE_URL: changed((url) => (url.password = 'wrong')) },
        /does not take the password of the user/,
      ));

    it('for a user that is not known says so', () =>
      expectRefusal(
        { DATABASE_URL: changed((url) => (url.username = 'nobody-here')) },
        /the user "nobody-here"/,
      ));

    it('for a database that is not there says so', () =>
      expectRefusal(
        { DATABASE_URL: changed((url) => (url.pathname = '/no_such_farm')) },
        /has no database "no_such_farm"/,
      ));
  });
if (postgres) describeOn(postgres);

describe('a start that can be', () => {
  it('prints its address', async () => {
    const program = await startProgram({ DATA_DIR: join(folder, 'good') });
    expect((await fetch(`${program.url}/api/farms`)).status).toBe(200);
    await program.stop();
    expect(program.said().trim()).toMatch(/^Broodfold is ready at http:\/\/127\.0\.0\.1:\d+\/$/);
  });
});
