/** The points that a log names: its waypoints and the points of its routes, each once. */
import { type ImportedLog, joinPointLists, type ListedPoint, pointOf } from "../src/index.ts";

export function pointsOfLog(log: ImportedLog): readonly ListedPoint[] {
  const all = [...log.waypoints, ...log.routes.flatMap((route) => route.points)];
  const points = all.filter(({ ident }) => ident !== "").map(pointOf);
  return joinPointLists([{ points, runways: [] }]).points;
}
