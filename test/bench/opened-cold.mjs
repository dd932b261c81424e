/**
 * Farms that are opened when nothing of them is planned yet: herds, batches and work together. What is
 * timed is the whole answer, the good plan: none is sent before it.
 */
import { readFileSync } from 'node:fs';
import { performance } from 'node:perf_hooks';

const FARMS = 20;
/** Opened before those that are counted: a service that has run has warm threads. */
const WARMING = 10;
const PLAIN_EVERY_MS = 10;

/**
 * @param start starts a program of its own: nothing in it is warm
 * @param stop ends it
 * @param print prints one figure: name, value, unit, number of requests
 */
export async function benchOpenedCold(print, { start, stop }) {
  const { child, url } = await start();
  const json = async (path, init) => (await fetch(`${url}/api/farms${path}`, init)).json();
  const ids = [];
  for (let k = 0; k <= FARMS + 1; k++) ids.push((await json('/sample', { method: 'POST' })).id);
  const [first, plain, ...farms] = ids;
  print('work opened cold, the first of a program', await openMs(url, first), 'ms', 1);
  print('work opened cold, threads warm', await openMs(url, farms.shift()), 'ms', 1);
  // Two at a time: one after another they would all be planned by the first thread.
  for (let k = 0; k < WARMING; k += 2) {
    const pair = [
      await json('/sample', { method: 'POST' }),
      await json('/sample', { method: 'POST' }),
    ];
    await Promise.all(pair.map(({ id }) => openMs(url, id)));
  }
  farms.push(first);
  // That one was opened already: after a change its work is planned anew with the others.
  await fetch(`${url}/api/farms/${first}/people`, {
    method: 'POST',
    headers: { 'content-type': 'application/json' },
    body: JSON.stringify({ name: 'Helper', away: [] }),
  });
  let areAnswered = false;
  const waits = [];
  const asking = (async () => {
    while (!areAnswered) {
      const asked = performance.now();
      await (await fetch(`${url}/api/farms/${plain}`)).text();
      waits.push(performance.now() - asked);
      await new Promise((resolve) => setTimeout(resolve, PLAIN_EVERY_MS));
    }
  })();
  const before = cpuSeconds(child.pid);
  const took = await Promise.all(farms.map((id) => openMs(url, id)));
  areAnswered = true;
  await asking;
  const cpu = cpuSeconds(child.pid) - before;
  print('twenty farms opened at once, time of processors', cpu, 's', took.length);
  print('twenty farms opened at once, the last answered', Math.max(...took), 'ms', took.length);
  print(
    'twenty farms opened at once, longest wait of others',
    Math.max(...waits),
    'ms',
    waits.length,
  );
  await stop(child);
}

async function openMs(url, id) {
  const asked = performance.now();
  const answer = await fetch(`${url}/api/farms/${id}/work`);
  await answer.text();
  if (!answer.ok) throw new Error(`The work of a farm was answered with ${answer.status}.`);
  return performance.now() - asked;
}

/** Hundredths of a second, as Linux counts them. */
const TICKS = 100;

/** Time of processors that a process took so far: on a busy machine it says more than the clock. */
function cpuSeconds(pid) {
  const fields = readFileSync(`/proc/${pid}/stat`, 'utf8').split(') ')[1].split(' ');
  return (Number(fields[11]) + Number(fields[12])) / TICKS;
}
