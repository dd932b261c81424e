import type { Clock, Field } from './field.js';
import { daysOf, driesHay, mostStripsOn, waysIn, type Way } from './grazing-rules.js';
import type { GrazingProblem, Mown, Stay } from './grazing-problem.js';
import type { Cut, Entry, StayEnd, StayRecord, StayStart, Topping } from './season-books.js';
import { newStay, recordOf } from './stay-books.js';

/** Where a herd is, and how it got there. */
export interface HerdState {
  at: number | undefined;
  /** On grass yesterday. */
  isOut: boolean;
  /** On grass at some time of this plan, or of its past, that was tall enough. */
  wasOut: boolean;
}

export const NOT_OUT: HerdState = { at: undefined, isOut: false, wasOut: false };

/** What lets a herd in below the ready height where there is nothing better; a first pass is low on purpose. */
const LAST: ReadonlySet<Entry> = new Set(['leaf-stage', 'at-rest', 'dormant']);

/**
 * Days of grass and herds, walked one after the other by a grazier's rules: what is shut is mown,
 * grass grows, and each herd stays, moves or is fed.
 */
export abstract class GrazedDays {
  protected readonly stays: StayRecord[] = [];
  protected readonly cuts: Cut[] = [];
  protected readonly toldCuts: Topping[] = [];
  protected readonly herds: readonly HerdState[];
  /** Paddocks that are shut or that a herd was in: of the others a look ahead changes nothing. */
  protected readonly seenTo: number[] = [];
  private readonly all: readonly number[];
  private round: number | undefined;

  constructor(
    protected readonly problem: GrazingProblem,
    protected readonly fields: readonly Field[],
    private readonly clock: Clock,
    herds: readonly HerdState[],
  ) {
    this.herds = herds.map((herd) => ({ ...herd }));
    this.all = fields.map((_, paddock) => paddock);
    fields.forEach((field, paddock) => {
      if (!field.growsAlone || field.stay || field.shutFrom !== undefined) this.seeTo(paddock);
    });
  }

  protected seeTo(paddock: number): void {
    if (!this.seenTo.includes(paddock)) this.seenTo.push(paddock);
  }

  /** What a herd ate of the grass on a day, and what it has to be fed beside it, kg. */
  protected abstract note(herd: number, day: number, eatenKg: number, feedKg: number): void;

  /** Whether a herd that is not yet on grass may begin a first pass on a morning. */
  protected abstract mayBegin(herd: number, day: number): boolean;

  protected growAndMow(day: number): void {
    const { fields } = this;
    const { mown, from } = this.problem;
    const isTold = day <= from && 0 < mown.length;
    const isNewYear = 0 < day && fields[0]?.sward.weather.isNewYear[day] === 1;
    this.gatherGo(day);
    for (const paddock of isNewYear ? this.all : this.seenTo) {
      const field = fields[paddock]!;
      const told = isTold ? this.toldMowing(paddock, day) : undefined;
      if (field.shutFrom !== undefined) this.mowAsPlanned(field, paddock, day, told);
      if (told?.day === day) this.mowAsTold(told);
      if (isNewYear || !field.growsAlone) field.grow(day);
    }
    this.clock.after = day;
  }

  /** What was told of mowing a paddock, on that day of the past or soon after it. */
  protected toldMowing(paddock: number, day: number): Mown | undefined {
    const { mown, from, judged } = this.problem;
    if (from < day || mown.length === 0) return undefined;
    const until = Math.min(from, day + judged.hayGrowsDays);
    return mown.find((each) => each.paddock === paddock && day <= each.day && each.day <= until);
  }

  /** It is history: what it gave is no hay of the plan. */
  protected mowAsTold({ paddock, day, isLeftLying }: Mown): void {
    if (this.toldCuts.some((cut) => cut.paddock === paddock && cut.day === day)) return;
    const field = this.fields[paddock]!;
    const kg = isLeftLying ? field.top(day) : field.mow(paddock, this.mownOn(day, day)).kg;
    this.toldCuts.push({ paddock, day, kg });
  }

  /** @param told the day it is mown on, not the one that was planned, which keeps its place among the others */
  private mowAsPlanned(field: Field, paddock: number, day: number, told: Mown | undefined): void {
    const { problem } = this;
    // What is closed for something else is not mown.
    if (field.sward.isClosed[day] === 1) {
      field.shutFrom = undefined;
      return;
    }
    if (told) return;
    const goFrom = this.goOf(field, paddock, day);
    if (goFrom !== undefined && this.isTakenAsMown(goFrom, day))
      this.cuts.push(field.mow(paddock, this.mownOn(day, goFrom)));
    else if (!driesHay(problem, day)) field.shutFrom = undefined;
  }

  private mownOn(day: number, goFrom: number): Pick<Cut, 'day' | 'goFrom' | 'openFrom'> {
    return { day, goFrom, openFrom: day + this.problem.judged.dryingDays };
  }

  /** Looks which of the paddocks that are shut are mown together from a morning on. */
  protected abstract gatherGo(day: number): void;

  /** First day of the go that a paddock is mown in; undefined where it is not ready, or others lie in swaths. */
  protected abstract goOf(field: Field, paddock: number, day: number): number | undefined;

  /** What nobody told of is still to be mown, as long as its work has days left for it. */
  private isTakenAsMown(goFrom: number, day: number): boolean {
    const { from, mownWithinDays } = this.problem;
    return from <= day || goFrom + mownWithinDays < day;
  }

  protected feed(h: number, day: number): void {
    const { herds, from } = this.problem;
    const { demandKg, notBefore, startsIn, isSeenThere } = herds[h]!;
    const herd = this.herds[h]!;
    const need = demandKg[day]!;
    const isThere = startsIn !== undefined && (isSeenThere || notBefore <= day);
    if (day === from && isThere && 0 < need) this.standThere(h, day, startsIn);
    const end = this.endOf(herd, day, need);
    const mayGoOut = herd.wasOut || notBefore <= day;
    const asks = end !== undefined && mayGoOut && 0 < need;
    let way = this.pick(asks ? this.waysOf(h, day) : [], day);
    const isOver = end !== undefined && (way || !this.canStillFeed(herd, day, need, end));
    if (isOver && asks && (!way || LAST.has(way.entry))) way = this.openFor(h, day, way);
    if (end && isOver) {
      this.leave(h, day, end);
      if (way) this.goIn(h, day, way);
    }
    herd.isOut = herd.at !== undefined;
    const eaten = herd.at === undefined ? 0 : this.fields[herd.at]!.graze(day);
    this.note(h, day, eaten, Math.max(0, need - eaten));
  }

  /**
   * Opens a paddock that is shut for hay to a herd that would be fed, as what stands is eaten before hay
   * is, or that would go in low somewhere else while this one is ready.
   */
  protected abstract openFor(h: number, day: number, open: Way | undefined): Way | undefined;

  /** The way a herd takes: the first, unless somebody tries others. */
  protected pick(ways: readonly Way[], _day: number): Way | undefined {
    return ways[0];
  }

  /** A herd of which only the place is known. */
  private standThere(h: number, day: number, paddock: number): void {
    const herd = this.herds[h]!;
    if (herd.at !== undefined || this.fields[paddock]!.stay) return;
    const wasOut = herd.wasOut || this.isAnyTall();
    this.enter({ herd: h, paddock, from: day, days: 0 }, 'out-already', 'standing-there');
    Object.assign(herd, { isOut: true, wasOut });
  }

  /**
   * Whether any paddock is tall enough for a first pass. A herd that was told into grass before that
   * bites it, and its turn-out is still to come.
   */
  protected isAnyTall(): boolean {
    return this.fields.some(({ mass, sward }) => sward.firstPassKgPerHa <= mass);
  }

  /** Why a herd has to move this morning; undefined where it stays. A herd on no paddock has to. */
  private endOf({ at }: HerdState, day: number, need: number): StayEnd | undefined {
    if (at === undefined) return 'eaten-down';
    const field = this.fields[at]!;
    if (need <= 0) return 'herd-gone';
    if (field.sward.isClosed[day] === 1) return 'shut';
    if (field.sward.weather.isSnow[day] === 1) return 'snow';
    const isGrazed = field.stay!.until <= day && this.stripStays(field);
    const { herd, enteredOn } = field.stay!;
    // What more stands there is not worth letting the next paddock grow old.
    const strips = (day - enteredOn) / this.problem.herds[herd]!.longestStayDays;
    const isLong = 1 <= strips && mostStripsOn(this.problem, this.fields, day) <= strips;
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

  protected waysOf(h: number, day: number): Way[] {
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
    const wanted = (problem.judged.roundShare * this.roundKg() * problem.harvestShare[0]!) / need;
    // In spring half as much will do: grass gains on the herd every day.
    const ahead = problem.judged.backFromHayDays / (wasOut ? 1 : 2);
    if (days < Math.min(ahead, wanted)) return [];
    return wasOut || ways[0]!.entry === 'ready' || this.mayBegin(h, day) ? ways : [];
  }

  /** What all paddocks hold above their residuals when they are at their best height, kg. */
  private roundKg(): number {
    this.round ??= this.problem.swards.reduce(
      (sum, { turnInKgPerHa, residualKgPerHa, areaHa }) =>
        sum + (turnInKgPerHa - residualKgPerHa) * areaHa,
      0,
    );
    return this.round;
  }

  private goIn(h: number, day: number, { paddock, entry }: Way): void {
    const herd = this.herds[h]!;
    const start: StayStart = !herd.wasOut ? 'turn-out' : herd.isOut ? 'next' : 'after-hay';
    this.enter({ herd: h, paddock, from: day, days: 0 }, start, entry);
    Object.assign(herd, { isOut: true, wasOut: true });
  }

  protected enter({ herd, paddock, from }: Stay, start: StayStart, entry: Entry): void {
    const field = this.fields[paddock]!;
    field.stay = newStay(this.problem, field, { herd, paddock, from, start, entry });
    this.seeTo(paddock);
    this.herds[herd]!.at = paddock;
  }

  protected leave(h: number, day: number, end: StayEnd): void {
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
      if (field.stay!.enteredOn < day || field.stay!.entry === 'standing-there') field.leave(day);
      else field.stay = undefined;
      herd.at = undefined;
      return;
    }
    this.stays.push(recordOf(this.problem, field, herd.at, { day, end }));
    field.leave(day);
    herd.at = undefined;
  }
}
