declare module 'geographiclib-geodesic' {
  interface Polygon {
    AddPoint(latitudeDeg: number, longitudeDeg: number): void;
    Compute(reverse: boolean, sign: boolean): { number: number; perimeter: number; area: number };
  }
  const geodesic: { Geodesic: { WGS84: { Polygon(isPolyline: boolean): Polygon } } };
  export default geodesic;
}
