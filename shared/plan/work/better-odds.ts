import { gainOf, type PlayedJob } from '../../schedule/work-years.js';
import type { WorkJob, WorkProblem } from '../../schedule/work.js';
import type { PlayedWork } from './played-work.js';

/** What would make a piece of work likelier to get done in time. */
export interface BetterOdds {
  readonly kind: 'hour-a-week' | 'helper' | 'without' | 'fewer-birds';
  /** Who gives an hour more every Saturday; every adult where it is left out. */
  readonly personId?: string;
  /** The piece of work that is left out. */
  readonly key?: string;
  /** Name of the person, or of the work. */
  readonly name?: string;
  /** Its latest day; or the day of the helper, a Saturday where there is one in time. */
  readonly date?: string;
  /** How many birds fewer of the batch that the work belongs to. */
  readonly birds?: number;
  /** Share of years in which it is done by its latest day then. */
  readonly chance: number;
  /** What that is more, and the error of it. */
  readonly gain: number;
  readonly standardError: number;
}

type Told = Omit<BetterOdds, 'chance' | 'gain' | 'standardError'>;

/** A change of the work that may help some of the jobs. */
export interface Candidate {
  readonly told: Told;
  readonly problem: WorkProblem;
  /** The jobs it may help. */
  readonly helps: readonly number[];
}

/** Years in which a change is tried before the best of its kind is played in all of them. */
const TRIAL_YEARS = 60;
/** What raises a chance by less is not worth the asking. */
const LEAST_GAIN = 0.03;
/** A gain that may be chance is none. */
const SURE_ERRORS = 2;

/** What is asked of the odds of a household's work. */
export interface OddsAsked {
  /** Every job as it was played through all years. */
  readonly base: readonly PlayedJob[];
  readonly candidates: readonly Candidate[];
  /** Told the share of it that is done. */
  readonly onPlayed?: ((share: number) => void) | undefined;
}

/**
 * What would raise the odds of jobs most, the best of each kind, best kind first: each change is
 * tried in the first of the years, and what did best there is played through all of them.
 *
 * @returns by job; those that no change helps are left out
 */
export function betterOdds(
  played: PlayedWork,
  { base, candidates, onPlayed }: OddsAsked,
): Map<number, BetterOdds[]> {
  const best = bestTried(played, { base, candidates, onPlayed });
  const playing = candidates.filter((candidate) =>
    candidate.helps.some((i) => best.get(i)?.get(candidate.told.kind)?.candidate === candidate),
  );
  const found = new Map<number, BetterOdds[]>();
  playing.forEach((candidate, k) => {
    onPlayed?.(0.5 + k / (playing.length * 2));
    const after = played.play({
      problem: candidate.problem,
      untilDay: lastDue(candidate, played.problem),
    });
    for (const i of candidate.helps) {
      if (best.get(i)?.get(candidate.told.kind)?.candidate !== candidate) continue;
      const odds = oddsOf(candidate.told, base[i]!, after[i]!, played.problem.jobs[i]!);
      if (odds)
        found.set(
          i,
          [...(found.get(i) ?? []), odds].sort((a, b) => b.gain - a.gain),
        );
    }
  });
  return found;
}

type Best = Map<Told['kind'], { readonly candidate: Candidate; readonly gain: number }>;

function bestTried(
  { play, problem }: PlayedWork,
  { base, candidates, onPlayed }: OddsAsked,
): Map<number, Best> {
  const before = base.map(({ finishes }) => finishes.subarray(0, TRIAL_YEARS));
  const best = new Map<number, Best>();
  candidates.forEach((candidate, k) => {
    onPlayed?.(k / (candidates.length * 2));
    const { kind } = candidate.told;
    const tried = play({
      problem: candidate.problem,
      years: before[0]!.length,
      untilDay: lastDue(candidate, problem),
    });
    for (const i of candidate.helps) {
      const { gain } = gainOf(before[i]!, tried[i]!.finishes, problem.jobs[i]!);
      const kinds = best.get(i) ?? new Map();
      best.set(i, kinds);
      if ((kinds.get(kind)?.gain ?? 0) < gain) kinds.set(kind, { candidate, gain });
    }
  });
  return best;
}

/** Last day on which a change can still tell: the latest that it may help is due by then. */
const lastDue = ({ helps }: Candidate, { jobs }: WorkProblem): number =>
  helps.reduce((last, i) => Math.max(last, jobs[i]!.dueDay), 0);

function oddsOf(
  told: Told,
  before: PlayedJob,
  after: PlayedJob,
  job: WorkJob,
): BetterOdds | undefined {
  const { gain, standardError } = gainOf(before.finishes, after.finishes, job);
  if (gain < LEAST_GAIN || gain < SURE_ERRORS * standardError) return undefined;
  const inTime = after.finishes.reduce((n, day) => n + Number(0 <= day && day <= job.dueDay), 0);
  return { ...told, chance: inTime / after.finishes.length, gain, standardError };
}
