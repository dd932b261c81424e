import loadHighs from 'highs';
import wasmUrl from 'highs/runtime?url';
import {
  solveWith,
  type Solve,
  type TextSolver,
} from '../../../../shared/ration/linear-program.js';

/** The solver, fetched with its three megabytes only once this file is asked for. */
export const loadSolver = async (): Promise<Solve> =>
  solveWith((await loadHighs({ locateFile: () => wasmUrl })) as unknown as TextSolver);
