/** Invented work of a household: jobs, people and days as many as an issue of speed asks for. */
import { performance } from 'node:perf_hooks';

const dist = (path) => new URL(`../../dist/${path}`, import.meta.url).href;
const { fitWork } = await import(dist('shared/schedule/work-search.js'));
const { seededRandom } = await import(dist('shared/schedule/random.js'));

const DAYS = 120;
const JOBS = 150;
const FIRST_PLANS = 3;
const GOOD_PLANS = 1000;
const AGAIN_PLANS = 100;

/** @param print prints one figure: name, value, unit, number of runs */
export function benchWork(print) {
  const problem = invented(seededRandom(1));
  const fit = (plans, earlier) => fitWork(problem, { plans }, seededRandom(5), earlier);
  const timed = (work) => {
    const start = performance.now();
    const value = work();
    return { value, ms: performance.now() - start };
  };
  const first = timed(() => fit(FIRST_PLANS));
  print('work, 150 jobs, 3 people, 120 days: first plan, nothing warm', first.ms, 'ms', 1);
  const good = timed(() => fit(GOOD_PLANS));
  print('work, good plan (1,000 tried)', good.ms, 'ms', 1);
  print('work, cost of the first plan over its bound', first.value.cost / first.value.bound, '', 1);
  print('work, cost of the good plan over its bound', good.value.cost / good.value.bound, '', 1);
  const away = problem.workers.map((worker, w) =>
    w === 0
      ? {
          minutes: worker.minutes.map((m, d) => (20 <= d && d < 24 ? 0 : m)),
          lightMinutes: worker.lightMinutes.map((m, d) => (20 <= d && d < 24 ? 0 : m)),
        }
      : worker,
  );
  const again = timed(() =>
    fitWork({ ...problem, workers: away }, { plans: AGAIN_PLANS }, seededRandom(5), {
      plan: good.value.plan,
      costPerMove: 3,
    }),
  );
  print('work, plan again when one is away for four days', again.ms, 'ms', 1);
}

function invented(random) {
  const whole = (below) => Math.floor(random() * below);
  const dry = dryDays(random);
  const workers = [0, 1, 2].map((w) => {
    const minutes = Int32Array.from({ length: DAYS }, (_, day) =>
      w === 1 && 40 < day && day < 45 ? 0 : 4 < day % 7 ? 360 : 120,
    );
    return { minutes, lightMinutes: minutes.map((m) => Math.min(m, 200)) };
  });
  const jobs = Array.from({ length: JOBS }, (_, i) => {
    const dueDay = 10 + whole(105);
    return {
      id: `job ${i}`,
      minutes: 15 * (1 + whole(24)),
      peopleNeeded: random() < 0.1 ? 2 : 1,
      able: random() < 0.3 ? [0, 1] : [0, 1, 2],
      ...(random() < 0.5 ? { smallestPieceMinutes: 60 } : {}),
      fromDay: Math.max(0, dueDay - 5 - whole(20)),
      dueDay,
      untilDay: Math.min(DAYS - 1, dueDay + whole(20)),
      ...(random() < 0.4 ? { suits: dry } : {}),
      waitsFor: 3 < i && random() < 0.4 ? [{ job: whole(i), days: whole(3) }] : [],
      lateCostPerDay: 1 + whole(10),
      lostCost: 50 + whole(500),
    };
  });
  return { days: DAYS, workers, jobs };
}

const dryDays = (random) => Uint8Array.from({ length: DAYS }, () => (random() < 0.25 ? 1 : 0));
