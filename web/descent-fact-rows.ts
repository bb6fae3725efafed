/** The facts of one descent as rows of a table: the crossing, what was flown, and what would have fitted. */
import type { DescentFacts } from "../src/index.ts";
import { betweenNm, count, duration, plain, windLabel } from "../src/index.ts";
import { at, type FactRow, feet, feetPerMinute } from "./fact-row.ts";
import { untoldRows } from "./not-seen.ts";

const gradient = (ftPerNm: number): string => `${count(ftPerNm)} ft/NM`;
const down = (fpm: number | null, ftPerNm: number): string =>
  fpm === null ? gradient(ftPerNm) : feetPerMinute(fpm);

const BASES: Readonly<Record<string, string>> = {
  "as-flown": "At the mean rate flown",
  "usual-rate": "At 500 ft/min",
  "usual-gradient": "At 318 ft/NM, 3°",
};

function crossingRows({ crossing, toFt, beforeNm, fix, reached, passedNm }: DescentFacts): FactRow[] {
  const rows: FactRow[] = [];
  const point = beforeNm > 0 ? `${beforeNm} NM before ${fix}` : `at ${fix}`;
  if (crossing)
    rows.push({
      fact: "Height at the point",
      value: `${feet(crossing.altitudeFt)} ± ${Math.round(crossing.doubt95Ft)}`,
      note: `${point}${crossing.utc === null ? "" : ` ${at(crossing.utc)}`}; ${feet(Math.abs(crossing.overFt))} ${crossing.overFt < 0 ? "below" : "above"} ${feet(toFt)}${crossing.silentS == null ? "" : `; in ${duration(crossing.silentS)} without a point`}; the fix passed at ${passedNm.toFixed(2)} NM`,
    });
  rows.push({
    fact: "Within 100 ft of it",
    value: reached
      ? reached.silence
        ? betweenNm(reached.silence.earliestToGoNm, reached.toGoNm)
        : `${Math.abs(reached.toGoNm).toFixed(1)} NM ${reached.toGoNm < 0 ? "past" : "before"}`
      : "never",
    note: reached
      ? reached.silence
        ? `in ${duration(reached.silence.seconds)} without a point`
        : at(reached.utc)
      : "",
  });
  return rows;
}

function flownRows({ began, flown, mostNeeded, levelOffs }: DescentFacts): FactRow[] {
  const rows: FactRow[] = [];
  if (began)
    rows.push({
      fact: "Begun",
      value: began.silence
        ? betweenNm(began.silence.earliestToGoNm, began.toGoNm)
        : `${began.toGoNm.toFixed(1)} NM before`,
      note: `${began.silence ? `in ${duration(began.silence.seconds)} without a point, from` : `${at(began.utc)} at`} ${feet(began.altitudeFt)}; ${began.silence ? "at its end" : "from there"} ${down(began.neededDownFpm, began.neededDownFtPerNm)} were needed, ${began.neededDeg.toFixed(1)}°`,
    });
  if (flown)
    rows.push({
      fact: "Flown, mean",
      value: down(flown.meanDownFpm, flown.meanDownFtPerNm),
      note: `${feet(flown.lostFt)} lost in ${flown.distanceNm.toFixed(1)} NM, ${gradient(flown.meanDownFtPerNm)}${flown.steepestDownFpm === null ? "" : `; at most ${feetPerMinute(flown.steepestDownFpm)}`}`,
    });
  if (mostNeeded)
    rows.push({ fact: "Needed, most", value: feetPerMinute(mostNeeded.downFpm), note: at(mostNeeded.utc) });
  for (const level of levelOffs)
    rows.push({
      fact: "Level",
      value: feet(level.altitudeFt),
      note: `for ${duration(level.seconds)} ${at(level.fromUtc)}`,
    });
  return rows;
}

const constantRows = ({ constant }: DescentFacts): FactRow[] =>
  constant.map(({ basis, downFpm, downFtPerNm, beginUtc, beginToGoNm, lateNm, lateS }) => ({
    fact: BASES[basis] ?? plain(basis),
    value: beginToGoNm === null ? "cannot tell" : `from ${beginToGoNm.toFixed(1)} NM before`,
    note: [
      down(downFpm, downFtPerNm),
      ...(beginUtc ? [at(beginUtc)] : []),
      ...(lateNm === null
        ? []
        : [
            `it was begun ${Math.abs(lateNm).toFixed(1)} NM${lateS === null ? "" : `, ${duration(Math.abs(lateS))}`} ${lateNm > 0 ? "later" : "earlier"}`,
          ]),
    ].join("; "),
  }));

export const descentFactRows = (facts: DescentFacts): FactRow[] => [
  ...crossingRows(facts),
  ...flownRows(facts),
  ...constantRows(facts),
  ...(facts.groundSpeedKt === null
    ? []
    : [{ fact: "Over the ground", value: `${Math.round(facts.groundSpeedKt)} kt`, note: "" }]),
  ...(facts.wind ? [{ fact: "Wind", value: windLabel(facts.wind), note: "" }] : []),
  ...untoldRows(facts.cannotTell),
];
