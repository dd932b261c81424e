/** An answer of the service, and when it was asked for by the service's clock. */
export interface KeptAnswer<T> {
  readonly data: T;
  readonly askedAt: string;
}

/**
 * The farm that was opened last and its day. They lie where they can be read at once: a page that
 * opens on its day shows it as it was read last, while the service is still asked.
 */
const PLACES: readonly [RegExp, string][] = [
  [/^\/farms\/[^/]+$/, 'broodfold-farm'],
  [/^\/farms\/[^/]+\/today$/, 'broodfold-day'],
];
const placeOf = (path: string): string | undefined =>
  PLACES.find(([which]) => which.test(path))?.[1];

interface AtHand extends KeptAnswer<unknown> {
  /** The path, and the build that read it. */
  readonly name: string;
}

/** Keeps an answer at hand where its path is one of those. */
export function keepAtHand(path: string, name: string, answer: KeptAnswer<unknown>): void {
  const place = placeOf(path);
  if (place === undefined) return;
  try {
    localStorage.setItem(place, JSON.stringify({ name, ...answer } satisfies AtHand));
  } catch {
    // A phone that is full or keeps nothing waits for the service.
  }
}

/** What is at hand of a path; undefined when it is another farm's or another build's. */
export function atHand<T>(path: string, name: string): KeptAnswer<T> | undefined {
  const found = read(placeOf(path));
  return found?.name === name ? { data: found.data as T, askedAt: found.askedAt } : undefined;
}

/** Forgets what is at hand under such names. */
export function forgetAtHand(isMeant: (name: string) => boolean): void {
  for (const [, place] of PLACES) {
    const found = read(place);
    if (found && isMeant(found.name)) localStorage.removeItem(place);
  }
}

function read(place: string | undefined): AtHand | undefined {
  if (place === undefined) return undefined;
  try {
    const found = JSON.parse(localStorage.getItem(place) ?? 'null') as AtHand | null;
    return typeof found?.name === 'string' && typeof found.askedAt === 'string' ? found : undefined;
  } catch {
    return undefined;
  }
}
