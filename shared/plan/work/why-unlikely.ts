import { latestStart } from '../../schedule/latest-start.js';
import { crewHours } from '../../schedule/usual-ahead.js';
import { chanceOf, type PlayedJob } from '../../schedule/work-years.js';
import { asksForWeather } from './days-that-suit.js';
import type { PlayedWork } from './played-work.js';
import { inSeries } from '../../farm/repeated-jobs.js';
import type { WholeWork } from './whole-work.js';

/** Work that is unlikely to be done in time. */
export interface Unlikely {
  readonly index: number;
  /**
   * What it lacks most: `dates`, that its people have too few hours between its dates whatever else
   * there is; `before`, that what it waits for is late; `hours`, that other work has them; or
   * `weather`, days that suit.
   */
  readonly lacks: 'dates' | 'before' | 'hours' | 'weather';
  /** What it waits for, where that is late. */
  readonly waitsFor?: number;
}

/** So many are tried by themselves, what is worth most first. */
const MOST = 20;
/** Years in which the work is tried first, to see what it lacks. */
const WHY_YEARS = 100;

/**
 * Work that gets done in time in fewer years than is called likely, and what it lacks. Of a job that
 * comes again and again only the time that is hardest to get done is looked into.
 */
export function unlikelyWork(
  { needs, request }: WholeWork,
  played: PlayedWork,
  base: readonly PlayedJob[],
  onPlayed?: (share: number) => void,
): Unlikely[] {
  const { problem, windows } = played;
  const { likelyShare, sureShare } = request.tables.judgements.work;
  const chances = problem.jobs.map((job, i) => chanceOf(base[i]!, job, sureShare.value).onTime);
  const low = needs.flatMap(({ key }, index) => {
    const { latestDay } = windows[index]!;
    const isAhead = 0 <= latestDay && latestDay < problem.days;
    return isAhead && !problem.jobs[index]!.pinned && chances[index]! < likelyShare.value
      ? [{ key, index }]
      : [];
  });
  const worst = inSeries(low).map(({ next, later }) =>
    later.reduce((a, b) => (chances[b.index]! < chances[a.index]! ? b : a), next),
  );
  const togetherOf = crewHours(problem);
  const found = worst.map(({ index }): Omit<Unlikely, 'lacks'> & Partial<Unlikely> => {
    const job = problem.jobs[index]!;
    const fromDay = windows[index]!.earliestDay;
    if (latestStart({ ...job, fromDay }, job.dueDay, togetherOf(job), undefined) < 0)
      return { index, lacks: 'dates' };
    const waitsFor = lateBefore(played, base, index);
    return waitsFor === undefined ? { index } : { index, lacks: 'before', waitsFor };
  });
  const open = found
    .filter(({ lacks }) => lacks === undefined)
    .sort((a, b) => problem.jobs[b.index]!.lostCost - problem.jobs[a.index]!.lostCost)
    .slice(0, MOST)
    .map(({ index }, k, all): Unlikely => {
      onPlayed?.(k / all.length);
      const job = problem.jobs[index]!;
      const tried = played.play({ first: index, years: WHY_YEARS })[index]!;
      const first = chanceOf(tried, job, sureShare.value).onTime;
      if (1 - first < first - chances[index]!) return { index, lacks: 'hours' };
      return { index, lacks: asksForWeather(needs[index]!.conditions) ? 'weather' : 'dates' };
    });
  return [...found.filter((each): each is Unlikely => each.lacks !== undefined), ...open];
}

/** What a job waits for that is done too late for it in most of the years in which it fails. */
function lateBefore(
  { problem }: PlayedWork,
  base: readonly PlayedJob[],
  index: number,
): number | undefined {
  const { waitsFor, dueDay } = problem.jobs[index]!;
  let fails = 0;
  const late = new Map<number, number>();
  base[index]!.finishes.forEach((day, year) => {
    if (0 <= day && day <= dueDay) return;
    fails++;
    for (const { job, days } of waitsFor) {
      const before = base[job]!.finishes[year]!;
      if (before < 0 || dueDay < before + days) late.set(job, (late.get(job) ?? 0) + 1);
    }
  });
  const [most] = [...late].sort((a, b) => b[1] - a[1]);
  return most && fails < 2 * most[1] ? most[0] : undefined;
}
