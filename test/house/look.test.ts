import { describe, expect, it } from '@jest/globals';
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { PROJECT_ROOT } from '../../src/reference/load-tables.js';
import { contrast, distance, SEEN_AS, type Sight } from '../support/colors.js';

const PAGE = join(PROJECT_ROOT, 'src/web');
const TOKENS = 'look/tokens.css';

const files = readdirSync(PAGE, { recursive: true, encoding: 'utf8' })
  .filter((name) => /\.(css|tsx?|html)$/.test(name))
  .map((name) => ({ name, text: readFileSync(join(PAGE, name), 'utf8') }));

/** Lines of the page that match, but for those of the tokens themselves. */
const linesWith = (pattern: RegExp, ending: RegExp): string[] =>
  files
    .filter(({ name }) => name !== TOKENS && ending.test(name))
    .flatMap(({ name, text }) =>
      text
        .split('\n')
        .filter((line) => pattern.test(line))
        .map((line) => `${name}: ${line.trim()}`),
    );

/** Tokens that are a color in light and another in dark. */
const colors = new Map(
  [
    ...files
      .find(({ name }) => name === TOKENS)!
      .text.matchAll(/--([a-z0-9-]+): light-dark\((#[0-9a-f]{6}), (#[0-9a-f]{6})\)/g),
  ].map(([, name, light, dark]) => [name!, { light: light!, dark: dark! }]),
);

const SCHEMES = ['light', 'dark'] as const;
const color = (name: string, scheme: (typeof SCHEMES)[number]): string => colors.get(name)![scheme];

describe('the look of the page', () => {
  it('has every color, size of letters and space in the tokens', () => {
    expect(
      linesWith(/#[0-9a-f]{3,8}\b(?!['"]?\s*:)|\b(rgba?|hsla?|oklch)\(/i, /\.(css|tsx|html)$/),
    ).toEqual([]);
    expect(linesWith(/font-size:(?! var\(--text-\d\);)/, /\.css$/)).toEqual([]);
    expect(
      linesWith(/^\s*(padding|margin|gap|row-gap|column-gap)[a-z-]*:.*\d(rem|em)\b/, /\.css$/),
    ).toEqual([]);
  });

  it('names no color of the component library but those that the tokens give it', () => {
    const named =
      /["'](red|pink|grape|violet|indigo|blue|cyan|teal|green|lime|yellow|orange)(\.\d)?["']/;
    expect(linesWith(named, /\.tsx$/)).toEqual([]);
  });

  it.each(SCHEMES)('can be read in %s by the rules of WCAG AA', (scheme) => {
    const grounds = ['paper', 'sheet', 'shade'];
    const inks = ['ink', 'ink-soft', 'accent', 'warn', 'stop'];
    const pairs: [string, string, number][] = [
      ...grounds.flatMap((ground) =>
        inks.map((ink): [string, string, number] => [ground, ink, 4.5]),
      ),
      ...['accent', 'warn', 'stop'].flatMap((name): [string, string, number][] => [
        [`${name}-soft`, 'ink', 4.5],
        [`${name}-soft`, 'ink-soft', 4.5],
        [`${name}-soft`, name, 4.5],
        [name, 'accent-ink', 4.5],
      ]),
      ...[0, 1, 2, 3, 4].map((k): [string, string, number] => [`grade-${k}`, 'ink', 4.5]),
      // Edges and lines of charts are no text: 3 : 1.
      ...['paper', 'sheet'].flatMap((ground) => [
        [ground, 'edge', 3] as [string, string, number],
        ...[1, 2, 3, 4, 5, 6].map((k): [string, string, number] => [ground, `series-${k}`, 3]),
      ]),
    ];
    const poor = pairs
      .map(([ground, ink, least]) => ({
        pair: `${ink} on ${ground}`,
        least,
        is: contrast(color(ground, scheme), color(ink, scheme)),
      }))
      .filter(({ least, is }) => is < least);
    expect(poor).toEqual([]);
  });

  it.each(SCHEMES)('has series that the color-blind can tell apart, in %s', (scheme) => {
    const shown = [1, 2, 3, 4, 5, 6].map((k) => color(`series-${k}`, scheme));
    const alike = (Object.keys(SEEN_AS) as Sight[]).flatMap((sight) =>
      shown.flatMap((a, i) =>
        shown
          .slice(0, i)
          // Two that are this far apart in CIELAB are told apart at a glance, side by side or not.
          .filter((b) => distance(a, b, sight) < 12)
          .map((b) => `${a} and ${b}, ${sight}`),
      ),
    );
    expect(alike).toEqual([]);
  });
});
