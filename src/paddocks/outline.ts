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
  const polygon = geodesic.Geodesic.WGS84.Polygon(false);
  for (const [longitude, latitude] of corners) polygon.AddPoint(latitude, longitude);
  const areaM2 = Math.abs(polygon.Compute(false, true).area);
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

/** An outline whose corners make a simple ring, the closing corner left out. */
export function checkedCorners(outline: unknown, field = 'outline'): Outline {
  if (!Array.isArray(outline)) throw notCorners(field, outline);
  const corners = outline.map((corner: unknown, i): [number, number] => {
    const pair = Array.isArray(corner) ? corner.slice(0, 2) : [];
    const [longitude, latitude] = pair.map(Number);
    const isThere =
      longitude !== undefined &&
      latitude !== undefined &&
      Math.abs(longitude) <= 180 &&
      Math.abs(latitude) <= 90;
    if (!isThere) throw notCorners(`${field}.${i}`, corner);
    return [longitude, latitude];
  });
  const [first, last] = [corners[0], corners.at(-1)];
  const isClosed = 1 < corners.length && first![0] === last![0] && first![1] === last![1];
  const open = isClosed ? corners.slice(0, -1) : corners;
  if (open.length < 3 || MOST_CORNERS < open.length) {
    throw refused({
      field,
      code: 'out-of-bounds',
      given: open.length,
      min: 3,
      max: MOST_CORNERS,
      unit: 'corners',
      fix: 'Give the corners of the paddock in order.',
    });
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
const notCorners = (field: string, given: unknown): FieldError =>
  refused({
    field,
    code: 'not-allowed',
    given,
    allowed: ['pairs of longitude and latitude in degrees'],
    fix: 'Give each corner as [longitude, latitude], such as [-75.3, 42.9].',
  });

/** A polygon of a GeoJSON file with the name it goes by. */
export interface NamedOutline {
  readonly name: string;
  readonly outline: Outline;
  readonly areaM2: number;
}

const MOST_POLYGONS = 200;

/**
 * Outlines in a GeoJSON document (RFC 7946): a polygon, a feature or a collection of features.
 * Holes are left out; of a polygon of several parts each becomes its own.
 *
 * @throws FieldError naming the feature that cannot be used
 */
export function outlinesOfGeoJson(document: unknown): NamedOutline[] {
  const features = featuresOf(document);
  if (features.length === 0 || MOST_POLYGONS < features.length) {
    throw refused({
      field: 'geojson',
      code: 'out-of-bounds',
      given: features.length,
      min: 1,
      max: MOST_POLYGONS,
      unit: 'polygons',
      fix: 'Export the paddocks as polygons in longitude and latitude (WGS84).',
    });
  }
  return features.map(({ name, ring }, i): NamedOutline => {
    const field = `geojson.features.${i}`;
    const outline = checkedCorners(ring, field);
    return { name, outline, areaM2: outlineAreaM2(outline, field) };
  });
}

interface Loose {
  readonly type?: unknown;
  readonly features?: unknown;
  readonly geometry?: unknown;
  readonly coordinates?: unknown;
  readonly properties?: { readonly name?: unknown; readonly Name?: unknown };
}

function featuresOf(document: unknown, named?: string): { name: string; ring: unknown }[] {
  if (typeof document !== 'object' || document === null) return [];
  const { type, features, geometry, coordinates, properties } = document as Loose;
  const given = properties?.name ?? properties?.Name;
  const name = typeof given === 'string' && given.trim() !== '' ? given.slice(0, 80) : named;
  const rings = Array.isArray(coordinates) ? (coordinates as unknown[]) : [];
  switch (type) {
    case 'FeatureCollection':
      return Array.isArray(features)
        ? features.flatMap((each, i) => featuresOf(each, `Paddock ${i + 1}`))
        : [];
    case 'Feature':
      return featuresOf(geometry, name);
    case 'Polygon':
      return [{ name: name ?? 'Paddock', ring: rings[0] }];
    case 'MultiPolygon':
      return rings.map((part, i) => ({
        name: `${name ?? 'Paddock'} ${i + 1}`,
        ring: Array.isArray(part) ? (part as unknown[])[0] : undefined,
      }));
    default:
      return [];
  }
}
