/** The door of the track wing: the smoothed motion of a log, and its straights and turns. */
export { findLegs } from "./legs.ts";
export { smoothTrack } from "./smooth.ts";
