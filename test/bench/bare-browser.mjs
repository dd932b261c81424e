import { spawn } from 'node:child_process';
import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

/**
 * Chromium as a household has it: driven over its pipe with no domain of its inspector switched on.
 * What drives a browser for tests follows each script, and then each error that is made while one
 * is read, as React makes five, has the browser parse that script once more.
 */
const ARGS = [
  '--headless',
  '--no-sandbox',
  '--disable-gpu',
  '--disable-background-networking',
  '--remote-debugging-pipe',
];
const AGAIN_MS = 5;

/** @param executablePath of Chromium */
export async function startBrowser(executablePath) {
  const profile = await mkdtemp(join(tmpdir(), 'broodfold-bench-'));
  const child = spawn(executablePath, [...ARGS, `--user-data-dir=${profile}`], {
    stdio: ['ignore', 'ignore', 'ignore', 'pipe', 'pipe'],
  });
  const ended = new Promise((resolve, reject) => {
    child.once('exit', resolve);
    child.once('error', reject);
  });
  const send = speakTo(child);
  await Promise.race([
    send('Browser.getVersion'),
    ended.then(() => Promise.reject(new Error(`${executablePath} did not start`))),
  ]);
  return {
    openTab: (size, slowed) => openTab(send, size, slowed),
    close: async () => {
      child.kill();
      await ended;
      await rm(profile, { recursive: true, force: true });
    },
  };
}

/** Commands and answers on the pipe: JSON, each ended by a zero byte. */
function speakTo(child) {
  const [, , , toIt, fromIt] = child.stdio;
  const waiting = new Map();
  let last = 0;
  let read = '';
  fromIt.setEncoding('utf8');
  fromIt.on('data', (text) => {
    const parts = (read + text).split('\0');
    read = parts.pop();
    for (const { id, result, error } of parts.map((part) => JSON.parse(part))) {
      const { method, resolve, reject } = waiting.get(id) ?? {};
      waiting.delete(id);
      if (error) reject?.(new Error(`${method}: ${error.message}`));
      else resolve?.(result);
    }
  });
  return (method, params = {}, sessionId = undefined) =>
    new Promise((resolve, reject) => {
      last += 1;
      waiting.set(last, { method, resolve, reject });
      toIt.write(`${JSON.stringify({ id: last, method, params, sessionId })}\0`);
    });
}

/**
 * A tab that shares nothing with another one, as a phone that has never been here.
 * @param size width and height in pixels
 * @param slowed how many times slower its processor is
 */
async function openTab(send, size, slowed) {
  const { browserContextId } = await send('Target.createBrowserContext');
  const { targetId } = await send('Target.createTarget', { url: 'about:blank', browserContextId });
  const { sessionId } = await send('Target.attachToTarget', { targetId, flatten: true });
  const here = (method, params) => send(method, params, sessionId);
  await here('Emulation.setDeviceMetricsOverride', {
    ...size,
    deviceScaleFactor: 1,
    mobile: false,
  });
  await here('Emulation.setCPUThrottlingRate', { rate: slowed });
  const run = async (written) => {
    const { result, exceptionDetails } = await here('Runtime.evaluate', {
      expression: written,
      awaitPromise: true,
      returnByValue: true,
    });
    if (exceptionDetails) throw new Error(exceptionDetails.exception?.description ?? written);
    return result.value;
  };
  return {
    /** Runs a function of its own text in the page: what it answers, awaited. */
    ask: (what, ...values) => run(`(${what.toString()})(...${JSON.stringify(values)})`),
    /** Until the address is taken: the page that was there is gone. */
    go: async (url) => {
      const before = await run('performance.timeOrigin');
      await here('Page.navigate', { url });
      while ((await run('performance.timeOrigin').catch(() => before)) === before)
        await new Promise((resolve) => setTimeout(resolve, AGAIN_MS));
    },
    slow: (rate) => here('Emulation.setCPUThrottlingRate', { rate }),
    close: () => send('Target.disposeBrowserContext', { browserContextId }),
  };
}
