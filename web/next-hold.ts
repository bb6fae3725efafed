/** The hold of the next flight: what stands in its fields, and how a sheet fills them. */
import { signal } from "@preact/signals";
import type { DebriefDocument, HoldFacts, TypedHold, WindRecord } from "../src/index.ts";
import { compassVariation, isFull, threeFigures, variationText } from "../src/index.ts";

/** Kept while the page stands, so that going to the sheet and back loses nothing. */
export const typedHold = signal<TypedHold>({ turns: "right", timing: "us" });

const legText = (leg: HoldFacts["leg"]): string => {
  if (leg.by === "distance") return `${leg.distanceNm} NM`;
  return leg.seconds % 60 === 0 ? `${leg.seconds / 60} min` : `${leg.seconds} s`;
};

const windText = (wind: WindRecord | null, variation: number): string =>
  wind && isFull(wind) ? `${threeFigures(wind.fromTrueDeg - variation)}/${Math.round(wind.speedKt)}` : "";

/** Both, where a station's is not the variation of the day: the course is published by the one, headings are flown by the other. */
function declinationOf(facts: HoldFacts | null): Pick<TypedHold, "variation" | "declination"> {
  if (!facts) return {};
  const degrees = facts.variation?.degrees ?? 0;
  const [declination, variation] = [degrees, compassVariation(facts.variation) ?? degrees].map((east) =>
    variationText(east).replace("°", ""),
  );
  return declination === variation ? { declination: "" } : { declination, variation };
}

/**
 * A hold of the sheet in its own wind, or without one the wind of the day. Magnetic where the variation is known, as
 * the course is published and flown so; else true, marked T.
 */
export function filledFrom(document: DebriefDocument, facts: HoldFacts | null): TypedHold {
  const wind = facts?.wind && isFull(facts.wind) ? facts.wind : document.wind;
  const variation = facts ? compassVariation(facts.variation) : (document.variation?.degrees ?? null);
  const mark = variation === null ? "T" : "";
  const tas = facts?.speed?.trueKt ?? document.brief?.aircraft?.tasKt ?? wind?.tasKt ?? null;
  const doubt = wind && isFull(wind) ? (wind.ellipse95Kt?.majorKt ?? null) : null;
  const inbound =
    facts &&
    threeFigures(
      variation === null
        ? facts.inboundTrueDeg
        : (facts.inboundMagneticDeg ?? facts.inboundTrueDeg - variation),
    );
  return {
    turns: facts?.turns ?? "right",
    timing: facts?.timing ?? "us",
    wind: windText(wind, variation ?? 0).replace("/", `${mark}/`),
    ...declinationOf(facts),
    ...(inbound === null ? {} : { inbound: `${inbound}${mark}` }),
    ...(tas === null ? {} : { tas: String(Math.round(tas)) }),
    ...(facts ? { leg: legText(facts.leg) } : {}),
    ...(facts?.altitude?.targetFt ? { altitude: String(facts.altitude.targetFt) } : {}),
    ...(doubt === null ? {} : { windDoubt: doubt.toFixed(1) }),
  };
}
