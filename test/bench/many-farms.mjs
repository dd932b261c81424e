/** One farm read among two thousand others, on every database there is. */
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { performance } from 'node:perf_hooks';
import { parse } from 'jsonc-parser';
import { onBoth } from './on-both.mjs';

const OTHERS = Number(process.env.BENCH_FARMS ?? 2000);
const AT_ONCE = 20;
const RUNS = 200;
const SCHEMA = 'bench_many_farms';
/** Plain reads: nothing is planned for them. */
const READS = ['', '/people', '/batches', '/herds', '/jobs', '/told?take=50'];

/**
 * @param print prints one figure: name, value, unit, number of runs
 * @param start starts the program with a folder for its data and more of the environment
 * @param stop ends it
 */
export async function benchManyFarms(print, { start, stop }) {
  await onBoth(SCHEMA, bench);

  async function bench(database, env) {
    const dataDir = mkdtempSync(join(tmpdir(), 'broodfold-bench-'));
    const program = await start(dataDir, env);
    const farms = `${program.url}/api/farms`;
    const order = new URL('../support/examples/order.jsonc', import.meta.url);
    const { farm } = parse(readFileSync(order, 'utf8'));
    for (let k = 0; k < OTHERS; k += AT_ONCE)
      await Promise.all(
        Array.from({ length: AT_ONCE }, (_, i) =>
          post(farms, { ...farm, name: `${farm.name} ${k + i}` }),
        ),
      );
    const { id } = await post(`${farms}/sample`);
    const times = [];
    for (let k = 0; k < RUNS; k++)
      for (const what of READS) {
        const before = performance.now();
        await (await fetch(`${farms}/${id}${what}`)).arrayBuffer();
        times.push(performance.now() - before);
      }
    times.sort((a, b) => a - b);
    const name = `a plain read among ${OTHERS + 1} farms, ${database}`;
    print(`${name}: median`, times[Math.floor(times.length / 2)], 'ms', times.length);
    print(`${name}: p99`, times[Math.floor(times.length * 0.99)], 'ms', times.length);
    await stop(program.child);
    rmSync(dataDir, { recursive: true, force: true });
  }
}

async function post(url, body) {
  const answer = await fetch(url, {
    method: 'POST',
    ...(body ? { headers: { 'content-type': 'application/json' } } : {}),
    ...(body ? { body: JSON.stringify(body) } : {}),
  });
  if (!answer.ok) throw new Error(`${url} answered ${answer.status}`);
  return answer.json();
}
