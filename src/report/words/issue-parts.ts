/** Turns of phrase that the words of every issue share: what is known, quoted, or may have been meant. */
import type { DocumentIssue } from "../../debrief/document.ts";

export type Facts = DocumentIssue["facts"];
export type Words = (facts: Facts) => string;

export const known = (fact: unknown): boolean => fact !== null && fact !== undefined && fact !== "";
export const quote = (fact: unknown): string => `“${String(fact)}”`;
export const maybe = (facts: Facts): string =>
  known(facts.didYouMean) ? ` Did you mean ${quote(facts.didYouMean)}?` : "";
