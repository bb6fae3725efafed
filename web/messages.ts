/** What the page and its worker say to each other. */
import type {
  Carried,
  CsvColumn,
  DocumentIssue,
  ListedPoint,
  ReadPoints,
  TableBeginning,
} from "../src/index.ts";
import type { LeftOutBrief } from "./several.ts";
import type { Arrival } from "./store/schema.ts";

/** Files as dropped, and, where the log's own route is to be the brief, which one. */
export interface OpenRequest {
  readonly files: readonly File[];
  readonly route: number | null;
  /** Which flight, of a log that holds several. Null: the longest that went anywhere. */
  readonly flight: number | null;
  /** Which column of a table is which, where the reader had to say so. */
  readonly columns: Readonly<Partial<Record<CsvColumn, string>>> | null;
  /** Id of a published standard or of one that this browser keeps, or "none". Null: the school's own if its file is given, else what the brief names, else the usual one. */
  readonly standard: string | null;
}

/** A school's standard that this browser keeps. */
export interface SchoolStandard {
  readonly id: string;
  readonly title: string;
  /** Held against where nobody names one. */
  readonly usual: boolean;
}

/** A list of points, to be read away from the page. */
export interface ListRequest {
  readonly list: File;
}

/** A table of which the reader must say which column is which, and what was to be opened. */
export interface ColumnQuestion extends TableBeginning {
  readonly file: string;
  readonly request: OpenRequest;
  /** Where the files lie in the meantime; null where this browser keeps nothing. */
  readonly arrival: Arrival | null;
}

/** A route in the log that could serve as the brief. */
export interface RouteOffer {
  readonly name: string;
  readonly idents: readonly string[];
}

export interface Debriefed extends Carried {
  readonly routes: readonly RouteOffer[];
  /** Points that the log names. */
  readonly waypoints: readonly ListedPoint[];
  /** The brief as text, to be edited; null where there is none. */
  readonly briefText: { readonly file: string; readonly text: string } | null;
  /** Title of the school's own standard, where its file was given. */
  readonly school: string | null;
  /** Standards that this browser keeps. */
  readonly standards: readonly SchoolStandard[];
  /** Names of briefs and standards that were given beside the one that was taken. */
  readonly leftOut: readonly string[];
  /** Logs given with the one that is shown, which could not be read. */
  readonly unread: readonly Unread[];
}

/** One of several flights whose files were given together. */
export interface FlightFiles {
  /** Indexes among the files of the request, its brief included. */
  readonly files: readonly number[];
}

/** A file that could not be read, and why. */
export interface Unread {
  readonly file: string;
  readonly issues: readonly DocumentIssue[];
}

export type WorkerMessage =
  | { readonly kind: "reading"; readonly file: string; readonly share: number }
  | { readonly kind: "working" }
  | { readonly kind: "done"; readonly flight: Debriefed }
  /** The files are of more than one flight: each is to be opened by itself. */
  | {
      readonly kind: "several";
      readonly flights: readonly FlightFiles[];
      readonly unread: readonly Unread[];
      readonly leftOut: readonly LeftOutBrief[];
    }
  | ({ readonly kind: "list" } & ReadPoints)
  | { readonly kind: "unusable"; readonly issues: readonly DocumentIssue[] }
  | ({ readonly kind: "columns"; readonly file: string } & TableBeginning)
  /** A fault of ours, not of the files. */
  | { readonly kind: "fault"; readonly text: string };
