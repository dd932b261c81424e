import type { Outline } from '../farm/paddock.js';
import { planeAt, type PointM } from '../maths/plane.js';
import { rectangleFenceM } from './sizing.js';

/** Corners of neighbors that were drawn by hand or walked with a phone lie this far apart, m. */
const APART_M = 4;
/** Sides that run along each other are turned this little, as the sine of the angle. */
const TURNED = 0.1;

interface Fence {
  readonly eachM: number;
  readonly sharedM: number;
}

/** Kept by the first of them: outlines change once in years, and each plan asks. */
const fenceFrom = new WeakMap<
  Outline,
  { readonly outlines: readonly Outline[]; readonly fence: Fence }
>();

type Side = readonly [from: PointM, to: PointM];

/**
 * Fence around outlines, m: that of each by itself, and what two of them share, which is built once.
 *
 * Sides count as shared over the length for which they lie within 4 m of each other and nearly
 * parallel. Good for land some kilometers wide.
 */
export function fenceOfOutlines(outlines: readonly Outline[]): Fence {
  if (outlines.length === 0) return { eachM: 0, sharedM: 0 };
  const known = fenceFrom.get(outlines[0]!);
  if (
    known?.outlines.length === outlines.length &&
    known.outlines.every((o, k) => o === outlines[k])
  )
    return known.fence;
  const plane = planeAt(outlines[0]![0]!);
  const rings = outlines.map((corners) => sidesOf(corners.map((corner) => plane.toPoint(corner))));
  let eachM = 0;
  let sharedM = 0;
  rings.forEach((sides, i) => {
    for (const side of sides) {
      eachM += lengthOf(side);
      for (const others of rings.slice(i + 1))
        for (const other of others) sharedM += alongM(side, other);
    }
  });
  const fence = { eachM, sharedM };
  fenceFrom.set(outlines[0]!, { outlines, fence });
  return fence;
}

const sidesOf = (points: readonly PointM[]): Side[] =>
  points.map((point, k) => [point, points[(k + 1) % points.length]!]);

const lengthOf = ([[x0, y0], [x1, y1]]: Side): number => Math.hypot(x1 - x0, y1 - y0);

/** Length over which a side runs along another. */
function alongM(side: Side, other: Side): number {
  const length = lengthOf(side);
  const otherM = lengthOf(other);
  if (length === 0 || otherM === 0) return 0;
  const [[x0, y0], [x1, y1]] = side;
  const [ux, uy] = [(x1 - x0) / length, (y1 - y0) / length];
  const [vx, vy] = [other[1][0] - other[0][0], other[1][1] - other[0][1]];
  if (TURNED < Math.abs(ux * vy - uy * vx) / otherM) return 0;
  // Places of the other's ends along this side, and how far beside it they lie.
  const [a, b] = other.map(([x, y]) => ({
    along: (x - x0) * ux + (y - y0) * uy,
    beside: (y - y0) * ux - (x - x0) * uy,
  })) as [Place, Place];
  const from = Math.max(0, Math.min(a.along, b.along));
  const to = Math.min(length, Math.max(a.along, b.along));
  if (to <= from || APART_M < Math.abs(besideAt(a, b, (from + to) / 2))) return 0;
  return to - from;
}

interface Place {
  readonly along: number;
  readonly beside: number;
}

const besideAt = (a: Place, b: Place, along: number): number =>
  a.along === b.along
    ? a.beside
    : a.beside + ((along - a.along) / (b.along - a.along)) * (b.beside - a.beside);

/**
 * Fence of equal paddocks in one block over the fence of each by itself, 0.5 to 1: they lie in rows,
 * as many a row as take the least fence, and each fence between two is built once.
 *
 * @param longToShort long side of one over its short side
 */
export function shareOfBlock(paddocks: number, longToShort: number): number {
  if (paddocks < 2) return 1;
  let least = Infinity;
  for (let aRow = 1; aRow <= paddocks; aRow++) {
    const rows = Math.ceil(paddocks / aRow);
    // Every paddock has a side toward the next row and one toward its neighbor; the first have two.
    least = Math.min(least, paddocks + aRow + longToShort * (paddocks + rows));
  }
  return least / (paddocks * rectangleFenceM(longToShort, longToShort));
}
