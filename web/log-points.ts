/** The places that a log tells of: the points that it names (waypoints and points of routes, each once), and its middle. */
import { type ImportedLog, joinPointLists, type ListedPoint, type Position, pointOf } from "../src/index.ts";

export function pointsOfLog(log: ImportedLog): readonly ListedPoint[] {
  const all = [...log.waypoints, ...log.routes.flatMap((route) => route.points)];
  const points = all.filter(({ ident }) => ident !== "").map(pointOf);
  return joinPointLists([{ points, runways: [] }]).points;
}

/** Its middle point: of two points of one ident in a list the nearer one is meant. */
export function middleOf({ track }: ImportedLog): Position {
  const middle = track.length >> 1;
  return { latitude: track.latitude[middle]!, longitude: track.longitude[middle]! };
}
