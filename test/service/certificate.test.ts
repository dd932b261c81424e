import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import { execFile } from 'node:child_process';
import { X509Certificate } from 'node:crypto';
import { mkdtempSync, readdirSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { get } from 'node:https';
import { hostname, tmpdir } from 'node:os';
import { join } from 'node:path';
import { namesOutside } from '../../src/certificates/household-names.js';
import {
  makeAuthority,
  makeServerCertificate,
  type KeyPair,
} from '../../src/certificates/make-certificates.js';
import { tlsOf } from '../../src/certificates/tls.js';
import { PROJECT_ROOT } from '../../src/reference/load-tables.js';
import { readSettings } from '../../src/settings/settings.js';
import { programThatEnds, startProgram, type Program } from '../support/program.js';

const DAY_MS = 86_400_000;
let folder: string;
const at = (name: string): string => join(folder, 'certificates', name);

beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'broodfold-tls-'));
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

interface Answer {
  readonly code: number;
  readonly said: string;
}
const certificate = (...args: string[]): Promise<Answer> =>
  new Promise((resolve) =>
    execFile(
      process.execPath,
      ['test-output/program/certificate.js', ...args],
      { cwd: PROJECT_ROOT, env: { ...process.env, NODE_OPTIONS: '', DATA_DIR: folder } },
      (error, stdout, stderr) =>
        resolve({ code: error ? Number(error.code) : 0, said: stdout + stderr }),
    ),
  );

describe('npm run certificate', () => {
  it('makes an authority and a certificate for the names of this machine', async () => {
    expect(await certificate('farm.lan')).toMatchObject({ code: 0 });
    const authority = new X509Certificate(readFileSync(at('authority.crt')));
    const server = new X509Certificate(readFileSync(at('server.crt')));
    expect(authority.ca).toBe(true);
    expect(authority.verify(authority.publicKey)).toBe(true);
    expect(server.ca).toBe(false);
    expect(server.checkIssued(authority)).toBe(true);
    expect(server.verify(authority.publicKey)).toBe(true);
    const short = hostname().split('.')[0]!;
    for (const name of ['localhost', hostname(), `${short}.local`, 'farm.lan'])
      expect(server.checkHost(name)).toBe(name);
    for (const address of ['127.0.0.1', '::1']) expect(server.checkIP(address)).toBe(address);
    expect(server.checkHost('example.org')).toBeUndefined();
  }, 60_000);

  it('keeps keys from everybody else', () => {
    for (const name of readdirSync(join(folder, 'certificates')))
      expect(statSync(at(name)).mode & 0o077).toBe(0);
    expect(statSync(join(folder, 'certificates')).mode & 0o077).toBe(0);
  });

  it('keeps the authority, and makes the server’s certificate anew', async () => {
    const before = ['authority.crt', 'authority.key', 'server.crt'].map((name) =>
      readFileSync(at(name), 'utf8'),
    );
    const { said } = await certificate();
    expect(said).toContain('The authority stays as it is');
    expect(readFileSync(at('authority.crt'), 'utf8')).toBe(before[0]);
    expect(readFileSync(at('authority.key'), 'utf8')).toBe(before[1]);
    expect(readFileSync(at('server.crt'), 'utf8')).not.toBe(before[2]);
  }, 60_000);

  it('makes a new authority only when asked, and puts the old one aside', async () => {
    const before = readFileSync(at('authority.key'), 'utf8');
    expect((await certificate('--new-authority')).said).toContain('A new authority was made');
    expect(readFileSync(at('authority.key'), 'utf8')).not.toBe(before);
    const aside = readdirSync(join(folder, 'certificates')).find((name) =>
      name.startsWith('authority.key.until-'),
    );
    expect(readFileSync(at(aside!), 'utf8')).toBe(before);
  }, 60_000);

  it('refuses a name of the internet that the authority was not made for', async () => {
    const before = readFileSync(at('server.crt'), 'utf8');
    const { code, said } = await certificate('farm.example.org');
    expect({ code, said }).toMatchObject({ code: 1 });
    expect(said).toContain('npm run certificate -- --new-authority farm.example.org');
    expect(readFileSync(at('server.crt'), 'utf8')).toBe(before);
  }, 60_000);

  it('refuses what is no name, and options that it does not know', async () => {
    expect(await certificate('https://farm.lan')).toMatchObject({
      code: 1,
      said: expect.stringContaining('is no host name'),
    });
    expect(await certificate('--all')).toMatchObject({ code: 1 });
  }, 60_000);
});

describe('a certificate', () => {
  const NOW = Date.UTC(2027, 3, 21);

  it('holds no longer than browsers allow, and its authority ten years', async () => {
    const authority = await makeAuthority(NOW, 'barn');
    const pair = await makeServerCertificate(authority, ['barn.local', '10.0.0.5'], NOW);
    const days = ({ validFrom, validTo }: X509Certificate): number =>
      (Date.parse(validTo) - Date.parse(validFrom)) / DAY_MS;
    const server = new X509Certificate(pair.certificate);
    expect(days(server)).toBeLessThanOrEqual(398);
    expect(Date.parse(server.validFrom)).toBeLessThan(NOW);
    expect(days(new X509Certificate(authority.certificate))).toBeLessThanOrEqual(3650);
    expect(server.checkIP('10.0.0.5')).toBe('10.0.0.5');
  });

  describe('by an authority', () => {
    const accepted = async (
      authority: KeyPair,
      ...names: string[]
    ): Promise<string | undefined> => {
      const { certificate: made } = await makeServerCertificate(authority, names, Date.now());
      const [ca, server] = [file('ca.pem', authority.certificate), file('server.pem', made)];
      const args = ['verify', '-x509_strict', '-CAfile', ca, server];
      return new Promise((resolve) =>
        execFile('openssl', args, (error, stdout, stderr) =>
          resolve(error ? stdout + stderr : undefined),
        ),
      );
    };
    const file = (name: string, text: string): string => {
      writeFileSync(join(folder, name), text);
      return join(folder, name);
    };

    it('is taken for names and addresses of a household, and those the authority is for', async () => {
      const authority = await makeAuthority(Date.now(), 'barn', [
        'barn',
        'farm.example',
        '203.0.113.7',
      ]);
      const names = ['barn.local', 'barn', 'localhost', 'farm.example', 'farm.lan'];
      const addresses = ['127.0.0.1', '::1', '10.0.0.5', '192.168.1.9', 'fd00::1', '203.0.113.7'];
      expect(await accepted(authority, ...names, ...addresses)).toBeUndefined();
      expect(namesOutside(authority.certificate, [...names, ...addresses])).toEqual([]);
    });

    it.each(['example.org', 'bank.example.com', '198.51.100.1', '2001:db8::1', 'notlocal'])(
      'is not taken for %s',
      async (name) => {
        const authority = await makeAuthority(Date.now(), 'barn', ['barn']);
        expect(await accepted(authority, 'barn.local', name)).toMatch(
          /permitted subtree violation/,
        );
        expect(namesOutside(authority.certificate, ['barn.local', name])).toEqual([name]);
      },
    );
  });

  it('never outlives its authority', async () => {
    const authority = await makeAuthority(NOW - 3600 * DAY_MS, 'barn');
    const pair = await makeServerCertificate(authority, ['barn.local'], NOW);
    expect(new X509Certificate(pair.certificate).validTo).toBe(
      new X509Certificate(authority.certificate).validTo,
    );
  });
});

describe('the certificate that the program answers with', () => {
  const settingsFor = (env: Record<string, string>) => readSettings({ HOST: '0.0.0.0', ...env });
  const file = (name: string, text: string): string => {
    writeFileSync(join(folder, name), text);
    return join(folder, name);
  };

  it('is the household’s own when it is open to the network, and none for this computer', () => {
    expect(tlsOf(settingsFor({}), { DATA_DIR: folder })?.cert).toBe(
      readFileSync(at('server.crt'), 'utf8'),
    );
    expect(tlsOf(settingsFor({ HOST: '127.0.0.1' }), { DATA_DIR: folder })).toBeUndefined();
    expect(tlsOf(settingsFor({}), { DATA_DIR: join(folder, 'none') })).toBeUndefined();
  });

  it('is refused in a sentence when it cannot be used', async () => {
    const authority = await makeAuthority(Date.now(), 'barn');
    const [one, two] = [
      await makeServerCertificate(authority, ['one.lan'], Date.now()),
      await makeServerCertificate(authority, ['two.lan'], Date.now()),
    ];
    const old = await makeServerCertificate(authority, ['old.lan'], Date.now() - 500 * DAY_MS);
    const refused = (cert: string, key: string) => () =>
      tlsOf(settingsFor({ TLS_CERT: file('c.pem', cert), TLS_KEY: file('k.pem', key) }), {});
    expect(refused(one.certificate, two.key)).toThrow(/do not belong together/);
    expect(refused('hello', one.key)).toThrow(/is not PEM text/);
    expect(refused(old.certificate, old.key)).toThrow(/ended on .* npm run certificate/);
    const missing = settingsFor({ TLS_CERT: '/nowhere/c.pem', TLS_KEY: '/nowhere/k.pem' });
    expect(() => tlsOf(missing, {})).toThrow(
      /^TLS_CERT is "\/nowhere\/c\.pem", a file that cannot/,
    );
    const { exitCode, said } = await programThatEnds({
      DATA_DIR: folder,
      TLS_CERT: '/nowhere/c.pem',
      TLS_KEY: '/nowhere/k.pem',
    });
    expect(exitCode).toBe(1);
    expect(said.trim()).toMatch(/^TLS_CERT is .* cannot be read\. .*$/);
  }, 60_000);
});

describe('the program over https', () => {
  let program: Program;
  beforeAll(async () => {
    program = await startProgram({ DATA_DIR: folder, HOST: '0.0.0.0' });
  }, 60_000);
  afterAll(() => program.stop());

  const ask = (
    path: string,
    ca?: Buffer,
  ): Promise<{ status: number; type: string; text: string }> =>
    new Promise((resolve, reject) => {
      const url = new URL(path, program.url);
      url.hostname = 'localhost';
      get(url, { ...(ca ? { ca } : {}) }, (response) => {
        let text = '';
        response.setEncoding('utf8').on('data', (part: string) => (text += part));
        response.on('end', () =>
          resolve({
            status: response.statusCode!,
            type: response.headers['content-type'] ?? '',
            text,
          }),
        );
      }).on('error', reject);
    });

  it('answers whoever trusts the authority, and nobody else', async () => {
    expect(program.url).toMatch(/^https:/);
    const ca = readFileSync(at('authority.crt'));
    expect((await ask('/api/farms', ca)).status).toBe(200);
    await expect(ask('/api/farms')).rejects.toThrow(/certificate/);
  });

  it('hands out the authority’s certificate, and never a key', async () => {
    const ca = readFileSync(at('authority.crt'));
    const { text, type } = await ask('/api/trust/authority.crt', ca);
    expect(type).toContain('application/x-x509-ca-cert');
    expect(text).toBe(ca.toString());
    const view = await ask('/api/trust', ca);
    expect(JSON.parse(view.text)).toEqual({
      authority: {
        name: `Broodfold of ${hostname()}`,
        fingerprint: new X509Certificate(ca).fingerprint256,
        endsOn: expect.stringMatching(/^\d{4}-\d\d-\d\d$/),
      },
    });
    expect(text + view.text).not.toContain('PRIVATE');
  });
});
