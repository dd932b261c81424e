import { chmodSync, existsSync, readFileSync, renameSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { makeFolder } from '../common/make-folder.js';
import { PROJECT_ROOT } from '../reference/load-tables.js';
import type { KeyPair } from './make-certificates.js';

export type Owner = 'authority' | 'server';

/** Folder of the household's certificates, beside its data. */
export const certificateFolder = (env: NodeJS.ProcessEnv = process.env): string =>
  join(env['DATA_DIR'] || join(PROJECT_ROOT, 'data'), 'certificates');

export const certificateFile = (folder: string, owner: Owner): string =>
  join(folder, `${owner}.crt`);
export const keyFile = (folder: string, owner: Owner): string => join(folder, `${owner}.key`);

/** A certificate and its key as kept; undefined when either is not there. */
export function readPair(folder: string, owner: Owner): KeyPair | undefined {
  const files = [certificateFile(folder, owner), keyFile(folder, owner)] as const;
  if (!files.every((file) => existsSync(file))) return undefined;
  const [certificate, key] = files.map((file) => readFileSync(file, 'utf8'));
  return { certificate: certificate!, key: key! };
}

/** Keeps a pair; only this user may read the key, at no moment anybody else. */
export function writePair(folder: string, owner: Owner, pair: KeyPair): void {
  makeFolder(folder, 0o700);
  chmodSync(folder, 0o700);
  for (const [file, text] of [
    [keyFile(folder, owner), pair.key],
    [certificateFile(folder, owner), pair.certificate],
  ] as const) {
    writeFileSync(`${file}.new`, text, { mode: 0o600 });
    renameSync(`${file}.new`, file);
  }
}

/** Puts a pair aside under a name with the date, so that it is not lost. */
export function putAside(folder: string, owner: Owner, date: string): void {
  for (const file of [certificateFile(folder, owner), keyFile(folder, owner)]) {
    if (existsSync(file)) renameSync(file, `${file}.until-${date}`);
  }
}

/** The authority's certificate as PEM, never its key; undefined when there is none. */
export function authorityCertificate(folder: string): string | undefined {
  const file = certificateFile(folder, 'authority');
  return existsSync(file) ? readFileSync(file, 'utf8') : undefined;
}
