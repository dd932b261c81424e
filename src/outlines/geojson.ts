import type { Outline } from '../../shared/farm/paddock.js';
import { FieldError, type FieldProblem } from '../../shared/problems/field-problem.js';
import { checkedCorners, outlineAreaM2 } from './outline.js';

/** A polygon of a GeoJSON file. */
export interface NamedOutline {
  /** Where it stands in the file, such as `geojson.features.2`. */
  readonly at: string;
  readonly name: string;
  readonly outline: Outline;
  readonly areaM2: number;
  readonly properties: unknown;
}

export interface GeoJsonOutlines {
  readonly outlines: readonly NamedOutline[];
  /** Points and lines, which are no paddocks, in words. */
  readonly leftOut: readonly string[];
}

const MOST_POLYGONS = 200;
const NO_PADDOCKS = ['Point', 'MultiPoint', 'LineString', 'MultiLineString'];

/**
 * Outlines in a GeoJSON document (RFC 7946): a polygon, a feature or a collection of features.
 * Holes are left out; of a polygon of several parts each becomes its own.
 *
 * @throws FieldError naming every feature that cannot be used
 */
export function outlinesOfGeoJson(document: unknown): GeoJsonOutlines {
  const found: Found = { rings: [], leftOut: [], problems: [] };
  readDocument(document, found);
  if (MOST_POLYGONS < found.rings.length) throw wrongCount(found.rings.length);
  const outlines = found.rings.flatMap(({ ring, ...rest }): NamedOutline[] => {
    try {
      const outline = checkedCorners(ring, rest.at);
      return [{ ...rest, outline, areaM2: outlineAreaM2(outline, rest.at) }];
    } catch (error) {
      if (!(error instanceof FieldError)) throw error;
      found.problems.push(...error.problems);
      return [];
    }
  });
  if (0 < found.problems.length) throw new FieldError(found.problems);
  if (outlines.length === 0) throw wrongCount(0);
  return { outlines, leftOut: found.leftOut };
}

const wrongCount = (given: number): FieldError =>
  new FieldError([
    {
      field: 'geojson',
      code: 'out-of-bounds',
      given,
      min: 1,
      max: MOST_POLYGONS,
      unit: 'polygons',
      fix: 'Export the paddocks as polygons in longitude and latitude (WGS84).',
    },
  ]);

interface Found {
  readonly rings: (Omit<NamedOutline, 'outline' | 'areaM2'> & { readonly ring: unknown })[];
  readonly leftOut: string[];
  readonly problems: FieldProblem[];
}

interface Place {
  readonly at: string;
  readonly name: string;
  /** What the place is called in words. */
  readonly words: string;
  readonly properties: unknown;
}

interface Loose {
  readonly type?: unknown;
  readonly features?: unknown;
  readonly geometry?: unknown;
  readonly coordinates?: unknown;
  readonly properties?: unknown;
}

const looseOf = (value: unknown): Loose =>
  typeof value === 'object' && value !== null ? value : {};

function readDocument(document: unknown, found: Found): void {
  const { type, features } = looseOf(document);
  const alone = { at: 'geojson', name: 'Paddock', words: 'The document', properties: {} };
  if (type === 'FeatureCollection' && Array.isArray(features)) {
    features.forEach((feature: unknown, i) =>
      readFeature(
        feature,
        {
          at: `geojson.features.${i}`,
          name: `Paddock ${i + 1}`,
          words: `Feature ${i + 1}`,
          properties: {},
        },
        found,
      ),
    );
  } else if (type === 'Feature') readFeature(document, alone, found);
  else readGeometry(document, alone, found);
}

function readFeature(feature: unknown, place: Place, found: Found): void {
  const { type, geometry, properties } = looseOf(feature);
  if (type !== 'Feature') {
    found.problems.push(unknownType(place.at, type, ['Feature']));
    return;
  }
  readGeometry(geometry, { ...place, name: nameIn(properties) ?? place.name, properties }, found);
}

function readGeometry(geometry: unknown, place: Place, found: Found): void {
  const { type, coordinates } = looseOf(geometry);
  const { at, name, properties, words } = place;
  const parts: unknown[] = Array.isArray(coordinates) ? coordinates : [];
  if (type === 'Polygon') found.rings.push({ at, name, properties, ring: parts[0] });
  else if (type === 'MultiPolygon') {
    parts.forEach((part, k) =>
      found.rings.push({
        at: parts.length === 1 ? at : `${at}.geometry.coordinates.${k}`,
        name: parts.length === 1 ? name : `${name.slice(0, 76)} ${k + 1}`,
        properties,
        ring: Array.isArray(part) ? (part as unknown[])[0] : undefined,
      }),
    );
  } else if (typeof type === 'string' && NO_PADDOCKS.includes(type)) {
    found.leftOut.push(`${words} (${name}) is a ${type}`);
  } else found.problems.push(unknownType(at, type, ['Polygon', 'MultiPolygon']));
}

const unknownType = (at: string, given: unknown, allowed: readonly string[]): FieldProblem => ({
  field: at,
  code: given === undefined ? 'missing' : 'not-allowed',
  given,
  allowed,
  fix: `Give it as a ${allowed.join(' or ')}, or take it out of the file.`,
});

// oxlint-disable-next-line no-control-regex -- control characters are what is taken out
const CONTROL = /[\u0000-\u001f\u007f]+/g;

/** The name a feature goes by, as short and plain as any other. */
function nameIn(properties: unknown): string | undefined {
  const { name, Name } = looseOf(properties) as { name?: unknown; Name?: unknown };
  const given = name ?? Name;
  if (typeof given !== 'string' && typeof given !== 'number') return undefined;
  const plain = String(given).replace(CONTROL, ' ').trim().slice(0, 80).trim();
  return plain === '' ? undefined : plain;
}
