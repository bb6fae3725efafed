/** The laps of the flight's holds as a flat table. Units stand in the column names; empty = not known. */
import type { DebriefDocument, HoldLap } from "../debrief/document.ts";
import { type Cell, table } from "./csv.ts";

/** One row a lap of a hold. Corrections and distances across: right positive. `…_asked`: by the racetrack that closes in the lap's wind. */
export function lapsCsv(document: DebriefDocument): string {
  return table(
    [
      ...["exercise", "title", "lap", "start_utc", "end_utc", "fix_across_right_nm", "outbound_s"],
      ...["outbound_timed_from", "outbound_from_abeam_s", "outbound_between_turns_s", "outbound_nm"],
      ...["outbound_heading_true_deg", "outbound_track_true_deg", "outbound_correction_right_deg"],
      ...["outbound_correction95_deg", "outbound_end_along_nm", "outbound_end_across_right_nm", "inbound_s"],
      ...["inbound_nm", "inbound_heading_true_deg", "inbound_track_true_deg"],
      ...["inbound_correction_right_deg", "factor_of_need", "factor_of_need95", "roll_out_utc"],
      ...["roll_out_along_nm", "roll_out_across_right_nm", "overshoot_nm", "turn_outbound_deg_s"],
      ...["turn_inbound_deg_s", "bank_outbound_deg", "bank_inbound_deg", "ground_speed_kt", "altitude_ft"],
      ...["wind_from_true_deg", "wind_speed_kt", "tas_kt", "inbound_correction_asked_right_deg"],
      ...["outbound_heading_asked_true_deg", "outbound_correction_asked_right_deg"],
      ...["outbound_between_turns_asked_s", "factor_asked", "factor_asked95"],
      ...["inbound_established_utc", "inbound_needle_worst_right", "inbound_needle95", "leg_timed"],
      ...["leg_off_s", "leg_off_nm", "outbound_unseen_s", "inbound_unseen_s"],
    ],
    document.exercises.flatMap((e, i) =>
      e.kind === "hold" && e.facts
        ? e.facts.laps.map((lap, k) => [i + 1, e.title, k + 1, ...lapCells(lap)])
        : [],
    ),
  );
}

function lapCells(lap: HoldLap): Cell[] {
  const { outbound, inbound, rollOut, turns, wind } = lap;
  const solved = lap.solved && !("none" in lap.solved) ? lap.solved : null;
  return [
    ...[lap.startUtc, lap.endUtc, lap.fixAcrossNm, outbound.seconds, outbound.begins, outbound.fromAbeamS],
    ...[outbound.betweenTurnsS, outbound.lengthNm, outbound.headingTrueDeg, outbound.trackTrueDeg],
    ...[outbound.correctionDeg, outbound.correction95Deg, outbound.endAlongNm, outbound.endAcrossNm],
    ...[inbound?.seconds, inbound?.lengthNm, inbound?.headingTrueDeg, inbound?.trackTrueDeg],
    ...[inbound?.correctionDeg, lap.factorOfNeed, lap.factorOfNeed95, rollOut?.utc, rollOut?.alongNm],
    ...[rollOut?.acrossNm, rollOut?.overshootNm, turns.outbound.rateDegS, turns.inbound?.rateDegS],
    ...[turns.outbound.bankDeg, turns.inbound?.bankDeg, lap.groundSpeedKt, lap.altitude?.meanFt],
    ...[wind?.fromTrueDeg, wind?.speedKt, wind?.tasKt, solved?.inboundCorrectionDeg],
    ...[solved?.outboundHeadingTrueDeg, solved?.outboundCorrectionDeg, solved?.outboundS, solved?.factor],
    ...[lap.doubt?.factor95, lap.tracking?.establishedUtc, lap.tracking?.worstNeedle, lap.tracking?.doubt95],
    ...[lap.legOff?.leg, lap.legOff?.seconds, lap.legOff?.distanceNm],
    ...[outbound.unseen?.most, inbound?.unseen?.most],
  ];
}
