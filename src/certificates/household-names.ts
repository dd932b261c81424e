import 'reflect-metadata';
import { AsnConvert } from '@peculiar/asn1-schema';
import {
  GeneralName,
  GeneralSubtree,
  GeneralSubtrees,
  id_ce_nameConstraints,
  NameConstraints,
} from '@peculiar/asn1-x509';
import * as x509 from '@peculiar/x509';
import { BlockList, isIP } from 'node:net';

/**
 * Endings that no name of the public internet has (RFC 2606, 6762 with its appendix G, 8375, and
 * ICANN's "internal"). A name that is permitted stands for all that end in it.
 */
const ENDINGS = ['localhost', 'local', 'lan', 'home', 'home.arpa', 'internal', 'intranet'];
/** Addresses of networks of one's own (RFC 1918, 3927, 4193), and those of the machine itself. */
const RANGES = [
  '127.0.0.0/8',
  '10.0.0.0/8',
  '172.16.0.0/12',
  '192.168.0.0/16',
  '169.254.0.0/16',
  '::1/128',
  'fc00::/7',
  'fe80::/10',
];

/**
 * The extension that lets an authority sign for names and addresses of a household only, and for
 * those it is made for (RFC 5280, 4.2.1.10).
 */
export function householdOnly(names: readonly string[]): x509.Extension {
  const known = permittedBy(ENDINGS, RANGES);
  const more = names.filter((name) => !known(name));
  const addresses = more.filter((name) => isIP(name) !== 0);
  const permitted = [
    ...[...ENDINGS, ...more.filter((name) => isIP(name) === 0)].map((dNSName) => ({ dNSName })),
    ...[...RANGES, ...addresses.map(alone)].map((iPAddress) => ({ iPAddress })),
  ];
  const constraints = new NameConstraints({
    permittedSubtrees: new GeneralSubtrees(
      permitted.map((name) => new GeneralSubtree({ base: new GeneralName(name) })),
    ),
  });
  return new x509.Extension(id_ce_nameConstraints, true, AsnConvert.serialize(constraints));
}

/** Which of the names an authority may not sign for; none when it was made without such a limit. */
export function namesOutside(authority: string, names: readonly string[]): string[] {
  const extension = new x509.X509Certificate(authority).getExtension(id_ce_nameConstraints);
  if (!extension) return [];
  const { permittedSubtrees = [] } = AsnConvert.parse(extension.value, NameConstraints);
  const bases = [...permittedSubtrees].map(({ base }) => base);
  const isPermitted = permittedBy(
    bases.flatMap(({ dNSName }) => dNSName ?? []),
    bases.flatMap(({ iPAddress }) => iPAddress ?? []),
  );
  return names.filter((name) => !isPermitted(name));
}

const alone = (address: string): string => `${address}/${isIP(address) === 4 ? 32 : 128}`;
const familyOf = (address: string) => (isIP(address) === 4 ? 'ipv4' : 'ipv6');

function permittedBy(
  endings: readonly string[],
  ranges: readonly string[],
): (name: string) => boolean {
  const addresses = new BlockList();
  for (const range of ranges) {
    const [network, bits] = range.split('/');
    addresses.addSubnet(network!, Number(bits), familyOf(network!));
  }
  return (name) =>
    isIP(name) === 0
      ? endings.some((ending) => name === ending || name.endsWith(`.${ending}`))
      : addresses.check(name, familyOf(name));
}
