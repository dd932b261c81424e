import { TestEnvironment } from 'jest-environment-node';
import { AsyncLocalStorage } from 'node:async_hooks';
import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { fileURLToPath } from 'node:url';

/** As `compile-program.mjs` made them. */
const compiled = (name) => new URL(`../../test-output/program/${name}.js`, import.meta.url).href;
const core = await import(compiled('core'));

/** The program and a browser, started for the first file of tests of this process that asks. */
let house;
const sharedHouse = () => (house ??= startHouse());

async function startHouse() {
  const child = spawn(process.execPath, [fileURLToPath(compiled('shared-house'))], {
    stdio: ['pipe', 'pipe', 'inherit'],
  });
  const ended = once(child, 'exit').then(([code]) => {
    house = undefined;
    throw new Error(`The program or the browser for tests of the page ended with ${code}.`);
  });
  const [said] = await Promise.race([once(child.stdout, 'data'), ended]);
  ended.catch(() => undefined);
  // It ends with this process, and must not keep it from ending.
  for (const part of [child, child.stdin, child.stdout]) part.unref();
  return JSON.parse(said);
}

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
    // What the core throws is told apart by these.
    Object.assign(this.global, { Error, RangeError, TypeError });
    this.global.outside = {
      sharedHouse,
      playwright: () => import('playwright-core'),
      core,
      service: () => import(compiled('service')),
      solver: async () => (await import('highs')).default(),
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
