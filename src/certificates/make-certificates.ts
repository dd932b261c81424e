import 'reflect-metadata';
import * as x509 from '@peculiar/x509';
import { randomBytes, webcrypto } from 'node:crypto';
import { isIP } from 'node:net';
import { householdOnly } from './household-names.js';

/** A certificate and its private key, both as PEM text. */
export interface KeyPair {
  readonly certificate: string;
  readonly key: string;
}

const ALGORITHM = { name: 'ECDSA', namedCurve: 'P-256', hash: 'SHA-256' } as const;
const DAY_MS = 86_400_000;
/** Phones keep an authority until it ends, and each has to be told of the next by hand. */
const AUTHORITY_DAYS = 3650;
/** Browsers take no server's certificate that holds for longer than 398 days. */
const SERVER_DAYS = 397;
/** Clocks of phones are not all right. */
const EARLIER_MS = DAY_MS;

/**
 * An authority of this household, which signs the certificates of its own machines only: what it
 * may sign for is written into it, so that whoever gets hold of its key can pose as no other site.
 *
 * @param names other names that it may sign for than those of any household
 */
export async function makeAuthority(
  nowMs: number,
  householdName: string,
  names: readonly string[] = [],
): Promise<KeyPair> {
  const keys = await newKeys();
  const certificate = await x509.X509CertificateGenerator.createSelfSigned({
    name: [{ CN: [`Broodfold of ${householdName}`] }],
    serialNumber: newSerial(),
    ...validFor(AUTHORITY_DAYS, nowMs),
    keys,
    signingAlgorithm: ALGORITHM,
    extensions: [
      new x509.BasicConstraintsExtension(true, 0, true),
      new x509.KeyUsagesExtension(
        x509.KeyUsageFlags.keyCertSign | x509.KeyUsageFlags.cRLSign,
        true,
      ),
      householdOnly(names),
      await x509.SubjectKeyIdentifierExtension.create(keys.publicKey),
    ],
  });
  return pemOf(certificate, keys.privateKey);
}

/**
 * A certificate for a server of the household.
 *
 * @param names host names and addresses under which it is opened
 */
export async function makeServerCertificate(
  authority: KeyPair,
  names: readonly string[],
  nowMs: number,
): Promise<KeyPair> {
  const keys = await newKeys();
  const issuer = new x509.X509Certificate(authority.certificate);
  const certificate = await x509.X509CertificateGenerator.create({
    subject: [{ CN: [names[0]!.slice(0, 64)] }],
    issuer: issuer.subjectName,
    serialNumber: newSerial(),
    ...validFor(SERVER_DAYS, nowMs, issuer.notAfter),
    publicKey: keys.publicKey,
    signingKey: await signingKeyIn(authority.key),
    signingAlgorithm: ALGORITHM,
    extensions: [
      new x509.BasicConstraintsExtension(false, undefined, true),
      new x509.KeyUsagesExtension(x509.KeyUsageFlags.digitalSignature, true),
      new x509.ExtendedKeyUsageExtension([x509.ExtendedKeyUsage.serverAuth]),
      new x509.SubjectAlternativeNameExtension(
        names.map((value) => ({ type: isIP(value) === 0 ? 'dns' : 'ip', value })),
      ),
      await x509.SubjectKeyIdentifierExtension.create(keys.publicKey),
      await x509.AuthorityKeyIdentifierExtension.create(issuer),
    ],
  });
  return pemOf(certificate, keys.privateKey);
}

const newKeys = (): Promise<webcrypto.CryptoKeyPair> =>
  webcrypto.subtle.generateKey(ALGORITHM, true, [
    'sign',
    'verify',
  ]) as Promise<webcrypto.CryptoKeyPair>;

/** Sixteen bytes, the first of them small so that the number is positive and not cut. */
const newSerial = (): string => `1${randomBytes(16).toString('hex').slice(1)}`;

function validFor(days: number, nowMs: number, atMost?: Date): { notBefore: Date; notAfter: Date } {
  const notBefore = new Date(nowMs - EARLIER_MS);
  const notAfter = new Date(notBefore.getTime() + days * DAY_MS);
  return { notBefore, notAfter: atMost && atMost < notAfter ? atMost : notAfter };
}

async function pemOf(
  certificate: x509.X509Certificate,
  key: webcrypto.CryptoKey,
): Promise<KeyPair> {
  const bytes = await webcrypto.subtle.exportKey('pkcs8', key);
  return {
    certificate: `${certificate.toString('pem')}\n`,
    key: `${x509.PemConverter.encode(bytes, 'PRIVATE KEY')}\n`,
  };
}

const signingKeyIn = (pem: string): Promise<webcrypto.CryptoKey> =>
  webcrypto.subtle.importKey('pkcs8', x509.PemConverter.decodeFirst(pem), ALGORITHM, false, [
    'sign',
  ]);
