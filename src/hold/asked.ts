/** What a wind asked for: the racetrack solved in it, its doubt, and what the rules of thumb would have come to. */
import type { AngleSize, FeetMsl, Seconds, TrueDegrees } from "../quantity/units.ts";
import { HOLDING, type HoldingBand, type HoldingStandard, type TurnSide } from "../standard/holding.ts";
import type { WindFact } from "../wind/wind.ts";
import { racetrackDoubt } from "./doubt.ts";
import type { HoldFacts, NoRacetrack, Racetrack, RacetrackDoubt, RuleOutcome } from "./facts.ts";
import { solveRacetrack } from "./racetrack.ts";
import type { HoldLeg, HoldQuestion } from "./racetrack-question.ts";
import { RULES, ruleOutcome } from "./rule.ts";

/** What is held, apart from the wind. */
export interface Held {
  readonly inbound: TrueDegrees;
  /** Half-width of its 95 % interval; 0 where it is published. */
  readonly inbound95: AngleSize;
  readonly turns: TurnSide;
  readonly leg: HoldFacts["leg"];
  readonly standard: HoldingStandard;
}

export interface Asked {
  readonly question: HoldQuestion | null;
  readonly solved: Racetrack | NoRacetrack | null;
  readonly doubt: RacetrackDoubt | null;
  readonly rules: RuleOutcome[];
}

const NOTHING: Asked = { question: null, solved: null, doubt: null, rules: [] };

/** The band of a standard that a height lies in; the lowest where no height is known. */
export const bandAt = ({ bands }: HoldingStandard, altitude: FeetMsl | null): HoldingBand =>
  bands.find((band) => band.upTo === null || (altitude ?? 0) <= band.upTo) ?? bands.at(-1)!;

/** How long a leg is by a standard at a height, where nothing else was asked for; that of low heights where no height is known. */
export const usualLegTime = (standard: HoldingStandard["id"], altitude: FeetMsl | null): Seconds =>
  bandAt(HOLDING[standard], altitude).legTime;

export const isSolved = (solved: Racetrack | NoRacetrack | null): solved is Racetrack =>
  solved !== null && !("none" in solved);

/** The time belongs to the leg that the standard times. */
const legOf = ({ leg, standard }: Held): HoldLeg =>
  leg.by === "distance"
    ? { by: "distance", distance: leg.distanceNm }
    : { by: standard.timed === "inbound" ? "inbound-time" : "outbound-clock", seconds: leg.seconds };

const questionOf = (held: Held, trueAirspeed: number, wind: HoldQuestion["wind"]): HoldQuestion => ({
  inbound: held.inbound,
  turns: held.turns,
  trueAirspeed,
  wind,
  leg: legOf(held),
  turnRate: held.standard.turnRate,
  mostBank: held.standard.mostBank,
});

/** Nothing is asked where direction and speed of the wind are not known. */
export function askedBy(wind: WindFact | null, held: Held): Asked {
  if (wind?.knowledge !== "full" || wind.from === null || wind.speed === null || !wind.trueAirspeed)
    return NOTHING;
  const question = questionOf(held, wind.trueAirspeed, { from: wind.from, speed: wind.speed });
  const solved = solveRacetrack(question);
  const outbound: Seconds | null =
    held.leg.by === "time" ? held.leg.seconds : isSolved(solved) ? solved.outboundS : null;
  return {
    question,
    solved,
    doubt: isSolved(solved) ? racetrackDoubt(question, wind.ellipse95, wind.trueAirspeed95 ?? 0) : null,
    rules:
      outbound === null
        ? []
        : RULES.map((factor) => ruleOutcome(question, factor, outbound)).filter((r) => r !== null),
  };
}

/** The racetrack without wind at an airspeed; null where none is known, or where it has none. */
export function inStillAir(
  trueAirspeed: number | null,
  held: Held,
): { readonly question: HoldQuestion; readonly racetrack: Racetrack } | null {
  if (trueAirspeed === null || !(trueAirspeed > 0)) return null;
  const question = questionOf(held, trueAirspeed, { from: 0, speed: 0 });
  const racetrack = solveRacetrack(question);
  return isSolved(racetrack) ? { question, racetrack } : null;
}
