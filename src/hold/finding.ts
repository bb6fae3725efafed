/** What is worth saying of a hold as flown: codes with facts and the times they rest on, what matters most first. */
import type { Finding } from "../quantity/record.ts";
import type { AngleSize, Feet, Knots, NauticalMiles, TrueDegrees } from "../quantity/units.ts";
import type { TurnSide } from "../standard/holding.ts";
import { asFlownFindings, timesOfHold } from "./as-flown.ts";
import { isSolved } from "./asked.ts";
import { sectorOf } from "./entry-facts.ts";
import type { HoldFacts, HoldLap } from "./facts.ts";
import { legFindings, legsUnseen } from "./leg-finding.ts";

/** Outbound corrections nearer than this to what was asked are as good. Chosen: a heading is held to some degrees, and 5 off for a minute at 100 kt is 0.15 NM. */
const CORRECTION_OFF: AngleSize = 5;
/** ... but further off they are said even where the roll-out was near enough: something else made up for them. Chosen. */
const CORRECTION_FAR_OFF: AngleSize = 10;
/** Factors between these are those of an outbound leg parallel to the inbound one, which has 1. Chosen: half way to none and to twice. */
const PARALLEL: readonly [number, number] = [0.5, 1.5];
/** Rolled out nearer to the course than this is on it; farther from the fix, where all is larger, within this share of the way to it. Chosen: two thirds of the full scale of a VOR, and as much as that is a minute from the fix at 100 kt. */
const ROLL_OUT_OFF: NauticalMiles = 0.2;
const ROLL_OUT_SHARE = 0.12;
/** From the lowest to the highest; 100 ft to either side is what the tests of both standards allow (FAA-S-ACS-8C III.B, Part-FCL appendix 7). */
const HEIGHT_SPREAD: Feet = 200;
/** Chosen: more than a tidy inbound leg ever strays; in a fast aircraft as many seconds of flight. */
const BEYOND_COURSE: NauticalMiles = 0.3;
const AT_SPEED: Knots = 100;

/**
 * The findings of a hold; `published` where a brief gave it. Of one that was found, no leg is held against a time that
 * nobody gave; and where its inbound course is not sure, nothing that is counted from it is said. `tracks`: on what
 * each lap came to the fix.
 */
export function findingsOf(
  facts: HoldFacts,
  published: boolean,
  flown: TurnSide,
  tracks: readonly (TrueDegrees | null)[],
): Finding[] {
  const other = facts.asFlown?.otherCourse === true;
  // what is counted from the published course follows from the other one
  const sure = facts.sure !== false && !other;
  const correctionsOff = sure ? corrections(facts, flown) : [];
  const faults = [
    ...asFlownFindings(facts, tracks),
    ...(facts.sure !== false ? wrongEntry(facts, flown) : []),
    ...gathered(correctionsOff),
    ...neverEstablished(facts, other),
    ...(sure ? gathered(rollOuts(facts, flown, correctionsOff)) : []),
    ...(published ? legFindings(facts) : []),
    ...legsUnseen(facts),
    ...overSpeed(facts),
    ...height(facts),
    ...(facts.sure !== false ? nonHoldingSide(facts) : []),
  ];
  return faults.length > 0 || facts.sure === false ? faults : [wellFlown(facts)];
}

/** Not said where the doubt of the heading reaches a sector that allows what was flown. */
function wrongEntry({ entry, inboundTrueDeg, turns }: HoldFacts, flownTurns: TurnSide): Finding[] {
  if (!entry?.flown || entry.heading95Deg === null || flownTurns !== turns) return [];
  const { flown, headingTrueDeg, heading95Deg, asked, utc } = entry;
  for (const doubt of [-heading95Deg, 0, heading95Deg]) {
    const sector = sectorOf(headingTrueDeg + doubt, inboundTrueDeg, turns);
    if (sector.asked === flown || sector.alsoAllowed.includes(flown)) return [];
  }
  return [
    {
      code: "entry-not-by-sector",
      facts: { asked, flown, headingTrueDeg, doubt95Deg: heading95Deg },
      evidence: { fromUtc: utc, toUtc: null },
    },
  ];
}

/** Where it rolled out, from the side of the racetrack: past the course positive. */
const pastCourse = ({ rollOut }: HoldLap, flown: TurnSide): number =>
  rollOut ? (flown === "right" ? -1 : 1) * rollOut.acrossNm : 0;

const rollOutLimit = ({ rollOut }: HoldLap): NauticalMiles =>
  Math.max(ROLL_OUT_OFF, ROLL_OUT_SHARE * Math.abs(rollOut?.alongNm ?? 0));

function corrections(facts: HoldFacts, flown: TurnSide): Finding[] {
  return facts.laps
    .flatMap((lap, i): Finding[] => {
      const { solved, doubt, outbound, factorOfNeed: factor, rollOut } = lap;
      const past = rollOut && pastCourse(lap, flown);
      if (!isSolved(solved) || !doubt || solved.factor === null) return [];
      if (factor === null || outbound.correctionDeg === null) return [];
      const off = Math.abs(outbound.correctionDeg - solved.outboundCorrectionDeg);
      const enough =
        past !== null && Math.abs(past) <= rollOutLimit(lap) ? CORRECTION_FAR_OFF : CORRECTION_OFF;
      const unsure = Math.hypot(doubt.outboundCorrection95Deg, facts.inbound95Deg ?? 0);
      if (!(off > Math.max(enough, unsure))) return [];
      const [least, most] = PARALLEL;
      const under = factor < solved.factor;
      const parallel = under && factor > least && factor < most;
      let code = under ? "outbound-undercorrected" : "outbound-overcorrected";
      if (parallel) code = "outbound-parallel";
      return [
        {
          code,
          facts: {
            lap: i + 1,
            flownDeg: outbound.correctionDeg,
            doubt95Deg: outbound.correction95Deg,
            factor,
            factor95: lap.factorOfNeed95,
            neededDeg: solved.inboundCorrectionDeg,
            askedDeg: solved.outboundCorrectionDeg,
            asked95Deg: doubt.outboundCorrection95Deg,
            askedFactor: solved.factor,
            askedFactor95: doubt.factor95,
            rollOutNm: past,
          },
          evidence: { fromUtc: outbound.fromUtc, toUtc: rollOut?.utc ?? outbound.toUtc },
        },
      ];
    })
    .sort((a, b) => Math.abs(Number(b.facts.rollOutNm)) - Math.abs(Number(a.facts.rollOutNm)));
}

/** Of each code the first, which is the worst, with the other laps that it is true of. */
function gathered(findings: readonly Finding[]): Finding[] {
  const codes = [...new Set(findings.map(({ code }) => code))];
  return codes.map((code) => {
    const [worst, ...others] = findings.filter((f) => f.code === code);
    const laps = others.map(({ facts }) => Number(facts.lap)).sort((a, b) => a - b);
    return { ...worst!, facts: { ...worst!.facts, alsoLaps: laps.join(" ") } };
  });
}

/** Where the correction outbound was off, the roll-out is told with it. */
function rollOuts(facts: HoldFacts, flown: TurnSide, correctionsOff: readonly Finding[]): Finding[] {
  const told = new Set(correctionsOff.map((f) => f.facts.lap));
  return facts.laps
    .flatMap((lap, i): Finding[] => {
      const past = pastCourse(lap, flown);
      if (!lap.rollOut || told.has(i + 1)) return [];
      if (!(Math.abs(past) > rollOutLimit(lap) + lap.rollOut.across95Nm)) return [];
      return [
        {
          code: past > 0 ? "rolled-out-past" : "rolled-out-short",
          facts: {
            lap: i + 1,
            offNm: Math.abs(past),
            doubt95Nm: lap.rollOut.across95Nm,
            trackErrorDeg: lap.rollOut.trackErrorDeg,
          },
          evidence: { fromUtc: lap.rollOut.utc, toUtc: lap.endUtc },
        },
      ];
    })
    .sort((a, b) => Number(b.facts.offNm) - Number(a.facts.offNm));
}

/** Laps flown to the fix that were never established on the published course; along another one they cannot be. */
function neverEstablished({ laps }: HoldFacts, other: boolean): Finding[] {
  const never = laps.flatMap((lap, i) => (lap.joined === "never" ? [{ ...lap, lap: i + 1 }] : []));
  const [first] = never;
  if (other || !first) return [];
  return [
    {
      code: "inbound-never-established",
      facts: { laps: never.map(({ lap }) => lap).join(" ") },
      evidence: { fromUtc: first.inbound?.fromUtc ?? null, toUtc: first.inbound?.toUtc ?? null },
    },
  ];
}

function overSpeed(facts: HoldFacts): Finding[] {
  const { speed } = facts;
  if (!speed || speed.mostKt === null || !(speed.indicatedKt - speed.doubt95Kt > speed.mostKt)) return [];
  const { indicatedKt, doubt95Kt, mostKt } = speed;
  return [
    { code: "over-speed-limit", facts: { indicatedKt, doubt95Kt, mostKt }, evidence: timesOfHold(facts) },
  ];
}

/** Not of one that was climbed or descended in on purpose. */
function height(facts: HoldFacts): Finding[] {
  const { altitude } = facts;
  if (!altitude || altitude.onPurpose || !(altitude.highestFt - altitude.lowestFt > HEIGHT_SPREAD)) return [];
  const { lowestFt, highestFt, meanFt } = altitude;
  return [{ code: "height-not-held", facts: { lowestFt, highestFt, meanFt }, evidence: timesOfHold(facts) }];
}

function nonHoldingSide(facts: HoldFacts): Finding[] {
  const { seconds, farthestNm, farthestUtc } = facts.nonHoldingSide;
  const fastest = Math.max(AT_SPEED, ...facts.laps.map((lap) => lap.groundSpeedKt));
  if (!(farthestNm > (BEYOND_COURSE * fastest) / AT_SPEED)) return [];
  return [
    {
      code: "on-non-holding-side",
      facts: { seconds, farthestNm },
      evidence: { fromUtc: farthestUtc, toUtc: null },
    },
  ];
}

function wellFlown(facts: HoldFacts): Finding {
  const worst = (values: readonly number[]) => (values.length > 0 ? Math.max(...values.map(Math.abs)) : null);
  const inbound = facts.timing === "us";
  const times = facts.laps.flatMap(({ inbound: back, outbound }) =>
    inbound ? (back ? [back.seconds] : []) : [outbound.seconds],
  );
  return {
    code: "hold-well-flown",
    facts: {
      laps: facts.laps.length,
      worstRollOutNm: worst(facts.laps.flatMap(({ rollOut }) => (rollOut ? [rollOut.acrossNm] : []))),
      leg: facts.leg.by === "distance" ? null : inbound ? "inbound" : "outbound",
      shortestS: times.length > 0 ? Math.min(...times) : null,
      longestS: times.length > 0 ? Math.max(...times) : null,
    },
    evidence: timesOfHold(facts),
  };
}
