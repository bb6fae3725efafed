/** Numbers stay with their units and doubts with their sign where a line ends: the space between them does not break. */

const UNITS = /(\d) (?=%|kt\b|NM\b|ft\b|s\b|min\b|h\b|seconds?\b|times\b|tolerances?\b)/g;

export const bound = (sentence: string): string =>
  sentence.replace(UNITS, "$1\u00a0").replaceAll("± ", "±\u00a0");
