import fc from 'fast-check';
import type { TestApp } from './app.js';
import {
  storedTables,
  type StoredColumn,
  type StoredTable,
} from '../../src/archive/stored-table.js';

type Row = Record<string, unknown>;
/** Rows by table; those of the farm come first. */
export type RandomFarm = ReadonlyMap<string, Row[]>;

/** Every table that belongs to a farm, with types as the database names them. */
export async function farmTables({ source }: TestApp): Promise<StoredTable[]> {
  const runner = source.createQueryRunner();
  try {
    return (await storedTables(runner)).filter(
      ({ name, columns }) => name === 'farms' || columns.some((column) => column.name === 'farmId'),
    );
  } finally {
    await runner.release();
  }
}

/** Columns that no two rows of a table may have alike, besides its key. */
export type UniqueColumns = ReadonlyMap<string, readonly string[][]>;

export async function uniqueColumns({ source }: TestApp): Promise<UniqueColumns> {
  const runner = source.createQueryRunner();
  try {
    const names = (await storedTables(runner)).map(({ name }) => name);
    const tables = await runner.getTables(names);
    return new Map(
      tables.map(({ name, indices, uniques }) => [
        name.split('.').at(-1)!,
        [...indices.filter((index) => index.isUnique), ...uniques].map((each) => each.columnNames),
      ]),
    );
  } finally {
    await runner.release();
  }
}

/** Whole farms with anything in every table, a new table too; rows refer to each other at will. */
export const randomFarm = (
  tables: readonly StoredTable[],
  alike: UniqueColumns,
): fc.Arbitrary<RandomFarm> =>
  fc.noShrink(fc.uuid()).chain((farmId) =>
    // More than there can be rows: some references lead to nothing.
    fc.noShrink(fc.uniqueArray(fc.uuid(), { minLength: 80, maxLength: 80 })).chain((ids) => {
      const reference = referenceTo([farmId, ...ids]);
      let next = 0;
      const idOf = (): string => ids[next++]!;
      const lists = tables.map((table) =>
        fc.array(rowOf(table, reference), {
          maxLength: 4,
          minLength: table.name === 'farms' ? 1 : 0,
        }),
      );
      return fc.tuple(...lists).map((all) => {
        next = 0;
        return new Map(
          all.map((rows, i) => [
            tables[i]!.name,
            unique(tables[i]!, rows, { farmId, idOf, alike }),
          ]),
        );
      });
    }),
  );

/** Puts a farm into the tables as it is. */
export async function putRows({ source }: TestApp, farm: RandomFarm): Promise<void> {
  const isPostgres = source.options.type === 'postgres';
  for (const [table, rows] of farm) {
    for (const row of rows) {
      const names = Object.keys(row);
      const marks = names.map((_name, i) => (isPostgres ? `$${i + 1}` : '?'));
      await source.query(
        `INSERT INTO "${table}" (${names.map((n) => `"${n}"`).join(', ')}) VALUES (${marks.join(', ')})`,
        names.map((n) => (typeof row[n] === 'boolean' && !isPostgres ? Number(row[n]) : row[n])),
      );
    }
  }
}

/** Ids belong to one row only, and what has to be unique stands once in a table. */
function unique(
  { name, key }: StoredTable,
  rows: Row[],
  of: { farmId: string; idOf: () => string; alike: UniqueColumns },
): Row[] {
  const seen = new Set<string>();
  const isNew = (row: Row): boolean =>
    [key, ...of.alike.get(name)!].every((columns) => {
      const at = JSON.stringify([columns, columns.map((column) => row[column])]);
      return !seen.has(at) && seen.add(at);
    });
  return rows
    .slice(0, name === 'farms' ? 1 : undefined)
    .map((row) => {
      const owned = name === 'farms' ? { ...row, id: of.farmId } : { ...row, farmId: of.farmId };
      return key.join() === 'id' && name !== 'farms' ? { ...owned, id: of.idOf() } : owned;
    })
    .filter(isNew);
}

const rowOf = ({ columns }: StoredTable, reference: fc.Arbitrary<string>): fc.Arbitrary<Row> =>
  fc.record(Object.fromEntries(columns.map((column) => [column.name, valueOf(column, reference)])));

/** Any text that both databases keep: no zero bytes, no halves of characters. */
const text = fc
  .oneof(
    fc.string({ unit: 'grapheme' }),
    fc.constantFrom('[1]', '{"a":1}', '{ "a": 1 }', '[', ' x '),
  )
  .map((each) => each.replaceAll('\0', ''));

const day = fc
  .date({ min: new Date('1990-01-01'), max: new Date('2099-12-31'), noInvalidDate: true })
  .map((date) => date.toISOString().slice(0, 10));

function valueOf(column: StoredColumn, reference: fc.Arbitrary<string>): fc.Arbitrary<unknown> {
  const { name, kind, isJson, maxLength, mayBeEmpty } = column;
  const any: Record<StoredColumn['kind'], fc.Arbitrary<unknown>> = {
    'yes-no': fc.boolean(),
    date: day,
    number: /^(revision|bytes)$|version$/i.test(name)
      ? fc.integer({ min: 1, max: 2e9 })
      : fc.double({ noNaN: true, noDefaultInfinity: true }).map((x) => x + 0),
    text: isJson
      ? json(reference).map((value) => JSON.stringify(value))
      : fc.oneof(text, reference).map((each) => [...each].slice(0, maxLength).join('')),
  };
  return mayBeEmpty ? fc.option(any[kind], { nil: null }) : any[kind];
}

/** Ids alone, and in every kind of key that the program puts together. */
const referenceTo = (ids: readonly string[]): fc.Arbitrary<string> =>
  fc
    .tuple(
      fc.constantFrom(...ids),
      fc.constantFrom(
        (id: string) => id,
        (id: string) => `batch/${id}/brooder-dry.1`,
        (id: string) => `herd/${id}/calving.c0.watch`,
        (id: string) => `own/${id}`,
        (id: string) => `event/${id}/calving-2`,
        (id: string) => `sitter-${id}`,
        (id: string) => `event/${id}/calving-cow-${id}`,
        (id: string) => `herd/${id}/cow-${id}.watch`,
      ),
    )
    .map(([id, write]) => write(id));

const json = (reference: fc.Arbitrary<string>): fc.Arbitrary<object> =>
  fc.letrec((tie) => ({
    leaf: fc.oneof(text, reference, fc.integer(), fc.boolean(), fc.constant(null)),
    list: fc.array(tie('any'), { maxLength: 3 }),
    object: fc.dictionary(fc.oneof(reference, fc.string()), tie('any'), { maxKeys: 4 }),
    any: fc.oneof({ maxDepth: 3 }, tie('leaf'), tie('list'), tie('object')),
  })).object as fc.Arbitrary<object>;
