import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import { createHash, X509Certificate } from 'node:crypto';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Browser } from 'playwright-core';
import { certificateFolder, writePair } from '../../src/certificates/certificate-folder.js';
import { makeAuthority, makeServerCertificate } from '../../src/certificates/make-certificates.js';
import { chromiumOptions } from '../support/chromium.js';
import { playwright } from '../support/outside-browser.js';
import { seriousFindings, SIZES } from '../support/page.js';
import { startProgram, type Program } from '../support/program.js';

/** A name of another machine, as a phone would open it. */
const NAME = 'barn.home.arpa';

describe('a phone on the household’s network', () => {
  let folder: string;
  let browser: Browser;
  let program: Program;
  const port = (): string => new URL(program.url).port;

  const open = async (args: readonly string[] = []): Promise<void> => {
    program = await startProgram({ DATA_DIR: folder, HOST: '0.0.0.0', ALLOWED_HOSTS: NAME });
    browser = await playwright.chromium.launch(
      chromiumOptions([`--host-resolver-rules=MAP ${NAME} 127.0.0.1`, ...args]),
    );
  };
  const close = async (): Promise<void> => {
    await browser.close();
    await program.stop();
    rmSync(folder, { recursive: true, force: true });
  };
  beforeAll(() => {
    folder = mkdtempSync(join(tmpdir(), 'broodfold-phone-'));
  });

  describe('over plain http', () => {
    beforeAll(() => open(), 60_000);
    afterAll(close);

    it('is told what does not work, why, and how to set up https', async () => {
      const page = await browser.newPage({ viewport: SIZES.phone });
      await page.goto(`http://${NAME}:${port()}/`);
      await page.getByRole('link', { name: 'Use it on a phone' }).click();
      await page.getByText('Two things do not work here').waitFor();
      expect(await page.textContent('main')).toMatch(/position.*without signal/s);
      expect(await page.textContent('main')).toContain('npm run certificate');
      expect(await seriousFindings(page)).toEqual([]);
    }, 60_000);
  });

  describe('over https', () => {
    beforeAll(async () => {
      folder = mkdtempSync(join(tmpdir(), 'broodfold-phone-'));
      const authority = await makeAuthority(Date.now(), 'barn');
      const pair = await makeServerCertificate(authority, [NAME], Date.now());
      const certificates = certificateFolder({ DATA_DIR: folder });
      writePair(certificates, 'authority', authority);
      writePair(certificates, 'server', pair);
      // Trusted by its public key, as a phone trusts it by its authority.
      const spki = new X509Certificate(pair.certificate).publicKey.export({
        type: 'spki',
        format: 'der',
      });
      const hash = createHash('sha256').update(spki).digest('base64');
      await open([`--ignore-certificate-errors-spki-list=${hash}`]);
    }, 60_000);
    afterAll(close);

    it('is a place where everything works, and finds the certificate to trust', async () => {
      const page = await browser.newPage({ viewport: SIZES.phone });
      await page.goto(`https://${NAME}:${port()}/trust`);
      await page.getByText('Everything works here').waitFor();
      expect(await page.evaluate('window.isSecureContext')).toBe(true);
      for (const device of ['iPhone and iPad', 'Android', 'Windows', 'Mac', /^Linux/])
        await page.getByRole('heading', { name: device }).waitFor();
      const download = page.waitForEvent('download');
      await page.getByRole('link', { name: 'Download the certificate' }).click();
      expect((await download).suggestedFilename()).toBe('broodfold-authority.crt');
      expect(await seriousFindings(page)).toEqual([]);
      const position = await page.evaluate<string>(
        "navigator.permissions.query({ name: 'geolocation' }).then((found) => found.state)",
      );
      expect(position).not.toBe('denied');
    }, 60_000);

    it('reads and writes', async () => {
      const page = await browser.newPage();
      await page.goto(`https://${NAME}:${port()}/`);
      await page.getByRole('button', { name: 'Open the sample farm' }).click();
      await page.waitForURL(/\/farm\/.+\/today/);
    }, 60_000);
  });
});
