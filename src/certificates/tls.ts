import { createPrivateKey, X509Certificate } from 'node:crypto';
import { readFileSync } from 'node:fs';
import { isLoopback, SettingError, type Settings } from '../settings.js';
import { certificateFolder, readPair } from './certificate-folder.js';

/** What a server needs to answer with https. */
export interface Tls {
  readonly cert: string;
  readonly key: string;
}

/**
 * The certificate to answer with: the one that the settings name, else, when the program is open to
 * the network, the household's own; undefined for plain http.
 *
 * @throws SettingError when a file cannot be read or is not what it should be
 */
export function tlsOf(settings: Settings, env: NodeJS.ProcessEnv = process.env): Tls | undefined {
  if (settings.tls) {
    const { certificateFile, keyFile } = settings.tls;
    return checked(
      { cert: read('TLS_CERT', certificateFile), key: read('TLS_KEY', keyFile) },
      'The certificate of TLS_CERT',
    );
  }
  if (isLoopback(settings.host)) return undefined;
  const own = readPair(certificateFolder(env), 'server');
  return own && checked({ cert: own.certificate, key: own.key }, 'The household’s certificate');
}

function read(setting: string, file: string): string {
  try {
    return readFileSync(file, 'utf8');
  } catch {
    throw new SettingError(
      `${setting} is "${file}", a file that cannot be read. Give the path of a PEM file.`,
    );
  }
}

function checked(tls: Tls, what: string): Tls {
  let isPair: boolean;
  let validTo: string;
  try {
    const certificate = new X509Certificate(tls.cert);
    isPair = certificate.checkPrivateKey(createPrivateKey(tls.key));
    ({ validTo } = certificate);
  } catch {
    throw new SettingError(
      `${what} or its key is not PEM text. Give files that begin with -----BEGIN, or make them with npm run certificate.`,
    );
  }
  if (!isPair)
    throw new SettingError(
      `${what} and its key do not belong together. Give two that do, or make them with npm run certificate.`,
    );
  if (Date.parse(validTo) < Date.now())
    throw new SettingError(`${what} ended on ${validTo}. Make a new one with npm run certificate.`);
  return tls;
}
