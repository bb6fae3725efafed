/** The report's door: a document in, words, tables, text and maps out. */

export { exercisesCsv, legsCsv, verdictsCsv } from "./csv.ts";
export { approachesCsv } from "./csv-approach.ts";
export { lapsCsv } from "./csv-laps.ts";
export { pointsCsv } from "./csv-points.ts";
export { debriefGeoJson } from "./geojson.ts";
export { habitsText } from "./habits-text.ts";
export { type Carried, carriedFlight, oneFileHtml } from "./one-file.ts";
export { racetrackText } from "./racetrack-text.ts";
export { debriefText } from "./text.ts";
export { type WindReach, windReach } from "./wind-reach.ts";
export * from "./words/index.ts";
