/** The brief in the making, read as any brief is read: what it comes to, and what is wrong where. */
import {
  type BriefDraft,
  briefText,
  type DraftExercise,
  type Issue,
  issueSentence,
  type KnownPoints,
  readBrief,
  resolveBrief,
  UnusableInput,
  type WrittenValues,
  writtenBrief,
} from "../../src/index.ts";
import { fieldName } from "./fields.ts";
import { listOf, mapOf, type Path, type Values } from "./values.ts";
import { writtenValues } from "./written.ts";

export const BRIEF_FILE = "brief.yaml";

export interface Reading {
  /** To be kept, whatever is wrong in it: with the fixes that were taken from lists. */
  readonly yaml: string;
  /** The same without the exercises and fixes that cannot be read; null where none is left. */
  readonly usable: string | null;
  readonly draft: BriefDraft | null;
  readonly issues: readonly Issue[];
}

const pathText = (path: Path): string =>
  path.map((step, i) => (typeof step === "number" ? `[${step}]` : `${i ? "." : ""}${step}`)).join("");

function read(yaml: string, known: KnownPoints): Pick<Reading, "draft" | "issues"> {
  try {
    const draft = readBrief(yaml, BRIEF_FILE, known);
    return { draft, issues: draft.issues };
  } catch (error) {
    if (error instanceof UnusableInput) return { draft: null, issues: error.issues };
    throw error;
  }
}

/** With the fixes that were looked up in lists written out, so that the brief stands alone; in the order of briefs. */
function withTaken(
  { brief, title, aircraft, standard, wind, ...rest }: Values,
  draft: BriefDraft | null,
): Values {
  const { fixes: own, exercises, ...others } = rest;
  const fixes = { ...(draft ? mapOf(writtenBrief(draft).fixes) : {}), ...mapOf(own) };
  const all = { brief, title, aircraft, standard, wind, ...others, fixes, exercises };
  return Object.fromEntries(Object.entries(all).filter(([, value]) => value !== undefined));
}

export function readMaking(values: Values, known: KnownPoints, time: number | null): Reading {
  const written = writtenValues(values, time);
  const { draft, issues } = read(briefText(written as WrittenValues), known);
  const whole = withTaken(written, draft);
  const found = { yaml: briefText(whole as WrittenValues), draft, issues };
  return {
    ...found,
    usable: draft && briefText(usableOf(whole, { ...found, usable: null }) as WrittenValues),
  };
}

/** What a file is given: only exercises that can be read again, and how many stay behind on the page. Null where none can. */
export function savedOf({ usable, draft }: Reading, values: Values): { yaml: string; behind: number } | null {
  if (usable === null || draft === null) return null;
  return { yaml: usable, behind: listOf(values.exercises).length - draft.exercises.length };
}

/** Without what cannot be read, part by part, so that the rest works. */
function usableOf(whole: Values, reading: Reading): Values {
  const isRight = (...path: Path) => complaintsAt(reading, path, true).length === 0;
  const parts: Record<string, unknown> = {
    ...whole,
    fixes: Object.fromEntries(
      Object.entries(mapOf(whole.fixes)).filter(([ident]) => isRight("fixes", ident)),
    ),
    exercises: listOf(whole.exercises).filter((_, i) => draftAt(reading, i) !== null),
  };
  for (const key of Object.keys(parts))
    if (key !== "fixes" && key !== "exercises" && !isRight(key)) delete parts[key];
  return parts;
}

/** What is wrong at a path, in words; deeper places too where `deep`. Notes are no complaints. */
export function complaintsAt({ issues }: Reading, path: Path, deep = false): string[] {
  const place = pathText(path);
  return issues
    .filter(({ severity, where }) => {
      if (severity === "note" || where.path === undefined) return false;
      return (
        where.path === place ||
        (deep && (where.path.startsWith(`${place}.`) || where.path.startsWith(`${place}[`)))
      );
    })
    .map(complaint);
}

/** In the words of the page where those of a file would send the reader elsewhere. */
function complaint(issue: Issue): string {
  const { ident, didYouMean } = issue.facts;
  if (issue.code === "brief-unknown-fix")
    return `${ident} is not known yet: pick it on the plan, or type where it is under Points.${didYouMean ? ` Did you mean ${didYouMean}?` : ""}`;
  const words = issueSentence({ ...issue, where: {}, facts: { ...issue.facts } });
  return words.replace(/\b[a-z]+(?:_[a-z]+)+\b/g, fieldName);
}

/** What was read of the exercise at an index of the values; null where something in it is wrong. */
export const draftAt = ({ draft }: Reading, index: number): DraftExercise | null =>
  draft?.exercises.find(({ where }) => where.path === `exercises[${index}]`) ?? null;

/** The exercise as it will be compared: true, with the variation that made it so. */
export function resolvedAt(reading: Reading, index: number, time: number | null) {
  const one = draftAt(reading, index);
  if (!reading.draft || !one) return null;
  return resolveBrief({ ...reading.draft, exercises: [one] }, { time }).exercises[0] ?? null;
}

export const exercisesOf = (values: Values): readonly unknown[] => listOf(values.exercises);
