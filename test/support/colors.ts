type Rgb = readonly [number, number, number];

/**
 * What the color-blind see, by linear light: Machado, Oliveira and Fernandes (2009), A
 * physiologically-based model for simulation of color vision deficiency, severity 1.0.
 */
export const SEEN_AS = {
  usual: [
    [1, 0, 0],
    [0, 1, 0],
    [0, 0, 1],
  ],
  protanopia: [
    [0.152286, 1.052583, -0.204868],
    [0.114503, 0.786281, 0.099216],
    [-0.003882, -0.048116, 1.051998],
  ],
  deuteranopia: [
    [0.367322, 0.860646, -0.227968],
    [0.280085, 0.672501, 0.047413],
    [-0.01182, 0.04294, 0.968881],
  ],
  tritanopia: [
    [1.255528, -0.076749, -0.178779],
    [-0.078411, 0.930809, 0.147602],
    [0.004733, 0.691367, 0.3039],
  ],
} as const;

export type Sight = keyof typeof SEEN_AS;

/** Contrast of two colors by WCAG 2.2: 1 for the same, 21 for black on white. */
export function contrast(a: string, b: string): number {
  const [low, high] = [luminance(linear(a)), luminance(linear(b))].sort((x, y) => x - y);
  return (high! + 0.05) / (low! + 0.05);
}

/** How far two colors lie apart in CIELAB (1976), as an eye of that kind sees them. */
export function distance(a: string, b: string, sight: Sight): number {
  const [p, q] = [a, b].map((color) => lab(seen(linear(color), sight)));
  return Math.hypot(...p!.map((value, k) => value - q![k]!));
}

const linear = (hex: string): Rgb =>
  [1, 3, 5].map((at) => {
    const part = parseInt(hex.slice(at, at + 2), 16) / 255;
    return part <= 0.04045 ? part / 12.92 : ((part + 0.055) / 1.055) ** 2.4;
  }) as unknown as Rgb;

const luminance = ([r, g, b]: Rgb): number => 0.2126 * r + 0.7152 * g + 0.0722 * b;

const seen = (rgb: Rgb, sight: Sight): Rgb =>
  SEEN_AS[sight].map((row) =>
    Math.min(1, Math.max(0, row[0] * rgb[0] + row[1] * rgb[1] + row[2] * rgb[2])),
  ) as unknown as Rgb;

/** CIELAB of linear sRGB under D65. */
function lab([r, g, b]: Rgb): Rgb {
  const x = f((0.4124 * r + 0.3576 * g + 0.1805 * b) / 0.9505);
  const y = f(luminance([r, g, b]));
  const z = f((0.0193 * r + 0.1192 * g + 0.9505 * b) / 1.089);
  return [116 * y - 16, 500 * (x - y), 200 * (y - z)];
}

const f = (t: number): number => (t > 0.008856 ? Math.cbrt(t) : 7.787 * t + 16 / 116);
