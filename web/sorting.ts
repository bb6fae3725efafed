/** Which of the files given together is the log, which the brief and which the school's standard, told by what is in them. */

export type FileRole = "log" | "brief" | "standard";

const BRIEF_NAME = /\.(ya?ml|json)$/i;
/** As a brief begins in YAML or JSON, wherever comments and order put it. */
const BRIEF_KEY = /(?:^|[{,])\s*["']?(?:brief|exercises|fixes)["']?\s*:/m;
/** A standard names the version of its format; a brief names a standard. */
const STANDARD_KEY = /(?:^|[{,])\s*["']?standard["']?\s*:\s*\d+\s*(?:[,}#]|$)/m;

/** Enough to see past a comment at the head of a brief. */
export const BEGINNING_BYTES = 4096;

/** The role of a file from its name and its first few thousand characters. */
export function fileRole(name: string, beginning: string): FileRole {
  const text = beginning.replace(/^\uFEFF/, "").trimStart();
  if (text.startsWith("<")) return "log";
  if (BRIEF_KEY.test(text)) return "brief";
  if (STANDARD_KEY.test(text)) return "standard";
  return text.startsWith("{") || BRIEF_NAME.test(name) ? "brief" : "log";
}

/** Whether a file begins as a list of points does: a table with idents and places, and no times, which only a log has. */
export function isPointList(beginning: string): boolean {
  const text = beginning.replace(/^\uFEFF/, "").trimStart();
  if (/^[<{[]/.test(text)) return false;
  const headings = text.split(/[\r\n]+/).find((line) => line.trim() !== "" && !line.startsWith("#"));
  const has = (heading: RegExp) => heading.test(headings ?? "");
  return (
    has(/\b(?:ident(?:ifier)?|name|fix)\b/i) &&
    has(/\blat/i) &&
    has(/\blo?ng?/i) &&
    !has(/\b(?:time|date|utc)/i)
  );
}

export interface Sorted<F> {
  readonly logs: readonly F[];
  readonly brief: F | null;
  /** All of them, the one above first. */
  readonly briefs: readonly F[];
  readonly standard: F | null;
  readonly leftOut: readonly F[];
}

/** All logs, which are of one flight, the first brief and the first standard; others of these are left out. */
export function sortFiles<F>(files: readonly { readonly file: F; readonly role: FileRole }[]): Sorted<F> {
  const of = (role: FileRole) => files.filter((f) => f.role === role).map((f) => f.file);
  const briefs = of("brief");
  const [brief = null, ...otherBriefs] = briefs;
  const [standard = null, ...otherStandards] = of("standard");
  return { logs: of("log"), brief, briefs, standard, leftOut: [...otherBriefs, ...otherStandards] };
}

/** The files of a flight on the sheet, with those given later in place of what they replace; a new log makes a new flight. */
export function addedTo<F>(standing: Sorted<F> | null, given: Sorted<F>): readonly F[] {
  const all = (s: Omit<Sorted<F>, "briefs">): F[] => [
    ...s.logs,
    ...[s.brief, s.standard].flatMap((f) => (f === null ? [] : [f])),
    ...s.leftOut,
  ];
  if (standing === null || given.logs.length > 0) return all(given);
  const brief = given.brief ?? standing.brief;
  const standard = given.standard ?? standing.standard;
  return all({ logs: standing.logs, brief, standard, leftOut: given.leftOut });
}

export const isStandardFile = async (file: File): Promise<boolean> =>
  fileRole(file.name, await file.slice(0, BEGINNING_BYTES).text()) === "standard";

/** Files sorted by what they begin with. */
export async function sortedFiles(files: readonly File[]): Promise<Sorted<File>> {
  const beginnings = files.map(async (file) => ({
    file,
    role: fileRole(file.name, await file.slice(0, BEGINNING_BYTES).text()),
  }));
  return sortFiles(await Promise.all(beginnings));
}
