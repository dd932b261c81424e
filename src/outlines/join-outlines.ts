import { union } from '@turf/union';
import type { Outline } from '../../shared/farm/paddock.js';
import { isOutline, ringAreaM2 } from './outline.js';
import { closed, planeAt, type PointM } from '../../shared/maths/plane.js';

/**
 * Outlines nearer than this share a fence. First only what is drawn the same is; drawn twice, a
 * fence is seldom drawn the same, so that up to a meter is tried next.
 */
const SAME_FENCE_M = [0.01, 1] as const;
/** A hole or piece this small comes from rounding, not from the ground. */
const CRUMB_M2 = 1;
/** A corner this near to the line between its neighbors is none. */
const STRAIGHT_M = 0.01;
const MOST_CORNERS = 1000;
const NO_LINE = 'no simple line can be drawn around the outlines';

export type Joined = { readonly outline: Outline } | { readonly because: string };

/** One outline around several that touch, or why there is none. */
export function joinOutlines(outlines: readonly Outline[]): Joined {
  if (MOST_CORNERS < outlines.reduce((sum, outline) => sum + outline.length, 0)) {
    return { because: `the outlines have more than ${MOST_CORNERS} corners together` };
  }
  const [exact, loose] = SAME_FENCE_M;
  const joined = joinWithin(outlines, exact);
  return 'outline' in joined ? joined : joinWithin(outlines, loose);
}

function joinWithin(outlines: readonly Outline[], fenceM: number): Joined {
  const plane = planeAt(outlines[0]![0]!);
  const rings = onSharedFences(
    outlines.map((outline) => outline.map(plane.toPoint)),
    fenceM,
  );
  const pieces = unionOf(rings);
  if (!pieces) return { because: NO_LINE };
  const isCrumb = (ring: number[][]): boolean => ringAreaM2(ring.map(plane.toCorner)) < CRUMB_M2;
  const [piece, another] = pieces.filter(([outer]) => !isCrumb(outer!));
  if (!piece || another) return { because: 'the outlines lie apart from each other' };
  const [outer, ...holes] = piece;
  if (!holes.every(isCrumb)) {
    return { because: 'the outlines enclose ground that is in none of them' };
  }
  const outline = straightened(outer!.slice(0, -1).map(([x = 0, y = 0]): PointM => [x, y])).map(
    plane.toCorner,
  );
  return isOutline(outline) ? { outline } : { because: NO_LINE };
}

/** The pieces that rings make together, each with its holes; undefined when they cannot be worked out. */
function unionOf(rings: readonly (readonly PointM[])[]): number[][][][] | undefined {
  if (rings.some((ring) => ring.length < 3)) return undefined;
  try {
    const geometry = union({
      type: 'FeatureCollection',
      features: rings.map((ring) => ({
        type: 'Feature',
        properties: {},
        geometry: { type: 'Polygon', coordinates: [closed(ring)] },
      })),
    })?.geometry;
    return geometry?.type === 'Polygon' ? [geometry.coordinates] : geometry?.coordinates;
  } catch {
    // The library gives up on some rings that touch themselves.
    return undefined;
  }
}

/** The rings with every fence they share drawn through the same points. */
function onSharedFences(rings: readonly (readonly PointM[])[], fenceM: number): PointM[][] {
  const moved: PointM[][] = [];
  for (const ring of rings) {
    const near = moved.filter((other) => areNear(ring, other, fenceM));
    moved.push(
      withoutRepeats(
        ring.map(
          (point) => nearest(point, near.flat(), fenceM) ?? nearestOnSide(point, near, fenceM),
        ),
      ),
    );
  }
  return moved.map((ring, i) => {
    const others = moved.filter((other, k) => k !== i && areNear(ring, other, fenceM)).flat();
    return withoutRepeats(
      ring.flatMap((from, k) => [
        from,
        ...between(from, ring[(k + 1) % ring.length]!, others, fenceM),
      ]),
    );
  });
}

/** The point of the nearest side, or the point itself when none is near. */
function nearestOnSide(
  point: PointM,
  rings: readonly (readonly PointM[])[],
  fenceM: number,
): PointM {
  const feet = rings.flatMap((ring) =>
    ring.map((from, k) => footOf(point, from, ring[(k + 1) % ring.length]!).foot),
  );
  return nearest(point, feet, fenceM) ?? point;
}

function nearest(
  point: PointM,
  candidates: readonly PointM[],
  withinM: number,
): PointM | undefined {
  let best: { readonly awayM: number; readonly at: PointM | undefined } = {
    awayM: withinM,
    at: undefined,
  };
  for (const at of candidates) {
    const awayM = distanceM(point, at);
    if (awayM < best.awayM) best = { awayM, at };
  }
  return best.at;
}

/** Corners that lie on the side between two points, in its order. */
function between(from: PointM, to: PointM, corners: readonly PointM[], fenceM: number): PointM[] {
  return corners
    .map((corner) => ({ corner, ...footOf(corner, from, to) }))
    .filter(({ corner, foot, share }) => 0 < share && share < 1 && distanceM(corner, foot) < fenceM)
    .sort((a, b) => a.share - b.share)
    .map(({ corner }) => corner);
}

/** The point of a side that is nearest, and how far along the side it lies. */
function footOf(point: PointM, from: PointM, to: PointM): { foot: PointM; share: number } {
  const [dx, dy] = [to[0] - from[0], to[1] - from[1]];
  const length2 = dx * dx + dy * dy;
  const along = (point[0] - from[0]) * dx + (point[1] - from[1]) * dy;
  const share = length2 === 0 ? 0 : Math.min(1, Math.max(0, along / length2));
  return { foot: [from[0] + share * dx, from[1] + share * dy], share };
}

function straightened(ring: readonly PointM[]): PointM[] {
  const kept: PointM[] = [];
  ring.forEach((point, k) => {
    const before = kept.at(-1) ?? ring.at(-1)!;
    const { foot } = footOf(point, before, ring[(k + 1) % ring.length]!);
    if (STRAIGHT_M <= distanceM(point, foot)) kept.push(point);
  });
  return kept;
}

function areNear(ring: readonly PointM[], other: readonly PointM[], fenceM: number): boolean {
  return [0, 1].every((axis) => {
    const [a, b] = [ring, other].map((each) => each.map((point) => point[axis as 0 | 1]));
    return Math.min(...a!) - fenceM < Math.max(...b!) && Math.min(...b!) - fenceM < Math.max(...a!);
  });
}

const withoutRepeats = (ring: readonly PointM[]): PointM[] =>
  ring.filter((point, k) => {
    const next = ring[(k + 1) % ring.length]!;
    return point[0] !== next[0] || point[1] !== next[1];
  });

const distanceM = (a: PointM, b: PointM): number => Math.hypot(a[0] - b[0], a[1] - b[1]);
