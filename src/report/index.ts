/** The report's door: a document in, words, tables, text and maps out. */
export { exercisesCsv, lapsCsv, legsCsv, pointsCsv } from "./csv.ts";
export { debriefGeoJson } from "./geojson.ts";
export { racetrackText } from "./racetrack-text.ts";
export { debriefText } from "./text.ts";
export { type WindReach, windReach } from "./wind-reach.ts";
export * from "./words/index.ts";
