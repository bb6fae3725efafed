/** Which line of a table of who flew what is of which file: capitals do not matter, nor folders where one name is enough. */
import type { FlightLabel } from "./label-table.ts";

export interface LabelledFiles {
  /** By the name of the file as it was asked for. */
  readonly byFile: ReadonlyMap<string, FlightLabel>;
  /** Names in the table that no file has. */
  readonly unknown: readonly string[];
  /** Files of which several lines say different things, and lines that several files of one name may mean: left without a label. */
  readonly unclear: readonly string[];
  /** Files of which several lines say the same. */
  readonly twice: readonly string[];
  /** Files that the table writes with other capitals. */
  readonly otherwise: readonly { readonly file: string; readonly written: string }[];
}

const small = (name: string): string => name.toLowerCase();
const endsWith = (path: string, end: string): boolean => path === end || path.endsWith(`/${end}`);

/** From the surest to the least sure: the very name; other capitals; the one without the folders of the other. */
const MEANS: readonly ((file: string, written: string) => boolean)[] = [
  (file, written) => file === written,
  (file, written) => small(file) === small(written),
  (file, written) => endsWith(small(file), small(written)) || endsWith(small(written), small(file)),
];

interface Meant {
  readonly line: FlightLabel;
  readonly sure: number;
}

const isSaying = (a: FlightLabel, b: FlightLabel): boolean =>
  a.pilot === b.pilot && a.aircraft === b.aircraft;

/** The files that a line means, all of them as surely. */
function meantBy(
  line: FlightLabel,
  candidates: readonly string[],
): { files: readonly string[]; sure: number } {
  for (const [sure, means] of MEANS.entries()) {
    const files = candidates.filter((file) => means(file, line.file));
    if (files.length > 0) return { files, sure };
  }
  return { files: [], sure: MEANS.length };
}

/** The part of a name after its folders, by which files that a line may mean are found at once. */
const ownName = (path: string): string => small(path.slice(path.lastIndexOf("/") + 1));

function byOwnName(files: Iterable<string>): Map<string, string[]> {
  const found = new Map<string, string[]>();
  for (const file of files) found.set(ownName(file), [...(found.get(ownName(file)) ?? []), file]);
  return found;
}

export function labelledFiles(files: Iterable<string>, labels: readonly FlightLabel[]): LabelledFiles {
  const named = byOwnName(new Set(files));
  const lines = new Map<string, Meant[]>();
  const unknown = new Set<string>();
  const unclear = new Set<string>();
  for (const line of labels) {
    const { files: meant, sure } = meantBy(line, named.get(ownName(line.file)) ?? []);
    const [file, ...others] = meant;
    if (file === undefined) unknown.add(line.file);
    else if (others.length > 0) unclear.add(line.file);
    else lines.set(file, [...(lines.get(file) ?? []), { line, sure }]);
  }
  const byFile = new Map<string, FlightLabel>();
  const twice: string[] = [];
  const otherwise: { file: string; written: string }[] = [];
  for (const [file, meant] of lines) {
    const surest = Math.min(...meant.map(({ sure }) => sure));
    const best = meant.filter(({ sure }) => sure === surest).map(({ line }) => line);
    for (const { line, sure } of meant) if (sure > surest) unknown.add(line.file);
    const [first, ...others] = best;
    if (others.some((line) => !isSaying(line, first!))) {
      unclear.add(file);
      continue;
    }
    byFile.set(file, first!);
    if (others.length > 0) twice.push(file);
    if (surest > 0 && !endsWith(file, first!.file) && !endsWith(first!.file, file))
      otherwise.push({ file, written: first!.file });
  }
  return { byFile, unknown: [...unknown], unclear: [...unclear], twice, otherwise };
}
