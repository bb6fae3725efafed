/** What the reader of one format gives when the file is through. */
import type { Track } from "../track/track.ts";
import type { Route, Waypoint } from "./imported.ts";
import type { XmlReader } from "./xml-stream.ts";

export interface Found {
  readonly track: Track;
  readonly waypoints: readonly Waypoint[];
  readonly routes: readonly Route[];
  readonly pointsSeen: number;
}

/** A format made of elements. `finish` gets the name to use where the file has none. */
export interface XmlLogReader extends XmlReader {
  finish(file: string): Found;
}

/** A format made of lines, which come without their ends; `line` counts from 1. */
export interface LineLogReader {
  readLine(text: string, line: number): void;
  finish(file: string): Found | Promise<Found>;
}
