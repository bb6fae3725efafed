/** The hold of the next flight: what stands in its fields, and how a sheet fills them. */
import { signal } from "@preact/signals";
import type { DebriefDocument, HoldFacts, TypedHold, WindRecord } from "../src/index.ts";
import { isFull, threeFigures } from "../src/index.ts";

/** Kept while the page stands, so that going to the sheet and back loses nothing. */
export const typedHold = signal<TypedHold>({ turns: "right", timing: "us" });

const legText = (leg: HoldFacts["leg"]): string => {
  if (leg.by === "distance") return `${leg.distanceNm} NM`;
  return leg.seconds % 60 === 0 ? `${leg.seconds / 60} min` : `${leg.seconds} s`;
};

const windText = (wind: WindRecord | null, variation: number): string =>
  wind && isFull(wind) ? `${threeFigures(wind.fromTrueDeg - variation)}/${Math.round(wind.speedKt)}` : "";

/**
 * A hold of the sheet in its own wind, or without one the wind of the day. Magnetic where the variation is known, as
 * the course is published and flown so; else true, marked T.
 */
export function filledFrom(document: DebriefDocument, facts: HoldFacts | null): TypedHold {
  const wind = facts?.wind && isFull(facts.wind) ? facts.wind : document.wind;
  const variation =
    facts === null
      ? (document.variation?.degrees ?? null)
      : facts.inboundMagneticDeg === null
        ? null
        : facts.inboundTrueDeg - facts.inboundMagneticDeg;
  const mark = variation === null ? "T" : "";
  const tas = facts?.speed?.trueKt ?? document.brief?.aircraft?.tasKt ?? wind?.tasKt ?? null;
  const doubt = wind && isFull(wind) ? (wind.ellipse95Kt?.majorKt ?? null) : null;
  const inbound = facts && threeFigures(facts.inboundTrueDeg - (variation ?? 0));
  return {
    turns: facts?.turns ?? "right",
    timing: facts?.timing ?? "us",
    wind: windText(wind, variation ?? 0).replace("/", `${mark}/`),
    ...(inbound === null ? {} : { inbound: `${inbound}${mark}` }),
    ...(tas === null ? {} : { tas: String(Math.round(tas)) }),
    ...(facts ? { leg: legText(facts.leg) } : {}),
    ...(facts?.altitude?.targetFt ? { altitude: String(facts.altitude.targetFt) } : {}),
    ...(doubt === null ? {} : { windDoubt: doubt.toFixed(1) }),
  };
}
