import { createTheme, defaultVariantColorsResolver, type MantineColorsTuple } from '@mantine/core';

/** Every shade of a color is one of two tokens: its ground, and itself. */
const shades = (soft: string, full: string): MantineColorsTuple => [
  soft,
  soft,
  soft,
  soft,
  soft,
  full,
  full,
  full,
  full,
  full,
];

/** Grays from light to dark, as components know them on light ground. */
const GRAYS: MantineColorsTuple = [
  'var(--paper)',
  'var(--shade)',
  'var(--shade)',
  'var(--line)',
  'var(--edge)',
  'var(--edge)',
  'var(--ink-soft)',
  'var(--ink-soft)',
  'var(--ink)',
  'var(--ink)',
];

/** The same from ink to paper, as they know them on dark ground. */
const DARKS: MantineColorsTuple = [
  'var(--ink)',
  'var(--ink)',
  'var(--ink-soft)',
  'var(--edge)',
  'var(--line)',
  'var(--shade)',
  'var(--sheet)',
  'var(--paper)',
  'var(--paper)',
  'var(--paper)',
];

const touchHigh = { '--button-height': 'var(--touch)', '--input-height': 'var(--touch)' };

/** The component library, told to look as the tokens say. */
export const theme = createTheme({
  colors: {
    accent: shades('var(--accent-soft)', 'var(--accent)'),
    warn: shades('var(--warn-soft)', 'var(--warn)'),
    stop: shades('var(--stop-soft)', 'var(--stop)'),
    gray: GRAYS,
    dark: DARKS,
  },
  primaryColor: 'accent',
  primaryShade: 8,
  variantColorResolver: (input) => ({
    ...defaultVariantColorsResolver(input),
    ...(input.variant === 'filled' ? { color: 'var(--accent-ink)' } : {}),
  }),
  respectReducedMotion: true,
  fontFamily: 'var(--font)',
  fontFamilyMonospace: 'var(--font-fixed)',
  fontWeights: { regular: 'var(--plain)', medium: 'var(--bold)', bold: 'var(--bold)' },
  fontSizes: {
    xs: 'var(--text-1)',
    sm: 'var(--text-1)',
    md: 'var(--text-2)',
    lg: 'var(--text-3)',
    xl: 'var(--text-4)',
  },
  lineHeights: { xs: '1.4', sm: '1.4', md: '1.5', lg: '1.4', xl: '1.3' },
  headings: {
    fontWeight: 'var(--bold)',
    sizes: {
      h1: { fontSize: 'var(--text-4)', lineHeight: '1.25' },
      h2: { fontSize: 'var(--text-3)', lineHeight: '1.3' },
      h3: { fontSize: 'var(--text-3)', lineHeight: '1.3' },
      h4: { fontSize: 'var(--text-2)', lineHeight: '1.4' },
      h5: { fontSize: 'var(--text-2)', lineHeight: '1.4' },
      h6: { fontSize: 'var(--text-1)', lineHeight: '1.4' },
    },
  },
  spacing: {
    xs: 'var(--space-2)',
    sm: 'var(--space-3)',
    md: 'var(--space-4)',
    lg: 'var(--space-5)',
    xl: 'var(--space-6)',
  },
  radius: {
    xs: 'var(--radius)',
    sm: 'var(--radius)',
    md: 'var(--radius)',
    lg: 'var(--radius)',
    xl: 'var(--radius)',
  },
  defaultRadius: 'md',
  shadows: {
    xs: 'var(--shadow)',
    sm: 'var(--shadow)',
    md: 'var(--shadow)',
    lg: 'var(--shadow)',
    xl: 'var(--shadow)',
  },
  components: {
    // Large targets: this is used with gloves on.
    Button: { defaultProps: { size: 'md' }, vars: () => ({ root: touchHigh }) },
    ActionIcon: { defaultProps: { size: 'var(--touch)', variant: 'subtle' } },
    CloseButton: { defaultProps: { size: 'var(--touch)' } },
    Alert: { vars: () => ({ root: { '--alert-bg': 'transparent' } }) },
    Input: { vars: () => ({ wrapper: touchHigh }) },
    TextInput: { defaultProps: { size: 'md' } },
    NumberInput: { defaultProps: { size: 'md' } },
    NativeSelect: { defaultProps: { size: 'md' } },
    Textarea: { defaultProps: { size: 'md' } },
    FileInput: { defaultProps: { size: 'md' } },
    InputWrapper: { defaultProps: { size: 'md' } },
    CheckboxGroup: { defaultProps: { size: 'md' } },
    RadioGroup: { defaultProps: { size: 'md' } },
    Checkbox: { defaultProps: { size: 'md', iconColor: 'var(--accent-ink)' } },
    Radio: { defaultProps: { size: 'md', iconColor: 'var(--accent-ink)' } },
    Switch: { defaultProps: { size: 'md' } },
    // In the middle of text a color alone says nothing of a link.
    Anchor: { defaultProps: { underline: 'always' } },
    // Else what is written on a chosen one is not told from its ground in the dark.
    Chip: { defaultProps: { color: 'accent', variant: 'filled' } },
    Text: { defaultProps: { size: 'md' } },
    Table: { defaultProps: { borderColor: 'var(--line)' } },
  },
});
