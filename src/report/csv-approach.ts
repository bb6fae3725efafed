/** The approaches of the flight as a flat table. Units stand in the column names; empty = not known. */
import type { ApproachFacts, DebriefDocument } from "../debrief/document.ts";
import { type Cell, seenOvershoot, table } from "./csv.ts";

/** One row an approach. Right of the final and above the path positive; `…_before_nm`: before the threshold. */
export function approachesCsv(document: DebriefDocument): string {
  return table(
    [
      ...[
        "exercise",
        "title",
        "source",
        "runway",
        "guidance",
        "outcome",
        "joined_from",
        "final_course_true_deg",
      ],
      ...["heights_tied_to", "height_correction_ft", "height95_ft", "intercept_angle_right_deg"],
      ...[
        "intercept_overshoot_nm",
        "intercept_corrections",
        "joined_before_nm",
        "final_fix",
        "final_fix_utc",
      ],
      ...["final_fix_altitude_ft", "final_fix_needle", "cross_track_max_right_nm", "cross_track_rms_nm"],
      ...["needle_max", "needle95", "needle_beyond_half", "glide_path_needle_max", "glide_path_needle95"],
      ...["glide_path_worst_up_ft", "angle_flown_deg", "angle_flown95_deg", "descent_mean_fpm"],
      ...["descent_most_fpm", "minimum_kind", "minimum_ft", "minimum_utc", "minimum_before_nm", "lowest_ft"],
      ...["lowest95_ft", "missed_utc", "missed_before_nm", "missed_climb_fpm"],
      ...[
        "missed_course_true_deg",
        "missed_track_mean_right_deg",
        "missed_track_worst_right_deg",
        "threshold_utc",
      ],
      ...["threshold_height_ft", "threshold_ground_speed_kt", "gate_1000_utc", "gate_1000_needle"],
      ...["gate_1000_glide_path_needle", "gate_1000_vertical_fpm", "gate_500_utc", "gate_500_needle"],
      ...["gate_500_glide_path_needle", "gate_500_vertical_fpm", "findings"],
    ],
    document.exercises.flatMap((e, i) =>
      e.kind === "approach" && e.facts
        ? [
            [
              ...[i + 1, e.title, e.source, ...cells(e.facts)],
              e.findings.map((finding) => finding.code).join(" "),
            ],
          ]
        : [],
    ),
  );
}

function cells(f: ApproachFacts): Cell[] {
  // what lies in a silence of the log is no figure for a table without doubts
  const seen = <T extends { silence?: unknown }>(moment: T | null) => (moment?.silence ? null : moment);
  const [missed, landing] = [seen(f.missed), seen(f.landing)];
  const { intercept, finalFixPassage: fix, crossTrack, needle, glidePath, flownPath, minimum } = f;
  const gate = (heightFt: number): Cell[] => {
    const at = f.gates.find((g) => g.heightFt === heightFt);
    return [at?.utc, at?.lateral?.value, at?.vertical?.value, at?.verticalFpm];
  };
  return [
    ...[f.runway.ident, f.guidance.kind, f.outcome, f.joinedFrom, f.finalCourseTrueDeg],
    ...[f.height?.anchored, f.height?.correctionFt, f.height?.doubt95Ft],
    ...[intercept?.angleDeg, seenOvershoot(intercept), intercept?.corrections, intercept?.joinedDistanceNm],
    ...[
      f.finalFix?.ident,
      seen(fix)?.utc,
      seen(fix)?.altitudeFt,
      seen(fix)?.needle,
      crossTrack.maxNm,
      crossTrack.rmsNm,
    ],
    ...[needle.max, needle.doubt95, needle.beyondHalf, glidePath?.needle.max, glidePath?.needle.doubt95],
    ...[glidePath?.worstFt, flownPath?.angleDeg, flownPath?.angle95Deg, f.descent?.meanFpm],
    ...[f.descent?.mostFpm, minimum?.kind, minimum?.altitudeFt, minimum?.passedUtc, minimum?.passedNm],
    ...[minimum?.lowestFt, minimum?.doubt95Ft, missed?.startUtc, missed?.distanceNm, f.missed?.climbFpm],
    ...[f.missed?.course?.trueDeg, f.missed?.course?.track?.meanErrorDeg],
    f.missed?.course?.track?.worstErrorDeg,
    ...[landing?.thresholdUtc, landing?.thresholdFt, landing?.groundSpeedKt, ...gate(1000), ...gate(500)],
  ];
}
