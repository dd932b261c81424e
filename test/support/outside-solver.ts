import type { Highs } from 'highs';

/** What `environment.mjs` hands in to tests that hold the core against a general-purpose solver. */
const outside = (globalThis as unknown as { outside: Outside }).outside;

interface Outside {
  readonly solver: () => Promise<Highs>;
}

/** A solver of its own, which runs outside a test's own world as it does for the service. */
export const { solver } = outside;
