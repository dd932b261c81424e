/** Fifty people who write to one farm at once, on every database there is. */
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { performance } from 'node:perf_hooks';
import { parse } from 'jsonc-parser';
import { onBoth } from './on-both.mjs';

const WRITERS = 50;
const WRITES_EACH = 10;
const SCHEMA = 'bench_writers';

/**
 * @param print prints one figure: name, value, unit, number of runs
 * @param start starts the program with a folder for its data and more of the environment
 * @param stop ends it
 */
export async function benchWriters(print, { start, stop }) {
  await onBoth(SCHEMA, bench);

  async function bench(database, env) {
    const dataDir = mkdtempSync(join(tmpdir(), 'broodfold-bench-'));
    const program = await start(dataDir, env);
    const { times, kept } = await write(program.url);
    times.sort((a, b) => a - b);
    const p95 = times[Math.floor(times.length * 0.95)];
    print(`${WRITERS} writers on one farm, ${database}: p95`, p95, 'ms', times.length);
    print(
      `${WRITERS} writers on one farm, ${database}: lost`,
      times.length - kept,
      '',
      times.length,
    );
    await stop(program.child);
    rmSync(dataDir, { recursive: true, force: true });
  }
}

async function write(url) {
  const example = readFileSync(new URL('../support/examples/order.jsonc', import.meta.url), 'utf8');
  const farm = await send(`${url}/api/farms`, 'POST', parse(example).farm);
  const path = `${url}/api/farms/${farm.id}/people`;
  const times = [];
  const writer = async (i) => {
    const { id } = await send(path, 'POST', { name: `Adult ${i}`, away: [] });
    for (let k = 1; k <= WRITES_EACH; k++) {
      const start = performance.now();
      await send(`${path}/${id}`, 'PUT', { name: `Adult ${i} ${k}`, away: [] });
      times.push(performance.now() - start);
    }
  };
  await Promise.all(Array.from({ length: WRITERS }, (_, i) => writer(i)));
  const people = await (await fetch(path)).json();
  // The last name and the version tell of every write that was answered.
  const kept = people.reduce((sum, { version }) => sum + version - 1, 0);
  return { times, kept };
}

async function send(url, method, body) {
  const response = await fetch(url, {
    method,
    headers: { 'content-type': 'application/json' },
    body: JSON.stringify(body),
  });
  if (!response.ok) throw new Error(`${method} ${url} answered ${response.status}`);
  return response.json();
}
