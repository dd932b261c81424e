import { kinks } from '@turf/kinks';
import geodesic from 'geographiclib-geodesic';
import type { Outline } from '../../shared/farm/paddock.js';
import { FieldError, type FieldProblem } from '../../shared/problems/field-problem.js';

const MOST_CORNERS = 500;

/**
 * Area of an outline on the WGS84 ellipsoid, m².
 *
 * @throws FieldError for fewer than three corners, corners off the globe, or sides that cross
 */
export function outlineAreaM2(outline: unknown, field = 'outline'): number {
  const corners = checkedCorners(outline, field);
  const areaM2 = ringAreaM2(corners);
  if (areaM2 < 1) {
    throw refused({
      field,
      code: 'out-of-bounds',
      given: `${areaM2} m²`,
      min: 1,
      fix: 'The corners lie on one line. Give the outline of a piece of ground.',
    });
  }
  return areaM2;
}

/** Area inside a ring on the WGS84 ellipsoid, m²; its corners are not checked. */
export function ringAreaM2(corners: Outline): number {
  if (corners.length < 3) return 0;
  const polygon = geodesic.Geodesic.WGS84.Polygon(false);
  for (const [longitude, latitude] of corners) polygon.AddPoint(latitude, longitude);
  return Math.abs(polygon.Compute(false, true).area);
}

/** Whether corners make the outline of a paddock. */
export function isOutline(corners: Outline): boolean {
  try {
    checkedCorners(corners);
    return true;
  } catch (error) {
    if (error instanceof FieldError) return false;
    throw error;
  }
}

/** An outline whose corners make a simple ring, the closing corner left out. */
export function checkedCorners(outline: unknown, field = 'outline'): Outline {
  if (!Array.isArray(outline)) throw notCorners(field, outline);
  if (MOST_CORNERS + 1 < outline.length) throw wrongCount(field, outline.length);
  const corners = outline.map((corner: unknown, i): [number, number] => {
    const [longitude, latitude] = Array.isArray(corner) ? (corner as unknown[]) : [];
    const isThere =
      typeof longitude === 'number' &&
      typeof latitude === 'number' &&
      Math.abs(longitude) <= 180 &&
      Math.abs(latitude) <= 90;
    if (!isThere) throw notCorners(`${field}.${i}`, corner);
    return [longitude, latitude];
  });
  const [first, last] = [corners[0], corners.at(-1)];
  const isClosed = 1 < corners.length && first![0] === last![0] && first![1] === last![1];
  const open = isClosed ? corners.slice(0, -1) : corners;
  if (open.length < 3 || MOST_CORNERS < open.length) {
    throw wrongCount(field, open.length);
  }
  const ring = [...open, open[0]!];
  const crossings = kinks({ type: 'Polygon', coordinates: [ring] }).features.length;
  if (0 < crossings) {
    throw refused({
      field,
      code: 'not-allowed',
      given: `${crossings} crossing${crossings === 1 ? '' : 's'}`,
      allowed: ['an outline whose sides do not cross'],
      fix: 'Two sides cross each other. Give the corners in order around the paddock.',
    });
  }
  return open;
}

const refused = (problem: FieldProblem): FieldError => new FieldError([problem]);
const wrongCount = (field: string, given: number): FieldError =>
  refused({
    field,
    code: 'out-of-bounds',
    given,
    min: 3,
    max: MOST_CORNERS,
    unit: 'corners',
    fix: 'That counts corners: give at least three, in order around the paddock.',
  });
const notCorners = (field: string, given: unknown): FieldError =>
  refused({
    field,
    code: 'not-allowed',
    given,
    allowed: ['pairs of longitude and latitude in degrees'],
    fix: 'Give each corner as [longitude, latitude], such as [-75.3, 42.9].',
  });
