import { bboxClip } from '@turf/bbox-clip';
import { intersect } from '@turf/intersect';
import type { Outline } from '../../shared/farm/paddock.js';
import { isOutline, ringAreaM2 } from './outline.js';
import { closed, planeAt, type Plane, type PointM } from '../../shared/maths/plane.js';

type Polygon = { readonly type: 'Polygon'; readonly coordinates: [number, number][][] };

/** A piece this small comes from rounding, not from the ground. */
const CRUMB_M2 = 1;
/** Halvings of the paddock's length: a kilometer down to a micrometer. */
const HALVINGS = 30;
/**
 * The halving looks at areas of the flat sheet, which are quick to have; how much ground a square
 * meter of it stands for hardly changes over a paddock and is worked out anew this often.
 */
const CORRECTIONS = 3;

/**
 * Cuts an outline by parallel lines across its longer side, so that each part has its share of the
 * area on the ellipsoid. Where a part would fall into pieces, the lines run along it instead.
 *
 * @param shares of the whole, each above 0, 1 together
 * @returns the parts from west to east, or north to south; undefined when they would be in pieces
 *   either way
 */
export function cutOutline(outline: Outline, shares: readonly number[]): Outline[] | undefined {
  const flat = planeAt(outline[0]!);
  const longRad = longAxisRad(outline.map(flat.toPoint));
  for (const axisRad of [longRad, longRad + Math.PI / 2]) {
    const parts = strips(outline, shares, planeAt(outline[0]!, readingWay(axisRad)));
    if (parts) return parts;
  }
  return undefined;
}

function strips(outline: Outline, shares: readonly number[], plane: Plane): Outline[] | undefined {
  const points = outline.map(plane.toPoint);
  const polygon: Polygon = { type: 'Polygon', coordinates: [closed(points)] };
  const [west, east] = range(points.map(([x]) => x));
  const [south, north] = range(points.map(([, y]) => y));
  const upTo = (x: number): number[][] =>
    (bboxClip(polygon, [west - 1, south - 1, x, north + 1]).geometry.coordinates[0] ??
      []) as number[][];
  const groundM2 = (ring: number[][]): number => ringAreaM2(ring.map(plane.toCorner));
  const wholeM2 = groundM2(upTo(east + 1));
  const sheetM2 = flatAreaM2(upTo(east + 1));
  let share = 0;
  const inner = shares.slice(0, -1).map((each) => {
    share += each;
    let [x, scale] = [west, wholeM2 / sheetM2];
    for (let i = 0; i < CORRECTIONS; i++) {
      x = whereReached((at) => flatAreaM2(upTo(at)), (share * wholeM2) / scale, west, east);
      scale = groundM2(upTo(x)) / flatAreaM2(upTo(x));
    }
    return x;
  });
  const lines = [west - 1, ...inner, east + 1];
  const parts = shares.map((_, k) => {
    const [from, to] = [lines[k]!, lines[k + 1]!];
    const strip: Polygon = {
      type: 'Polygon',
      coordinates: [
        closed([
          [from, south - 1],
          [to, south - 1],
          [to, north + 1],
          [from, north + 1],
        ]),
      ],
    };
    return onePiece(polygon, strip, plane);
  });
  return parts.every((part) => part !== undefined) ? parts : undefined;
}

function onePiece(polygon: Polygon, strip: Polygon, plane: Plane): Outline | undefined {
  const [piece, another] = commonPieces(polygon, strip)
    .map((rings) => rings[0]!.slice(0, -1).map(plane.toCorner))
    .filter((ring) => CRUMB_M2 <= ringAreaM2(ring));
  return piece && !another && isOutline(piece) ? piece : undefined;
}

function commonPieces(polygon: Polygon, strip: Polygon): number[][][][] {
  try {
    const common = intersect({
      type: 'FeatureCollection',
      features: [polygon, strip].map((geometry) => ({ type: 'Feature', properties: {}, geometry })),
    })?.geometry;
    return common?.type === 'Polygon' ? [common.coordinates] : (common?.coordinates ?? []);
  } catch {
    // The library gives up on some rings that touch themselves.
    return [];
  }
}

/** Where a growing function passes a value, by halving. */
function whereReached(of: (x: number) => number, value: number, from: number, to: number): number {
  let [low, high] = [from, to];
  for (let i = 0; i < HALVINGS; i++) {
    const middle = (low + high) / 2;
    if (of(middle) < value) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

/** Direction of the longer side of the smallest box along one of the sides. */
function longAxisRad(points: readonly PointM[]): number {
  let best = { areaM2: Infinity, axisRad: 0 };
  points.forEach(([x, y], i) => {
    const [nextX, nextY] = points[(i + 1) % points.length]!;
    const sideRad = Math.atan2(nextY - y, nextX - x);
    const [cos, sin] = [Math.cos(sideRad), Math.sin(sideRad)];
    const along = span(points.map((p) => p[0] * cos + p[1] * sin));
    const across = span(points.map((p) => p[1] * cos - p[0] * sin));
    if (along * across < best.areaM2) {
      best = {
        areaM2: along * across,
        axisRad: across <= along ? sideRad : sideRad + Math.PI / 2,
      };
    }
  });
  return best.axisRad;
}

/** Area of a ring on the sheet, from its corners (shoelace). */
function flatAreaM2(ring: readonly number[][]): number {
  const twiceM2 = ring.reduce((sum, [x = 0, y = 0], k) => {
    const [nextX = 0, nextY = 0] = ring[(k + 1) % ring.length]!;
    return sum + x * nextY - nextX * y;
  }, 0);
  return Math.abs(twiceM2) / 2;
}

/** The same axis pointing east, or south where it lies nearer north and south. */
function readingWay(axisRad: number): number {
  const [cos, sin] = [Math.cos(axisRad), Math.sin(axisRad)];
  const isTurned = Math.abs(sin) <= Math.abs(cos) ? cos < 0 : 0 < sin;
  return isTurned ? axisRad + Math.PI : axisRad;
}

const range = (values: readonly number[]): [number, number] => [
  Math.min(...values),
  Math.max(...values),
];
const span = (values: readonly number[]): number => {
  const [least, most] = range(values);
  return most - least;
};
