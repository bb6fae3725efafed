/** What a reader makes of a file: the track, the points and routes beside it, and what was wrong. */
import type { Position } from "../geodesy/position.ts";
import type { Issue } from "../quantity/issue.ts";
import type { FeetMsl } from "../quantity/units.ts";
import type { Track } from "../track/track.ts";

/** A named place written in the file. */
export interface Waypoint extends Position {
  readonly ident: string;
  readonly altitude: FeetMsl | null;
}

export interface Route {
  readonly name: string;
  readonly points: readonly Waypoint[];
}

export interface ImportedLog {
  readonly file: string;
  readonly track: Track;
  readonly waypoints: readonly Waypoint[];
  readonly routes: readonly Route[];
  /** Points seen in the file, readable or not. */
  readonly pointsSeen: number;
  readonly issues: readonly Issue[];
}

/** Bytes in, in any number of pieces. A `File.stream()`, a Node stream and `[bytes]` all fit. */
export type ByteSource = AsyncIterable<Uint8Array> | Iterable<Uint8Array>;

export interface ReadOptions {
  /** Called now and then with the bytes read so far. */
  readonly onProgress?: (bytesRead: number) => void;
  /** Looked at between pieces; reading stops with a `Cancelled` error. */
  readonly signal?: { readonly aborted: boolean };
  /**
   * Of a table: which column is which, where its headings do not tell. A column is named by its heading as written, or
   * by its number from 1; a unit may follow in brackets, as in "Höhe [m]" or "4 [m]".
   */
  readonly csvColumns?: Readonly<Partial<Record<CsvColumn, string>>>;
}

/** What a table of points may tell. `time` may hold the date too; `utcOffset` is local less UTC, as in +12:00. */
export const CSV_COLUMNS = [
  "latitude",
  "longitude",
  "altitude",
  "pressureAltitude",
  "time",
  "date",
  "utcOffset",
  "groundSpeed",
  "trackAngle",
  "headingTrue",
  "headingMagnetic",
  "trueAirspeed",
  "indicatedAirspeed",
  "outsideAir",
  "hdop",
] as const;
export type CsvColumn = (typeof CSV_COLUMNS)[number];
