import type { Outline, Paddock } from '../../../../shared/farm/paddock.js';

const LONGER_SIDE = 1000;
const MARGIN = 20;

type Point = readonly [number, number];

interface Drawn {
  readonly paddock: Paddock;
  readonly points: readonly Point[];
}

/** Outlines on a flat sheet, true in shape over a farm's width; north is up. */
export function projected(
  paddocks: readonly Paddock[],
): { shapes: readonly Drawn[]; width: number; height: number } | undefined {
  const outlined = paddocks.filter(
    (p): p is Paddock & { outline: Outline } => p.outline !== undefined,
  );
  const corners = outlined.flatMap((p) => p.outline);
  if (corners.length === 0) return undefined;
  const latitudes = corners.map(([, latitude]) => latitude);
  const narrow = Math.cos((Math.PI / 180) * latitudes[0]!);
  const xs = corners.map(([longitude]) => longitude * narrow);
  const [west, north] = [Math.min(...xs), Math.max(...latitudes)];
  const [wide, tall] = [Math.max(...xs) - west, north - Math.min(...latitudes)];
  const scale = (LONGER_SIDE - 2 * MARGIN) / Math.max(wide, tall, 1e-6);
  return {
    width: wide * scale + 2 * MARGIN,
    height: tall * scale + 2 * MARGIN,
    shapes: outlined.map((paddock) => ({
      paddock,
      points: paddock.outline.map(
        ([longitude, latitude]) =>
          [
            Math.round(MARGIN + (longitude * narrow - west) * scale),
            Math.round(MARGIN + (north - latitude) * scale),
          ] as const,
      ),
    })),
  };
}

/** The middle of an outline by its area; of one without area that of its corners. */
export function middle(points: readonly Point[]): Point {
  let [area, x, y] = [0, 0, 0];
  points.forEach(([x1, y1], k) => {
    const [x2, y2] = points[(k + 1) % points.length]!;
    const cross = x1 * y2 - x2 * y1;
    area += cross / 2;
    x += ((x1 + x2) * cross) / 6;
    y += ((y1 + y2) * cross) / 6;
  });
  if (Math.abs(area) < 1) {
    const sum = points.reduce<Point>(([sx, sy], p) => [sx + p[0], sy + p[1]], [0, 0]);
    return [sum[0] / points.length, sum[1] / points.length];
  }
  return [x / area, y / area];
}

/** Height of letters on the map, in its own lengths: 12 px on the narrowest phone. */
export const LETTERS = 38;
/** Width of a letter over its height, about. */
const LETTER = 0.56;

/** Whether a name stays within an outline, above its number. */
export function fits(points: readonly Point[], name: string): boolean {
  const [xs, ys] = [points.map(([x]) => x), points.map(([, y]) => y)];
  const wide = Math.max(...xs) - Math.min(...xs);
  const tall = Math.max(...ys) - Math.min(...ys);
  return name.length * LETTER * LETTERS < 0.9 * wide && 2.4 * LETTERS < tall;
}
