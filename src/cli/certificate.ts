import 'reflect-metadata';
import { X509Certificate } from 'node:crypto';
import { hostname } from 'node:os';
import { isIP } from 'node:net';
import { namesOfMachine, plainName } from '../common/allowed-hosts.js';
import {
  certificateFile,
  certificateFolder,
  putAside,
  readPair,
  writePair,
} from '../certificates/certificate-folder.js';
import {
  makeAuthority,
  makeServerCertificate,
  type KeyPair,
} from '../certificates/make-certificates.js';
import { namesOutside } from '../certificates/household-names.js';
import { readSettings } from '../settings/settings.js';

const HELP = `Makes the certificates for opening Broodfold with https on your network.

  npm run certificate                      makes what is missing, and the server's anew
  npm run certificate -- farm.lan          for other names of this computer as well
  npm run certificate -- --new-authority   makes a new authority too; every phone has to be told of it

The authority signs the server's certificate. Phones are told of the authority once; the page at
/trust says how. Its key stays in the folder of the data: give it to nobody.`;

/** Of all names first the one that people read in the address. */
function namesFor(extra: readonly string[]): string[] {
  const all = ['localhost', '127.0.0.1', '::1', ...namesOfMachine(), ...extra].map(plainName);
  const isOfOneCable = (name: string): boolean => /^fe80:/i.test(name);
  const names = [...new Set(all)].filter((name) => !isOfOneCable(name));
  const own = names.find((name) => name.endsWith('.local')) ?? 'localhost';
  return [own, ...names.filter((name) => name !== own)];
}

async function run(args: readonly string[]): Promise<void> {
  if (args.includes('--help')) return void console.log(HELP);
  const unknown = args.find((each) => each.startsWith('--') && each !== '--new-authority');
  if (unknown !== undefined) throw new Error(`${unknown} is not known here.\n\n${HELP}`);
  const { allowedHosts, port } = readSettings();
  const extra = [...allowedHosts, ...args.filter((each) => !each.startsWith('--'))];
  const wrong = extra.find((name) => isIP(name) === 0 && !/^[a-z0-9.-]{1,253}$/i.test(name));
  if (wrong !== undefined)
    throw new Error(`"${wrong}" is no host name. Write it without https:// and port: farm.lan`);
  const folder = certificateFolder();
  const wanted = namesFor(extra);
  const authority = await authorityIn(folder, args.includes('--new-authority'), wanted);
  const outside = namesOutside(authority.certificate, wanted);
  refuseOutside(outside.filter((name) => extra.map(plainName).includes(name)));
  const names = wanted.filter((name) => !outside.includes(name));
  const server = await makeServerCertificate(authority, names, Date.now());
  writePair(folder, 'server', server);
  const { validTo } = new X509Certificate(server.certificate);
  console.log(`The server's certificate holds until ${validTo}, for:`);
  console.log(`  ${names.join('\n  ')}`);
  if (0 < outside.length)
    console.log(
      `Left out, because the authority was not made for them: ${outside.join(', ')}. A new one can be made with --new-authority.`,
    );
  console.log(`Start with HOST=0.0.0.0 npm start, then open https://${names[0]}:${port}/trust`);
}

function refuseOutside(names: readonly string[]): void {
  if (names.length === 0) return;
  throw new Error(
    `The authority may sign for names of a household only, and for those it was made for, not for ${names.join(', ')}. Make a new one for it, of which every phone has to be told: npm run certificate -- --new-authority ${names.join(' ')}`,
  );
}

async function authorityIn(
  folder: string,
  isNewWanted: boolean,
  names: readonly string[],
): Promise<KeyPair> {
  const known = readPair(folder, 'authority');
  if (known && !isNewWanted) {
    console.log(`The authority stays as it is: ${certificateFile(folder, 'authority')}`);
    return known;
  }
  putAside(folder, 'authority', new Date().toISOString().slice(0, 10));
  const made = await makeAuthority(Date.now(), hostname(), names);
  writePair(folder, 'authority', made);
  console.log(`A new authority was made: ${certificateFile(folder, 'authority')}`);
  return made;
}

try {
  await run(process.argv.slice(2));
} catch (error) {
  console.error(error instanceof Error ? error.message : String(error));
  process.exit(1);
}
