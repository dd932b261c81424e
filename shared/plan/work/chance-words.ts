import { PRIORITY_RANK } from './priority-rank.js';
import { addDays } from '../../calendar/plain-date.js';
import { formatDate, type DateReader } from '../../units/dates.js';
import { formatChance, formatHours } from '../../units/format.js';
import type { BetterOdds } from './better-odds.js';
import type { JobOutlook } from './job-outlook.js';
import { inSeries } from '../../farm/repeated-jobs.js';
import type { WorkOutlook } from './work-outlook.js';

/** In fewer years than this the household need not hear of it. */
const WORTH_SAYING = 0.05;

/** Work that is likely to be done in time, or of which no chance can be told yet. */
export const isLikely = ({ likelyShare }: WorkOutlook, { chance, alreadyLate }: JobOutlook) =>
  !alreadyLate && likelyShare <= chance;

/** So many days late is not worth more than its name, where nothing depends on it. */
const SLIGHTLY_LATE_DAYS = 3;

/** Work that is nearly always done soon after its latest day, though seldom by then. */
export const isSlightlyLate = (outlook: WorkOutlook, job: JobOutlook): boolean =>
  !isLikely(outlook, job) &&
  job.priority !== 'must' &&
  job.nearlyAlwaysBy !== undefined &&
  job.nearlyAlwaysBy <= addDays(job.latest, SLIGHTLY_LATE_DAYS);

/** Work that is unlikely to be done in time, in one line with its other times. */
export interface UnlikelyLine {
  readonly job: JobOutlook;
  /** How often it comes, and how many of its times are unlikely; of what comes once nothing. */
  readonly often?: string;
  readonly times: number;
  /** Work that is late because this is, by name. */
  readonly heldUp: readonly string[];
}

/** Work that is unlikely to be done in time, what matters most and is least likely first. */
export function unlikelyLines(outlook: WorkOutlook): UnlikelyLine[] {
  const unlikely = outlook.jobs
    .filter((job) => !isLikely(outlook, job) && !isSlightlyLate(outlook, job))
    .sort((a, b) => PRIORITY_RANK[a.priority] - PRIORITY_RANK[b.priority] || a.chance - b.chance);
  const byKey = new Map(unlikely.map((job) => [job.key, job]));
  const rootOf = (job: JobOutlook): JobOutlook => {
    const before = byKey.get(job.waitsFor?.key ?? '');
    return before ? rootOf(before) : job;
  };
  const stepsOf = ({ waitsFor }: JobOutlook): number => {
    const before = byKey.get(waitsFor?.key ?? '');
    return before ? 1 + stepsOf(before) : 0;
  };
  const heldUp = (root: JobOutlook): string[] =>
    unlikely
      .filter((job) => job !== root && rootOf(job) === root)
      .sort((a, b) => stepsOf(a) - stepsOf(b) || (a.latest < b.latest ? -1 : 1))
      .map(({ name }) => withoutPlace(name, root));
  return inSeries(unlikely.filter((job) => rootOf(job) === job)).map(({ next, later, often }) => ({
    job: next,
    ...(often === undefined ? {} : { often }),
    times: 1 + later.length,
    heldUp: heldUp(next),
  }));
}

/** The name of work without the place it has in common with other work: “Rake” of “Rake: Pond, Barn”. */
function withoutPlace(name: string, { name: other }: JobOutlook): string {
  const place = /: [^:]+$/.exec(other)?.[0] ?? '';
  return place !== '' && name.endsWith(place) ? name.slice(0, -place.length) : name;
}

/** What is late with a piece of work; nothing where nothing is. */
export const heldUpWords = ({ heldUp }: UnlikelyLine): string | undefined =>
  heldUp.length === 0 ? undefined : `Late with it: ${heldUp.join('; ')}.`;

/** Whether a piece of work gets done in time: a chance, or of how many days it may be done on. */
export function chanceWords(job: JobOutlook, reader: DateReader): string {
  const { alreadyLate, isFewDays, suitableDays, windowDays, latest, chance } = job;
  const by = formatDate(latest, reader);
  if (alreadyLate) return `Its latest day, ${by}, is past.`;
  if (isFewDays && suitableDays)
    return windowDays === 1
      ? `It may be done on ${by} only, a day that suits it ${formatChance(suitableDays.share)}.`
      : `In a usual year ${suitableDays.half} of the ${windowDays} days up to ${by} ${suitableDays.half === 1 ? 'suits' : 'suit'} it.`;
  return `Done by ${by}: ${formatChance(chance)}.`;
}

/** What becomes of it otherwise: late, in part, or not at all. */
export function elseWords(
  { lost, partly, partOfIt, usuallyBy, ...job }: JobOutlook,
  reader: DateReader,
): string[] {
  const isLate = job.alreadyLate || job.latest < (usuallyBy ?? '');
  return [
    ...(isLate && usuallyBy !== undefined
      ? [`Usually done by ${formatDate(usuallyBy, reader)}.`]
      : []),
    ...(WORTH_SAYING <= lost && !job.isFewDays ? [undoneWords(lost, partly)] : []),
    ...(WORTH_SAYING <= partly
      ? [`Partly done: ${formatChance(partly)}, then mostly ${aboutHowMuch(partOfIt)} of it.`]
      : []),
  ];
}

/** How often work is not done to its end: nobody says of what hardly ever gets done that it is left undone nearly every year. */
function undoneWords(lost: number, partly: number): string {
  const isAll = partly < WORTH_SAYING;
  const often = formatChance(lost);
  if (often === NEARLY_ALWAYS) return `It hardly ever gets ${isAll ? 'done' : 'finished'}.`;
  return `${isAll ? 'Not done at all' : 'Not finished'}: ${often}.`;
}

const NEARLY_ALWAYS = formatChance(1);

const PARTS = [
  'a little',
  'a fifth',
  'a third',
  'less than half',
  'half',
  'more than half',
  'two thirds',
  'most',
  'nearly all',
] as const;

/** A share as one would say it of a piece of work. */
const aboutHowMuch = (share: number): string =>
  PARTS[Math.max(1, Math.min(9, Math.round(10 * share))) - 1]!;

/** What work that is unlikely to be done in time lacks. */
export function lackWords({ lacks, waitsFor, windowDays }: JobOutlook): string | undefined {
  if (lacks === 'dates')
    return windowDays === 1
      ? 'There are too few hours for it on its day, whatever else is left undone.'
      : 'There are too few hours for it between its dates, whatever else is left undone.';
  if (lacks === 'before') return `“${waitsFor?.name}”, which it waits for, is late.`;
  if (lacks === 'hours') return 'On the days that suit it other work takes the hours.';
  return lacks === 'weather' ? 'The weather: too few days suit it.' : undefined;
}

/** What would raise the odds of a piece of work, with the chance before and after. */
export function betterWords(
  { helperHours }: Pick<WorkOutlook, 'helperHours'>,
  { chance: before }: Pick<JobOutlook, 'chance'>,
  better: BetterOdds,
  reader: DateReader,
): string {
  return `${changeWords(better, helperHours, reader)}: ${insteadOf(better.chance, before)}.`;
}

/** One chance beside another, in years of a hundred where tenths would say the same. */
function insteadOf(after: number, before: number): string {
  const words = formatChance(after);
  const were = formatChance(before);
  return words === were
    ? `${Math.round(100 * after)} years in 100 instead of ${Math.round(100 * before)}`
    : `${words} instead of ${were.replace('about ', '')}`;
}

function changeWords(
  { kind, date = '', name = 'every adult', birds = 0 }: BetterOdds,
  helperHours: number,
  reader: DateReader,
): string {
  if (kind === 'fewer-birds') return `${birds} birds fewer in this batch`;
  if (kind === 'hour-a-week') return `An hour more every Saturday from ${name}`;
  const day = formatDate(date, reader);
  return kind === 'helper'
    ? `A helper for ${formatHours(helperHours)} on ${day}`
    : `Without “${name}”, due by ${day}`;
}

/** Whether help was looked for: what only waits for other late work is helped with that. */
export const isTried = ({ lacks }: JobOutlook): boolean =>
  lacks !== undefined && lacks !== 'before';

/** Said of work for which help was looked for, and that nothing helps much. */
export const NOTHING_HELPS = 'More hours, a helper or one job less would not change that much.';

/** How the years are played, in a sentence. */
export const playedWords = ({ rightShares }: Pick<WorkOutlook, 'rightShares'>): string =>
  `In each of them you choose the days of your work anew every week, by a forecast of ${rightShares.length} days that fails as often as forecasts do (${Math.round(100 * (1 - rightShares[0]!))} of 100 of the next days, ${Math.round(100 * (1 - rightShares.at(-1)!))} of 100 of the last); what is planned for a day that turns out unfit goes undone that day.`;

/** Work that is done a little late, by name; nothing where all of it is in time. */
export function slightlyLateWords(outlook: WorkOutlook): string | undefined {
  const late = inSeries(outlook.jobs.filter((job) => isSlightlyLate(outlook, job)));
  if (late.length === 0) return undefined;
  const names = late.map(({ next, later }) =>
    [
      next.name,
      ...(next.belongsTo ? [` of ${next.belongsTo.name}`] : []),
      ...(0 < later.length ? [` (${1 + later.length} times)`] : []),
    ].join(''),
  );
  return `Done all the same, up to ${SLIGHTLY_LATE_DAYS} days after the latest day: ${names.join('; ')}.`;
}
