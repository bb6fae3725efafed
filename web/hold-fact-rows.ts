/** The facts of one hold as rows of a table: entry, course as flown, turns, speed, the side not to be on, wind. */
import type { HoldFacts } from "../src/index.ts";
import {
  clockSeconds,
  count,
  duration,
  entryDirection,
  entryUntold,
  flownDirection,
  isFull,
  plusMinus,
  sided,
  windDoubt,
  windHeadline,
  windLabel,
} from "../src/index.ts";
import { type FactRow, sinceReached } from "./fact-row.ts";
import { offMiddle } from "./fact-rows.ts";
import { maybeUnseen, untoldRows } from "./not-seen.ts";

function publishedRows(facts: HoldFacts): FactRow[] {
  const { fix, inboundTrueDeg, inboundMagneticDeg, inbound95Deg, asFlown, sure, maybeCircuit, loneLap } =
    facts;
  const rows: FactRow[] = [];
  if (fix.doubt95Nm !== null || inbound95Deg !== null) {
    rows.push({
      fact: loneLap ? "The way back, as found" : "Inbound course, as found",
      value: `${flownDirection(inboundTrueDeg, inboundMagneticDeg)}${inbound95Deg === null ? "" : ` ${plusMinus(inbound95Deg, 1, "°")}`}`,
      note: [
        ...(fix.doubt95Nm === null || loneLap ? [] : [`fix within ${fix.doubt95Nm.toFixed(2)} NM`]),
        ...(sure === false ? ["not sure: the inbound legs do not agree"] : []),
        ...(loneLap ? ["one lap, maybe only a turn to lose time"] : []),
        ...(maybeCircuit ? ["a racetrack, maybe a circuit"] : []),
      ].join("; "),
    });
  }
  if (asFlown) {
    rows.push({
      fact: "Against the published hold",
      value: `${sided(asFlown.inboundOffDeg, 1, "°")}${asFlown.inbound95Deg === undefined ? "" : ` ${plusMinus(asFlown.inbound95Deg, 1, "°")}`}, ${asFlown.fixOffNm.toFixed(2)} NM`,
      note: `${asFlown.otherCourse ? "another inbound course" : "inbound course"} and fix as flown; turns ${asFlown.turns}${asFlown.turns === facts.turns ? "" : ", the other side"}`,
    });
  }
  return rows;
}

function entryRows(facts: HoldFacts): FactRow[] {
  const { entry } = facts;
  if (!entry) return [];
  const untold = entryUntold(entry);
  if (untold && entry.untold !== "wrong-way")
    return [{ fact: "Entry", value: "cannot tell", note: `what entry was flown ${untold}` }];
  const allowed = entry.alsoAllowed.length > 0 ? `, ${entry.alsoAllowed.join(" or ")} within 5°` : "";
  return [
    {
      fact: "Entry",
      value: entry.flown ?? "cannot tell",
      note: `${entry.asked} by the sectors${allowed}; ${entryDirection(entry, facts)} at the fix at ${clockSeconds(entry.utc)}, ${entry.fixMissNm.toFixed(2)} NM off it`,
    },
  ];
}

/** The needle of the inbound legs, worst of all, where a published course is judged by one. */
function needleRows({ laps, scale }: HoldFacts): FactRow[] {
  const judged = laps.flatMap(({ tracking }, i) => (tracking ? [{ ...tracking, lap: i + 1 }] : []));
  if (!scale || judged.length === 0) return [];
  const worst = judged.reduce((a, b) => (Math.abs(b.worstNeedle) > Math.abs(a.worstNeedle) ? b : a));
  const unseen = judged
    .map((lap) => lap.unseen ?? null)
    .reduce((a, b) => ((b?.most ?? 0) > (a?.most ?? 0) ? b : a));
  const never = judged.filter(({ establishedUtc }) => establishedUtc === null).map(({ lap }) => lap);
  const missed =
    never.length > 0
      ? `; never established in ${never.length === 1 ? "lap" : "laps"} ${never.join(", ").replace(/, (\d+)$/, " and $1")}`
      : "";
  const near = scale.kind === "angular" ? ", to a mile before the station" : "";
  return [
    {
      fact: "Needle inbound, worst",
      value: `${sided(worst.worstNeedle, 2, "")} ${plusMinus(worst.doubt95, 2, "")}`,
      note: `of full scale, ${scale.label}${near}; lap ${worst.lap} at ${clockSeconds(worst.worstUtc)}, ${sided(worst.worstAcrossNm, 2, " NM")}${maybeUnseen(unseen, (most) => most.toFixed(2))}${missed}`,
    },
  ];
}

/** The mean over the laps and both turns of each. */
function turnRows({ laps }: HoldFacts): FactRow[] {
  const turns = laps.flatMap((lap) => [
    lap.turns.outbound,
    ...(lap.turns.inbound ? [lap.turns.inbound] : []),
  ]);
  if (turns.length === 0) return [];
  const rates = turns.map(({ rateDegS }) => Math.abs(rateDegS));
  const banks = turns.flatMap(({ bankDeg }) => (bankDeg === null ? [] : [Math.abs(bankDeg)]));
  const range = (values: number[], digits: number) =>
    `${Math.min(...values).toFixed(digits)} to ${Math.max(...values).toFixed(digits)}`;
  return [
    {
      fact: "Turns",
      value: `${range(rates, 1)}°/s`,
      note: banks.length > 0 ? `bank ${range(banks, 0)}°, in the air mass, estimated` : "over the ground",
    },
  ];
}

function limitRows({ speed, nonHoldingSide: side, altitude, wind, loneLap }: HoldFacts): FactRow[] {
  const rows: FactRow[] = [];
  if (speed && !loneLap) {
    rows.push({
      fact: "Airspeed, indicated, estimated",
      value: `${Math.round(speed.indicatedKt)} ${plusMinus(speed.doubt95Kt, 0, " kt")}`,
      note: `${speed.mostKt === null ? "" : `at most ${speed.mostKt} kt; `}true ${Math.round(speed.trueKt)} kt; ${speed.citation}`,
    });
  }
  if (!loneLap) {
    rows.push({
      fact: "On the non-holding side",
      value: side.seconds === 0 ? "never" : `${duration(side.seconds)}, ${side.farthestNm.toFixed(2)} NM`,
      note: `${side.farthestUtc === null || side.seconds === 0 ? "" : `farthest at ${clockSeconds(side.farthestUtc)}; `}after the entry; geometry, not the procedure’s protected airspace`,
    });
  }
  if (altitude) {
    rows.push({
      fact: `Height in the log, ${sinceReached(altitude.reached)}mean`,
      value: `${count(altitude.meanFt)} ft`,
      note: `${count(altitude.lowestFt)} to ${count(altitude.highestFt)} ft${altitude.targetFt === null ? "" : `, briefed ${count(altitude.targetFt)} ft`}${maybeUnseen(altitude.unseenRange, offMiddle)}`,
    });
  }
  if (wind && isFull(wind)) {
    rows.push({
      fact: "Wind in the hold",
      value: windLabel(wind),
      note: windDoubt({ ...wind, altitudeFt: null }),
    });
  } else if (wind) rows.push({ fact: "Wind in the hold", value: "cannot tell", note: windHeadline(wind) });
  return rows;
}

export const holdFactRows = (facts: HoldFacts): FactRow[] => [
  ...publishedRows(facts),
  ...entryRows(facts),
  ...needleRows(facts),
  ...turnRows(facts),
  ...limitRows(facts),
  ...untoldRows(facts.cannotTell),
];
