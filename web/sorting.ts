/** Which of the files given together is the log and which the brief, told by what is in them. */

export type FileRole = "log" | "brief";

const BRIEF_NAME = /\.(ya?ml|json)$/i;
/** As a brief begins in YAML or JSON, wherever comments and order put it. */
const BRIEF_KEY = /^\s*["']?(brief|exercises|fixes)["']?\s*:/m;

/** The role of a file from its name and its first few thousand characters. */
export function fileRole(name: string, beginning: string): FileRole {
  const text = beginning.replace(/^\uFEFF/, "").trimStart();
  if (text.startsWith("<")) return "log";
  if (text.startsWith("{") || BRIEF_KEY.test(text)) return "brief";
  return BRIEF_NAME.test(name) ? "brief" : "log";
}

export interface Sorted<F> {
  readonly logs: readonly F[];
  readonly brief: F | null;
  readonly leftOut: readonly F[];
}

/** All logs, which are of one flight, and the first brief; other briefs are left out. */
export function sortFiles<F>(files: readonly { readonly file: F; readonly role: FileRole }[]): Sorted<F> {
  const brief = files.find((f) => f.role === "brief");
  return {
    logs: files.filter((f) => f.role === "log").map((f) => f.file),
    brief: brief?.file ?? null,
    leftOut: files.filter((f) => f.role === "brief" && f !== brief).map((f) => f.file),
  };
}
