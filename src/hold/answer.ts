/** The answer for the next flight: the racetrack solved for a wind given beforehand, and what the rules of thumb come to. */
import { direction } from "../quantity/angle.ts";
import { HOLDING } from "../standard/holding.ts";
import { bandAt } from "./asked.ts";
import { racetrackDoubt } from "./doubt.ts";
import type { NoRacetrack, Racetrack, RacetrackDoubt, RuleOutcome } from "./facts.ts";
import { type HoldOutline, racetrackOutline } from "./outline.ts";
import { solveRacetrack } from "./racetrack.ts";
import type { HoldQuestion } from "./racetrack-question.ts";
import { RULES, ruleOutcome } from "./rule.ts";
import type { AskedHold } from "./typed-hold.ts";

/** Headings of the solver say true; here they are in the reference of the question, so their names say neither. */
type InReference<T extends Partial<Record<`${string}HeadingTrueDeg`, number>>> = {
  readonly [K in keyof T as K extends `${infer Leg}HeadingTrueDeg` ? `${Leg}HeadingDeg` : K]: T[K];
};
export type AskedRacetrack = InReference<Racetrack>;

export interface RacetrackAnswer {
  readonly asked: AskedHold;
  readonly solved: AskedRacetrack | NoRacetrack;
  /** Null where no doubt of the wind was given, or it reaches winds without a solution. */
  readonly doubt: RacetrackDoubt | null;
  /** Factors 1, 2 and 3 for the leg's own time; for a leg by distance, for as long as the solved one takes. */
  readonly rules: readonly InReference<RuleOutcome>[];
  readonly stillAir: AskedRacetrack;
  /** Indicated airspeed that the standard allows at the height, kt; null where no height was given or it is a Mach number. */
  readonly mostIndicatedKt: number | null;
  readonly citation: string;
}

/** In the reference of the course. */
const windOf = ({ windFromDeg, compassDeg }: AskedHold, speed: number) => ({
  from: direction(windFromDeg - compassDeg),
  speed,
});

/** The solver knows one reference only; that all directions are in the same one is all that it asks. */
const questionOf = (asked: AskedHold): HoldQuestion => ({
  inbound: asked.inboundDeg,
  turns: asked.turns,
  trueAirspeed: asked.trueAirspeedKt,
  wind: windOf(asked, asked.windKt),
  leg: asked.leg,
  turnRate: asked.turnRateDegS,
  mostBank: asked.mostBankDeg,
});

const inReference = (
  { inboundHeadingTrueDeg, outboundHeadingTrueDeg, ...rest }: Racetrack,
  { compassDeg }: AskedHold,
): AskedRacetrack => ({
  inboundHeadingDeg: direction(inboundHeadingTrueDeg + compassDeg),
  outboundHeadingDeg: direction(outboundHeadingTrueDeg + compassDeg),
  ...rest,
});

function stillAirOf(question: HoldQuestion): Racetrack {
  const still = solveRacetrack({ ...question, wind: { from: 0, speed: 0 } });
  if ("none" in still) throw new RangeError("no racetrack in still air: the leg is shorter than the turns");
  return still;
}

/** All directions in the reference of the question, headings by the compass. */
export function racetrackFor(asked: AskedHold): RacetrackAnswer {
  const question = questionOf(asked);
  const solved = solveRacetrack(question);
  const none = "none" in solved;
  const seconds = asked.leg.by !== "distance" ? asked.leg.seconds : none ? null : solved.outboundS;
  const rules = seconds === null ? [] : RULES.map((factor) => ruleOutcome(question, factor, seconds));
  const standard = HOLDING[asked.timing];
  const { altitudeFt, wind95Kt } = asked;
  return {
    asked,
    solved: none ? solved : inReference(solved, asked),
    doubt:
      none || wind95Kt === null
        ? null
        : racetrackDoubt(question, { major: wind95Kt, minor: wind95Kt, majorAxis: 0 }, 0),
    rules: rules.flatMap((rule) => {
      if (!rule) return [];
      const { outboundHeadingTrueDeg, ...rest } = rule;
      return [{ outboundHeadingDeg: direction(outboundHeadingTrueDeg + asked.compassDeg), ...rest }];
    }),
    stillAir: inReference(stillAirOf(question), asked),
    mostIndicatedKt: altitudeFt === null ? null : bandAt(standard, altitudeFt).mostSpeed,
    citation: standard.citation,
  };
}

/** The lines of an answer over the ground; null where nothing closes. */
export function answerOutlines({ asked, solved, stillAir }: RacetrackAnswer): {
  readonly solved: HoldOutline | null;
  readonly stillAir: HoldOutline;
} {
  const { inboundDeg: inbound, turns } = asked;
  const lineOf = (racetrack: AskedRacetrack, speed: number): HoldOutline =>
    racetrackOutline(racetrack, { inbound, turns, wind: windOf(asked, speed) });
  return { solved: "none" in solved ? null : lineOf(solved, asked.windKt), stillAir: lineOf(stillAir, 0) };
}
