/** Degrees east and north. */
export type Corner = readonly [longitudeDeg: number, latitudeDeg: number];
export type PointM = readonly [xM: number, yM: number];

/** A flat sheet laid on the ground of a farm, in meters; shapes are worked on it, never areas. */
export interface Plane {
  readonly toPoint: (corner: Corner) => PointM;
  readonly toCorner: (point: readonly number[]) => Corner;
}

const M_PER_DEG = 111_320;

/**
 * The sheet that touches the ground at a corner, its x axis turned from east toward north.
 * Good for shapes some kilometers wide; works across the 180th meridian.
 */
export function planeAt([longitude0, latitude0]: Corner, turnedRad = 0): Plane {
  // At a pole east has no length; a little keeps the way back open.
  const eastM = M_PER_DEG * Math.max(1e-6, Math.cos((Math.PI / 180) * latitude0));
  const [cos, sin] = [Math.cos(turnedRad), Math.sin(turnedRad)];
  return {
    toPoint: ([longitude, latitude]) => {
      const x = wrappedDeg(longitude - longitude0) * eastM;
      const y = (latitude - latitude0) * M_PER_DEG;
      return [x * cos + y * sin, y * cos - x * sin];
    },
    toCorner: ([x = 0, y = 0]) => [
      tenthMm(wrappedDeg(longitude0 + (x * cos - y * sin) / eastM)),
      tenthMm(Math.min(90, Math.max(-90, latitude0 + (y * cos + x * sin) / M_PER_DEG))),
    ],
  };
}

const wrappedDeg = (deg: number): number =>
  -180 <= deg && deg <= 180 ? deg : ((((deg + 180) % 360) + 360) % 360) - 180;

/** Degrees to the tenth of a millimeter, so that corners which are the same are written the same. */
const tenthMm = (deg: number): number => Math.round(deg * 1e9) / 1e9;

/** A ring of the plane as GeoJSON wants it: the first point again at the end. */
export const closed = (points: readonly PointM[]): [number, number][] =>
  [...points, points[0]!].map(([x, y]) => [x, y]);
