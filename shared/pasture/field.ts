import type { Cut, Entry, GrassDays, StayStart } from './season-books.js';
import { LeftAlone } from './left-alone.js';
import {
  digestibleEaten,
  digestibleShare,
  fullGrowth,
  growOn,
  massOf,
  setMass,
  takeOff,
  type Sward,
} from './sward.js';
import type { GrassState } from './sward-day.js';

/** A herd that is in a field: what its stay has come to so far, kg. */
export interface RunningStay {
  readonly herd: number;
  /** Day it went in, and the first that the plan's books hold. */
  readonly enteredOn: number;
  from: number;
  start: StayStart;
  readonly entry: Entry;
  massBefore: number;
  readonly digestibleShare: number;
  readonly deadShare: number;
  readonly digestibleEaten: number;
  /** Day on which its strips have all been grazed once. */
  readonly until: number;
  harvestShare: number;
  grownKg: number;
  eatenKg: number;
  trampledKg: number;
  hayKg: number;
}

/** What is written down of a paddock, day by day. */
export interface FieldBooks {
  readonly days: GrassDays;
  readonly massKgPerHa: Float64Array;
  /** Share of growth that soil water leaves. */
  readonly wetShare: Float64Array;
}

const newBooks = (n: number): FieldBooks => ({
  massKgPerHa: new Float64Array(n).fill(NaN),
  wetShare: new Float64Array(n).fill(1),
  days: {
    grown: new Float64Array(n),
    eaten: new Float64Array(n),
    trampled: new Float64Array(n),
    mown: new Float64Array(n),
    diedOff: new Float64Array(n),
  },
});

/** How well what stands in a paddock feeds. */
export interface Quality {
  readonly digestibleShare: number;
  readonly deadShare: number;
  readonly digestibleEaten: number;
}

const NOT_ASKED: Quality = { digestibleShare: 0, deadShare: 0, digestibleEaten: 0 };

/** One paddock as a season is walked through: what stands in it and who is there. */
export class Field {
  private own: GrassState;
  /** How it grows while nobody is there: shared by all looks ahead until somebody was. */
  private alone: LeftAlone | undefined;
  /** Day after whose growth it stands as left alone does; undefined before that and once touched. */
  private aloneAfter: number | undefined;
  private readonly full: Float64Array;
  /** Most looks ahead ask for amounts only. */
  private isQualityAsked = true;
  stay: RunningStay | undefined;
  /** Day after it was last grazed or mown, and what stood then. */
  leftDay: number | undefined;
  leftKgPerHa: number | undefined;
  /** Grazed since the year's growth began. */
  isPassed = false;
  shutFrom: number | undefined;
  /** First day on which it is open again after mowing. */
  openFrom = 0;

  /**
   * @param books where its days are written down; left out of a look ahead
   * @param start what stands in it
   */
  constructor(
    readonly sward: Sward,
    readonly books: FieldBooks | null = newBooks(sward.isClosed.length),
    start: GrassState = sward.start,
  ) {
    this.own = { ...start };
    this.full = fullGrowth(sward);
    this.leftDay = sward.lastGrazedEnd;
  }

  /**
   * The same paddock on a morning, to look ahead with in the usual weather.
   *
   * @param usual the paddock in that weather
   * @param asksQuality whether it is asked how well what stands feeds
   */
  ahead(usual: Sward, day: number, asksQuality: boolean): Field {
    // What was worked out before holds on as long as the weather is the usual one.
    const holds = this.alone && usual.weather === this.sward.weather;
    if (!holds) this.alone = new LeftAlone(usual, this.state, day);
    const copy = new Field(usual, null, this.state);
    copy.alone = this.alone;
    copy.isQualityAsked = asksQuality;
    copy.stay = this.stay && { ...this.stay };
    copy.leftDay = this.leftDay;
    copy.leftKgPerHa = this.leftKgPerHa;
    copy.isPassed = this.isPassed;
    copy.shutFrom = this.shutFrom;
    copy.openFrom = this.openFrom;
    return copy;
  }

  get state(): GrassState {
    if (this.alone && this.aloneAfter !== undefined) {
      this.own = this.alone.stateAfter(this.aloneAfter);
      this.aloneAfter = undefined;
    }
    return this.own;
  }

  get mass(): number {
    return this.alone && this.aloneAfter !== undefined
      ? this.alone.massAfter(this.aloneAfter)
      : massOf(this.own);
  }

  /** What can be taken without going below the residual, kg/ha. */
  get aboveResidual(): number {
    return Math.max(0, this.mass - this.sward.residualKgPerHa);
  }

  /** @param harvestShare share that the herd eats of what disappears */
  qualityFor(harvestShare: number): Quality {
    if (!this.isQualityAsked) return NOT_ASKED;
    const { state, mass } = this;
    const { kind, residualKgPerHa } = this.sward;
    return {
      digestibleShare: digestibleShare(kind, state, residualKgPerHa),
      deadShare: mass <= 0 ? 0 : (state.deadLeafKg + state.deadStemKg) / mass,
      digestibleEaten: digestibleEaten(kind, state, residualKgPerHa, harvestShare),
    };
  }

  /** How far it is from the residual to the ready height: 1 is just ready. */
  get ripeness(): number {
    const { residualKgPerHa, turnInKgPerHa } = this.sward;
    return (this.mass - residualKgPerHa) / (turnInKgPerHa - residualKgPerHa);
  }

  /** A height that somebody read stands before what was reckoned. */
  read(day: number): void {
    for (const reading of this.sward.readings)
      if (reading.day === day) {
        this.touch();
        setMass(this.state, reading.kgPerHa);
        if (reading.isGrazed) this.leave(day);
      }
  }

  grow(day: number): void {
    const { days } = this.sward.weather;
    if (0 < day && days[day]!.temperatureSum < days[day - 1]!.temperatureSum) this.isPassed = false;
    if (!this.books && this.alone) {
      this.aloneAfter = day;
      return;
    }
    growOn(this.sward, this.own, day, this.full);
    if (!this.books) return;
    const { days: kept } = this.books;
    const { grownKg, lostKg, wetShare } = this.state;
    this.books.wetShare[day] = wetShare;
    kept.grown[day] = grownKg;
    kept.diedOff[day] = lostKg;
    if (this.stay) this.stay.grownKg += (grownKg - lostKg) * this.sward.areaHa;
  }

  /**
   * A day's grazing; nothing is taken below the residual.
   *
   * @returns what the herd ate, kg
   */
  graze(day: number, needKg: number): number {
    this.touch();
    const stay = this.stay!;
    const { areaHa } = this.sward;
    const removed = Math.min(this.aboveResidual, needKg / areaHa / stay.harvestShare);
    const eaten = removed * stay.harvestShare;
    takeOff(this.state, removed, this.sward.residualKgPerHa);
    this.isPassed = true;
    if (!this.books) return eaten * areaHa;
    this.books.days.eaten[day] = eaten;
    this.books.days.trampled[day] = removed - eaten;
    stay.eatenKg += eaten * areaHa;
    stay.trampledKg += (removed - eaten) * areaHa;
    stay.hayKg += needKg - eaten * areaHa;
    return eaten * areaHa;
  }

  /** From now on it grows on its own. */
  private touch(): void {
    if (!this.alone) return;
    this.own = this.state;
    this.alone = undefined;
  }

  leave(day: number): void {
    this.leftDay = day;
    this.leftKgPerHa = this.mass;
    this.stay = undefined;
  }

  /** Mows it down to the stubble; it is shut until `openFrom`, while the hay dries. */
  mow(paddock: number, day: number, openFrom: number): Cut {
    this.touch();
    const { stubbleKgPerHa, areaHa } = this.sward;
    const taken = Math.max(0, this.mass - stubbleKgPerHa);
    takeOff(this.state, taken, stubbleKgPerHa);
    if (this.books) this.books.days.mown[day] = taken;
    const cut = { paddock, shutFrom: this.shutFrom ?? day, day, openFrom, kg: taken * areaHa };
    this.shutFrom = undefined;
    this.openFrom = openFrom;
    this.isPassed = true;
    this.leftDay = day;
    this.leftKgPerHa = this.mass;
    return cut;
  }

  /**
   * Cuts it down to the residual and leaves lying what falls.
   *
   * @returns what was cut, kg
   */
  top(day: number): number {
    this.touch();
    const { residualKgPerHa, areaHa } = this.sward;
    const off = this.aboveResidual;
    takeOff(this.state, off, residualKgPerHa);
    if (this.books) this.books.days.mown[day] = off;
    this.isPassed = true;
    this.leave(day);
    return off * areaHa;
  }

  evening(day: number): void {
    if (!this.books) return;
    this.books.massKgPerHa[day] = this.mass;
  }
}
