/** Which gates were passed with something out of the published criteria, and whether the approach was continued; and what changed there that no text limits. */
import type { Finding } from "../quantity/record.ts";
import type { AngleSize, Knots } from "../quantity/units.ts";
import { BANK_FROM, STABILISED } from "../standard/stabilised.ts";
import { type ApproachFacts, onWheels } from "./facts.ts";

type Gate = ApproachFacts["gates"][number];

/** The least that any of the published texts asks for; infinite where none has a limit. */
const least = (of: "lateral" | "vertical" | "mostSink" | "mostBankLow"): number =>
  Math.min(...STABILISED.map((criteria) => criteria[of] ?? Number.POSITIVE_INFINITY));
const LATERAL = least("lateral");
const VERTICAL = least("vertical");
const SINK = least("mostSink");
const BANK = least("mostBankLow");
/** Chosen: no text gives a limit for a change of ground speed or a track. */
const SPEED_CHANGE: Knots = 15;
const TRACK: AngleSize = 6;

/** What was out at a gate beyond its doubt, as codes. The bank at the lower gate alone: above it no text limits it. */
function outAt(gate: Gate, verticalFpm: number | null, supposed: boolean): string[] {
  const { lateral, vertical, vertical95Fpm, bankDeg } = gate;
  const beyond = (needle: Gate["lateral"], limit: number): boolean =>
    needle !== null && Math.abs(needle.value) - needle.doubt95 > limit;
  const out: [string, boolean][] = [
    ["lateral", beyond(lateral, LATERAL)],
    ["vertical", !supposed && beyond(vertical, VERTICAL)],
    ["rate", verticalFpm !== null && -verticalFpm - (vertical95Fpm ?? 0) > SINK],
    ["bank", gate.heightFt <= BANK_FROM && Math.abs(bankDeg ?? 0) > BANK],
  ];
  return out.filter(([, is]) => is).map(([code]) => code);
}

/** Each gate that was passed with something out, and flown on below. */
export function unstable({ gates, glidePath, outcome, missed, runway }: ApproachFacts): Finding[] {
  return gates.flatMap((gate): Finding[] => {
    if (!gate.utc) return [];
    const out = outAt(gate, gate.verticalFpm, glidePath?.supposed === true);
    if (out.length === 0) return [];
    // a wheel on the runway may read a few feet under its threshold
    const lowest = missed && Math.max(0, missed.lowestFt - (runway.elevationFt ?? Number.NaN));
    return [
      {
        code: "unstable-at-gate",
        facts: {
          heightFt: gate.heightFt,
          out: out.join(", "),
          lateralNeedle: gate.lateral?.value ?? null,
          verticalNeedle: gate.vertical?.value ?? null,
          verticalFpm: gate.verticalFpm,
          bankDeg: gate.bankDeg,
          continued: onWheels(outcome) || lowest !== null,
          lowestAboveThresholdFt: lowest,
        },
        evidence: { fromUtc: gate.utc, toUtc: gate.utc },
      },
    ];
  });
}

/** What changed much on the way to a gate, though no text has a limit for it: it says nothing of stable or not. */
export function unsteady({ gates }: ApproachFacts): Finding[] {
  return gates.flatMap(({ utc, heightFt, groundSpeedChangeKt, trackUnsteadyDeg }): Finding[] => {
    const speed = Math.abs(groundSpeedChangeKt ?? 0) > SPEED_CHANGE ? groundSpeedChangeKt : null;
    const track = (trackUnsteadyDeg ?? 0) > TRACK ? trackUnsteadyDeg : null;
    if (!utc || (speed === null && track === null)) return [];
    const facts = { heightFt, groundSpeedChangeKt: speed, trackUnsteadyDeg: track };
    return [{ code: "unsteady-at-gate", facts, evidence: { fromUtc: utc, toUtc: utc } }];
  });
}
