import type { Cut, Entry, GrassDays, StayStart } from './season-books.js';
import { digestibleShare, growOn, massOf, setMass, takeOff, type Sward } from './sward.js';
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
  /** Day on which its strips have all been grazed once. */
  readonly until: number;
  harvestShare: number;
  grownKg: number;
  eatenKg: number;
  trampledKg: number;
  hayKg: number;
}

type Mutable<T> = { -readonly [K in keyof T]: T[K] };

/** One paddock as a season is walked through: what stands in it and who is there. */
export class Field {
  readonly state: GrassState;
  readonly days: GrassDays;
  readonly massKgPerHa: Float64Array;
  readonly digestible: Float64Array;
  readonly isKept: boolean = true;
  stay: RunningStay | undefined;
  /** Day after it was last grazed or mown, and what stood then. */
  leftDay: number | undefined;
  leftKgPerHa: number | undefined;
  /** Grazed since the year's growth began. */
  isPassed = false;
  shutFrom: number | undefined;
  /** First day on which it is open again after mowing. */
  openFrom = 0;

  constructor(readonly sward: Sward) {
    this.state = { ...sward.start };
    this.leftDay = sward.lastGrazedEnd;
    const n = sward.isClosed.length;
    this.massKgPerHa = new Float64Array(n).fill(NaN);
    this.digestible = new Float64Array(n);
    this.days = {
      grown: new Float64Array(n),
      eaten: new Float64Array(n),
      trampled: new Float64Array(n),
      mown: new Float64Array(n),
      diedOff: new Float64Array(n),
    };
  }

  /** The same paddock to look ahead with: what stands there is its own, its books are not kept. */
  ahead(sward: Sward): Field {
    const copy = Object.create(Field.prototype) as Mutable<Field>;
    Object.assign(copy, this, { sward, state: { ...this.state }, isKept: false });
    if (this.stay) copy.stay = { ...this.stay };
    return copy;
  }

  get mass(): number {
    return massOf(this.state);
  }

  /** What can be taken without going below the residual, kg/ha. */
  get aboveResidual(): number {
    return Math.max(0, this.mass - this.sward.residualKgPerHa);
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
        setMass(this.state, reading.kgPerHa);
        if (reading.isGrazed) this.leave(day);
      }
  }

  grow(day: number): void {
    const { weather } = this.sward;
    if (0 < day && weather.temperatureSum[day]! < weather.temperatureSum[day - 1]!)
      this.isPassed = false;
    const step = growOn(this.sward, this.state, day);
    if (!this.isKept) return;
    this.days.grown[day] = step.grownKgPerHa;
    this.days.diedOff[day] = step.diedOffKgPerHa;
    if (this.stay)
      this.stay.grownKg += (step.grownKgPerHa - step.diedOffKgPerHa) * this.sward.areaHa;
  }

  /**
   * A day's grazing; nothing is taken below the residual.
   *
   * @returns what the herd ate, kg
   */
  graze(day: number, needKg: number): number {
    const stay = this.stay!;
    const { areaHa } = this.sward;
    const removed = Math.min(this.aboveResidual, needKg / areaHa / stay.harvestShare);
    const eaten = removed * stay.harvestShare;
    takeOff(this.state, removed, this.sward.residualKgPerHa);
    this.isPassed = true;
    if (!this.isKept) return eaten * areaHa;
    this.days.eaten[day] = eaten;
    this.days.trampled[day] = removed - eaten;
    stay.eatenKg += eaten * areaHa;
    stay.trampledKg += (removed - eaten) * areaHa;
    stay.hayKg += needKg - eaten * areaHa;
    return eaten * areaHa;
  }

  leave(day: number): void {
    this.leftDay = day;
    this.leftKgPerHa = this.mass;
    this.stay = undefined;
  }

  mow(paddock: number, day: number, openFrom: number): Cut {
    const { stubbleKgPerHa, areaHa } = this.sward;
    const taken = Math.max(0, this.mass - stubbleKgPerHa);
    takeOff(this.state, taken, stubbleKgPerHa);
    if (this.isKept) this.days.mown[day] = taken;
    const cut = { paddock, shutFrom: this.shutFrom!, day, openFrom, kg: taken * areaHa };
    this.shutFrom = undefined;
    this.openFrom = openFrom;
    this.isPassed = true;
    this.leftDay = day;
    this.leftKgPerHa = this.mass;
    return cut;
  }

  evening(day: number): void {
    this.massKgPerHa[day] = this.mass;
    this.digestible[day] = digestibleShare(this.sward.kind, this.state);
  }
}
