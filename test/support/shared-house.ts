/**
 * The program and a browser for all files of tests that a process comes by: prints where they are, and
 * ends with its input, which ends with that process.
 */
import { once } from 'node:events';
import { chromium } from 'playwright-core';
import { startBuilt } from './built-program.js';
import { chromiumOptions } from './chromium.js';

const [program, browser] = await Promise.all([
  startBuilt(),
  chromium.launchServer(chromiumOptions()),
]);
console.log(JSON.stringify({ url: program.url, browserAddress: browser.wsEndpoint() }));
process.stdin.resume();
await once(process.stdin, 'close');
await Promise.all([program.stop(), browser.close()]);
