import { hostname, networkInterfaces } from 'node:os';

/** A machine changes its addresses with its network, but not from one request to the next. */
const LOOK_AGAIN_MS = 1000;

/**
 * Says whether the program may be asked under a host name: as loopback, as an address or a name of
 * this machine (its own and with .local, as multicast DNS gives it), or as one that was allowed.
 * Anything else may be the name of another site that leads here (DNS rebinding).
 *
 * @param host of a Host header: a name or an address, with or without a port
 */
export function hostsOf(
  allowed: readonly string[],
  machineNames: () => readonly string[] = namesOfMachine,
): (host: string) => boolean {
  const always = new Set(['localhost', '127.0.0.1', '::1', ...allowed.map(plainName)]);
  let own = new Set<string>();
  let lookedAt = -Infinity;
  let lastAlways = '';
  return (host) => {
    // One browser asks under one name, again and again.
    if (host === lastAlways) return true;
    const name = plainName(host);
    if (always.has(name)) lastAlways = host;
    if (always.has(name) || own.has(name)) return true;
    const now = performance.now();
    if (now - lookedAt < LOOK_AGAIN_MS) return false;
    lookedAt = now;
    own = new Set(machineNames().map(plainName));
    return own.has(name);
  };
}

/** Names and addresses under which other machines of the network find this one. */
export function namesOfMachine(): string[] {
  const name = hostname();
  const short = name.split('.')[0]!;
  const addresses = Object.values(networkInterfaces()).flatMap((each) =>
    (each ?? []).map(({ address }) => address),
  );
  return [name, short, `${short}.local`, ...addresses].filter((each) => each !== '');
}

/** A host without port, brackets, zone or closing dot, in small letters. */
export const plainName = (host: string): string =>
  host
    .toLowerCase()
    .replace(/^\[([^\]]*)\](:\d+)?$/, '$1')
    .replace(/^([^:]*):\d+$/, '$1')
    .replace(/%.*$/, '')
    .replace(/\.$/, '');
