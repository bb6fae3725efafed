/** The door of the track wing: the recorded flight cleaned, its smoothed motion, and its straights and turns. */
export { type CleanedTrack, cleanTrack } from "./clean.ts";
export { findLegs } from "./legs.ts";
export { smoothTrack } from "./smooth.ts";
export { taxiSpeed } from "./taxi.ts";
export type { Column, LogKind, Track } from "./track.ts";
