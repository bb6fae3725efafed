/** The facts of one course as rows of a table: what, how much with its doubt, and when or of what. */

import type { CourseFacts } from "../src/index.ts";
import {
  clockSeconds,
  count,
  duration,
  flownHeading,
  needleSize,
  percent,
  plusMinus,
  sided,
} from "../src/index.ts";
import { causeRows } from "./cause-rows.ts";
import { at, type FactRow } from "./fact-row.ts";
import { judgedSpan } from "./judged-span.ts";
import { maybeUnseen, untoldRows } from "./not-seen.ts";

const beyond = (needle: CourseFacts["needle"]): string =>
  [needle.beyondQuarter, needle.beyondHalf, needle.beyondThreeQuarter, needle.beyondFull]
    .map(percent)
    .join(" · ");

export const offMiddle = (ft: number): string => `${count(ft)} ft off its middle`;

function deviationRows(facts: CourseFacts): FactRow[] {
  const { crossTrack, needle, judged } = facts;
  const off = facts.form === "fitted" ? "Off its own straight line" : "Off course";
  const rows: FactRow[] = [
    {
      fact: `${off}, worst`,
      value: `${sided(crossTrack.maxNm, 2, " NM")} ${plusMinus(crossTrack.doubt95Nm, 2)}`,
      note: `${at(crossTrack.maxUtc)}${maybeUnseen(crossTrack.unseen, (nm) => `${nm.toFixed(2)} NM`)}`,
    },
    {
      fact: `${off}, mean`,
      value: sided(crossTrack.meanNm, 2, " NM"),
      note: `root mean square ${crossTrack.rmsNm.toFixed(2)} NM`,
    },
  ];
  if (facts.form === "fitted") return rows;
  const of = judged.shareOf === "time" ? "of the judged time" : "of the judged distance";
  return [
    ...rows,
    {
      fact: "Needle, worst",
      value: `${needleSize(needle.max)} ${plusMinus(needle.doubt95, 2)}`,
      note: `${at(needle.maxUtc)}${maybeUnseen(needle.unseen, needleSize)}`,
    },
    { fact: "Needle beyond ¼ · ½ · ¾ · full", value: beyond(needle), note: of },
  ];
}

function trackRows({ trackAngleError: error, groundSpeedKt, reversals }: CourseFacts): FactRow[] {
  const rows: FactRow[] = [];
  if (error) {
    rows.push(
      {
        fact: "Track angle error, worst",
        value: `${sided(error.maxDeg, 0, "°")} ${plusMinus(error.doubt95Deg, 1, "°")}`,
        note: at(error.maxUtc),
      },
      {
        fact: "Track angle error, mean",
        value: sided(error.meanDeg, 1, "°"),
        note: `root mean square ${error.rmsDeg.toFixed(1)}°`,
      },
    );
  }
  if (reversals && reversals.count > 0) {
    const { medianAmplitudeDeg: swing, medianPeriodS: period } = reversals;
    rows.push({
      fact: "Turned from side to side",
      value: `${reversals.count} times`,
      note: [
        `${reversals.perMinute.toFixed(1)} a minute of all that is judged`,
        ...(swing === null ? [] : [`${Math.round(swing)}° to each side`]),
        ...(period === null ? [] : [`there and back in ${duration(period)}`]),
      ].join(", "),
    });
  }
  if (groundSpeedKt !== null)
    rows.push({ fact: "Over the ground", value: `${Math.round(groundSpeedKt)} kt`, note: "" });
  return rows;
}

/** What was held until a correction or without one, where the mean of all does not show it. */
const heldWords = (heldDeg: number | null | undefined): string =>
  heldDeg == null ? "" : `; ${sided(heldDeg, 0, "°")} without the way back to the course`;

function windRows({ drift, windCorrection: correction, variation }: CourseFacts): FactRow[] {
  const rows: FactRow[] = [];
  if (drift) {
    const value = `${sided(drift.meanDeg, 1, "°")} ${plusMinus(drift.doubt95Deg, 1, "°")}`;
    rows.push({ fact: "Drift, mean", value, note: "track less heading" });
  }
  if (correction) {
    rows.push(
      {
        fact: "Wind correction flown, mean",
        value: sided(correction.flownDeg, 1, "°"),
        note: `heading ${flownHeading(correction.headingFlownTrueDeg, variation)}, estimated${heldWords(correction.heldDeg)}`,
      },
      {
        fact: "Wind correction needed",
        value: `${sided(correction.neededDeg, 1, "°")} ${plusMinus(correction.doubt95Deg, 1, "°")}`,
        note: `heading ${flownHeading(correction.headingNeededTrueDeg, variation)}`,
      },
    );
  }
  return rows;
}

/** How far off it was meanwhile, along the course or drifting from it. */
function strayedNote({ drifted, strayed }: NonNullable<CourseFacts["beforeJoining"]>): string {
  const off = drifted ?? strayed;
  if (!off) return "";
  const how = drifted ? "from within half scale" : "flown along the course";
  const when = drifted ? ` ${at(drifted.utc)}` : "";
  return `; ${how} up to ${sided(off.crossTrackNm, 2, " NM")}, needle ${needleSize(off.needle)}${when}`;
}

function otherRows({
  intercept,
  altitude,
  judged,
  part,
  beforeEstablished: before,
  beforeJoining: joining,
}: CourseFacts): FactRow[] {
  const rows: FactRow[] = [];
  if (intercept) {
    rows.push({
      fact: "Intercept",
      value: sided(intercept.angleDeg, 0, "°"),
      note: `from ${sided(intercept.startCrossTrackNm, 2, " NM")}, joined ${at(intercept.joinedUtc)}, ${intercept.silentS === undefined ? "" : `${duration(intercept.silentS)} of it without a point, as far as seen `}past it by ${intercept.overshootNm.toFixed(2)} NM`,
    });
  }
  if (altitude) {
    rows.push({
      fact: altitude.reached ? "Height in the log, once reached, mean" : "Height in the log, mean",
      value: `${count(altitude.meanFt)} ft`,
      note: `${count(altitude.lowestFt)} to ${count(altitude.highestFt)} ft${altitude.targetFt === null ? "" : `, briefed ${count(altitude.targetFt)} ft`}${maybeUnseen(altitude.unseenRange, offMiddle)}`,
    });
  }
  if (before)
    rows.push({
      fact: "Before it was established",
      value: duration(before.alongS),
      note: `along the course, not judged; of the ${duration(before.windowS)} that the brief gives ${duration(before.judgedS)} are judged; farthest ${sided(before.worstNm, 2, " NM")}, needle ${needleSize(before.worstNeedle)} ${at(before.worstUtc)}`,
    });
  if (joining)
    rows.push({
      fact: "Before it was joined",
      value: duration(joining.seconds),
      note: `not judged${strayedNote(joining)}`,
    });
  const length = judged.seconds === null ? "" : `${duration(judged.seconds)}, `;
  const span =
    judged.fromUtc && judged.toUtc
      ? `${clockSeconds(judged.fromUtc)} to ${clockSeconds(judged.toUtc)}; `
      : "";
  rows.push({
    fact: "Judged",
    value: `${length}${judged.distanceNm.toFixed(1)} NM`,
    note: `${span}${judgedSpan(judged, part)}`,
  });
  return rows;
}

export const factRows = (facts: CourseFacts): FactRow[] => [
  ...deviationRows(facts),
  ...trackRows(facts),
  ...causeRows("the course", facts.excursions),
  ...windRows(facts),
  ...otherRows(facts),
  ...untoldRows(facts.cannotTell),
];
