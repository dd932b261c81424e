/** An amount to be found: what one of it costs, and between what it lies. */
export interface Column {
  readonly cost: number;
  readonly least: number;
  readonly most: number;
}

/** What a weighted sum of all amounts must keep to: a least, a most, or both where it is fixed. */
export interface Row {
  /** The weight of each column, in their order. */
  readonly weights: readonly number[];
  readonly least?: number;
  readonly most?: number;
}

/** The least cost is looked for. */
export interface LinearProgram {
  readonly columns: readonly Column[];
  readonly rows: readonly Row[];
}

export interface Optimum {
  readonly cost: number;
  readonly amounts: readonly number[];
  /** What the cost of one of each must fall by before it is used. */
  readonly reducedCosts: readonly number[];
  /** What the cost changes by when the bound of each row rises by one. */
  readonly worths: readonly number[];
}

/** Solves a program; nothing where no amounts keep to all rows. Whoever calls hands it in. */
export type Solve = (program: LinearProgram) => Optimum | undefined;

/** The part of a solver's package that is asked: programs in the text that such solvers read. */
export interface TextSolver {
  solve(
    text: string,
    options: { readonly output_flag: boolean },
  ): {
    readonly Status: string;
    readonly ObjectiveValue: number;
    readonly Columns: Readonly<
      Record<string, { readonly Primal?: number; readonly Dual?: number }>
    >;
    readonly Rows: readonly object[];
  };
}

/**
 * A solver of a package as the function that rations ask.
 *
 * @throws Error when it comes to no end, which no program of finite bounds gives cause for
 */
export const solveWith =
  (solver: TextSolver): Solve =>
  (program) => {
    const solved = solver.solve(textOf(program), { output_flag: false });
    if (solved.Status === 'Infeasible') return undefined;
    if (solved.Status !== 'Optimal') throw new Error(`The solver ended: ${solved.Status}.`);
    const columns = program.columns.map((_, i) => solved.Columns[`c${i}`]!);
    return {
      cost: solved.ObjectiveValue,
      amounts: columns.map(({ Primal }) => Primal ?? 0),
      reducedCosts: columns.map(({ Dual }) => Dual ?? 0),
      worths: (solved.Rows as readonly { readonly Dual?: number }[]).map(({ Dual }) => Dual ?? 0),
    };
  };

/** The program in CPLEX LP format. */
function textOf({ columns, rows }: LinearProgram): string {
  const sum = (weights: readonly number[]): string => {
    const terms = weights.flatMap((weight, i) =>
      weight === 0 ? [] : [`${weight < 0 ? '-' : '+'} ${Math.abs(weight)} c${i}`],
    );
    return terms.length === 0 ? '0 c0' : terms.join(' ');
  };
  return [
    'Minimize',
    ` cost: ${sum(columns.map(({ cost }) => cost))}`,
    'Subject To',
    ...rows.map((row, i) => ` r${i}: ${sum(row.weights)} ${boundOf(row)}`),
    'Bounds',
    ...columns.map(({ least, most }, i) => ` ${least} <= c${i} <= ${most}`),
    'End',
  ].join('\n');
}

function boundOf({ least, most }: Row): string {
  if (least !== undefined && most !== undefined && least !== most) {
    throw new Error('A row has a least or a most: write two for both.');
  }
  if (least === most) return `= ${least}`;
  return least === undefined ? `<= ${most}` : `>= ${least}`;
}
