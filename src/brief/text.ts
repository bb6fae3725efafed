/** The text of a brief as plain values, with the line and column of each of them. */
import { isAlias, isMap, isNode, isScalar, isSeq, LineCounter, parseDocument } from "yaml";
import { type Issue, UnusableInput, type Where } from "../quantity/issue.ts";
import { plainFault } from "./plain-fault.ts";

export type Path = readonly PropertyKey[];

export interface PlacedValues {
  readonly values: unknown;
  /** Where the value at a path is written; of the nearest value around it where there is none. */
  readonly placeOf: (path: Path) => Where;
  /** Where a key of the map at a path is written. */
  readonly placeOfKey: (path: Path, key: string) => Where;
}

/** Aliases that a brief may use; more are taken for an attack on memory. */
const MAX_ALIASES = 100;
/** Nesting that a brief may have, well over the six levels that it needs; deeper text exhausts the stack. */
const MAX_DEPTH = 100;

/**
 * Reads YAML 1.2, and with it JSON. Times such as 09:44 stay text and 041 is 41, whatever version the text claims.
 * @throws UnusableInput with every syntax error, code `brief-not-yaml`, `brief-duplicate-key` or `brief-empty`.
 */
export function readText(text: string, file: string): PlacedValues {
  const lines = new LineCounter();
  const place = (offset: number): Where => {
    const { line, col } = lines.linePos(offset);
    return { file, line: Math.max(1, line), column: Math.max(1, col) };
  };
  const unusable = (where: Where, reason: string, code = "brief-not-yaml") =>
    new UnusableInput([{ code, severity: "error", where, facts: { reason } }]);

  const deep = tooDeepAt(text);
  if (deep !== null) {
    const before = text.slice(0, deep).split("\n");
    throw unusable(
      { file, line: before.length, column: before.at(-1)!.length + 1 },
      plainFault("", "nested too deeply"),
    );
  }

  let document: ReturnType<typeof parseDocument>;
  let values: unknown;
  try {
    document = parseDocument(text.replace(/^\uFEFF/, ""), {
      schema: "core", // keeps 1.1 out: there 041 is 33, 09:44 is 584, and `no` is false
      lineCounter: lines,
      prettyErrors: false,
      logLevel: "silent",
    });
    if (document.errors.length > 0) {
      throw new UnusableInput(
        document.errors.map(
          (error): Issue => ({
            code: error.code === "DUPLICATE_KEY" ? "brief-duplicate-key" : "brief-not-yaml",
            severity: "error",
            where: place(error.pos[0]),
            facts: { reason: plainFault(error.code, error.message) },
          }),
        ),
      );
    }
    values = document.toJS({ maxAliasCount: MAX_ALIASES });
  } catch (error) {
    if (error instanceof UnusableInput) throw error;
    throw unusable({ file, line: 1, column: 1 }, plainFault("", error instanceof Error ? error.message : ""));
  }
  if (values === null || values === undefined) {
    throw unusable({ file, line: 1, column: 1 }, "nothing in it", "brief-empty");
  }

  const resolved = (node: unknown): unknown => (isAlias(node) ? node.resolve(document) : node);
  const pairOf = (node: unknown, key: PropertyKey) =>
    isMap(node)
      ? node.items.find((pair) => String(isScalar(pair.key) ? pair.key.value : pair.key) === String(key))
      : undefined;
  /** The nodes from the root down to the path, as far as they exist. */
  const nodesTo = (path: Path): unknown[] => {
    const nodes: unknown[] = [document.contents];
    for (const step of path) {
      const parent = resolved(nodes.at(-1));
      const child = isSeq(parent) ? parent.items[Number(step)] : pairOf(parent, step)?.value;
      if (child === undefined || child === null) break;
      nodes.push(child);
    }
    return nodes;
  };
  const placed = (node: unknown, path: Path): Where => {
    const offset = isNode(node) && node.range ? node.range[0] : 0;
    return { ...place(offset), ...(path.length > 0 ? { path: pathText(path) } : {}) };
  };
  return {
    values,
    placeOf: (path) => placed(nodesTo(path).at(-1), path),
    placeOfKey: (path, key) => {
      const nodes = nodesTo(path);
      const pair = pairOf(resolved(nodes.at(-1)), key);
      return placed(pair?.key ?? nodes.at(-1), [...path, key]);
    },
  };
}

/**
 * The plain values of a brief, whatever is wrong with them, to be edited.
 * @throws UnusableInput where the text is no YAML or no map.
 */
export function briefValues(text: string, file: string): Readonly<Record<string, unknown>> {
  const { values, placeOf } = readText(text, file);
  if (typeof values === "object" && values !== null && !Array.isArray(values))
    return values as Record<string, unknown>;
  const facts = { expected: "map", found: Array.isArray(values) ? "list" : typeof values };
  throw new UnusableInput([{ code: "brief-wrong-type", severity: "error", where: placeOf([]), facts }]);
}

/** As in `exercises[2].course`. */
export function pathText(path: Path): string {
  return path
    .map((step, i) => (typeof step === "number" ? `[${step}]` : `${i ? "." : ""}${String(step)}`))
    .join("");
}

/** Where brackets first nest deeper than in any brief, or null. Brackets inside quotes count too: so many are no brief. */
function tooDeepAt(text: string): number | null {
  let depth = 0;
  for (let i = 0; i < text.length; i++) {
    const c = text[i];
    if (c === "[" || c === "{") depth++;
    else if (c === "]" || c === "}") depth = Math.max(0, depth - 1);
    if (depth > MAX_DEPTH) return i;
  }
  return null;
}
