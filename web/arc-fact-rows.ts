/** The facts of one arc as rows of a table: how far off, the turns onto it and off it, the wind. */

import type { ArcFacts } from "../src/index.ts";
import {
  count,
  duration,
  flownDirection,
  offArc,
  percent,
  plusMinus,
  sided,
  windLabel,
} from "../src/index.ts";
import { causeRows } from "./cause-rows.ts";
import { at, type FactRow } from "./fact-row.ts";
import { judgedSpan } from "./judged-span.ts";
import { maybeUnseen, untoldRows } from "./not-seen.ts";

function offRows({ deviation: d, trackAngleError: error, judged, dmeReadsMoreNm }: ArcFacts): FactRow[] {
  const shares = [d.withinQuarterNm, d.withinHalfNm, d.withinOneNm].map(percent).join(" · ");
  const rows: FactRow[] = [
    {
      fact: "Off the arc, worst",
      value: `${offArc(d.maxNm)} ${plusMinus(d.doubt95Nm, 2)}`,
      note: `on radial ${flownDirection(d.maxRadialTrueDeg, d.maxRadialMagneticDeg)} ${at(d.maxUtc)}${maybeUnseen(d.unseen, (nm) => `${nm.toFixed(2)} NM`)}`,
    },
    {
      fact: "Off the arc, mean",
      value: offArc(d.meanNm),
      note: `root mean square ${d.rmsNm.toFixed(2)} NM`,
    },
    {
      fact: "Within ¼ · ½ · 1 NM",
      value: shares,
      note: `of the judged ${judged.shareOf}`,
    },
  ];
  if (error)
    rows.push({
      fact: "Track against the tangent, worst",
      value: `${sided(error.maxDeg, 0, "°")} ${plusMinus(error.doubt95Deg, 1, "°")}`,
      note: `mean ${sided(error.meanDeg, 1, "°")}`,
    });
  if (dmeReadsMoreNm !== null && dmeReadsMoreNm >= 0.005)
    rows.push({
      fact: "A DME reads more by",
      value: `${dmeReadsMoreNm.toFixed(2)} NM`,
      note: "slant at the mean height; distances here are over the ground",
    });
  return rows;
}

function turnRows({ turnIn, turnOff }: ArcFacts): FactRow[] {
  const rows: FactRow[] = [];
  if (turnIn)
    rows.push({
      fact: "Turn onto the arc begun",
      value: `${turnIn.leadNm.toFixed(2)} NM before`,
      note: `${at(turnIn.utc)}, ${Math.round(Math.abs(turnIn.turnDeg))}° at ${turnIn.rateDegS.toFixed(1)}°/s${turnIn.neededNm === null ? "" : `; needed ${turnIn.neededNm.toFixed(2)} NM`}; rolled out ${offArc(turnIn.rollOutNm)}`,
    });
  if (turnOff)
    rows.push({
      fact: "Turn off it begun",
      value: `${turnOff.leadDeg.toFixed(1)}° before`,
      note: `${at(turnOff.utc)}, onto ${flownDirection(turnOff.radialTrueDeg, turnOff.radialMagneticDeg)} ${turnOff.to}${turnOff.neededDeg === null ? "" : `; needed ${turnOff.neededDeg.toFixed(1)}°`}; rolled out ${sided(turnOff.rollOutCrossTrackNm, 2, " NM")} of it`,
    });
  return rows;
}

function windRows({ wind, windCorrection, groundSpeedKt, altitude }: ArcFacts): FactRow[] {
  const rows: FactRow[] = [];
  if (wind) rows.push({ fact: "Wind", value: windLabel(wind), note: "" });
  if (windCorrection)
    rows.push({
      fact: "Wind correction flown, mean",
      value: sided(windCorrection.flownDeg, 1, "°"),
      note: `needed ${sided(windCorrection.neededDeg, 1, "°")} ${plusMinus(windCorrection.doubt95Deg, 1, "°")}`,
    });
  if (groundSpeedKt !== null)
    rows.push({ fact: "Over the ground", value: `${Math.round(groundSpeedKt)} kt`, note: "" });
  if (altitude)
    rows.push({
      fact: altitude.reached ? "Height in the log, once reached, mean" : "Height in the log, mean",
      value: `${count(altitude.meanFt)} ft`,
      note: altitude.targetFt === null ? "" : `briefed ${count(altitude.targetFt)} ft`,
    });
  return rows;
}

export const arcFactRows = (facts: ArcFacts): FactRow[] => [
  ...offRows(facts),
  ...turnRows(facts),
  ...causeRows("the arc", facts.excursions),
  ...windRows(facts),
  {
    fact: "Judged",
    value: `${facts.judged.seconds === null ? "" : `${duration(facts.judged.seconds)}, `}${facts.judged.distanceNm.toFixed(1)} NM`,
    note: `${facts.flownSweepDeg.toFixed(0)}° of ${facts.sweepDeg.toFixed(0)}°; ${judgedSpan(facts.judged, facts.part)}`,
  },
  ...untoldRows(facts.cannotTell),
];
