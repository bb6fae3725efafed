/** What may come back in holds: the outbound leg against the racetrack that closes, the roll-out by side, the time. */
import type { DebriefDocument, HoldFacts, HoldLap, HoldRecord } from "../debrief/document.ts";
import type { AngleSize, NauticalMiles } from "../quantity/units.ts";
import { limitOf } from "./limit.ts";
import { type Measured, meanOf, shownAt, type Tendency, tendency, type WhyUntold } from "./tendency.ts";
import { A_THIRD, missingShare, whyNoShare } from "./wind-share.ts";

/** Chosen: with less asked outbound, a wind believed wrong by 3 kt asks for as much. */
const LEAST_OUTBOUND: AngleSize = 10;
const LEAST_INBOUND: AngleSize = 5;
/** Rolled out farther off, the way inbound is a cut back to the course and tells nothing of the wind. Chosen: a third of the roll-out's own tolerance. */
const NEAR: NauticalMiles = 0.07;
/** Chosen: three quarters of the scale of a VOR a minute from it at 100 kt, 0.22 NM. */
const ROLL_OUT: NauticalMiles = 0.2;

type Lap = (lap: HoldLap, facts: HoldFacts) => Measured | null;

/**
 * The facts of a hold that was meant. One that was only found counts where no brief says what was meant, its inbound
 * course is sure and it is no circuit and no lone lap; but nothing was asked of its legs. Of one flown on another inbound course only the
 * legs' times count.
 */
function meantFacts({ source, facts }: HoldRecord, { brief }: DebriefDocument, briefed = false) {
  if (!facts || (facts.asFlown?.otherCourse && !briefed)) return null;
  const meant =
    source === "brief" ||
    (!briefed && !brief && facts.sure === true && !facts.maybeCircuit && !facts.loneLap);
  return meant ? facts : null;
}

/** Shown by the lap that it is of, unless by a part of that. */
const withLap = (measured: Measured | null, { startUtc, endUtc, inbound }: HoldLap): Measured | null =>
  measured && { at: shownAt(startUtc, endUtc ?? inbound?.toUtc ?? startUtc), ...measured };

/** The mean of the laps. */
const laps =
  (measure: Lap, briefed = false) =>
  (hold: HoldRecord, document: DebriefDocument): Measured | null => {
    const facts = meantFacts(hold, document, briefed);
    return facts && meanOf(facts.laps.map((lap) => withLap(measure(lap, facts), lap)));
  };

/** Why no lap tells: one whose wind is not known is said rather than one with too little of it. */
const untold =
  (why: (lap: HoldLap) => WhyUntold | null) =>
  (hold: HoldRecord, document: DebriefDocument): WhyUntold | null => {
    const whys = meantFacts(hold, document)?.laps.map(why) ?? [];
    return whys.find((of) => of === "wind-not-known") ?? whys.find((of) => of !== null) ?? null;
  };

const flownTurns = ({ asFlown, turns }: HoldFacts) => asFlown?.turns ?? turns;

const solvedOf = ({ solved }: HoldLap) => (solved && !("none" in solved) ? solved : null);

const outbound: Lap = (lap) => {
  const solved = solvedOf(lap);
  if (!solved || !lap.doubt || lap.outbound.correctionDeg === null) return null;
  const doubt95 = lap.doubt.outboundCorrection95Deg;
  const { correctionDeg, fromUtc, toUtc } = lap.outbound;
  const missing = missingShare(correctionDeg, solved.outboundCorrectionDeg, doubt95, LEAST_OUTBOUND);
  return missing && { ...missing, at: shownAt(fromUtc, toUtc) };
};

const noOutbound = ({ solved, doubt }: HoldLap): WhyUntold | null => {
  if (solved && "none" in solved) return null;
  const doubt95 = doubt?.outboundCorrection95Deg ?? null;
  return whyNoShare(solved?.outboundCorrectionDeg ?? null, doubt95, LEAST_OUTBOUND);
};

const noInbound = ({ solved, doubt }: HoldLap): WhyUntold | null => {
  if (solved && "none" in solved) return null;
  const doubt95 = doubt?.inboundCorrection95Deg ?? null;
  return whyNoShare(solved?.inboundCorrectionDeg ?? null, doubt95, LEAST_INBOUND);
};

const inbound: Lap = (lap) => {
  const solved = solvedOf(lap);
  const flown = lap.inbound?.correctionDeg ?? null;
  if (!solved || !lap.doubt || flown === null || !lap.rollOut) return null;
  if (Math.abs(lap.rollOut.acrossNm) > NEAR) return null;
  return missingShare(flown, solved.inboundCorrectionDeg, lap.doubt.inboundCorrection95Deg, LEAST_INBOUND);
};

/** Rolled out past the inbound course, seen from the side of the racetrack, positive. */
const past =
  (turns: "left" | "right"): Lap =>
  ({ rollOut }, facts) =>
    rollOut && flownTurns(facts) === turns
      ? { value: (turns === "right" ? -1 : 1) * rollOut.acrossNm, doubt95: rollOut.across95Nm }
      : null;

/** Longer than given positive, on the leg that the standard times. */
const legTime: Lap = ({ outbound: out, inbound: back }, { leg, timing }) => {
  if (leg.by !== "time") return null;
  if (timing === "us") return back && { value: back.seconds - leg.seconds, doubt95: 0 };
  return { value: out.seconds - leg.seconds, doubt95: 0 };
};

const hold = (
  id: string,
  unit: Tendency["unit"],
  tolerance: Tendency<HoldRecord>["tolerance"],
  measure: Tendency<HoldRecord>["measure"],
  untold: Tendency<HoldRecord>["untold"] = () => null,
): Tendency => tendency("hold", { id, unit, oneSided: false, tolerance, measure, untold });

export const HOLD_TENDENCIES: readonly Tendency[] = [
  hold("hold-outbound", "part", () => A_THIRD, laps(outbound), untold(noOutbound)),
  hold("hold-inbound", "part", () => A_THIRD, laps(inbound), untold(noInbound)),
  hold("roll-out-past-left", "NM", () => ROLL_OUT, laps(past("left"))),
  hold("roll-out-past-right", "NM", () => ROLL_OUT, laps(past("right"))),
  hold("leg-time", "s", limitOf("hold-leg-time"), laps(legTime, true)),
];
