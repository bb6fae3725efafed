/** The used points of the log as a flat table, each with the exercise it belongs to and the deviation there. */
import type { DebriefDocument, DocumentExercise } from "../debrief/document.ts";
import type { ExerciseSeries, FlightSeries } from "../debrief/series.ts";
import { type Cell, table } from "./csv.ts";

const rounded = (value: number | undefined, digits: number): Cell =>
  value === undefined ? null : Number(value.toFixed(digits));

const iso = (ms: number): string => (Number.isFinite(ms) ? new Date(ms).toISOString() : "");

const DEVIATION_COLUMNS = [
  ...["along_nm", "cross_track_right_nm", "needle_share", "track_angle_error_right_deg", "judged", "lap"],
  ...["radial_true_deg", "arc_deviation_out_nm", "distance_to_go_nm", "needed_down_fpm", "flown_down_fpm"],
  ...["before_threshold_nm", "above_threshold_ft", "glide_path_deviation_up_deg"],
  ...["glide_path_deviation_up_ft", "glide_path_needle_share", "segment"],
];

/** The last six of them, of what is no approach. */
const NO_APPROACH: readonly Cell[] = new Array<Cell>(6).fill("");
const down = (fpm: number | undefined): number | undefined => fpm && -fpm;

/** What an exercise's own kind says at one of its rows: the columns of `DEVIATION_COLUMNS`. */
function deviationCells(columns: ExerciseSeries, exercise: DocumentExercise, k: number): Cell[] {
  switch (columns.kind) {
    case "course":
      return [
        ...[rounded(columns.alongNm[k], 4), rounded(columns.crossTrackNm[k], 4)],
        ...[rounded(columns.needle[k], 4), rounded(columns.trackAngleErrorDeg[k], 2), columns.judged[k]],
        ...["", "", "", "", "", "", ...NO_APPROACH],
      ];
    case "hold":
      return [
        ...[rounded(columns.alongNm[k], 4), rounded(columns.crossTrackNm[k], 4), "", "", ""],
        ...[columns.lap[k]! < 0 ? "" : columns.lap[k]! + 1, "", "", "", "", "", ...NO_APPROACH],
      ];
    case "arc":
      return [
        ...[rounded(columns.alongNm[k], 4), rounded(columns.crossTrackNm[k], 4), ""],
        ...[rounded(columns.trackAngleErrorDeg[k], 2), columns.judged[k], ""],
        ...[
          rounded(columns.radialTrueDeg[k], 2),
          rounded(columns.deviationNm[k], 4),
          "",
          "",
          "",
          ...NO_APPROACH,
        ],
      ];
    case "descent":
      return [
        ...["", "", "", "", columns.judged[k], "", "", ""],
        ...[rounded(columns.distanceToGoNm[k], 4), rounded(columns.neededDownFpm[k], 0)],
        ...[rounded(columns.flownDownFpm[k], 0), ...NO_APPROACH],
      ];
    case "approach":
      return [
        ...[rounded(-columns.distanceToThresholdNm[k]!, 4), rounded(columns.crossTrackNm[k], 4)],
        ...[rounded(columns.needle[k], 4), rounded(columns.trackAngleErrorDeg[k], 2), columns.judged[k]],
        ...["", "", "", "", rounded(down(columns.neededFpm[k]), 0), rounded(down(columns.verticalFpm[k]), 0)],
        ...[rounded(columns.distanceToThresholdNm[k], 4), rounded(columns.heightAboveThresholdFt[k], 0)],
        ...[rounded(columns.glidePathDeviationDeg[k], 3), rounded(columns.glidePathDeviationFt[k], 0)],
        rounded(columns.glidePathNeedle[k], 4),
        exercise.kind === "approach" ? exercise.facts?.segments[columns.segment[k]!]?.kind : "",
      ];
  }
}

/** One row a used point of the log, with the exercise (from 1) that it belongs to and the deviation there; right of course positive. */
export function pointsCsv(document: DebriefDocument, series: FlightSeries): string {
  const { path } = series;
  const owner = new Int32Array(path.latitude.length).fill(-1);
  series.exercises.forEach((columns, exercise) => {
    if (columns) owner.fill(exercise, columns.pathStart, columns.pathStart + columns.timeMs.length);
  });
  const rows: Cell[][] = [];
  for (let i = 0; i < path.latitude.length; i++) {
    const exercise = owner[i]!;
    const columns = exercise < 0 ? null : series.exercises[exercise];
    const k = columns ? i - columns.pathStart : 0;
    rows.push([
      iso(path.timeMs[i]!),
      rounded(path.latitude[i], 7),
      rounded(path.longitude[i], 7),
      rounded(path.altitudeFt[i], 0),
      rounded(path.groundSpeedKt[i], 1),
      rounded(path.trackTrueDeg[i], 1),
      rounded(path.headingTrueDeg[i], 1),
      ...(columns
        ? [
            exercise + 1,
            document.exercises[exercise]!.title,
            ...deviationCells(columns, document.exercises[exercise]!, k),
          ]
        : new Array<Cell>(2 + DEVIATION_COLUMNS.length).fill("")),
    ]);
  }
  return table(
    [
      ...["utc", "latitude_deg", "longitude_deg", "altitude_ft", "ground_speed_kt", "track_true_deg"],
      ...["heading_true_deg", "exercise", "title", ...DEVIATION_COLUMNS],
    ],
    rows,
  );
}
