import type { Tables } from '../tables/tables.js';
import type { CheckRow } from './check-row.js';

/** What a row is computed from: the tables, and what its source says the value is for. */
export interface Given {
  readonly tables: Tables;
  /** @throws Error when the row gives no such number */
  readonly number: (name: string) => number;
  /** @throws Error when the row gives no such word */
  readonly text: (name: string) => string;
  /** The number, or what stands in where the row gives none. */
  readonly numberOr: <T>(name: string, otherwise: T) => number | T;
  /** The word, or what stands in where the row gives none. */
  readonly textOr: <T>(name: string, otherwise: T) => string | T;
}

/** Works out one value as a plan does, in the unit of its rows. */
export type Computation = (given: Given) => number;

/** Checks that belong together: a heading, and the computations that its rows name. */
export interface Topic {
  readonly title: string;
  readonly by: Readonly<Record<string, Computation>>;
}

/** What a row gives its computation. */
export function givenOf({ id, given = {} }: Pick<CheckRow, 'id' | 'given'>, tables: Tables): Given {
  const wanted = <T>(name: string, value: T | undefined): T => {
    if (value === undefined) throw new Error(`Check "${id}" gives no "${name}".`);
    return value;
  };
  const numberIn = (name: string): number | undefined => {
    const value = given[name];
    return typeof value === 'number' ? value : undefined;
  };
  const textIn = (name: string): string | undefined => {
    const value = given[name];
    return typeof value === 'string' ? value : undefined;
  };
  return {
    tables,
    number: (name) => wanted(name, numberIn(name)),
    text: (name) => wanted(name, textIn(name)),
    numberOr: (name, otherwise) => numberIn(name) ?? otherwise,
    textOr: (name, otherwise) => textIn(name) ?? otherwise,
  };
}
