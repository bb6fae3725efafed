/** The door of the track wing: the recorded flight, cleaned. */
export { type CleanedTrack, cleanTrack } from "./clean.ts";
export type { Column, LogKind, Track } from "./track.ts";
