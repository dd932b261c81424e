import { Field } from './field.js';
import { GrazedDays, NOT_OUT } from './grazed-days.js';
import {
  cutOf,
  driesHay,
  isForMowing,
  isOpen,
  lastLeftToTop,
  tallestToSpare,
  type Way,
} from './grazing-rules.js';
import type { GrazingProblem, Mown } from './grazing-problem.js';
import { LookAhead, type Ahead, type Asked } from './look-ahead.js';
import type { Cut, SeasonBooks, Topping } from './season-books.js';
import { StandRoom } from './stand-room.js';
import { bookOf } from './stay-books.js';
import type { GrassState } from './sward-day.js';
import { massOf } from './sward.js';

/**
 * Walks through a season day by day, as a grazier would: each move is decided on its own morning by
 * what stands then and by what usually grows, never by weather that is still to come.
 *
 * In at the ready height after the rest, out at the residual; a paddock that holds more than the
 * longest stay is grazed in strips; grass that outruns the herds is left out of the round, and shut
 * for hay or topped when a look ahead shows that it will not be missed; where no paddock is ready the herd is fed. For every paddock:
 * start + grown = end + eaten + trampled + mown + died off. Costs paddocks × days, and as much
 * again for each look ahead.
 *
 * @param hay what becomes of grass to spare: shut for hay by looking ahead; by a plain rule, above a
 *   height; topped, where nobody makes hay; or left to the herds
 */
export function graze(problem: GrazingProblem, hay: HayRule = 'looks-ahead'): SeasonBooks {
  const season = new Season(problem);
  season.walk(hay);
  return season.books();
}

export type HayRule = 'looks-ahead' | 'above-a-height' | 'tops' | 'never';

const M2_PER_HA = 10_000;

/** How a paddock is taken out of the round. */
type Spared = 'shut' | 'top';

export class Season extends GrazedDays {
  protected readonly hayKg: readonly Float64Array[];
  private readonly eatenKg: readonly Float64Array[];
  private readonly toppings: Topping[] = [];
  private startStates: GrassState[] = [];
  private assumedCuts: readonly Cut[] = [];
  /** The last go of mowing: its day, and land of it. */
  private go = { from: -Infinity, m2: 0, paddocks: 0 };
  /** The go of each paddock that is to be mown, by the day from which it is shut. */
  private readonly goes = new Map<number, { shutFrom: number; from: number }>();
  private rule: HayRule = 'looks-ahead';
  /** Day of the next walk. */
  private nextLook = 0;

  constructor(problem: GrazingProblem) {
    const clock = { after: -1 };
    const room = new StandRoom();
    super(
      problem,
      problem.swards.map((sward) => new Field(sward, problem.herds, clock, room)),
      clock,
      problem.herds.map(() => NOT_OUT),
    );
    this.hayKg = problem.herds.map(({ demandKg }) => Float64Array.from(demandKg));
    this.eatenKg = problem.herds.map(({ demandKg }) => new Float64Array(demandKg.length));
  }

  walk(hay: HayRule): void {
    this.rule = hay;
    const { from, to } = this.problem;
    for (let day = 0; day < to; day++) {
      if (day <= from) for (const field of this.fields) field.read(day);
      if (day === from) {
        this.mowFirst();
        this.begin();
      }
      if (hay === 'looks-ahead') this.spare(day, 'shut');
      if (hay === 'tops') this.spare(day, 'top');
      if (hay === 'above-a-height') this.shutAboveHeight(day);
      this.growAndMow(day);
      if (day < from) this.follow(day);
      else this.herds.forEach((_, herd) => this.feed(herd, day));
      for (const field of this.fields) field.evening(day);
    }
    this.herds.forEach((_, herd) => this.leave(herd, to, 'plan-ends'));
  }

  /** What was mown on the plan's first day was mown before the plan: its books begin after it. */
  private mowFirst(): void {
    const { mown, from } = this.problem;
    for (const told of mown.filter(({ day }) => day === from)) {
      this.mowAsTold(told);
      this.fields[told.paddock]!.books!.days.mown[from] = 0;
    }
  }

  /** The plan's books begin; a stay that runs goes on, from today as far as they are concerned. */
  private begin(): void {
    this.startStates = this.fields.map(({ state }) => state);
    this.assumedCuts = this.cuts.splice(0);
    this.toppings.length = 0;
    for (const [p, field] of this.fields.entries()) {
      if (!field.stay) continue;
      if (this.problem.herds[field.stay.herd]!.startsIn !== p) {
        this.leavePast(this.problem.from);
        continue;
      }
      Object.assign(field.stay, {
        ...{ from: this.problem.from, start: 'out-already', massBefore: field.mass },
        ...{ grownKg: 0, eatenKg: 0, trampledKg: 0, hayKg: 0 },
      });
    }
  }

  /** A day that has been: herds were where they were. What nobody told of mowing is taken as done once the days for it are over. */
  private follow(day: number): void {
    const { past } = this.problem;
    this.leavePast(day);
    for (const stay of past) {
      if (day < stay.from || stay.from + stay.days <= day) continue;
      const field = this.fields[stay.paddock]!;
      const herd = this.herds[stay.herd]!;
      if (stay.from === day && !field.stay) {
        herd.wasOut ||= this.isAnyTall();
        this.enter(stay, 'next', 'standing-there');
      }
      if (field.stay?.herd !== stay.herd) continue;
      field.shutFrom = undefined;
      field.graze(day);
      herd.isOut = true;
    }
  }

  /** Herds leave on the morning after their last day. */
  private leavePast(day: number): void {
    for (const { herd, paddock, from, days } of this.problem.past) {
      if (from + days !== day || this.fields[paddock]!.stay?.herd !== herd) continue;
      this.fields[paddock]!.leave(day);
      Object.assign(this.herds[herd]!, { at: undefined, isOut: false });
    }
  }

  /** What many do: a paddock that has grown half as much again as it is grazed at is shut for hay. */
  private shutAboveHeight(day: number): void {
    const { judged } = this.problem;
    for (const field of this.fields) {
      const isFree = !field.stay && isOpen(field, day) && driesHay(this.problem, day);
      if (isFree && judged.plainHayRipeness <= field.ripeness) field.shutFrom = day;
    }
  }

  /**
   * On a walk, takes paddocks out of the round that the herds would not miss, the tallest first: a
   * look ahead in the usual weather, by the same rules, asks for no more feed without them, what is
   * old by the time that it is eaten counted for what it is worth. For hay
   * as many as that holds for are shut; topped are a few a walk, so that they come back by turns.
   */
  private spare(day: number, how: Spared): void {
    const { judged, herds } = this.problem;
    // While any herd waits for grass there is none to spare.
    if (day < this.nextLook || !this.herds.some(({ isOut }) => isOut)) return;
    if (this.herds.some(({ wasOut, isOut }) => wasOut && !isOut)) return;
    const next = how === 'shut' ? tallestToSpare : lastLeftToTop;
    let paddock = next(this.problem, this.fields, day);
    if (paddock === undefined) return;
    this.nextLook = day + judged.walkEveryDays;
    const little = judged.missedShare * herds.reduce((sum, herd) => sum + herd.demandKg[day]!, 0);
    let topped = 0;
    // What is topped is gone for good, while hay is fed back: all of the plan counts.
    const asked = { days: how === 'top' ? Infinity : judged.lookAheadDays };
    let ahead = this.lookAhead(day, asked);
    let most = ahead.feedKg + little;
    const mostBeforeHay = ahead.beforeHayKg + little;
    while (paddock !== undefined) {
      // One that nobody would go into is not missed.
      if (ahead.entered.has(paddock)) {
        // Hay feeds nobody before it is made.
        const tried =
          how === 'top' ? { topped: paddock } : { shut: paddock, mostBeforeHayKg: mostBeforeHay };
        if (how === 'shut') most += this.hayOf(paddock, day, ahead);
        ahead = this.lookAhead(day, { ...asked, ...tried, mostKg: most });
        if (how === 'shut' && mostBeforeHay < ahead.beforeHayKg) return;
      }
      if (most < ahead.feedKg) return;
      const field = this.fields[paddock]!;
      if (how === 'top') {
        if (this.toldMowing(paddock, day)) return;
        this.toppings.push({ paddock, day, kg: field.top(day) });
        if (++topped === judged.toppedAWalk) return;
      } else field.shutFrom = day;
      paddock = next(this.problem, this.fields, day);
    }
  }

  /**
   * What hay makes up for, kg: where grass grows old before its turn comes, all that cattle would eat
   * of its hay, as that is worth more; where it goes rank, part of that.
   */
  private hayOf(paddock: number, day: number, { grownOld, wentRank }: Ahead): number {
    const { judged, hayEatenShare } = this.problem;
    const share = grownOld.has(paddock) ? 1 : wentRank.has(paddock) ? judged.rankHayShare : 0;
    if (share === 0) return 0;
    const field = this.fields[paddock]!;
    return share * cutOf(this.problem, field, paddock, day) * field.sward.areaHa * hayEatenShare;
  }

  /**
   * Paddocks that will be ready before the hay of the first is dry are mown with it, on one day, as far
   * as no more land lies in swaths at once than is allowed: who still works on the hay of one go mows
   * the next when it is in.
   */
  protected override gatherGo(day: number): void {
    const { judged, to } = this.problem;
    if (day < this.go.from + judged.dryingDays) return;
    const waiting = this.seenTo.filter((p) => this.isWaiting(p, day));
    if (!waiting.some((p) => isForMowing(this.problem, this.fields[p]!, day))) return;
    this.go = { from: day, m2: 0, paddocks: 0 };
    const soon = Math.min(to, day + judged.dryingDays) - 1;
    // Those that are ready come first where not all of them may lie at once.
    for (const on of [day, soon])
      for (const paddock of waiting) {
        const field = this.fields[paddock]!;
        if (!this.isWaiting(paddock, day) || !isForMowing(this.problem, field, on)) continue;
        const m2 = field.sward.areaHa * M2_PER_HA;
        // For a second paddock mower and baler are out already.
        const most = (this.go.paddocks === 1 ? 1 + judged.haySecondShare : 1) * judged.hayAtOnceM2;
        if (0 < this.go.m2 && most < this.go.m2 + m2) continue;
        this.go.m2 += m2;
        this.go.paddocks++;
        this.goes.set(paddock, { shutFrom: field.shutFrom!, from: day });
      }
  }

  /** What was told to lie in swaths is a go as well: the next one waits until its hay is in. */
  protected override mowAsTold(told: Mown): void {
    super.mowAsTold(told);
    if (!told.isLeftLying && this.go.from < told.day)
      this.go = { from: told.day, m2: 0, paddocks: 1 };
  }

  /** It is shut for hay, and in no go yet. */
  private isWaiting(paddock: number, day: number): boolean {
    const { shutFrom, sward } = this.fields[paddock]!;
    return (
      shutFrom !== undefined &&
      sward.isClosed[day] === 0 &&
      this.goOf(this.fields[paddock]!, paddock) === undefined
    );
  }

  protected override goOf({ shutFrom }: Field, paddock: number): number | undefined {
    const known = this.goes.get(paddock);
    return known?.shutFrom === shutFrom ? known?.from : undefined;
  }

  private lookAhead(day: number, asked: Asked): Ahead {
    return new LookAhead(
      this.problem,
      { fields: this.fields, herds: this.herds },
      day,
      asked,
    ).look();
  }

  protected override note(h: number, day: number, eatenKg: number, feedKg: number): void {
    this.eatenKg[h]![day] = eatenKg;
    this.hayKg[h]![day] = feedKg;
  }

  /**
   * Whether a first pass that begins on a morning goes on without hay until its paddocks are ready
   * again, by a look ahead in the usual weather. Where it would not, the herd waits, at the longest
   * until a paddock is ready: who goes out too soon feeds hay in the flush.
   */
  protected override mayBegin(h: number, day: number): boolean {
    const { judged, herds } = this.problem;
    const { demandKg } = herds[h]!;
    const days = judged.firstRoundsDays;
    let mostKg = judged.missedShare * demandKg[day]!;
    // Days on which all is closed are fed, whenever the herd goes out; it waits for those to come soon.
    for (let i = day + judged.backFromHayDays; i < Math.min(this.problem.to, day + days); i++)
      if (this.fields.every(({ sward }) => sward.isClosed[i] === 1)) mostKg += demandKg[i]!;
    return this.lookAhead(day, { days, onMoveOf: h, mostKg }).feedKg <= mostKg;
  }

  /** A plain rule leaves shut what it shut. */
  protected override openFor(h: number, day: number, open: Way | undefined): Way | undefined {
    const shut = this.fields.filter((field) => field.shutFrom !== undefined);
    if (this.rule !== 'looks-ahead' || shut.length === 0) return open;
    const since = shut.map(({ shutFrom }) => shutFrom);
    for (const field of shut) field.shutFrom = undefined;
    const way = this.pick(this.waysOf(h, day), day);
    const taken = open === undefined || way?.entry === 'ready' ? way : open;
    // Those that the herd does not go into stay shut.
    shut.forEach((field, k) => {
      if (field !== this.fields[taken?.paddock ?? -1]) field.shutFrom = since[k];
    });
    return taken;
  }

  books(): SeasonBooks {
    const { fields } = this;
    return {
      massKgPerHa: fields.map(({ books }) => books!.massKgPerHa),
      startStates: this.startStates,
      startKgPerHa: this.startStates.map(massOf),
      stays: this.stays.sort((a, b) => a.from - b.from || a.herd - b.herd),
      cuts: this.cuts,
      assumedCuts: this.assumedCuts,
      toppings: this.toppings,
      toldCuts: this.toldCuts,
      stoodAtReading: fields.map(({ stoodAtReading }) => stoodAtReading),
      days: fields.map(({ books }) => books!.days),
      hayKg: this.hayKg,
      eatenKg: this.eatenKg,
      paddocks: fields.map((field, p) => bookOf(this.problem, field, this.startStates[p]!)),
    };
  }
}
