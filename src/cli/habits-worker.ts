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

/** One flight of a log, or of a document. */
export interface SeenFlight {
  readonly observed: ObservedFlight;
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

/** Never throws for what is wrong with a file: one bad file leaves the others alone. */
export default async function observe(task: FlightTask): Promise<FlightResult> {
  const { flight, pilot, aircraft } = task;
  try {
    const { documents, reused } = await documentsOf(task);
    const flights = documents.map((document): SeenFlight => {
      const name = documents.length > 1 ? `${flight.name}, flight ${document.log.flight + 1}` : flight.name;
      return {
        observed: observeFlight(document, { id: name, pilot, aircraft }),
        csv: exercisesCsv(document, { flight: name, pilot, aircraft }),
        beware: bewareOf(document, flight.name),
      };
    });
    return { done: true, flights, reused };
  } catch (error) {
    if (error instanceof UnusableInput)
      return { done: false, why: error.issues.map((issue) => issueWords(issue, flight)) };
    if (error instanceof UnusableFile) return { done: false, why: [error.message] };
    if (error instanceof UnusableDebrief) return { done: false, why: [`${flight.path}: ${error.message}`] };
    const what = error instanceof Error ? error.message : error;
    return { done: false, why: [`${flight.path}: the program failed on it; the fault is its own (${what})`] };
  }
}
