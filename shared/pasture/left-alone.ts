import { growOn, type Sward } from './sward.js';
import type { GrassState } from './sward-day.js';

/**
 * How a stand grows that nobody grazes or mows, worked out once for all looks ahead from one morning.
 */
export class LeftAlone {
  private readonly states: GrassState[] = [];

  constructor(
    private readonly sward: Sward,
    private readonly start: GrassState,
    private readonly from: number,
  ) {}

  /** As it is after a day's growth, the first day or later. Not to be changed. */
  after(day: number): GrassState {
    while (this.states.length <= day - this.from) {
      const state = { ...(this.states.at(-1) ?? this.start) };
      growOn(this.sward, state, this.from + this.states.length);
      this.states.push(state);
    }
    return this.states[day - this.from]!;
  }
}
