import { describe, expect, it } from '@jest/globals';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { PROJECT_ROOT } from '../../src/reference/load-tables.js';
import { readArrowTable, roomOf } from '../support/arrow-table.js';
import { circleIn, readHouse, targetsIn } from '../support/house.js';

/** Packages that the calculation core may use: dates, decimals, drawn numbers; nothing with I/O. */
const CORE_PACKAGES = ['luxon', 'big.js', 'pure-rand', 'weekstart'];

const house = readHouse();
const table = readArrowTable(readFileSync(join(PROJECT_ROOT, 'DEVELOPERS.md'), 'utf8'));
const rowOf = new Map(table.map((row) => [row.room, row]));
const inShared = (path: string): boolean => path.startsWith('shared/');
const inPage = (path: string): boolean => /^src\/web(\/|$)/.test(path);

/** Arrows between different rooms, each with a file that draws it. */
const arrows = new Map(
  house.flatMap(({ path, imports }) =>
    imports
      .map((target) => ({ from: roomOf(path), to: roomOf(target), by: `${path} → ${target}` }))
      .filter(({ from, to }) => from !== to)
      .map((arrow): [string, typeof arrow] => [`${arrow.from} → ${arrow.to}`, arrow]),
  ),
);

describe('the table of arrows in DEVELOPERS.md', () => {
  it('has a row for every room, and none for a room that is not there', () => {
    const rooms = [...new Set(house.map(({ path }) => roomOf(path)))];
    expect([...rowOf.keys()].sort()).toEqual(rooms.sort());
    expect(table).toHaveLength(rowOf.size);
  });

  it('allows every import there is', () => {
    const notAllowed = [...arrows.values()]
      .filter(({ from, to }) => !rowOf.get(from)?.mayImport.includes(to))
      .map(({ by }) => by);
    expect(notAllowed).toEqual([]);
  });

  it('allows nothing that no file makes use of', () => {
    const unused = table
      .flatMap(({ room, mayImport }) => mayImport.map((to) => `${room} → ${to}`))
      .filter((arrow) => !arrows.has(arrow));
    expect(unused).toEqual([]);
  });

  it('lets a room import only rooms that stand above it, so that rooms make no circle', () => {
    const place = new Map(table.map(({ room }, i) => [room, i]));
    const upward = table.flatMap(({ room, mayImport }) =>
      mayImport
        .filter((to) => !((place.get(to) ?? Infinity) < place.get(room)!))
        .map((to) => `${room} → ${to}`),
    );
    expect(upward).toEqual([]);
  });

  it('keeps the core to itself, and page and service apart', () => {
    const wrong = table.flatMap(({ room, mayImport }) =>
      mayImport
        .filter((to) => !inShared(to) && (inShared(room) || inPage(room) !== inPage(to)))
        .map((to) => `${room} → ${to}`),
    );
    expect(wrong).toEqual([]);
  });
});

describe('the files of the house', () => {
  it('import each other in no circle', () => {
    const circle = circleIn(new Map(house.map(({ path, imports }) => [path, imports])));
    expect(circle?.join(' → ')).toBeUndefined();
  });

  it('use in shared/ only packages without I/O', () => {
    const wrong = house
      .filter(({ path }) => inShared(path))
      .flatMap(({ path, packages }) =>
        packages
          .filter((name) => !CORE_PACKAGES.some((core) => `${name}/`.startsWith(`${core}/`)))
          .map((name) => `${path} → ${name}`),
      );
    expect(wrong).toEqual([]);
  });
});

describe('the core', () => {
  it('asks no clock for today: what day it is is handed in', () => {
    const wrong = house
      .filter(({ path }) => inShared(path))
      .filter(({ path }) =>
        /\bnew Date\(\s*\)/.test(readFileSync(join(PROJECT_ROOT, path), 'utf8')),
      );
    expect(wrong.map(({ path }) => path)).toEqual([]);
  });
});

describe('reading the house', () => {
  it('finds imports of every kind', () => {
    const text = `
      import { a,\n b } from './ab.js';
      import type { C } from '../c.js';
      import './side.css';
      export { d } from './d.js';
      const e = await import('./e.js');
      new Worker(new URL('./f.worker.ts', import.meta.url));`;
    expect(targetsIn(text)).toEqual([
      './ab.js',
      '../c.js',
      './side.css',
      './d.js',
      './e.js',
      './f.worker.ts',
    ]);
  });

  it('finds a circle and says the whole way round', () => {
    const next = { a: ['b', 'c'], b: ['c'], c: ['d'], d: ['b'] };
    expect(circleIn(new Map(Object.entries(next)))).toEqual(['b', 'c', 'd', 'b']);
    expect(circleIn(new Map(Object.entries({ ...next, d: [] })))).toBeUndefined();
  });

  it('reads a table: names beside a room first, then paths', () => {
    const block =
      '```arrows\nshared/\n  units:\n  plan: units\nsrc/\n  plan: shared/plan\n  .: plan\n```\n';
    expect(readArrowTable(`Text.\n${block}`)).toEqual([
      { room: 'shared/units', mayImport: [] },
      { room: 'shared/plan', mayImport: ['shared/units'] },
      { room: 'src/plan', mayImport: ['shared/plan'] },
      { room: 'src', mayImport: ['src/plan'] },
    ]);
  });
});
