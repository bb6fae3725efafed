/** The facts of one course as rows of a table: what, how much with its doubt, and when or of what. */
import type { CourseFacts } from "../src/index.ts";
import {
  clockSeconds,
  count,
  duration,
  percent,
  plain,
  plusMinus,
  sided,
  trueDirection,
} from "../src/index.ts";
import { at, cannotTellRows, type FactRow } from "./fact-row.ts";

const beyond = (needle: CourseFacts["needle"]): string =>
  [needle.beyondQuarter, needle.beyondHalf, needle.beyondThreeQuarter, needle.beyondFull]
    .map(percent)
    .join(" · ");
const share = (value: number): string => `${value.toFixed(2)} of full scale`;

function deviationRows(facts: CourseFacts): FactRow[] {
  const { crossTrack, needle, judged } = facts;
  const off = facts.form === "fitted" ? "Off its own straight line" : "Off course";
  const rows: FactRow[] = [
    {
      fact: `${off}, worst`,
      value: `${sided(crossTrack.maxNm, 2, " NM")} ${plusMinus(crossTrack.doubt95Nm, 2)}`,
      note: at(crossTrack.maxUtc),
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
      value: `${share(Math.abs(needle.max))} ${plusMinus(needle.doubt95, 2)}`,
      note: at(needle.maxUtc),
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
        `${reversals.perMinute.toFixed(1)} a minute`,
        ...(swing === null ? [] : [`by ${Math.round(swing)}°`]),
        ...(period === null ? [] : [`every ${duration(period)}`]),
      ].join(", "),
    });
  }
  if (groundSpeedKt !== null)
    rows.push({ fact: "Over the ground", value: `${Math.round(groundSpeedKt)} kt`, note: "" });
  return rows;
}

function windRows({ drift, windCorrection: correction }: CourseFacts): FactRow[] {
  const rows: FactRow[] = [];
  if (drift) {
    const value = `${sided(drift.meanDeg, 1, "°")} ${plusMinus(drift.doubt95Deg, 1, "°")}`;
    rows.push({ fact: "Drift, mean", value, note: "track less heading" });
  }
  if (correction) {
    rows.push(
      {
        fact: "Wind correction flown",
        value: sided(correction.flownDeg, 1, "°"),
        note: `heading ${trueDirection(correction.headingFlownTrueDeg)}, estimated`,
      },
      {
        fact: "Wind correction needed",
        value: `${sided(correction.neededDeg, 1, "°")} ${plusMinus(correction.doubt95Deg, 1, "°")}`,
        note: `heading ${trueDirection(correction.headingNeededTrueDeg)}`,
      },
    );
  }
  return rows;
}

function otherRows({ intercept, altitude, judged }: CourseFacts): FactRow[] {
  const rows: FactRow[] = [];
  if (intercept) {
    rows.push({
      fact: "Intercept",
      value: sided(intercept.angleDeg, 0, "°"),
      note: `from ${sided(intercept.startCrossTrackNm, 2, " NM")}, joined ${at(intercept.joinedUtc)}, past it by ${intercept.overshootNm.toFixed(2)} NM`,
    });
  }
  if (altitude) {
    rows.push({
      fact: "Height in the log, mean",
      value: `${count(altitude.meanFt)} ft`,
      note: altitude.targetFt === null ? "" : `briefed ${count(altitude.targetFt)} ft`,
    });
  }
  const length = judged.seconds === null ? "" : `${duration(judged.seconds)}, `;
  const span =
    judged.fromUtc && judged.toUtc
      ? `${clockSeconds(judged.fromUtc)} to ${clockSeconds(judged.toUtc)}; `
      : "";
  rows.push({
    fact: "Judged",
    value: `${length}${judged.distanceNm.toFixed(1)} NM`,
    note: `${span}begins: ${plain(judged.begins)}; ends: ${plain(judged.ends)}`,
  });
  return rows;
}

export const factRows = (facts: CourseFacts): FactRow[] => [
  ...deviationRows(facts),
  ...trackRows(facts),
  ...windRows(facts),
  ...otherRows(facts),
  ...cannotTellRows(facts.cannotTell),
];
