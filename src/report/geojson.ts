/** The debrief as GeoJSON (RFC 7946): flown path, courses, holds, fixes. Longitude first, WGS84, cut at the antimeridian. */
import { featureCollection, point } from "@turf/turf";
import type { DebriefDocument, HoldFacts } from "../debrief/document.ts";
import type { ExerciseSeries, FlightSeries, HoldSeries } from "../debrief/series.ts";
import { approachFeatures } from "./geojson-approach.ts";
import { type Line, lineFeature, placed, round } from "./geojson-line.ts";

const isHold = (columns: ExerciseSeries | null | undefined): columns is HoldSeries =>
  columns?.kind === "hold";

/** The fix of a hold, its racetrack in still air and in the wind, each from the fix to the fix; the inbound course is the last side of the one in still air. */
function holdFeatures(facts: HoldFacts, columns: HoldSeries, properties: Record<string, unknown>) {
  const { fix, inboundTrueDeg, turns } = facts;
  const lines = [
    ["racetrack in still air", columns.stillAir],
    ["racetrack solved for the wind", columns.solved],
  ] as const;
  return [
    point([round(fix.longitude), round(fix.latitude)], {
      what: "hold fix",
      ...properties,
      ident: fix.ident,
      inboundTrueDeg,
      turns,
    }),
    ...lines.flatMap(([what, outline]) => {
      if (!outline) return [];
      const line = Array.from(outline.latitude, (latitude, k): [number, number] => [
        round(outline.longitude[k]!),
        round(latitude),
      ]);
      const inbound = what === "racetrack in still air" ? line.slice(-2) : [];
      return [
        ...lineFeature(line, { what, ...properties }),
        ...(inbound.length > 0
          ? lineFeature(inbound, { what: "inbound course", ...properties, courseTrueDeg: inboundTrueDeg })
          : []),
      ];
    }),
  ];
}

/** Everything with a place: the flown path whole, each exercise's stretch and course or racetrack, and the brief's fixes. */
export function debriefGeoJson(document: DebriefDocument, series: FlightSeries) {
  const { path } = series;
  const stretch = (start: number, end: number): Line => {
    const line: Line = [];
    for (let i = start; i < end; i++) line.push([round(path.longitude[i]!), round(path.latitude[i]!)]);
    return line;
  };
  return {
    ...featureCollection<GeoJSON.Geometry, Record<string, unknown>>([
      ...lineFeature(stretch(0, path.latitude.length), {
        what: "flown",
        name: document.log.name,
        startUtc: document.log.startUtc,
        endUtc: document.log.endUtc,
      }),
      ...document.exercises.flatMap((exercise, i) => {
        const columns = series.exercises[i];
        const facts = exercise.kind === "course" || exercise.kind === "approach" ? exercise.facts : null;
        const properties = { exercise: i + 1, title: exercise.title };
        return [
          ...(columns
            ? lineFeature(stretch(columns.pathStart, columns.pathStart + columns.timeMs.length), {
                what: "exercise as flown",
                ...properties,
                startUtc: exercise.startUtc,
                endUtc: exercise.endUtc,
                crossTrackMaxRightNm: facts?.crossTrack.maxNm ?? null,
                needleMax: facts?.needle.max ?? null,
              })
            : []),
          ...(exercise.kind === "hold" && exercise.facts && isHold(columns)
            ? holdFeatures(exercise.facts, columns, properties)
            : []),
          ...(exercise.kind === "arc" && exercise.facts
            ? lineFeature(exercise.facts.line.map(placed), {
                what: "arc",
                ...properties,
                radiusNm: exercise.facts.radiusNm,
              })
            : []),
          ...(exercise.kind === "descent" && exercise.facts
            ? [
                point(placed(exercise.facts.point), {
                  what: "height wanted",
                  ...properties,
                  toFt: exercise.facts.toFt,
                  overFt: exercise.facts.crossing?.overFt ?? null,
                }),
              ]
            : []),
          ...(exercise.kind === "course" && exercise.facts
            ? lineFeature([placed(exercise.facts.line.start), placed(exercise.facts.line.end)], {
                what: "course",
                ...properties,
                courseTrueDeg: exercise.facts.courseTrueDeg,
              })
            : []),
          ...(exercise.kind === "approach" && exercise.facts && columns?.kind === "approach"
            ? approachFeatures(exercise.facts, columns, path, properties)
            : []),
        ];
      }),
      ...(document.brief?.fixes ?? []).map((fix) =>
        point([fix.longitude, fix.latitude], { what: "fix", ident: fix.ident, kind: fix.kind }),
      ),
    ]),
    caution: document.caution,
  };
}
