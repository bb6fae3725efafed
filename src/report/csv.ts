/** The debrief as flat tables: legs, exercises, verdicts. Units stand in the column names; empty = not known. */
import { csvFormatRows } from "d3-dsv";
import type { DebriefDocument } from "../debrief/document.ts";
import { type Cause, type ExcursionRecord, worstExcursion } from "../quantity/excursion-record.ts";

export type Cell = string | number | null | undefined;

/** Numbers come rounded, by the document or by `rounded`. Text that a spreadsheet would run as a formula is kept as text by a leading apostrophe. */
function cell(value: Cell): string {
  if (typeof value === "string") return /^[=+\-@\t\r]/.test(value) ? `'${value}` : value;
  return typeof value === "number" && Number.isFinite(value) ? String(value) : "";
}

export const table = (header: string[], rows: Cell[][]): string =>
  `${csvFormatRows([header, ...rows.map((row) => row.map(cell))])}\n`;

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

type Left = ExcursionRecord & { readonly causes?: readonly Cause[] | undefined };
/** Not known where the log was silent on the way onto the line. */
export const seenOvershoot = (
  intercept: { readonly overshootNm: number; readonly silentS?: number | undefined } | null | undefined,
): Cell => (intercept?.silentS === undefined ? intercept?.overshootNm : null);

/** Who flew, and in what, as columns before the others; of what is not said none. */
const flownBy = ({ flownBy: said }: DebriefDocument): Readonly<Record<string, Cell>> => ({
  ...(said?.pilot && { pilot: said.pilot }),
  ...(said?.aircraft && { aircraft: said.aircraft }),
});

/** One row an exercise: what was flown against what was meant. `labels` stand before it, as the flight's name in a table of many; those of the document where not given. */
export function exercisesCsv(document: DebriefDocument, labels = flownBy(document)): string {
  return table(
    [
      ...Object.keys(labels),
      ...["exercise", "kind", "title", "source", "start_utc", "end_utc", "match_confidence"],
      "course_true_deg",
      ...[
        "course_magnetic_deg",
        "needle_scale",
        "judged_s",
        "judged_nm",
        "not_judged_before_joining_s",
        "cross_track_max_right_nm",
      ],
      ...["cross_track_mean_right_nm", "cross_track_rms_nm", "needle_max", "beyond_quarter", "beyond_half"],
      ...["beyond_three_quarter", "beyond_full", "track_angle_error_mean_right_deg"],
      ...["track_angle_error_rms_deg", "drift_right_deg", "wind_correction_flown_right_deg"],
      ...["wind_correction_needed_right_deg", "wind_correction_doubt95_deg", "intercept_angle_right_deg"],
      ...["intercept_overshoot_nm", "reversals_per_min", "left_line_utc", "needle_silent_s", "lead_s"],
      ...["lead_cost_right_nm", "lead_cost_share", "cause", "cause_share", "hold_turns", "hold_entry_flown"],
      ...["hold_entry_asked", "hold_laps", "findings", "remark", "flight_remark"],
    ],
    document.exercises.map((e, i) => {
      const c = e.kind === "course" ? e.facts : null;
      const a = e.kind === "approach" ? e.facts : null;
      const h = e.kind === "hold" ? e.facts : null;
      // of a passage that may not be the arrival no sector is told
      const told = h?.entry && (h.entry.flown !== null || h.entry.untold === "wrong-way");
      const f = c ?? a; // both are held against a line
      const arc = e.kind === "arc" ? e.facts : null;
      const left = worstExcursion<Left>((f ?? arc)?.excursions ?? []);
      // of the worst: a turn or a chase too, which are no excursions
      const cause = (f?.causes ?? left?.causes)?.[0];
      const milesJudged = a ? a.judged.fromNm - a.judged.toNm : c?.judged.distanceNm;
      return [
        ...Object.values(labels),
        ...[i + 1, e.kind, e.title, e.source, e.startUtc, e.endUtc, e.match?.confidence],
        c?.courseTrueDeg ?? a?.finalCourseTrueDeg ?? h?.inboundTrueDeg,
        c?.courseMagneticDeg ?? a?.finalCourseMagneticDeg ?? h?.inboundMagneticDeg,
        ...[c?.scale.id ?? a?.guidance.kind, f?.judged.seconds, milesJudged, c?.beforeJoining?.seconds],
        ...[f?.crossTrack.maxNm, f?.crossTrack.meanNm, f?.crossTrack.rmsNm, f?.needle.max],
        ...[c?.needle.beyondQuarter, f?.needle.beyondHalf],
        ...[f?.needle.beyondThreeQuarter, f?.needle.beyondFull],
        ...[f?.trackAngleError?.meanDeg, f?.trackAngleError?.rmsDeg, c?.drift?.meanDeg],
        ...[c?.windCorrection?.flownDeg, c?.windCorrection?.neededDeg, c?.windCorrection?.doubt95Deg],
        ...[f?.intercept?.angleDeg, seenOvershoot(f?.intercept), f?.reversals?.perMinute],
        ...[left?.trackOffUtc, left?.silentS, left?.leadS, left?.worstCrossTrackNm, left?.worstNeedle],
        ...[cause?.cause, cause?.share],
        ...[h?.turns, h?.entry?.flown, told ? h?.entry?.asked : null, h?.laps.length],
        e.findings.map((finding) => finding.code).join(" "),
        document.remarks.find((r) => r.exercise === i)?.text,
        // an exercise that is no more keeps its title: its remark is none on the flight
        document.remarks.find((r) => r.exercise === null && !r.title)?.text,
      ];
    }),
  );
}

/** One row a verdict; the unit of value, doubt and limit stands beside them ("share": of full scale). */
export function verdictsCsv(document: DebriefDocument): string {
  const labels = flownBy(document);
  return table(
    [
      ...Object.keys(labels),
      ...["exercise", "title", "criterion", "verdict", "reason", "value", "doubt95", "limit", "unit"],
      ...["confidence", "beyond_s", "worst_utc", "citation"],
      ...["instructor_verdict", "instructor", "instructor_why"],
    ],
    document.exercises.flatMap((e, i) =>
      e.verdicts.map((v) => {
        const own = document.overrules?.find((o) => o.exercise === i && o.criterion === v.criterion);
        return [
          ...Object.values(labels),
          ...[i + 1, e.title, v.criterion, v.verdict, v.reason, v.value, v.doubt95, v.limit, v.unit],
          ...[v.confidence, v.beyondS, v.worstUtc, v.citation],
          ...[own?.verdict, own?.by, own?.why],
        ];
      }),
    ),
  );
}
