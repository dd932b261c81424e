import { regrown } from './regrowth.js';
import type { RotationProblem, Stay } from './rotation.js';
import { grazeDay } from './sward.js';

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

export interface SeasonBooks {
  /** Mass of each paddock in the evening of each day, kg/ha. */
  readonly massKgPerHa: readonly Float64Array[];
  readonly stays: readonly StayRecord[];
  readonly paddocks: readonly PaddockBook[];
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
  const { swards, herds, to, from, harvestShare, rankDrop } = problem;
  const n = swards[0]?.rate.length ?? 0;
  const byPaddock = swards.map((_, p) =>
    stays.filter((s) => s.paddock === p).sort((a, b) => a.from - b.from),
  );
  const hayKg = herds.map((herd) => Float64Array.from(herd.demandKg));
  const eatenKg = herds.map(() => new Float64Array(n));
  const records: StayRecord[] = [];
  const mown: { paddock: number; day: number; kg: number }[] = [];
  const massKgPerHa: Float64Array[] = [];
  const books = swards.map((sward, p): PaddockBook => {
    const series = new Float64Array(n).fill(NaN);
    const total = { grown: 0, eaten: 0, trampled: 0, mown: 0, diedOff: 0 };
    let mass = sward.startKgPerHa;
    let next = 0;
    let lastEnd = sward.lastGrazedEnd;
    let lastLeft: number | undefined;
    let open:
      | {
          stay: Stay;
          massBefore: number;
          grown: number;
          eaten: number;
          trampled: number;
          hay: number;
          share: number;
        }
      | undefined;
    for (let day = from; day < to; day++) {
      if (sward.cutDays.includes(day) && sward.stubbleKgPerHa < mass) {
        const kg = (mass - sward.stubbleKgPerHa) * sward.areaHa;
        mown.push({ paddock: p, day, kg });
        total.mown += mass - sward.stubbleKgPerHa;
        mass = sward.stubbleKgPerHa;
      }
      const stay = byPaddock[p]![next];
      if (!open && stay?.from === day) {
        const isRank = sward.rankKgPerHa < mass;
        const share =
          harvestShare[Math.min(stay.days, harvestShare.length) - 1]! - (isRank ? rankDrop : 0);
        open = { stay, massBefore: mass, grown: 0, eaten: 0, trampled: 0, hay: 0, share };
      }
      const grownTo = regrown(mass, sward.rate[day]!, sward.ceilingKgPerHa);
      const left = grownTo * (1 - sward.loss[day]!);
      total.grown += grownTo - mass;
      total.diedOff += grownTo - left;
      if (open) open.grown += left - mass;
      mass = left;
      if (open) {
        const { stay: now, share } = open;
        const demand = herds[now.herd]!.demandKg[day]!;
        const grazed = grazeDay(mass, sward.residualKgPerHa, demand / sward.areaHa, share);
        mass = grazed.massKgPerHa;
        total.eaten += grazed.eatenKgPerHa;
        total.trampled += grazed.trampledKgPerHa;
        const eaten = grazed.eatenKgPerHa * sward.areaHa;
        open.eaten += eaten;
        open.trampled += grazed.trampledKgPerHa * sward.areaHa;
        open.hay += demand - eaten;
        eatenKg[now.herd]![day] = eaten;
        hayKg[now.herd]![day] = demand - eaten;
        if (day === now.from + now.days - 1) {
          records.push({
            ...now,
            massBefore: open.massBefore,
            massAfter: mass,
            grownKg: open.grown * sward.areaHa,
            eatenKg: open.eaten,
            trampledKg: open.trampled,
            hayKg: open.hay,
            restDays: lastEnd === undefined ? undefined : now.from - lastEnd,
            grownInRestKgPerHa: lastLeft === undefined ? undefined : open.massBefore - lastLeft,
            isEarly: open.massBefore < sward.turnInKgPerHa,
            isRank: sward.rankKgPerHa < open.massBefore,
          });
          lastEnd = day + 1;
          lastLeft = mass;
          open = undefined;
          next++;
        }
      }
      series[day] = mass;
    }
    massKgPerHa.push(series);
    const kg = (perHa: number): number => perHa * sward.areaHa;
    return {
      startKg: kg(sward.startKgPerHa),
      endKg: kg(mass),
      grownKg: kg(total.grown),
      eatenKg: kg(total.eaten),
      trampledKg: kg(total.trampled),
      mownKg: kg(total.mown),
      diedOffKg: kg(total.diedOff),
    };
  });
  records.sort((a, b) => a.from - b.from || a.herd - b.herd);
  return { massKgPerHa, stays: records, paddocks: books, hayKg, eatenKg, mown };
}
