/** Which gates were passed with something out of the published criteria, and whether the approach was continued. */
import type { Finding } from "../quantity/record.ts";
import type { ApproachFacts } from "./facts.ts";

/** What is said to be unstable at a gate: numbers of the published criteria, and where those have none, chosen. */
const STABLE = {
  needle: 0.5,
  sinkFpm: 1000,
  bankDeg: 15,
  /** Chosen: no text gives a limit for a ground speed or a track. */
  speedChangeKt: 15,
  trackDeg: 6,
} as const;
/** Each gate that was passed with something out, and flown on below. */
export function unstable({ gates, glidePath, outcome, missed }: ApproachFacts): Finding[] {
  return gates.flatMap((gate): Finding[] => {
    if (!gate.utc || gate.verticalFpm === null) return [];
    const out = [
      ...(gate.lateral && Math.abs(gate.lateral.value) - gate.lateral.doubt95 > STABLE.needle
        ? ["lateral"]
        : []),
      ...(gate.vertical &&
      !glidePath?.supposed &&
      Math.abs(gate.vertical.value) - gate.vertical.doubt95 > STABLE.needle
        ? ["vertical"]
        : []),
      ...(-gate.verticalFpm > STABLE.sinkFpm ? ["rate"] : []),
      ...(Math.abs(gate.bankDeg ?? 0) > STABLE.bankDeg ? ["bank"] : []),
      ...(Math.abs(gate.groundSpeedChangeKt ?? 0) > STABLE.speedChangeKt ? ["speed"] : []),
      ...((gate.trackUnsteadyDeg ?? 0) > STABLE.trackDeg ? ["track"] : []),
    ];
    if (out.length === 0) return [];
    const lowest = missed ? missed.lowestFt : null;
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
          groundSpeedChangeKt: gate.groundSpeedChangeKt,
          trackUnsteadyDeg: gate.trackUnsteadyDeg,
          continued: outcome === "landed" || lowest !== null,
          lowestFt: lowest,
        },
        evidence: { fromUtc: gate.utc, toUtc: gate.utc },
      },
    ];
  });
}
