/** An approach as GeoJSON: its parts as flown, its final course, and its runway. */
import type { ApproachFacts } from "../debrief/document.ts";
import type { ApproachSeries, PathSeries } from "../debrief/series.ts";
import { type Line, lineFeature, placed, round } from "./geojson-line.ts";

export function approachFeatures(
  facts: ApproachFacts,
  { pathStart, segment }: ApproachSeries,
  path: PathSeries,
  properties: Record<string, unknown>,
) {
  const { runway, line, segments, finalCourseTrueDeg: courseTrueDeg } = facts;
  // each part ends where the next begins, so that they join on a map
  const stretch = (k: number): Line => {
    const flown: Line = [];
    for (let i = 0; i < segment.length; i++) {
      if (segment[i] !== k && !(i > 0 && segment[i - 1] === k)) continue;
      flown.push([round(path.longitude[pathStart + i]!), round(path.latitude[pathStart + i]!)]);
    }
    return flown;
  };
  return [
    ...segments.flatMap(({ kind, startUtc, endUtc }, k) =>
      lineFeature(stretch(k), { what: "part as flown", ...properties, part: kind, startUtc, endUtc }),
    ),
    ...lineFeature([placed(line.start), placed(line.end)], {
      what: "final course",
      ...properties,
      courseTrueDeg,
      guidance: facts.guidance.label,
    }),
    ...lineFeature([placed(runway.threshold), placed(runway.end)], {
      what: "runway",
      ...properties,
      ident: runway.ident,
      elevationFt: runway.elevationFt,
    }),
  ];
}
