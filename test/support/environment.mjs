import { TestEnvironment } from 'jest-environment-node';
import { AsyncLocalStorage } from 'node:async_hooks';

/** As `compile-program.mjs` made them. */
const compiled = (name) => new URL(`../../test-output/program/${name}.js`, import.meta.url).href;
const core = await import(compiled('core'));

/** What the file of tests that runs has begun to hand on from call to call. */
const handedOn = new Set();
for (const name of ['run', 'enterWith']) {
  const original = AsyncLocalStorage.prototype[name];
  AsyncLocalStorage.prototype[name] = function (...given) {
    handedOn.add(this);
    return original.apply(this, given);
  };
}

/**
 * Jest's environment of Node. What a file hands on from call to call ends with the file: each promise of
 * every later file of the same process would be given it, and a service has one for each start.
 */
export default class Environment extends TestEnvironment {
  async setup() {
    await super.setup();
    this.global.outside = {
      core,
      service: () => import(compiled('service')),
      env: process.env,
      Date,
    };
  }

  async teardown() {
    for (const storage of handedOn) storage.disable();
    handedOn.clear();
    await super.teardown();
  }
}
