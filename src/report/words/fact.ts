/** What the sentences of findings read from their facts: numbers, those that may be missing, directions with both norths. */
import type { Finding } from "../../debrief/document.ts";
import { flownDirection } from "./number.ts";

type Facts = Finding["facts"];

/** A sentence of a finding. */
export type FindingWords = (facts: Facts, finding: Finding) => string;

export const num = (fact: unknown): number => Number(fact);
/** Null where it is missing. */
export const given = (fact: unknown): number | null => (typeof fact === "number" ? fact : null);

/** A course, radial or track that stands in the facts true and magnetic. */
export const directionFact = (facts: Facts, what: "course" | "radial" | "track"): string =>
  flownDirection(num(facts[`${what}TrueDeg`]), given(facts[`${what}MagneticDeg`]));
