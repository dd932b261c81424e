import type { Grazers, RotationProblem, Stay } from './rotation-problem.js';

/** Where everything stands when the next herd has to be moved. */
export interface State {
  /** Day on which each herd must be moved next. */
  readonly free: readonly number[];
  /** Paddock of each herd until then, -1 when it is on hay. */
  readonly at: readonly number[];
  /** Whether each herd has been on grass in this plan. */
  readonly isOut: readonly boolean[];
  readonly mass: Float64Array;
  /** Day to which each mass belongs. */
  readonly massDay: Int16Array;
  readonly lastEnd: Int16Array;
  readonly costKg: number;
  readonly stay?: Stay;
  readonly before?: State;
}

/** One way to go on: a stay, or a day on hay when no paddock is ready. */
export interface Option {
  readonly herd: number;
  readonly paddock: number;
  readonly from: number;
  readonly days: number;
  readonly massAfter: number;
  readonly costKg: number;
}

/** Stands for the end of a last grazing where there never was one. */
export const NEVER = -32_000;

export function startState(problem: RotationProblem): State {
  const { swards, herds, from } = problem;
  const mass = Float64Array.from(swards, (s) => s.startKgPerHa);
  return {
    free: herds.map((herd) => nextNeed(herd, from, problem.to)),
    at: herds.map(() => -1),
    isOut: herds.map((herd) => herd.startsIn !== undefined),
    mass,
    massDay: new Int16Array(swards.length).fill(from),
    lastEnd: Int16Array.from(swards, (s) => s.lastGrazedEnd ?? NEVER),
    costKg: 0,
  };
}

/** First day from which the herd eats grass, or the end. */
export function nextNeed(herd: Grazers, from: number, to: number): number {
  let day = from;
  while (day < to && herd.demandKg[day]! <= 0) day++;
  return day;
}

export const decisionDay = (state: State): number => Math.min(...state.free);

/** The state after an option. */
export function after(problem: RotationProblem, state: State, option: Option): State {
  const { herd, paddock, from, days } = option;
  const end = from + days;
  const free = [...state.free];
  free[herd] = nextNeed(problem.herds[herd]!, end, problem.to);
  const at = [...state.at];
  at[herd] = paddock;
  const costKg = state.costKg + option.costKg;
  if (paddock < 0) {
    const { mass, massDay, lastEnd, isOut } = state;
    return { free, at, isOut, mass, massDay, lastEnd, costKg, before: state };
  }
  const mass = state.mass.slice();
  const massDay = state.massDay.slice();
  const lastEnd = state.lastEnd.slice();
  mass[paddock] = option.massAfter;
  massDay[paddock] = end;
  lastEnd[paddock] = end;
  const stay = { herd, paddock, from, days };
  const isOut = state.isOut[herd] ? state.isOut : state.isOut.map((out, h) => out || h === herd);
  return { free, at, isOut, mass, massDay, lastEnd, costKg, stay, before: state };
}

/** Stays of a finished state, in order. */
export function staysOf(state: State): Stay[] {
  const stays: Stay[] = [];
  for (let s: State | undefined = state; s; s = s.before) if (s.stay) stays.push(s.stay);
  return stays.reverse();
}
