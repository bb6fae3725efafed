/** The door of the track wing: the recorded flight cleaned, its smoothed motion, and its straights and turns. */
export { airborneRows } from "./airborne.ts";
export { type CleanedTrack, cleanTrack } from "./clean.ts";
export { type DescentFound, descentBefore } from "./descent.ts";
export { type Flight, findFlights } from "./flights.ts";
export { findLegs } from "./legs.ts";
export { passageRow } from "./passage.ts";
export { cutTrack } from "./rows.ts";
export { smoothTrack } from "./smooth.ts";
export { taxiSpeed } from "./taxi.ts";
export type { Column, LogKind, Track } from "./track.ts";
