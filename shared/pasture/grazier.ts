import { Field } from './field.js';
import {
  daysOf,
  driesHay,
  isForMowing,
  isOpen,
  tallestToSpare,
  tallestToTop,
  waysIn,
  type Way,
} from './grazing-rules.js';
import type { GrazingProblem, Mown, Stay } from './grazing-problem.js';
import type {
  Cut,
  Entry,
  SeasonBooks,
  StayEnd,
  StayRecord,
  StayStart,
  Topping,
} from './season-books.js';
import { bookOf, newStay, recordOf } from './stay-books.js';
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

/** Where a herd is, and how it got there. */
interface HerdState {
  at: number | undefined;
  /** On grass yesterday. */
  isOut: boolean;
  /** On grass at some time of this plan. */
  wasOut: boolean;
}

/** How a paddock is taken out of the round. */
type Spared = 'shut' | 'top';

/** What is tried in a look ahead, and for how many days. */
interface Asked {
  readonly days: number;
  /** One paddock more shut, or topped. */
  readonly without?: number;
  readonly topped?: number;
  /**
   * The herd that is to move on a day whose growth is over: what those before it ate is taken, and
   * its own feed alone is asked about. Left out, a look ahead begins before growth, for all herds.
   */
  readonly onMoveOf?: number;
  readonly mostKg?: number;
}

/** What a look ahead finds. */
interface Ahead {
  readonly feedKg: number;
  readonly entered: Set<number>;
}

/** A look ahead has no first day of a plan. */
const AHEAD = -1;
const NOT_OUT: HerdState = { at: undefined, isOut: false, wasOut: false };

export class Season {
  protected readonly hayKg: readonly Float64Array[];
  private readonly eatenKg: readonly Float64Array[];
  private readonly stays: StayRecord[] = [];
  private readonly cuts: Cut[] = [];
  private readonly toppings: Topping[] = [];
  private startStates: GrassState[] = [];
  /** Paddocks that a herd has gone into. */
  private readonly entered = new Set<number>();
  /** Day of the next walk. */
  private nextLook = 0;

  constructor(
    private readonly problem: GrazingProblem,
    private readonly fields: readonly Field[] = problem.swards.map((sward) => new Field(sward)),
    private readonly herds: readonly HerdState[] = problem.herds.map(() => NOT_OUT),
  ) {
    this.herds = herds.map((herd) => ({ ...herd }));
    this.hayKg = problem.herds.map(({ demandKg }) => Float64Array.from(demandKg));
    this.eatenKg = problem.herds.map(({ demandKg }) => new Float64Array(demandKg.length));
  }

  walk(hay: HayRule): void {
    const { from, to } = this.problem;
    for (let day = 0; day < to; day++) {
      if (day <= from) for (const field of this.fields) field.read(day);
      if (day === from) this.begin();
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

  /** The plan's books begin; a stay that runs goes on, from today as far as they are concerned. */
  private begin(): void {
    this.startStates = this.fields.map(({ state }) => ({ ...state }));
    this.cuts.length = 0;
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

  /** A day that has been: herds were where they were. What is mown is taken to be as it was planned. */
  private follow(day: number): void {
    const { past, herds } = this.problem;
    this.leavePast(day);
    for (const stay of past) {
      if (day < stay.from || stay.from + stay.days <= day) continue;
      const field = this.fields[stay.paddock]!;
      if (stay.from === day && !field.stay) this.enter(stay, 'next', 'standing-there');
      if (field.stay?.herd !== stay.herd) continue;
      field.shutFrom = undefined;
      field.graze(day, herds[stay.herd]!.demandKg[day]!);
      Object.assign(this.herds[stay.herd]!, { isOut: true, wasOut: true });
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
   * look ahead in the usual weather, by the same rules, asks for no more feed without them. For hay
   * as many as that holds for are shut; topped are a few a walk, so that they come back by turns.
   */
  private spare(day: number, how: Spared): void {
    const { judged, herds } = this.problem;
    // While any herd waits for grass there is none to spare.
    if (day < this.nextLook || !this.herds.some(({ isOut }) => isOut)) return;
    if (this.herds.some(({ wasOut, isOut }) => wasOut && !isOut)) return;
    const next = how === 'shut' ? tallestToSpare : tallestToTop;
    let paddock = next(this.problem, this.fields, day);
    if (paddock === undefined) return;
    this.nextLook = day + judged.walkEveryDays;
    const little = judged.missedShare * herds.reduce((sum, herd) => sum + herd.demandKg[day]!, 0);
    let topped = 0;
    // What is topped is gone for good, while hay is fed back: all of the plan counts.
    const days = how === 'top' ? Infinity : judged.lookAheadDays;
    let ahead = this.lookAhead(day, { days });
    const most = ahead.feedKg + little;
    while (paddock !== undefined) {
      // One that nobody would go into is not missed.
      if (ahead.entered.has(paddock)) {
        const tried = how === 'top' ? { topped: paddock } : { without: paddock };
        ahead = this.lookAhead(day, { ...tried, days, mostKg: most });
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
   * Feed that the herds would need by the usual weather, kg, and the paddocks they would go into.
   * Stops where more is needed than is asked about.
   */
  private lookAhead(day: number, asked: Asked): Ahead {
    const { problem } = this;
    const { days, onMoveOf, mostKg = Infinity } = asked;
    const growsFrom = onMoveOf === undefined ? day : day + 1;
    const ahead = new Season(
      { ...problem, from: AHEAD },
      this.fields.map((field, p) => field.ahead(problem.usualSwards[p]!, growsFrom)),
      this.herds,
    );
    if (asked.without !== undefined) ahead.fields[asked.without]!.shutFrom = day;
    if (asked.topped !== undefined) ahead.fields[asked.topped]!.top(day);
    const to = Math.min(problem.to, day + days);
    let feedKg = 0;
    for (let i = day; i < to && feedKg <= mostKg; i++) {
      if (growsFrom <= i) ahead.growAndMow(i);
      ahead.hayKg.forEach((kg, h) => {
        if (growsFrom <= i || onMoveOf! <= h) ahead.feed(h, i);
        if (onMoveOf === undefined || onMoveOf === h) feedKg += kg[i]!;
      });
    }
    return { feedKg, entered: ahead.entered };
  }

  private growAndMow(day: number): void {
    this.fields.forEach((field, paddock) => {
      const told = this.toldMowing(paddock, day);
      if (told?.day === day) this.mowAsTold(field, told);
      else this.mowAsPlanned(field, paddock, day, told !== undefined);
      field.grow(day);
    });
  }

  /** What was told of mowing a paddock, on that day of the past or soon after it. */
  private toldMowing(paddock: number, day: number): Mown | undefined {
    const { mown, from, judged } = this.problem;
    if (from < day || mown.length === 0) return undefined;
    const until = Math.min(from, day + judged.hayGrowsDays);
    return mown.find((each) => each.paddock === paddock && day <= each.day && each.day <= until);
  }

  /** It is history: what it gave is no hay of the plan. */
  private mowAsTold(field: Field, { paddock, day, isLeftLying }: Mown): void {
    if (isLeftLying) field.top(day);
    else field.mow(paddock, day, day + this.problem.judged.dryingDays);
  }

  /** @param isToldLater it is mown on the day that was told, not on the one that was planned */
  private mowAsPlanned(field: Field, paddock: number, day: number, isToldLater: boolean): void {
    const { problem } = this;
    // What is closed for something else is not mown.
    if (field.sward.isClosed[day] === 1) field.shutFrom = undefined;
    else if (field.shutFrom === undefined || isToldLater) return;
    else if (isForMowing(problem, field, day))
      this.cuts.push(field.mow(paddock, day, day + problem.judged.dryingDays));
    else if (!driesHay(problem, day)) field.shutFrom = undefined;
  }

  private feed(h: number, day: number): void {
    const { herds, from } = this.problem;
    const { demandKg, notBefore, startsIn } = herds[h]!;
    const herd = this.herds[h]!;
    const need = demandKg[day]!;
    if (day === from && startsIn !== undefined && 0 < need && notBefore <= day)
      this.standThere(h, day, startsIn);
    const end = this.endOf(herd, day, need);
    const mayGoOut = herd.wasOut || notBefore <= day;
    const ways = end && mayGoOut && 0 < need ? this.waysOf(h, day) : [];
    const way = this.pick(ways, day);
    if (end && (way || !this.canStillFeed(herd, day, need, end))) {
      this.leave(h, day, end);
      if (way) this.goIn(h, day, way);
    }
    herd.isOut = herd.at !== undefined;
    if (herd.at === undefined) return;
    const eaten = this.fields[herd.at]!.graze(day, need);
    this.eatenKg[h]![day] = eaten;
    this.hayKg[h]![day] = Math.max(0, need - eaten);
  }

  /** The way a herd takes: the first, unless somebody tries others. */
  protected pick(ways: readonly Way[], _day: number): Way | undefined {
    return ways[0];
  }

  /** A herd of which only the place is known. */
  private standThere(h: number, day: number, paddock: number): void {
    const herd = this.herds[h]!;
    if (herd.at !== undefined || this.fields[paddock]!.stay) return;
    this.enter({ herd: h, paddock, from: day, days: 0 }, 'out-already', 'standing-there');
    Object.assign(herd, { isOut: true, wasOut: true });
  }

  /** Why a herd has to move this morning; undefined where it stays. A herd on no paddock has to. */
  private endOf({ at }: HerdState, day: number, need: number): StayEnd | undefined {
    if (at === undefined) return 'eaten-down';
    const field = this.fields[at]!;
    if (need <= 0) return 'herd-gone';
    if (field.sward.isClosed[day] === 1) return 'shut';
    if (field.sward.weather.isSnow[day] === 1) return 'snow';
    const isGrazed = field.stay!.until <= day && this.stripStays(field);
    const { herds, judged } = this.problem;
    const { herd, enteredOn } = field.stay!;
    // What more stands there is not worth letting the next paddock grow old.
    const isLong = judged.mostStrips * herds[herd]!.longestStayDays <= day - enteredOn;
    if (isLong) return 'long-enough';
    return isGrazed || daysOf(field, need, field.stay!.harvestShare) < 1 ? 'eaten-down' : undefined;
  }

  /** Where no other paddock is ready, what is left feeds most of a day more. */
  private canStillFeed({ at }: HerdState, day: number, need: number, end: StayEnd): boolean {
    if (at === undefined || (end !== 'eaten-down' && end !== 'long-enough')) return false;
    const field = this.fields[at]!;
    // Strips that were grazed first rest as long as any paddock before they are grazed again.
    const rested = field.stay!.until - field.stay!.enteredOn;
    if (field.stay!.until <= day && this.stripStays(field) && rested < field.sward.leastRestDays)
      return false;
    return this.problem.judged.leastDayShare <= daysOf(field, need, field.stay!.harvestShare);
  }

  /** It is longer than one stay may be, so that it is grazed in strips. */
  private stripStays({ stay }: Field): boolean {
    const { enteredOn, until, herd } = stay!;
    return this.problem.herds[herd]!.longestStayDays < until - enteredOn;
  }

  private waysOf(h: number, day: number): Way[] {
    const { problem, fields } = this;
    const { isOut, wasOut } = this.herds[h]!;
    const ways = waysIn(problem, fields, h, day, wasOut);
    if (isOut) return ways;
    // Out only when there is grass for some days: moving in and out helps no sward.
    const need = problem.herds[h]!.demandKg[day]!;
    const days = ways.reduce(
      (sum, { paddock }) => sum + daysOf(fields[paddock]!, need, problem.harvestShare[0]!),
      0,
    );
    const round = problem.swards.reduce(
      (sum, { turnInKgPerHa, residualKgPerHa, areaHa }) =>
        sum + (turnInKgPerHa - residualKgPerHa) * areaHa,
      0,
    );
    const wanted = (problem.judged.roundShare * round * problem.harvestShare[0]!) / need;
    // In spring half as much will do: grass gains on the herd every day.
    const ahead = problem.judged.backFromHayDays / (wasOut ? 1 : 2);
    if (days < Math.min(ahead, wanted)) return [];
    return wasOut || ways[0]!.entry === 'ready' || this.passGoesOn(h, day) ? ways : [];
  }

  /**
   * Whether a first pass that begins on a morning goes on without hay, by a look ahead in the usual
   * weather. Where it would not, the herd waits, at the longest until a paddock is ready.
   */
  private passGoesOn(h: number, day: number): boolean {
    if (this.problem.from === AHEAD) return true;
    const { judged, herds } = this.problem;
    const { feedKg } = this.lookAhead(day, { days: judged.backFromHayDays, onMoveOf: h });
    return feedKg <= judged.missedShare * herds[h]!.demandKg[day]!;
  }

  private goIn(h: number, day: number, { paddock, entry }: Way): void {
    const herd = this.herds[h]!;
    const start: StayStart = herd.isOut ? 'next' : herd.wasOut ? 'after-hay' : 'turn-out';
    this.enter({ herd: h, paddock, from: day, days: 0 }, start, entry);
    Object.assign(herd, { isOut: true, wasOut: true });
  }

  private enter({ herd, paddock, from }: Stay, start: StayStart, entry: Entry): void {
    const field = this.fields[paddock]!;
    field.stay = newStay(this.problem, field, { herd, paddock, from, start, entry });
    this.herds[herd]!.at = paddock;
    this.entered.add(paddock);
  }

  private leave(h: number, day: number, end: StayEnd): void {
    const herd = this.herds[h]!;
    if (herd.at === undefined) return;
    const field = this.fields[herd.at]!;
    if (!field.books) {
      field.leave(day);
      herd.at = undefined;
      return;
    }
    if (day === field.stay!.from) {
      // Of a stay that ends on the plan's first morning nothing is left to tell, but that it was.
      if (field.stay!.enteredOn < day) field.leave(day);
      else field.stay = undefined;
      herd.at = undefined;
      return;
    }
    this.stays.push(recordOf(this.problem, field, herd.at, { day, end }));
    field.leave(day);
    herd.at = undefined;
  }

  books(): SeasonBooks {
    const { fields } = this;
    return {
      massKgPerHa: fields.map(({ books }) => books!.massKgPerHa),
      wetShare: fields.map(({ books }) => books!.wetShare),
      startStates: this.startStates,
      startKgPerHa: this.startStates.map(massOf),
      stays: this.stays.sort((a, b) => a.from - b.from || a.herd - b.herd),
      cuts: this.cuts,
      toppings: this.toppings,
      days: fields.map(({ books }) => books!.days),
      hayKg: this.hayKg,
      eatenKg: this.eatenKg,
      paddocks: fields.map((field, p) => bookOf(this.problem, field, this.startStates[p]!)),
    };
  }
}
