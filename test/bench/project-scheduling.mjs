/**
 * Plans of published projects against their optima or critical paths. The instances are not part
 * of this program: BENCH_INSTANCES names a folder that holds j30.jsonl, j60.jsonl and j120.jsonl.
 */
import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { performance } from 'node:perf_hooks';

const dist = (path) => new URL(`../../dist/${path}`, import.meta.url).href;
const { readyProject } = await import(dist('shared/schedule/project.js'));
const { searchProject } = await import(dist('shared/schedule/project-search.js'));
const { seededRandom } = await import(dist('shared/schedule/random.js'));

/** What the makespan is compared with, as the literature does it. */
const SETS = [
  { set: 'j30', over: 'bestKnown', overName: 'optimum' },
  { set: 'j60', over: 'criticalPath', overName: 'critical path' },
  { set: 'j120', over: 'criticalPath', overName: 'critical path' },
];
/** The longest run is made on every fifth instance. */
const RUNS = [
  { schedules: 1000, every: 1 },
  { schedules: 5000, every: 1 },
  { schedules: 50000, every: 5 },
];
const SEED = 1;

/** @param print prints one figure: name, value, unit, number of instances */
export function benchProjectScheduling(print) {
  const folder = process.env.BENCH_INSTANCES;
  if (!folder) {
    console.error('project scheduling: set BENCH_INSTANCES to the folder of the instances.');
    return;
  }
  for (const { set, over, overName } of SETS) {
    const file = join(folder, `${set}.jsonl`);
    if (!existsSync(file)) {
      console.error(`project scheduling: there is no ${file}.`);
      continue;
    }
    const all = readFileSync(file, 'utf8').trim().split('\n').map(JSON.parse);
    for (const { schedules, every } of RUNS) {
      const instances = all.filter((_, k) => k % every === 0);
      const which = every === 1 ? '' : `, every ${every}th instance`;
      const name = `projects of ${set.slice(1)} activities, ${schedules} schedules${which}`;
      const meanOver = (makespanOf) => {
        const shares = instances.map((each) => makespanOf(each) / each[over] - 1);
        return (100 * shares.reduce((sum, share) => sum + share, 0)) / shares.length;
      };
      const begun = performance.now();
      const found = meanOver((instance) => checkedMakespan(instance, schedules));
      const ms = (performance.now() - begun) / instances.length;
      print(`${name}: over the ${overName}`, found, '%', instances.length);
      print(
        `${name}: best known over the ${overName}`,
        meanOver((instance) => instance.bestKnown),
        '%',
        instances.length,
      );
      print(`${name}: time for one`, ms, 'ms', instances.length);
    }
  }
}

/** A schedule is one pass over all activities, forward or backward, whichever scheme makes it. */
function checkedMakespan(instance, schedules) {
  const plan = searchProject(readyProject(instance), { schedules }, seededRandom(SEED));
  if (schedules < plan.schedules || instance.bestKnown < plan.bound)
    throw new Error(`${instance.id}: ${plan.schedules} schedules, bound ${plan.bound}.`);
  return plan.makespan;
}
