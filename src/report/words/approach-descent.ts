/** The way down an approach in words: rates and levels, the minimum, the gates, and what the heights are worth. */
import type { ApproachFacts } from "../../debrief/document.ts";
import { beforeThreshold, unseenWhere } from "./approach-finding.ts";
import { feet, needleWords, rate, seconds } from "./measured.ts";
import { capital, clockSeconds, count } from "./number.ts";

type Gate = ApproachFacts["gates"][number];
type Unseen = NonNullable<NonNullable<ApproachFacts["minimum"]>["unseen"]>;

/** How low it may have come unseen. */
const maybeLower = (altitude: number, { seconds: silence }: Unseen): string =>
  `${silence === null ? "between two points" : `in ${seconds(silence)} without a point`} maybe down to ${count(Math.round(altitude / 10) * 10)} ft`;

export function wayDown({ descent, stepDowns, minimum }: ApproachFacts): string | null {
  if (!descent) return null;
  const levels = descent.levels
    .slice(0, 3)
    .map((l) => `level at about ${count(Math.round(l.altitudeFt / 50) * 50)} ft for ${seconds(l.seconds)}`);
  const steps = stepDowns.flatMap((s) =>
    s.marginFt === null
      ? []
      : [
          `${feet(Math.abs(s.marginFt))} ${s.marginFt >= 0 ? "above" : "below"} the ${count(s.limitFt)} ft of ${s.name} at the lowest${s.silence ? " that the log shows" : ""}${s.unseen ? `, ${maybeLower(s.limitFt - s.unseen.most, s.unseen)}` : ""}`,
        ],
  );
  const reached =
    minimum?.passedUtc && minimum.passedNm !== null
      ? [
          `the ${minimum.kind === "descent" ? "minimum descent" : "decision"} altitude passed ${beforeThreshold(minimum.passedNm)}`,
        ]
      : minimum?.passedIn
        ? [
            `the ${minimum.kind === "descent" ? "minimum descent" : "decision"} altitude passed ${unseenWhere(minimum.passedIn.seconds, minimum.passedIn.fromNm, minimum.passedIn.toNm)}`,
          ]
        : [];
  const lower = minimum?.unseen ? [maybeLower(minimum.altitudeFt - minimum.unseen.most, minimum.unseen)] : [];
  const first = `Down at ${rate(descent.meanFpm)} in the mean, at most ${rate(descent.mostFpm)}`;
  return `${[first, ...levels, ...steps, ...reached, ...lower].join("; ")}.`;
}

export function gateNote(gate: Gate): string | null {
  if (gate.utc === null || gate.distanceNm === null) return null;
  const told = [
    ...(gate.lateral ? [`needle ${needleWords(gate.lateral.value)}`] : []),
    ...(gate.vertical
      ? [`glide path ${needleWords(gate.vertical.value)} ${gate.vertical.value > 0 ? "above" : "below"}`]
      : []),
    ...(gate.verticalFpm === null
      ? []
      : [`${rate(gate.verticalFpm)} ${gate.verticalFpm > 0 ? "up" : "down"}`]),
    ...(gate.groundSpeedKt === null ? [] : [`${Math.round(gate.groundSpeedKt)} kt over the ground`]),
    ...(gate.bankDeg === null ? [] : [`bank at most ${Math.round(Math.abs(gate.bankDeg))}°`]),
    ...(gate.silentS == null ? [] : [`all of it in ${seconds(gate.silentS)} without a point`]),
  ];
  return `${capital(beforeThreshold(gate.distanceNm))}, ${clockSeconds(gate.utc)} UTC: ${told.join(", ")}.`;
}

/** What the heights are worth: said of every approach that has any. */
export function datum({ height }: ApproachFacts): string | null {
  if (!height) return null;
  const doubt = `± ${feet(height.doubt95Ft)} at the end of the final`;
  if (height.anchored === "log") return `As the log gives them, of unknown datum, ${doubt}.`;
  const by =
    Math.abs(height.correctionFt) < 0.5
      ? "nothing to correct"
      : `${count(Math.abs(height.correctionFt))} ft ${height.correctionFt > 0 ? "added" : "taken off"}`;
  const where = height.anchored === "runway" ? "rolled on the runway" : "stood on the field";
  return `By GPS, tied to the elevation where the aircraft ${where}: ${by}, ${doubt}.`;
}
