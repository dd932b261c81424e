import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import { hostname, networkInterfaces } from 'node:os';
import { hostsOf, namesOfMachine, plainName } from '../../src/common/allowed-hosts.js';
import { anyDatabase } from '../support/databases.js';
import { openApp, type TestApp } from '../support/app.js';
import { expectProblem } from '../support/problem.js';

describe.each([
  ['open to this computer only', '127.0.0.1'],
  ['open to the network', '0.0.0.0'],
])('requests from elsewhere to a program %s', (_what, HOST) => {
  let app: TestApp;
  beforeAll(async () => {
    app = await openApp(anyDatabase(), { HOST, ALLOWED_HOSTS: 'barn.example' });
  }, 60_000);
  afterAll(() => app.close());

  it('refuses a write from a page of another site, and writes nothing', async () => {
    for (const origin of ['https://example.org', 'http://127.0.0.1:1', 'null', '', 'http://[']) {
      const response = await app.api.post('/api/farms/sample').set('Origin', origin);
      expectProblem(response, 403);
    }
    expect(await app.rows('farms', {})).toEqual([]);
  });

  it('refuses names that are not its own (DNS rebinding), and says how to allow them', async () => {
    for (const name of ['farm.example.org', 'localhost.example.org', '8.8.8.8', '[2001:db8::1]']) {
      for (const path of ['/api/farms', '/', '/api/openapi.json']) {
        const { detail } = expectProblem(await app.api.get(path).set('Host', name), 403);
        expect(detail).toContain('ALLOWED_HOSTS');
      }
    }
  });

  it.each(['cross-site', 'same-site'])('refuses reads that a browser calls %s', async (site) => {
    expectProblem(await app.api.get('/api/farms').set('Sec-Fetch-Site', site), 403);
  });

  it('answers its own page and scripts', async () => {
    await app.api
      .get('/api/farms')
      .set('Host', 'localhost:1')
      .set('Origin', 'http://localhost:1')
      .set('Sec-Fetch-Site', 'same-origin')
      .expect(200);
    await app.api.get('/api/farms').set('Sec-Fetch-Site', 'none').expect(200);
    await app.api.get('/api/farms').expect(200);
  });

  it('answers under the names and addresses of this machine, and those that were allowed', async () => {
    const addresses = Object.values(networkInterfaces()).flatMap((all) =>
      (all ?? []).map(({ address, family }) => (family === 'IPv6' ? `[${address}]` : address)),
    );
    const short = hostname().split('.')[0]!;
    const names = [
      hostname(),
      `${short}.local`,
      'LOCALHOST',
      '[::1]',
      'barn.example',
      ...addresses,
    ];
    for (const name of names) {
      await app.api
        .get('/api/farms')
        .set('Host', `${name.replace(/%.*\]/, ']')}:3210`)
        .expect(200);
    }
  });

  it('lets no other site read an answer', async () => {
    const { headers } = await app.api.get('/api/farms').expect(200);
    expect(Object.keys(headers).filter((name) => name.startsWith('access-control'))).toEqual([]);
    expect(headers).toMatchObject({
      'cross-origin-resource-policy': 'same-origin',
      'x-content-type-options': 'nosniff',
    });
  });
});

describe('names of a host', () => {
  it.each([
    ['Farm.LOCAL.', 'farm.local'],
    ['localhost:3210', 'localhost'],
    ['[::1]:3210', '::1'],
    ['[fe80::1%eth0]:80', 'fe80::1'],
    ['fe80::1%eth0', 'fe80::1'],
    ['192.168.1.7:80', '192.168.1.7'],
    ['', ''],
  ])('%j is plainly %j', (host, plain) => {
    expect(plainName(host)).toBe(plain);
  });

  it('hold the machine’s own', () => {
    expect(namesOfMachine()).toEqual(expect.arrayContaining([hostname(), '127.0.0.1']));
  });

  it('are learned anew when the machine joins another network', async () => {
    let names = ['10.0.0.5'];
    const isAllowed = hostsOf([], () => names);
    expect(isAllowed('10.0.0.5')).toBe(true);
    names = ['10.9.9.9'];
    await new Promise((resolve) => setTimeout(resolve, 1100));
    expect(isAllowed('10.9.9.9:3210')).toBe(true);
    expect(isAllowed('10.0.0.5')).toBe(false);
    expect(isAllowed('evil.example')).toBe(false);
  });
});
