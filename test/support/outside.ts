import type * as Service from './service.js';

/**
 * What stands outside the files of tests and is the same for all that run in a process:
 * `environment.mjs` hands it in. Each file has a world of its own, where the service would be loaded
 * anew, which takes longer than most of its tests, and where it runs slower than it does for a household.
 */
const outside = (globalThis as unknown as { outside: Outside }).outside;

interface Outside {
  readonly service: () => Promise<typeof Service>;
  readonly env: NodeJS.ProcessEnv;
  readonly Date: DateConstructor;
}

/** The service, compiled. */
export const service = await outside.service();

/** The settings and the clock that the service reads. */
export const { env: serviceEnv, Date: ServiceDate } = outside;
