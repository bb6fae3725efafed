/** What the schema finds wrong, as issues that say where and name the way out. */
import type { z } from "zod";
import type { Fact, Issue } from "../quantity/issue.ts";
import { NEEDLE_SCALES } from "../standard/needle.ts";
import { directionProblem, foundType } from "./direction.ts";
import { nearMiss } from "./near-miss.ts";
import type { Path, PlacedValues } from "./text.ts";
import { CLOCK_PATTERN } from "./written.ts";

const DIRECTION_KEYS = new Set(["course", "inbound", "from_radial", "to_radial"]);
const EXPECTED: Readonly<Record<string, string>> = {
  object: "map",
  record: "map",
  array: "list",
  tuple: "list",
  string: "text",
  number: "number",
};

type Schema = z.ZodType;
type Problem = z.core.$ZodIssue;

/** Validates a part of the brief; `null` when anything in it is wrong, with an issue for each thing. */
export function validated<S extends Schema>(
  schema: S,
  value: unknown,
  at: Path,
  placed: PlacedValues,
  issues: Issue[],
): z.infer<S> | null {
  const result = schema.safeParse(value);
  if (result.success) return result.data;
  for (const problem of result.error.issues) issues.push(...issuesOf(problem, schema, value, at, placed));
  return null;
}

/** An error at a path of the brief. */
export function errorAt(
  placed: PlacedValues,
  path: Path,
  code: string,
  facts: Readonly<Record<string, Fact>>,
): Issue {
  return { code, severity: "error", where: placed.placeOf(path), facts };
}

function issuesOf(problem: Problem, schema: Schema, root: unknown, at: Path, placed: PlacedValues): Issue[] {
  const path = [...at, ...problem.path];
  const key = problem.path.at(-1);
  const value = valueAt(root, problem.path);
  const error = (code: string, facts: Record<string, Fact>) => errorAt(placed, path, code, facts);

  if (problem.code === "unrecognized_keys") {
    const allowed = keysAllowed(schema, problem.path);
    const free = allowed.filter((k) => !Object.hasOwn(Object(value), k));
    return problem.keys.map((unknown) => ({
      code: "brief-unknown-key",
      severity: "error",
      where: placed.placeOfKey(path, unknown),
      facts: { key: unknown, didYouMean: nearMiss(unknown, free), allowed: allowed.join(", ") },
    }));
  }
  const parent = valueAt(root, problem.path.slice(0, -1));
  if (value === undefined && key !== undefined && !Object.hasOwn(Object(parent), key)) {
    if (typeof key === "number") {
      return [errorAt(placed, path.slice(0, -1), "brief-wrong-length", { found: Object(parent).length })];
    }
    return [
      {
        code: "brief-missing-key",
        severity: "error",
        where: {
          ...placed.placeOf(path.slice(0, -1)),
          path: placed.placeOfKey(path.slice(0, -1), String(key)).path!,
        },
        facts: { key: String(key) },
      },
    ];
  }
  if (DIRECTION_KEYS.has(String(key))) {
    const { code, facts } = directionProblem(value);
    return [error(code, facts)];
  }
  switch (problem.code) {
    case "invalid_type":
      return [
        error("brief-wrong-type", {
          expected: EXPECTED[problem.expected] ?? problem.expected,
          found: foundType(value),
          value: shown(value),
        }),
      ];
    case "invalid_value": {
      const allowed = problem.values.map(String);
      if (key === "scale" && typeof value === "string" && isAngular(value)) {
        return [error("brief-angular-scale-on-leg", { scale: value, allowed: allowed.join(", ") })];
      }
      const didYouMean = typeof value === "string" ? nearMiss(value, allowed) : null;
      return [error("brief-not-allowed", { value: shown(value), didYouMean, allowed: allowed.join(", ") })];
    }
    case "too_small":
    case "too_big": {
      if (problem.origin === "array") {
        const expected = Number(problem.code === "too_small" ? problem.minimum : problem.maximum);
        return [error("brief-wrong-length", { expected, found: Object(value).length })];
      }
      if (problem.origin === "string")
        return [error("brief-wrong-type", { expected: "text", found: "nothing", value: "" })];
      const bound = problem.code === "too_small" ? "least" : "most";
      const limit = Number(problem.code === "too_small" ? problem.minimum : problem.maximum);
      return [
        error("brief-out-of-range", {
          value: shown(value),
          [bound]: limit,
          inclusive: problem.inclusive ?? true,
        }),
      ];
    }
    case "invalid_format":
      return [
        "pattern" in problem && problem.pattern === String(CLOCK_PATTERN)
          ? error("brief-not-a-time", { value: shown(value) })
          : error("brief-not-a-leg-length", { value: shown(value) }),
      ];
    default:
      return [
        error("brief-not-allowed", { value: shown(value), didYouMean: null, allowed: problem.message }),
      ];
  }
}

const isAngular = (id: string) =>
  Object.values(NEEDLE_SCALES).some((scale) => scale.id === id && scale.kind === "angular");

function valueAt(root: unknown, path: Path): unknown {
  let value = root;
  for (const step of path) value = Object.hasOwn(Object(value), step) ? Object(value)[step] : undefined;
  return value;
}

/** The keys of the map at a path of a schema. */
function keysAllowed(schema: Schema, path: Path): string[] {
  let inner: unknown = schema;
  // a list gives way to what it holds
  for (const step of path) if (typeof step !== "number") inner = bare(inner).shape?.[String(step)];
  return Object.keys(bare(inner).shape ?? {});
}

/** The schema without "optional" around it. */
function bare(schema: unknown): { shape?: Record<string, unknown> } {
  let s = schema as { unwrap?: () => unknown; shape?: Record<string, unknown> } | undefined;
  while (s && !s.shape && typeof s.unwrap === "function") s = s.unwrap() as typeof s;
  return s ?? {};
}

/** A value as it fits into a sentence. */
function shown(value: unknown): Fact {
  if (typeof value === "number") return Number.isFinite(value) ? value : String(value);
  if (typeof value === "string" || typeof value === "boolean" || value === null) return value;
  return foundType(value);
}
