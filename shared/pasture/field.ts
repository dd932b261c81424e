import type { Cut, Entry, GrassDays, StayStart } from './season-books.js';
import { StandAhead, type GrazedBy } from './stand-ahead.js';
import type { StandRoom } from './stand-room.js';
import {
  copyOf,
  digestibleEaten,
  digestibleShare,
  setMass,
  takeOff,
  warmthSums,
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
}

const newBooks = (n: number): FieldBooks => ({
  massKgPerHa: new Float64Array(n).fill(NaN),
  days: {
    grown: new Float64Array(n),
    eaten: new Float64Array(n),
    trampled: new Float64Array(n),
    mown: new Float64Array(n),
    diedOff: new Float64Array(n),
  },
});

/** What is done to a stand, in the number that a way is known by; `grazed` has a fraction above it. */
const Done = { left: 0, read: 1, mown: 2, topped: 3, grazed: 4 } as const;
type Done = (typeof Done)[keyof typeof Done];
const MOST_DONE = 8;
/** More herds than a farm may have. */
const MOST_HERDS = 64;

/** The last day that has grown, in all fields of a walk. */
export interface Clock {
  after: number;
}

/** How well what stands in a paddock feeds. */
export interface Quality {
  readonly digestibleShare: number;
  readonly deadShare: number;
  readonly digestibleEaten: number;
}

const NOT_ASKED: Quality = { digestibleShare: 0, deadShare: 0, digestibleEaten: 0 };

/** How far a stand of a mass is from the residual to the ready height. */
export const ripenessOf = (
  { residualKgPerHa, turnInKgPerHa }: Pick<Sward, 'residualKgPerHa' | 'turnInKgPerHa'>,
  mass: number,
): number => (mass - residualKgPerHa) / (turnInKgPerHa - residualKgPerHa);

/**
 * One paddock as a season is walked through: who is there, and on which of the ways that its stand
 * may go it is, how far. Looks ahead go on from there, on the same ways where the weather is the same.
 */
export class Field {
  /** Whether it was grazed on the last day that it grew. */
  private isGrazed = false;
  /** Most looks ahead ask for amounts only. */
  private isQualityAsked = true;
  /** Warmth that its grass ages by, summed to each morning. */
  readonly warmth: Float64Array;
  stay: RunningStay | undefined;
  /** Day after it was last grazed or mown, and what stood then. */
  leftDay: number | undefined;
  leftKgPerHa: number | undefined;
  /** Grazed since the year's growth began. */
  isPassed = false;
  shutFrom: number | undefined;
  /** First day on which it is open again after mowing. */
  openFrom = 0;
  /** What stood by what was told of it on the morning of its last reading, kg/ha. */
  stoodAtReading: number | undefined;

  /**
   * @param herds what each would eat by day
   * @param clock how far the days have come; one for all fields
   * @param room where the days of its stands are written; one for all fields
   * @param books where its days are written down; left out of a look ahead
   */
  constructor(
    readonly sward: Sward,
    private readonly herds: readonly { readonly demandKg: Float64Array }[],
    private readonly clock: Clock,
    private readonly room: StandRoom,
    readonly books: FieldBooks | null = newBooks(sward.isClosed.length),
    private way = new StandAhead(room, sward, copyOf(sward.start), 0),
  ) {
    this.leftDay = sward.lastGrazedEnd;
    this.warmth = warmthSums(sward);
  }

  /**
   * The same paddock on a morning, to look ahead with in the usual weather.
   *
   * @param usual the paddock in that weather
   * @param clock of the look ahead
   * @param asksQuality whether it is asked how well what stands feeds
   */
  ahead(usual: Sward, day: number, clock: Clock, asksQuality: boolean): Field {
    const isUsual = usual.weather === this.sward.weather;
    const way = isUsual ? this.way : new StandAhead(this.room, usual, this.state, day);
    const copy = new Field(usual, this.herds, clock, this.room, null, way);
    copy.isGrazed = isUsual && this.isGrazed;
    copy.isQualityAsked = asksQuality;
    copy.stay = this.stay && { ...this.stay };
    copy.leftDay = this.leftDay;
    copy.leftKgPerHa = this.leftKgPerHa;
    copy.isPassed = this.isPassed;
    copy.shutFrom = this.shutFrom;
    copy.openFrom = this.openFrom;
    return copy;
  }

  /** What stands, of which nothing is to be changed. */
  get state(): GrassState {
    const { after } = this.clock;
    const state = this.way.stateAfter(after);
    if (this.isGrazed) takeOff(state, this.way.removedOn(after), this.sward.residualKgPerHa);
    return state;
  }

  /** What the last day grew beyond what died off on it, kg/ha: what winter left may rot as fast. */
  get gain(): number {
    const { grownKg, lostKg } = this.way.grownOn(this.clock.after);
    return grownKg - lostKg;
  }

  get mass(): number {
    const { after } = this.clock;
    const mass = this.way.massAfter(after);
    return this.isGrazed ? mass - this.way.removedOn(after) : mass;
  }

  /** Whether its stand, as it is left alone, is above a mass on one of some days. */
  stoodAbove(kgPerHa: number, from: number, to: number): boolean {
    for (let day = from; day < to; day++) if (kgPerHa < this.way.massAfter(day)) return true;
    return false;
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
    return ripenessOf(this.sward, this.mass);
  }

  /** A height that somebody read stands before what was reckoned. */
  read(day: number): void {
    for (const reading of this.sward.readings)
      if (reading.day === day) {
        // A herd that was told to be there, or mowing, says how tall it can be.
        const isTold = this.stay !== undefined || this.leftDay !== undefined;
        this.stoodAtReading = isTold && !reading.isGrazed ? this.mass : undefined;
        this.goOn(Done.read, day, (state) => setMass(state, reading.kgPerHa));
        if (reading.isGrazed) this.leave(day);
      }
  }

  /** A stand that nobody is in grows on its own, and looks ahead need not see to it. */
  get growsAlone(): boolean {
    return this.books === null && !this.way.isOfHerd;
  }

  grow(day: number): void {
    if (this.isPassed && 0 < day && this.sward.weather.isNewYear[day] === 1) this.isPassed = false;
    if (!this.isGrazed && this.way.isOfHerd) this.goOn(Done.left, day);
    this.isGrazed = false;
    if (this.books) this.write(this.books, day);
  }

  private write(books: FieldBooks, day: number): void {
    const { days: kept } = books;
    const { grownKg, lostKg } = this.way.grownOn(day);
    kept.grown[day] = grownKg;
    kept.diedOff[day] = lostKg;
    if (this.stay) this.stay.grownKg += (grownKg - lostKg) * this.sward.areaHa;
  }

  /**
   * A day's grazing by the herd that is there; nothing is taken below the residual.
   *
   * @returns what the herd ate, kg
   */
  graze(day: number): number {
    const stay = this.stay!;
    const { areaHa } = this.sward;
    const needKg = this.herds[stay.herd]!.demandKg;
    if (!this.way.isOfHerd) this.letIn(day, { needKg, harvestShare: stay.harvestShare });
    const removed = this.way.removedOn(day);
    const eaten = removed * stay.harvestShare;
    this.isGrazed = true;
    this.isPassed = true;
    if (!this.books) return eaten * areaHa;
    this.books.days.eaten[day] = eaten;
    this.books.days.trampled[day] = removed - eaten;
    stay.eatenKg += eaten * areaHa;
    stay.trampledKg += (removed - eaten) * areaHa;
    stay.hayKg += needKg[day]! - eaten * areaHa;
    return eaten * areaHa;
  }

  /** From a day on, after its growth, it is grazed every day. */
  private letIn(day: number, by: GrazedBy): void {
    const { herd } = this.stay!;
    // Ways are asked for thousands of times: they are known by a number, what is eaten its fraction.
    this.way = this.way.then(
      MOST_DONE * (day * MOST_HERDS + herd) + Done.grazed + by.harvestShare,
      () => new StandAhead(this.room, this.sward, this.state, day, by),
    );
  }

  /**
   * From the growth of a day on it grows on its own.
   *
   * @param what was done, by which the same is known when it is done again
   */
  private goOn(what: Done, day: number, change?: (state: GrassState) => void): void {
    const key = MOST_DONE * day * MOST_HERDS + what + (this.isGrazed ? 0.5 : 0);
    this.way = this.way.then(key, () => {
      const { state } = this;
      change?.(state);
      return new StandAhead(this.room, this.sward, state, day);
    });
    this.isGrazed = false;
  }

  leave(day: number): void {
    this.leftDay = day;
    this.leftKgPerHa = this.mass;
    this.stay = undefined;
    if (this.way.isOfHerd) this.goOn(Done.left, this.clock.after + 1);
  }

  /** Mows it down to the stubble; it is shut until `openFrom`, while the hay dries. */
  mow(paddock: number, { day, goFrom, openFrom }: Pick<Cut, 'day' | 'goFrom' | 'openFrom'>): Cut {
    const { stubbleKgPerHa, areaHa } = this.sward;
    const taken = Math.max(0, this.mass - stubbleKgPerHa);
    this.goOn(Done.mown, day, (state) => takeOff(state, taken, stubbleKgPerHa));
    if (this.books) this.books.days.mown[day] = taken;
    const shutFrom = this.shutFrom ?? day;
    const cut = { paddock, shutFrom, goFrom, day, openFrom, kg: taken * areaHa };
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
    const { residualKgPerHa, areaHa } = this.sward;
    const off = this.aboveResidual;
    this.goOn(Done.topped, day, (state) => takeOff(state, off, residualKgPerHa));
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
