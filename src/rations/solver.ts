import * as highs from 'highs';
import { solveWith, type Solve, type TextSolver } from '../../shared/ration/linear-program.js';

let loaded: Promise<Solve> | undefined;

/** The solver of linear programs, loaded the first time that it is asked for. */
export const loadSolver = (): Promise<Solve> =>
  // The types call it a CommonJS module; what is loaded is its ES module, with a loader as default.
  (loaded ??= (highs.default as unknown as () => Promise<TextSolver>)().then(solveWith));
