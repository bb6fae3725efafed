/** The debrief as flat tables: points, legs, exercises. Units stand in the column names; empty = not known. */
import { csvFormatRows } from "d3-dsv";
import type { DebriefDocument } from "../debrief/document.ts";
import type { ExerciseSeries, FlightSeries } from "../debrief/series.ts";

export type Cell = string | number | null | undefined;

/** Numbers come rounded, by the document or by `rounded`. Text that a spreadsheet would run as a formula is kept as text by a leading apostrophe. */
function cell(value: Cell): string {
  if (typeof value === "string") return /^[=+\-@\t\r]/.test(value) ? `'${value}` : value;
  return typeof value === "number" && Number.isFinite(value) ? String(value) : "";
}

const rounded = (value: number | undefined, digits: number): Cell =>
  value === undefined ? null : Number(value.toFixed(digits));

export const table = (header: string[], rows: Cell[][]): string =>
  `${csvFormatRows([header, ...rows.map((row) => row.map(cell))])}\n`;

const iso = (ms: number): string => (Number.isFinite(ms) ? new Date(ms).toISOString() : "");

const DEVIATION_COLUMNS = [
  ...["along_nm", "cross_track_right_nm", "needle_share", "track_angle_error_right_deg", "judged", "lap"],
  ...["radial_true_deg", "arc_deviation_out_nm", "distance_to_go_nm", "needed_down_fpm", "flown_down_fpm"],
];

/** What an exercise's own kind says at one of its rows: the columns of `DEVIATION_COLUMNS`. */
function deviationCells(columns: ExerciseSeries, k: number): Cell[] {
  switch (columns.kind) {
    case "course":
      return [
        ...[rounded(columns.alongNm[k], 4), rounded(columns.crossTrackNm[k], 4)],
        ...[rounded(columns.needle[k], 4), rounded(columns.trackAngleErrorDeg[k], 2), columns.judged[k]],
        ...["", "", "", "", "", ""],
      ];
    case "hold":
      return [
        ...[rounded(columns.alongNm[k], 4), rounded(columns.crossTrackNm[k], 4), "", "", ""],
        ...[columns.lap[k]! < 0 ? "" : columns.lap[k]! + 1, "", "", "", "", ""],
      ];
    case "arc":
      return [
        ...[rounded(columns.alongNm[k], 4), rounded(columns.crossTrackNm[k], 4), ""],
        ...[rounded(columns.trackAngleErrorDeg[k], 2), columns.judged[k], ""],
        ...[rounded(columns.radialTrueDeg[k], 2), rounded(columns.deviationNm[k], 4), "", "", ""],
      ];
    case "descent":
      return [
        ...["", "", "", "", columns.judged[k], "", "", ""],
        ...[rounded(columns.distanceToGoNm[k], 4), rounded(columns.neededDownFpm[k], 0)],
        rounded(columns.flownDownFpm[k], 0),
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
        ? [exercise + 1, document.exercises[exercise]!.title, ...deviationCells(columns, k)]
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

/** One row a straight or turn, with its wind (from, true) and doubt. */
export function legsCsv(document: DebriefDocument): string {
  return table(
    [
      ...[
        "kind",
        "start_utc",
        "end_utc",
        "track_true_deg",
        "turn_right_deg",
        "ground_speed_kt",
        "altitude_ft",
      ],
      ...["vertical_fpm", "heading_true_deg", "drift_right_deg", "wind_known", "wind_from_true_deg"],
      ...["wind_speed_kt", "tailwind_kt", "wind_to_right_kt", "ellipse95_major_kt", "ellipse95_minor_kt"],
      ...["ellipse95_major_true_deg", "tas_kt", "tas95_kt", "rests_on"],
    ],
    document.legs.map((leg) => [
      ...[leg.kind, leg.startUtc, leg.endUtc, leg.trackTrueDeg, leg.turnDeg, leg.groundSpeedKt],
      ...[leg.altitudeFt, leg.verticalFpm, leg.headingTrueDeg, leg.driftDeg, leg.wind.knowledge],
      ...[leg.wind.fromTrueDeg, leg.wind.speedKt, leg.wind.alongKt, leg.wind.acrossKt],
      ...[leg.wind.ellipse95Kt?.majorKt, leg.wind.ellipse95Kt?.minorKt, leg.wind.ellipse95Kt?.majorTrueDeg],
      ...[leg.wind.tasKt, leg.wind.tas95Kt, leg.wind.restsOn],
    ]),
  );
}

/** One row an exercise: what was flown against what was meant. */
export function exercisesCsv(document: DebriefDocument): string {
  return table(
    [
      ...[
        "exercise",
        "kind",
        "title",
        "source",
        "start_utc",
        "end_utc",
        "match_confidence",
        "course_true_deg",
      ],
      ...["course_magnetic_deg", "needle_scale", "judged_s", "judged_nm", "cross_track_max_right_nm"],
      ...["cross_track_mean_right_nm", "cross_track_rms_nm", "needle_max", "beyond_quarter", "beyond_half"],
      ...["beyond_three_quarter", "beyond_full", "track_angle_error_mean_right_deg"],
      ...["track_angle_error_rms_deg", "drift_right_deg", "wind_correction_flown_right_deg"],
      ...["wind_correction_needed_right_deg", "wind_correction_doubt95_deg", "intercept_angle_right_deg"],
      ...["intercept_overshoot_nm", "reversals_per_min", "hold_turns", "hold_entry_flown"],
      ...["hold_entry_asked", "hold_laps", "findings", "remark"],
    ],
    document.exercises.map((e, i) => {
      const f = e.kind === "course" ? e.facts : null;
      const h = e.kind === "hold" ? e.facts : null;
      return [
        ...[i + 1, e.kind, e.title, e.source, e.startUtc, e.endUtc, e.match?.confidence],
        ...[
          f?.courseTrueDeg ?? h?.inboundTrueDeg,
          f?.courseMagneticDeg ?? h?.inboundMagneticDeg,
          f?.scale.id,
        ],
        ...[f?.judged.seconds, f?.judged.distanceNm],
        ...[f?.crossTrack.maxNm, f?.crossTrack.meanNm, f?.crossTrack.rmsNm, f?.needle.max],
        ...[
          f?.needle.beyondQuarter,
          f?.needle.beyondHalf,
          f?.needle.beyondThreeQuarter,
          f?.needle.beyondFull,
        ],
        ...[f?.trackAngleError?.meanDeg, f?.trackAngleError?.rmsDeg, f?.drift?.meanDeg],
        ...[f?.windCorrection?.flownDeg, f?.windCorrection?.neededDeg, f?.windCorrection?.doubt95Deg],
        ...[f?.intercept?.angleDeg, f?.intercept?.overshootNm, f?.reversals?.perMinute],
        ...[h?.turns, h?.entry?.flown, h?.entry?.asked, h?.laps.length],
        e.findings.map((finding) => finding.code).join(" "),
        document.remarks.find((r) => r.exercise === i)?.text,
      ];
    }),
  );
}

/** One row a verdict; the unit of value, doubt and limit stands beside them ("share": of full scale). */
export function verdictsCsv(document: DebriefDocument): string {
  return table(
    [
      ...["exercise", "title", "criterion", "verdict", "reason", "value", "doubt95", "limit", "unit"],
      ...["confidence", "beyond_s", "worst_utc", "citation"],
      ...["instructor_verdict", "instructor", "instructor_why"],
    ],
    document.exercises.flatMap((e, i) =>
      e.verdicts.map((v) => {
        const own = document.overrules?.find((o) => o.exercise === i && o.criterion === v.criterion);
        return [
          ...[i + 1, e.title, v.criterion, v.verdict, v.reason, v.value, v.doubt95, v.limit, v.unit],
          ...[v.confidence, v.beyondS, v.worstUtc, v.citation],
          ...[own?.verdict, own?.by, own?.why],
        ];
      }),
    ),
  );
}
