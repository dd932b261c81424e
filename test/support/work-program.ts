import { costOf, type WorkJob, type WorkProblem } from '../../shared/schedule/work.js';

/** Rows and columns of a mixed-integer program, as they are written down. */
interface Program {
  readonly costs: string[];
  readonly rows: string[];
  readonly binary: string[];
  /** Minutes that go to each person and day, in all and in daylight, and to each two together. */
  readonly hours: Map<string, string[]>;
}

/** Days on which a job has a piece: sums of variables of which no more than one can be 1. */
type OnDays = ReadonlyMap<number, readonly string[]>;

/**
 * Fitting work into hours and days as a mixed-integer program in LP text for a general-purpose
 * solver: a variable for every job, day and set of people, minutes of each where it may be spread.
 */
export function workProgram(problem: WorkProblem): string {
  const program: Program = { costs: [], rows: [], binary: [], hours: new Map() };
  const onDays = problem.jobs.map((job, i) =>
    job.smallestPieceMinutes === undefined
      ? wholeJob(program, problem, job, i)
      : spreadJob(program, problem, job, i),
  );
  const isWaitedFor = new Set(problem.jobs.flatMap(({ waitsFor }) => waitsFor.map((w) => w.job)));
  for (const i of isWaitedFor) finished(program, problem.days, onDays[i]!, i);
  problem.jobs.forEach(({ waitsFor }, i) => {
    for (const { job, days, atMostDays } of waitsFor)
      for (const [day, row] of sumsOf(onDays[i]!)) {
        const by = day - days;
        program.rows.push(by < 0 ? `${row} <= 0` : `${row} - f${job}_${by} <= 0`);
        if (atMostDays === undefined) continue;
        // Done in one go on one of the days just before.
        const near = sumsOf(onDays[job]!).flatMap(([on, its]) =>
          on <= by && day - atMostDays <= on ? [` ${lessOf(its)}`] : [],
        );
        program.rows.push(`${row}${near.join('')} <= 0`);
      }
  });
  for (const [key, terms] of program.hours) {
    const [kind, w, day, other] = key.split('_') as [string, string, string, string | undefined];
    const worker = problem.workers[Number(w)]!;
    const together = other === undefined ? undefined : worker.together?.get(Number(other));
    if (kind === 'c' && !together) continue;
    const byDay = together ?? (kind === 'm' ? worker.minutes : worker.lightMinutes);
    const limit = byDay[Number(day)]!;
    program.rows.push(`${terms.join(' + ')} <= ${limit}`);
  }
  return [
    'Minimize',
    ` obj: ${program.costs.join(' + ')}`,
    'Subject To',
    ...program.rows.map((row, k) => ` c${k}: ${row}`),
    'Binary',
    ...program.binary.map((name) => ` ${name}`),
    'End',
  ].join('\n');
}

function wholeJob(program: Program, problem: WorkProblem, job: WorkJob, i: number): OnDays {
  const { costs, rows, binary } = program;
  const lost = `lost${i}`;
  binary.push(lost);
  costs.push(`${job.lostCost} ${lost}`);
  const onDays = new Map<number, string[]>();
  for (const day of daysOf(problem, job)) {
    const names = setsOf(job).map((set, s) => {
      const name = `x${i}_${day}_${s}`;
      binary.push(name);
      costs.push(`${costOf(job, [{ day, minutes: job.minutes, workers: set }])} ${name}`);
      takeHours(program, job, set, day, `${job.minutes} ${name}`);
      return name;
    });
    onDays.set(day, [names.join(' + ')]);
  }
  rows.push(`${[...[...onDays.values()].flat(), lost].join(' + ')} = 1`);
  return onDays;
}

function spreadJob(program: Program, problem: WorkProblem, job: WorkJob, i: number): OnDays {
  const { costs, rows, binary } = program;
  const least = Math.min(job.minutes, job.smallestPieceMinutes!);
  const [late, lost, whole] = [`late${i}`, `lost${i}`, `whole${i}`];
  binary.push(whole);
  const onDays = new Map<number, string[]>();
  const minutes: string[] = [];
  const ends: string[] = [];
  for (const day of daysOf(problem, job)) {
    const lateCost = Math.max(0, day - job.dueDay) * job.lateCostPerDay;
    const sets = setsOf(job);
    // One person alone may have others beside on the same day, each a piece; a crew is one a day.
    const groups = job.peopleNeeded === 1 ? sets.map((set) => [set]) : [sets];
    const sums: string[] = [];
    const endsOfDay: string[] = [];
    groups.forEach((group, g) => {
      const end = g === 0 ? `e${i}_${day}` : `e${i}_${day}_${g}`;
      binary.push(end);
      const names = group.map((set) => {
        const s = sets.indexOf(set);
        const [is, of] = [`y${i}_${day}_${s}`, `m${i}_${day}_${s}`];
        const most = Math.min(job.minutes, ...set.map((w) => minutesOf(problem, job, w, day)));
        binary.push(is);
        minutes.push(of);
        rows.push(`${of} - ${most} ${is} <= 0`, `${of} - ${least} ${is} + ${least} ${end} >= 0`);
        takeHours(program, job, set, day, of);
        return is;
      });
      // One piece a day, and none after a rest that is smaller than a useful piece.
      rows.push(`${[...names, ...ends].join(' + ')} <= 1`);
      rows.push(`${end} - ${names.join(' - ')} <= 0`);
      if (0 < lateCost)
        rows.push(`${late} ${names.map((n) => `- ${lateCost} ${n}`).join(' ')} >= 0`);
      sums.push(names.join(' + '));
      endsOfDay.push(end);
    });
    ends.push(...endsOfDay);
    onDays.set(day, sums);
  }
  costs.push(late, `${job.lostCost / job.minutes} ${lost}`);
  rows.push(`${[...minutes, lost].join(' + ')} = ${job.minutes}`);
  rows.push(`${lost} + ${job.minutes} ${whole} <= ${job.minutes}`);
  rows.push(`${[...ends, `0 ${lost}`].join(' + ')} - ${whole} <= 0`);
  return onDays;
}

/** Whether a job that others wait for is finished by each day, `f`: begun, and no piece after it. */
function finished({ rows }: Program, days: number, onDays: OnDays, i: number): void {
  const before: string[] = [];
  for (let day = 0; day < days; day++) {
    const sums = onDays.get(day) ?? [];
    if (0 < day) for (const sum of sums) rows.push(`${sum} + f${i}_${day - 1} <= 1`);
    if (0 < day) rows.push(`f${i}_${day - 1} - f${i}_${day} <= 0`);
    before.push(...sums.map(lessOf));
    rows.push(`f${i}_${day} ${before.join(' ')} <= 0`);
    rows.push(`f${i}_${day} <= 1`);
  }
}

const sumsOf = (onDays: OnDays): (readonly [number, string])[] =>
  [...onDays].flatMap(([day, sums]) => sums.map((sum) => [day, sum] as const));

/** A sum taken off a row. */
const lessOf = (sum: string): string =>
  sum
    .split(' + ')
    .map((name) => `- ${name}`)
    .join(' ');

function takeHours({ hours }: Program, job: WorkJob, set: number[], day: number, of: string): void {
  const take = (key: string): void => void hours.set(key, [...(hours.get(key) ?? []), of]);
  for (const w of set)
    for (const kind of job.needsLight ? ['m', 'l'] : ['m']) take(`${kind}_${w}_${day}`);
  // Two have fewer minutes at the same hours than either has.
  if (set.length === 2) take(`c_${Math.min(...set)}_${day}_${Math.max(...set)}`);
}

function daysOf({ days }: WorkProblem, job: WorkJob): number[] {
  const { fromDay, untilDay, suits, able, peopleNeeded } = job;
  if (able.length < peopleNeeded) return [];
  const list: number[] = [];
  for (let day = Math.max(0, fromDay); day <= Math.min(untilDay, days - 1); day++)
    if (!suits || suits[day] === 1) list.push(day);
  return list;
}

const minutesOf = ({ workers }: WorkProblem, job: WorkJob, w: number, day: number): number =>
  job.needsLight
    ? Math.min(workers[w]!.minutes[day]!, workers[w]!.lightMinutes[day]!)
    : workers[w]!.minutes[day]!;

const setsOf = ({ able, peopleNeeded }: WorkJob): number[][] =>
  peopleNeeded === 1
    ? able.map((w) => [w])
    : able.flatMap((a, k) => able.slice(k + 1).map((b) => [a, b]));
