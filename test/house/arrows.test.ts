import { describe, expect, it } from '@jest/globals';
import { readdirSync, readFileSync } from 'node:fs';
import { dirname, join, relative } from 'node:path';
import { PROJECT_ROOT } from '../../src/reference/load-tables.js';

/** Packages that the calculation core may use: dates and decimals, nothing that does I/O. */
const CORE_PACKAGES = ['luxon', 'big.js', 'pure-rand'];

function filesOf(folder: string): string[] {
  const root = join(PROJECT_ROOT, folder);
  return readdirSync(root, { recursive: true, encoding: 'utf8' })
    .filter((file) => /\.tsx?$/.test(file))
    .map((file) => join(root, file));
}

function importsOf(file: string): string[] {
  const text = readFileSync(file, 'utf8');
  return [...text.matchAll(/from '([^']+)'|import\('([^']+)'\)|^import '([^']+)'/gm)].map(
    (m) => m[1] ?? m[2] ?? m[3] ?? '',
  );
}

const roomOf = (file: string, target: string): string =>
  relative(PROJECT_ROOT, join(dirname(file), target));

describe('the arrow rule', () => {
  const core = filesOf('shared');

  it('reads a house that is there', () => {
    expect(core.length).toBeGreaterThan(40);
  });

  it('lets shared/ import only shared/, dates and decimals', () => {
    const wrong = core.flatMap((file) =>
      importsOf(file)
        .filter((target) =>
          target.startsWith('.')
            ? !roomOf(file, target).startsWith('shared/')
            : !CORE_PACKAGES.some((name) => target === name || target.startsWith(`${name}/`)),
        )
        .map((target) => `${relative(PROJECT_ROOT, file)} → ${target}`),
    );
    expect(wrong).toEqual([]);
  });

  it('lets the page import only the page and shared/', () => {
    const wrong = filesOf('src/web').flatMap((file) =>
      importsOf(file)
        .filter((target) => target.startsWith('.'))
        .map((target) => roomOf(file, target))
        .filter(
          (room) =>
            !room.startsWith('src/web') && !room.startsWith('shared/') && room !== 'dist/web',
        )
        .map((room) => `${relative(PROJECT_ROOT, file)} → ${room}`),
    );
    expect(wrong).toEqual([]);
  });

  it('lets no service import the page', () => {
    const wrong = filesOf('src')
      .filter((file) => !relative(PROJECT_ROOT, file).startsWith('src/web'))
      .flatMap((file) =>
        importsOf(file).filter(
          (target) => target.startsWith('.') && roomOf(file, target).startsWith('src/web'),
        ),
      );
    expect(wrong).toEqual([]);
  });

  it('lets poultry, weather and the other ideas know nothing of plans', () => {
    const below = [
      'maths',
      'money',
      'poultry',
      'problems',
      'schedule',
      'tables',
      'units',
      'weather',
      'calendar',
      'farm',
    ];
    const wrong = below
      .flatMap((room) => filesOf(`shared/${room}`))
      .flatMap((file) =>
        importsOf(file)
          .filter((t) => t.startsWith('.') && roomOf(file, t).startsWith('shared/plan'))
          .map((t) => `${relative(PROJECT_ROOT, file)} → ${t}`),
      );
    expect(wrong).toEqual([]);
  });
});
