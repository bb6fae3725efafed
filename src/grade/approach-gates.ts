/** The criteria of a stable approach, 1,000 and 500 ft above the threshold: what a log shows of it. */
import type { ApproachFacts } from "../approach/facts.ts";
import type { Criterion, Found } from "./criterion.ts";

type Gate = ApproachFacts["gates"][number];

/** Why the lateral needle cannot be judged, where it cannot. */
export const needleUntold = ({ cannotTell }: ApproachFacts): string | null =>
  cannotTell.find(({ fact }) => fact === "needle")?.reason ?? null;

/** A gate that was passed in a silence has its doubt from it. */
const inSilence = ({ silentS }: Gate): { doubtIs?: string } =>
  silentS == null ? {} : { doubtIs: "log-silent" };

/** A log without times has no moments: neither fix nor gates are looked for. */
export const momentUntold = ({ cannotTell }: Pick<ApproachFacts, "cannotTell">, reason: string): string =>
  cannotTell.some((c) => c.reason === "no-times") ? "no-times" : reason;

/** Why a gate that the log does not pass is not judged: it was never flown to where the aircraft climbed or turned away above it beyond doubt. */
function notPassed(facts: ApproachFacts, gate: Gate | undefined): Found {
  const { height, missed, brokeOff } = facts;
  if (!height) return { cannotTell: "no-height" };
  const above = missed || brokeOff ? (gate?.nearestFt ?? 0) : 0;
  return above > height.doubt95Ft
    ? { notFlown: missed ? "climbed-above" : "turned-away-above" }
    : { cannotTell: momentUntold(facts, "gate-not-passed") };
}

/** Stable 1,000 and 500 ft above the threshold: what a log shows of it. */
export function gateCriteria(heightFt: number): Criterion<ApproachFacts>[] {
  const name = heightFt === 1000 ? "At 1,000 ft" : `At ${heightFt} ft`;
  const gateOf = ({ gates }: ApproachFacts) => gates.find((gate) => gate.heightFt === heightFt);
  const needle = (
    id: string,
    title: string,
    part: "lateral" | "vertical",
    asked: (facts: ApproachFacts) => boolean,
  ): Criterion<ApproachFacts> => ({
    id: `approach-gate-${heightFt}-${id}`,
    title: `${name}, ${title}`,
    unit: "share",
    limit: ({ approach }) => approach.gates.needle,
    find(facts): Found | null {
      if (!asked(facts)) return null;
      const gate = gateOf(facts);
      if (!gate?.utc) return notPassed(facts, gate);
      const untold = part === "lateral" ? needleUntold(facts) : null;
      if (untold) return { cannotTell: untold };
      const shown = gate[part];
      if (!shown) return part === "lateral" ? { cannotTell: "near-station" } : null;
      const { value, doubt95 } = shown;
      return { value: Math.abs(value), doubt95, beyond: null, worstUtc: gate.utc, ...inSilence(gate) };
    },
  });
  return [
    needle("needle", "needle", "lateral", () => true),
    needle("glide-path", "glide path needle", "vertical", ({ glidePath }) => glidePath?.supposed === false),
    {
      id: `approach-gate-${heightFt}-sink`,
      title: `${name}, rate of descent`,
      unit: "ft/min",
      limit: ({ approach }) => approach.gates.sink,
      find(facts): Found {
        const gate = gateOf(facts);
        if (!gate?.utc) return notPassed(facts, gate);
        if (gate.verticalFpm === null || gate.vertical95Fpm === null) return { cannotTell: "log-silent" };
        return {
          value: -gate.verticalFpm,
          oneSided: true,
          doubt95: gate.vertical95Fpm,
          beyond: null,
          worstUtc: gate.utc,
          ...inSilence(gate),
        };
      },
    },
  ];
}
