import { regrown } from './regrowth.js';
import type { RotationProblem, Stay } from './rotation-problem.js';
import { grazeDay, type GrazedDay, type Sward } from './sward.js';

/** What one stay did. Masses in kg/ha, amounts in kg. */
export interface StayRecord extends Stay {
  readonly massBefore: number;
  readonly massAfter: number;
  readonly grownKg: number;
  readonly eatenKg: number;
  readonly trampledKg: number;
  readonly hayKg: number;
  /** Days since the paddock was last grazed, or undefined on its first visit. */
  readonly restDays: number | undefined;
  /** Mass it had when it was last left. */
  readonly grownInRestKgPerHa: number | undefined;
  readonly isEarly: boolean;
  readonly isRank: boolean;
}

/** Where the grass of one paddock went over the plan, kg. */
export interface PaddockBook {
  readonly startKg: number;
  readonly endKg: number;
  readonly grownKg: number;
  readonly eatenKg: number;
  readonly trampledKg: number;
  readonly mownKg: number;
  readonly diedOffKg: number;
}

/** What a day brought and took in one paddock, kg/ha, index = days after the first day. */
export interface GrassDays {
  readonly grown: Float64Array;
  readonly eaten: Float64Array;
  readonly trampled: Float64Array;
  readonly mown: Float64Array;
  readonly diedOff: Float64Array;
}

export interface SeasonBooks {
  /** Mass of each paddock in the evening of each day, kg/ha. */
  readonly massKgPerHa: readonly Float64Array[];
  readonly stays: readonly StayRecord[];
  readonly paddocks: readonly PaddockBook[];
  /** The same books by day. */
  readonly days: readonly GrassDays[];
  /** Hay (or other feed) each herd needs on each day, kg of dry matter. */
  readonly hayKg: readonly Float64Array[];
  readonly eatenKg: readonly Float64Array[];
  readonly mown: readonly { readonly paddock: number; readonly day: number; readonly kg: number }[];
}

/**
 * Plays a season day by day: growth, mowing, grazing, and the hay that fills what grass does not.
 *
 * Costs paddocks × days. For every paddock: start + grown = end + eaten + trampled + mown + died off.
 */
export function playSeason(problem: RotationProblem, stays: readonly Stay[]): SeasonBooks {
  const n = problem.swards[0]?.rate.length ?? 0;
  const fed: Fed = {
    hayKg: problem.herds.map((herd) => Float64Array.from(herd.demandKg)),
    eatenKg: problem.herds.map(() => new Float64Array(n)),
  };
  const played = problem.swards.map((_, p) => {
    const own = stays.filter((s) => s.paddock === p).sort((a, b) => a.from - b.from);
    return playPaddock(problem, p, own, fed);
  });
  return {
    ...fed,
    massKgPerHa: played.map((each) => each.massKgPerHa),
    paddocks: played.map((each) => each.book),
    days: played.map((each) => each.days),
    mown: played.flatMap((each) => each.mown),
    stays: played.flatMap((each) => each.stays).sort((a, b) => a.from - b.from || a.herd - b.herd),
  };
}

/** What each herd eats of grass and needs besides, by day; written while paddocks are played. */
interface Fed {
  readonly hayKg: readonly Float64Array[];
  readonly eatenKg: readonly Float64Array[];
}

interface PlayedPaddock {
  readonly massKgPerHa: Float64Array;
  readonly book: PaddockBook;
  readonly days: GrassDays;
  readonly stays: readonly StayRecord[];
  readonly mown: SeasonBooks['mown'];
}

function playPaddock(
  problem: RotationProblem,
  paddock: number,
  stays: readonly Stay[],
  fed: Fed,
): PlayedPaddock {
  const { from, to } = problem;
  const sward = problem.swards[paddock]!;
  const massKgPerHa = new Float64Array(sward.rate.length).fill(NaN);
  const records: StayRecord[] = [];
  const mown: { paddock: number; day: number; kg: number }[] = [];
  const days = noDays(sward.rate.length);
  let mass = sward.startKgPerHa;
  let left: Left = { day: sward.lastGrazedEnd, mass: undefined };
  let next = 0;
  let running: RunningStay | undefined;
  for (let day = from; day < to; day++) {
    if (sward.cutDays.includes(day) && sward.stubbleKgPerHa < mass) {
      mown.push({ paddock, day, kg: (mass - sward.stubbleKgPerHa) * sward.areaHa });
      days.mown[day] = mass - sward.stubbleKgPerHa;
      mass = sward.stubbleKgPerHa;
      left = { day, mass };
    }
    const stay = stays[next];
    if (!running && stay?.from === day) running = begin(problem, sward, stay, mass);
    const grown = regrown(mass, sward.rate[day]!, sward.ceilingKgPerHa);
    const kept = grown * (1 - sward.loss[day]!);
    days.grown[day] = grown - mass;
    days.diedOff[day] = grown - kept;
    if (running) running.grownKg += (kept - mass) * sward.areaHa;
    mass = kept;
    if (running) {
      const grazed = grazeRunning(problem, sward, running, day, mass, fed);
      mass = grazed.massKgPerHa;
      days.eaten[day] = grazed.eatenKgPerHa;
      days.trampled[day] = grazed.trampledKgPerHa;
      if (day === running.stay.from + running.stay.days - 1) {
        records.push(recordOf(sward, running, mass, left));
        left = { day: day + 1, mass };
        running = undefined;
        next++;
      }
    }
    massKgPerHa[day] = mass;
  }
  const kg = (perHa: Float64Array): number => perHa.reduce((a, b) => a + b, 0) * sward.areaHa;
  const book = {
    startKg: sward.startKgPerHa * sward.areaHa,
    endKg: mass * sward.areaHa,
    grownKg: kg(days.grown),
    eatenKg: kg(days.eaten),
    trampledKg: kg(days.trampled),
    mownKg: kg(days.mown),
    diedOffKg: kg(days.diedOff),
  };
  return { massKgPerHa, book, days, stays: records, mown };
}

const noDays = (n: number): GrassDays => ({
  grown: new Float64Array(n),
  eaten: new Float64Array(n),
  trampled: new Float64Array(n),
  mown: new Float64Array(n),
  diedOff: new Float64Array(n),
});

/** When a paddock was last left, and with what standing. */
interface Left {
  readonly day: number | undefined;
  readonly mass: number | undefined;
}

interface RunningStay {
  readonly stay: Stay;
  readonly massBefore: number;
  readonly harvestShare: number;
  grownKg: number;
  eatenKg: number;
  trampledKg: number;
  hayKg: number;
}

function begin(
  { harvestShare, rankDrop }: RotationProblem,
  sward: Sward,
  stay: Stay,
  massBefore: number,
): RunningStay {
  const share = harvestShare[Math.min(stay.days, harvestShare.length) - 1]!;
  return {
    stay,
    massBefore,
    harvestShare: share - (sward.rankKgPerHa < massBefore ? rankDrop : 0),
    grownKg: 0,
    eatenKg: 0,
    trampledKg: 0,
    hayKg: 0,
  };
}

function grazeRunning(
  { herds }: RotationProblem,
  sward: Sward,
  running: RunningStay,
  day: number,
  mass: number,
  fed: Fed,
): GrazedDay {
  const { herd } = running.stay;
  const needKg = herds[herd]!.demandKg[day]!;
  const grazed = grazeDay(mass, sward.residualKgPerHa, needKg / sward.areaHa, running.harvestShare);
  const eatenKg = grazed.eatenKgPerHa * sward.areaHa;
  running.eatenKg += eatenKg;
  running.trampledKg += grazed.trampledKgPerHa * sward.areaHa;
  running.hayKg += needKg - eatenKg;
  fed.eatenKg[herd]![day] = eatenKg;
  fed.hayKg[herd]![day] = needKg - eatenKg;
  return grazed;
}

function recordOf(
  sward: Sward,
  { stay, harvestShare: _share, ...running }: RunningStay,
  massAfter: number,
  left: Left,
): StayRecord {
  return {
    ...stay,
    ...running,
    massAfter,
    restDays: left.day === undefined ? undefined : stay.from - left.day,
    grownInRestKgPerHa: left.mass === undefined ? undefined : running.massBefore - left.mass,
    isEarly: running.massBefore < sward.turnInKgPerHa,
    isRank: sward.rankKgPerHa < running.massBefore,
  };
}
