import {
  convertCssVariables,
  deepMerge,
  DEFAULT_THEME,
  defaultCssVariablesResolver,
  mergeMantineTheme,
  type ConvertCSSVariablesInput,
  type CSSVariablesResolver,
} from '@mantine/core';
import type { Plugin } from 'vite';
import { theme } from './theme.js';

const NAME = 'virtual:library-variables.css';
/** What writes them in the browser: loaded, it works out the library's own before anybody asks. */
const WRITER = /[\\/]@mantine[\\/]core[\\/].*[\\/]MantineCssVariables\.mjs$/;
/** Colors of the library's own, which the page has none of. */
const OWN_COLOR =
  /^--mantine-color-(red|pink|grape|violet|indigo|blue|cyan|green|lime|yellow|orange|teal)-/;

/**
 * What the component library calls its sizes and colors, as a style sheet made when the page is
 * built: worked out in the browser it takes a phone a tenth of a second before anything is drawn.
 */
export function libraryVariables(): Plugin {
  return {
    name: 'library-variables',
    resolveId: (id) => (id === NAME ? `\0${NAME}` : undefined),
    load: (id) =>
      id === `\0${NAME}`
        ? libraryStyles()
        : WRITER.test(id)
          ? 'export const MantineCssVariables = () => null;'
          : undefined,
  };
}

function libraryStyles(): string {
  const whole = mergeMantineTheme(DEFAULT_THEME, theme);
  const all = deepMerge(
    defaultCssVariablesResolver(whole),
    variables(whole),
  ) as ConvertCSSVariablesInput;
  return convertCssVariables(
    {
      variables: withoutOwnColors(all.variables),
      light: { ...withoutOwnColors(all.light), '--mantine-color-scheme': 'light' },
      dark: { ...withoutOwnColors(all.dark), '--mantine-color-scheme': 'dark' },
    },
    ':root',
  );
}

const withoutOwnColors = (all: Record<string, string>): Record<string, string> =>
  Object.fromEntries(Object.entries(all).filter(([name]) => !OWN_COLOR.test(name)));

const colorOf = (name: 'accent' | 'warn' | 'stop'): Record<string, string> => ({
  [`--mantine-color-${name}-filled`]: `var(--${name})`,
  [`--mantine-color-${name}-filled-hover`]: `color-mix(in srgb, var(--${name}) 88%, var(--ink))`,
  [`--mantine-color-${name}-light`]: `var(--${name}-soft)`,
  [`--mantine-color-${name}-light-hover`]: `color-mix(in srgb, var(--${name}-soft), var(--line) 30%)`,
  [`--mantine-color-${name}-light-color`]: `var(--${name})`,
  [`--mantine-color-${name}-outline`]: `var(--${name})`,
  [`--mantine-color-${name}-outline-hover`]: `var(--${name}-soft)`,
  [`--mantine-color-${name}-text`]: `var(--${name})`,
});

/** Set for both schemes, as the library sets them for each: the tokens know which one it is. */
const COLORS: Record<string, string> = {
  ...colorOf('accent'),
  ...colorOf('warn'),
  ...colorOf('stop'),
  '--mantine-color-text': 'var(--ink)',
  '--mantine-color-bright': 'var(--ink)',
  '--mantine-color-dimmed': 'var(--ink-soft)',
  '--mantine-color-placeholder': 'var(--ink-soft)',
  '--mantine-color-body': 'var(--paper)',
  '--mantine-color-error': 'var(--stop)',
  '--mantine-color-success': 'var(--accent)',
  '--mantine-color-anchor': 'var(--accent)',
  '--mantine-color-default': 'var(--sheet)',
  '--mantine-color-default-hover': 'var(--shade)',
  '--mantine-color-default-color': 'var(--ink)',
  '--mantine-color-default-border': 'var(--edge)',
  '--mantine-color-disabled': 'var(--shade)',
  '--mantine-color-disabled-color': 'var(--ink-soft)',
  '--mantine-color-disabled-border': 'var(--line)',
};

/** What the library calls its colors, by tokens. */
export const variables: CSSVariablesResolver = () => ({
  variables: {},
  light: {
    ...COLORS,
    '--mantine-color-white': 'var(--sheet)',
    '--mantine-color-black': 'var(--ink)',
  },
  dark: {
    ...COLORS,
    '--mantine-color-white': 'var(--ink)',
    '--mantine-color-black': 'var(--paper)',
  },
});
