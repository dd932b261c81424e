import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import {
  mkdtempSync,
  openSync,
  readdirSync,
  rmSync,
  statSync,
  writeSync,
  closeSync,
} from 'node:fs';
import { connect, createServer, type AddressInfo, type Server, type Socket } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { startApp } from '../support/app.js';
import { anyDatabase, databases } from '../support/databases.js';
import { newFarm } from '../support/factories.js';
import { startProgram, type Program } from '../support/program.js';
import { expectProblem } from '../support/problem.js';
import { service } from '../support/outside.js';

const { storageFaultOf } = service;

/** 40 KiB a file: the shared memory of the log fits, and a few pages of writes. */
const FULL_AT_BLOCKS = 80;

describe('a full disk', () => {
  let folder: string;
  let program: Program;
  let farm: { id: string };

  beforeAll(async () => {
    folder = mkdtempSync(join(tmpdir(), 'broodfold-full-'));
    const roomy = await startProgram({ DATA_DIR: folder });
    farm = (await (
      await fetch(`${roomy.url}/api/farms/sample`, { method: 'POST' })
    ).json()) as typeof farm;
    await roomy.stop();
    program = await startProgram({ DATA_DIR: folder }, { mostBlocks: FULL_AT_BLOCKS });
  }, 60_000);
  afterAll(async () => {
    await program.stop();
    rmSync(folder, { recursive: true, force: true });
  });

  const addPerson = (k: number): Promise<Response> =>
    fetch(`${program.url}/api/farms/${farm.id}/people`, {
      method: 'POST',
      headers: { 'content-type': 'application/json' },
      body: JSON.stringify({ name: `Helper ${k}`, hoursByWeekday: Array(7).fill(1), away: [] }),
    });
  const people = async (): Promise<unknown[]> =>
    (await (await fetch(`${program.url}/api/farms/${farm.id}/people`)).json()) as unknown[];

  it('refuses writes with 507 and what to do, and keeps all that was acknowledged', async () => {
    const before = (await people()).length;
    let saved = 0;
    for (;;) {
      const response = await addPerson(saved);
      if (response.status === 201) {
        saved++;
        continue;
      }
      expect(response.status).toBe(507);
      expect(response.headers.get('content-type')).toContain('application/problem+json');
      expect(await response.json()).toMatchObject({
        type: 'urn:broodfold:problem:full',
        detail: expect.stringMatching(/disk is full.*Nothing was saved.*Free some space/),
      });
      break;
    }
    expect(await people()).toHaveLength(before + saved);
  }, 60_000);

  it.each(['', '/batches', '/work', '/calendar.ics', '/pasture/plan'])(
    'still answers GET farm%s',
    async (path) => {
      const response = await fetch(`${program.url}/api/farms/${farm.id}${path}`);
      expect({ status: response.status, text: response.ok || (await response.text()) }).toEqual({
        status: 200,
        text: true,
      });
    },
    60_000,
  );
});

describe('a file that is damaged while the program runs', () => {
  it('is said to be damaged, with what to do', async () => {
    const place = await anyDatabase().empty();
    const app = await startApp(place);
    try {
      await app.api.post('/api/farms').send(newFarm()).expect(201);
      await app.source.query('PRAGMA wal_checkpoint(TRUNCATE)');
      const file = join(place.env['DATA_DIR']!, 'broodfold.sqlite');
      const handle = openSync(file, 'r+');
      writeSync(handle, Buffer.alloc(statSync(file).size - 4096, 0xff), 0, undefined, 4096);
      closeSync(handle);
      await app.source.query('PRAGMA shrink_memory'); // pages that were read before are let go
      const { type, detail } = expectProblem(await app.api.get('/api/farms'), 500);
      expect(type).toBe('urn:broodfold:problem:damaged');
      expect(detail).toMatch(/damaged.*bring back your last copy/);
      expect(readdirSync(place.env['DATA_DIR']!)).toContain('broodfold.sqlite');
    } finally {
      await app.close();
      await place.remove();
    }
  }, 60_000);
});

/** A way to a server that can be cut and laid again. */
function cableTo(host: string, port: number): { server: Server; cut: () => void } {
  const sockets = new Set<Socket>();
  let isCut = false;
  const server = createServer((near) => {
    if (isCut) return void near.destroy();
    const far = connect(port, host);
    for (const socket of [near, far]) {
      sockets.add(socket);
      socket.on('error', () => undefined);
      socket.on('close', () => (near.destroy(), far.destroy()));
    }
    near.pipe(far).pipe(near);
  });
  return {
    server,
    cut: () => {
      isCut = !isCut;
      for (const socket of sockets) socket.destroy();
    },
  };
}

const describeLost = (): void =>
  describe('a PostgreSQL that goes away and comes back', () => {
    it('is answered with 503 meanwhile, and the program goes on by itself', async () => {
      const place = await databases()[1]!.empty();
      const own = new URL(place.env['DATABASE_URL']!);
      const { server, cut } = cableTo(own.hostname, Number(own.port || 5432));
      await new Promise((resolve) => server.listen(0, '127.0.0.1', () => resolve(undefined)));
      own.hostname = '127.0.0.1';
      own.port = String((server.address() as AddressInfo).port);
      const app = await startApp({ ...place, env: { ...place.env, DATABASE_URL: own.href } });
      try {
        await app.api.post('/api/farms').send(newFarm()).expect(201);
        cut();
        for (let k = 0; k < 3; k++) {
          const { type, detail } = expectProblem(await app.api.get('/api/farms'), 503);
          expect(type).toBe('urn:broodfold:problem:lost');
          expect(detail).toMatch(/cannot be reached.*Nothing was saved/);
        }
        expectProblem(await app.api.post('/api/farms').send(newFarm()), 503);
        cut();
        const { body } = await app.api.get('/api/farms').expect(200);
        expect(body).toHaveLength(1);
      } finally {
        await app.close();
        server.close();
        await place.remove();
      }
    }, 60_000);
  });
if (process.env['TEST_DATABASE_URL']) describeLost();

describe('what an error says of the storage', () => {
  const coded = (code: string): Error => Object.assign(new Error(), { code });

  it.each([
    ['SQLITE_FULL', 'full'],
    ['SQLITE_IOERR_WRITE', 'full'],
    ['ENOSPC', 'full'],
    ['53100', 'full'],
    ['SQLITE_CORRUPT_VTAB', 'damaged'],
    ['XX001', 'damaged'],
    ['SQLITE_NOTADB', 'not-a-database'],
    ['SQLITE_READONLY_DBMOVED', 'read-only'],
    ['SQLITE_BUSY_SNAPSHOT', 'busy'],
    ['SQLITE_IOERR_READ', 'lost'],
    ['ECONNREFUSED', 'lost'],
    ['57P01', 'lost'],
    ['28P01', 'refused'],
    ['SQLITE_CONSTRAINT_UNIQUE', undefined],
    ['23505', undefined],
    ['40001', undefined],
  ])('is, for %s, %s', (code, fault) => {
    expect(storageFaultOf(coded(code))).toBe(fault);
    expect(storageFaultOf(Object.assign(new Error(), { driverError: coded(code) }))).toBe(fault);
    expect(storageFaultOf(new AggregateError([coded(code)]))).toBe(fault);
  });

  it.each([undefined, null, 'full', new Error('disk'), { code: 7 }])(
    'is nothing for %p',
    (error) => {
      expect(storageFaultOf(error)).toBeUndefined();
    },
  );
});
