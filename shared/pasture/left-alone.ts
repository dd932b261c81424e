import { fullGrowth, growOn, massOf, type Sward } from './sward.js';
import type { GrassState } from './sward-day.js';

/** Numbers of a state, packed in this order. */
const NUMBERS = [
  'leafKg',
  'stemKg',
  'deadLeafKg',
  'deadStemKg',
  'leafAge',
  'stemAge',
  'deadLeafAge',
  'deadStemAge',
  'waterMm',
  'grownKg',
  'lostKg',
  'wetShare',
] as const satisfies readonly (keyof GrassState)[];

/**
 * How a stand grows that nobody grazes or mows, worked out once for all looks ahead from one morning.
 * Its days are packed: most are only asked for their mass.
 */
export class LeftAlone {
  private readonly state: GrassState;
  private readonly full: Float64Array;
  private readonly packed: Float64Array;
  private readonly isBitten: Uint8Array;
  private readonly massKgPerHa: Float64Array;
  private until: number;

  constructor(
    private readonly sward: Sward,
    start: GrassState,
    private readonly from: number,
  ) {
    const days = sward.weather.days.length - from;
    this.state = { ...start };
    this.full = fullGrowth(sward);
    this.packed = new Float64Array(days * NUMBERS.length);
    this.isBitten = new Uint8Array(days);
    this.massKgPerHa = new Float64Array(days);
    this.until = from;
  }

  /** What stands after a day's growth, the first day or later, kg/ha. */
  massAfter(day: number): number {
    while (this.until <= day) this.growOn();
    return this.massKgPerHa[day - this.from]!;
  }

  /** All of it after a day's growth. */
  stateAfter(day: number): GrassState {
    while (this.until <= day) this.growOn();
    const state = { ...this.state, isBitten: this.isBitten[day - this.from] === 1 };
    const row = (day - this.from) * NUMBERS.length;
    for (let k = 0; k < NUMBERS.length; k++) state[NUMBERS[k]!] = this.packed[row + k]!;
    return state;
  }

  private growOn(): void {
    const { state, until, from } = this;
    growOn(this.sward, state, until, this.full);
    const row = (until - from) * NUMBERS.length;
    for (let k = 0; k < NUMBERS.length; k++) this.packed[row + k] = state[NUMBERS[k]!];
    this.isBitten[until - from] = state.isBitten ? 1 : 0;
    this.massKgPerHa[until - from] = massOf(state);
    this.until++;
  }
}
