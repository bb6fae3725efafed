/** One file of a folder, on a core of its own: what its flights show. */
import {
  type DebriefDocument,
  exercisesCsv,
  type Issue,
  issueSentence,
  logCautions,
  type ObservedFlight,
  observeFlight,
  UnusableInput,
} from "../index.ts";
import { documentsOf, type FlightTask, UnusableDebrief } from "./documents-of.ts";
import type { FolderFlight } from "./folder.ts";
import { UnusableFile } from "./output.ts";
import { type FlightMark, markOf } from "./same-flight.ts";

/** One flight of a log, or of a document. */
export interface SeenFlight {
  readonly observed: ObservedFlight;
  /** By which it is known again in another file. */
  readonly mark: FlightMark;
  /** With a line of headings. */
  readonly csv: string;
  /** What a reader must know of the log before believing the rest. */
  readonly beware: readonly string[];
}

export type FlightResult =
  | {
      readonly done: true;
      readonly flights: readonly SeenFlight[];
      readonly reused: boolean;
      readonly mended: readonly string[];
      readonly broken: readonly string[];
    }
  | { readonly done: false; readonly why: readonly string[] };

/** The file was not read to its end. */
const BROKEN_OFF = new Set(["broken-xml", "broken-archive", "archive-too-big"]);

/** What stands at the top of the sheet, and that the file breaks off; each with the name of the flight. */
function bewareOf(document: DebriefDocument, name: string): string[] {
  const broken = document.log.issues.filter(({ code }) => BROKEN_OFF.has(code)).map(issueSentence);
  return [...broken, ...logCautions(document)].map((sentence) =>
    sentence.startsWith(name) ? sentence : `${name}: ${sentence}`,
  );
}

/** A log is known by its name in the folder; where something is wrong with it, by where it lies. */
const issueWords = (issue: Issue, { name, path }: FolderFlight): string =>
  issueSentence(issue.where.file === name ? { ...issue, where: { ...issue.where, file: path } } : issue);

/** A debrief that cannot be used, and what became of its flight. */
const debriefWords = ({ path, log }: FolderFlight, { message }: UnusableDebrief): string =>
  `${path}: ${message}; ${log === null ? "make it again from its log" : `its log ${log} was worked out anew`}.`;

/** Never throws for what is wrong with a file: one bad file leaves the others alone. */
export default async function observe(task: FlightTask): Promise<FlightResult> {
  const { flight } = task;
  try {
    const { documents, ...came } = await documentsOf(task);
    const flights = documents.map((document): SeenFlight => {
      // what the table of the folder does not say, the debrief itself may
      const pilot = task.pilot ?? (document.flownBy?.pilot || null);
      const aircraft = task.aircraft ?? (document.flownBy?.aircraft || null);
      const name = documents.length > 1 ? `${flight.name}, flight ${document.log.flight + 1}` : flight.name;
      return {
        observed: observeFlight(document, { id: name, pilot, aircraft }),
        mark: markOf(document),
        csv: exercisesCsv(document, { flight: name, pilot, aircraft }),
        beware: bewareOf(document, flight.name),
      };
    });
    return { done: true, flights, ...came };
  } catch (error) {
    if (error instanceof UnusableInput)
      return { done: false, why: error.issues.map((issue) => issueWords(issue, flight)) };
    if (error instanceof UnusableFile) return { done: false, why: [error.message] };
    if (error instanceof UnusableDebrief) return { done: false, why: [debriefWords(flight, error)] };
    const what = error instanceof Error ? error.message : error;
    return { done: false, why: [`${flight.path}: the program failed on it; the fault is its own (${what})`] };
  }
}
