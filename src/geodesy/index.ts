/** The door of geodesy: courses on the ellipsoid, local planes, variation. */
export { type AroundColumns, arcPlaces, distanceFlown, measureAround } from "./around.ts";
export { courseBetween, courseThrough, positionOn } from "./build.ts";
export type { AlongAcross, Course } from "./course.ts";
export { alongAcrossExact } from "./exact.ts";
export { destination, inverse } from "./geodesic.ts";
export { angleSeen, type PathShape, pathHeight } from "./glide-path.ts";
export { type LocalPlane, localPlane, type OnPlane, PLANE_REACH } from "./plane.ts";
export {
  ASSUMED_RUNWAY_FT,
  distanceNm,
  distinct,
  joinPointLists,
  type KnownPoints,
  type ListedPoint,
  type ListedRunway,
  POINT_KINDS,
  type PointKind,
  type PointList,
  pointsNamed,
  runwayEnd,
  runwaysNamed,
  searchPoints,
} from "./point-list.ts";
export type { Position } from "./position.ts";
export { courseRuler, measureColumns, type Ruler } from "./ruler.ts";
export { modelVariation, UNDATED, type Variation, variationAt } from "./variation.ts";
