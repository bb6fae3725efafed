/** Where the terminal writes: results on stdout or into a folder, complaints on stderr, one line each. */
import { writeFile } from "node:fs/promises";
import { join } from "node:path";
import picocolors from "picocolors";
import { type Cancelled, issueSentence, UnusableInput } from "../index.ts";
import { makeFolder } from "./make-folder.ts";

/** A file that cannot be opened or written. */
export class UnusableFile extends Error {
  constructor(path: string, doing: "read" | "write", cause: NodeJS.ErrnoException) {
    const reasons: Record<string, string> = {
      ENOENT:
        doing === "read"
          ? "there is no such file; check the path"
          : "no folder can be made there; name another",
      EISDIR: "it is a folder; name a file in it",
      EACCES: "this user may not; check its permissions",
      ENOTDIR: "a part of its path is a file, not a folder",
      EEXIST: "a file of that name is in the way; choose another folder",
    };
    super(`${path}: cannot ${doing} it: ${reasons[cause.code ?? ""] ?? cause.message}`);
    this.name = "UnusableFile";
  }
}

const { red, dim } = picocolors.createColors(process.stderr.isTTY ?? false);

/** One line an issue: what, where and what to do. */
export function complain(error: UnusableInput | UnusableFile | Cancelled): void {
  const lines = error instanceof UnusableInput ? error.issues.map(issueSentence) : [error.message];
  for (const line of lines) complainOf(line);
}

/** A complaint on its line. */
export function complainOf(line: string): void {
  process.stderr.write(`${red("hindtrack:")} ${line}\n`);
}

/** A remark that is no part of the result. */
export function note(text: string): void {
  process.stderr.write(`${dim(text)}\n`);
}

/** More lines of one kind are counted, not printed. Chosen: a screenful. */
const MOST_SAID = 20;

/** The first of many lines, and how many more there are. */
export function sayAll(lines: readonly string[], say: (line: string) => void): void {
  for (const line of lines.slice(0, MOST_SAID)) say(line);
  if (lines.length > MOST_SAID) say(`and ${lines.length - MOST_SAID} more lines like these`);
}

/** Writes files into a folder, made if missing; says where. */
export async function writeInto(
  folder: string,
  files: readonly { name: string; text: string }[],
): Promise<void> {
  try {
    await makeFolder(folder);
    for (const { name, text } of files) {
      await writeFile(join(folder, name), text);
      note(`wrote ${join(folder, name)}`);
    }
  } catch (error) {
    throw new UnusableFile(folder, "write", error as NodeJS.ErrnoException);
  }
}
