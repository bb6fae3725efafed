/** The values of an exercise, field by field: what it is, what stands in a field, and what is typed into it. */
import type { ExerciseKind, Field } from "./fields.ts";
import { stepsText } from "./steps.ts";
import { at, isMap, type Path, put, textOf, type Values } from "./values.ts";

/** What an exercise is; null for what this page does not know, which is kept as it is. */
export function kindOf(exercise: unknown): ExerciseKind | null {
  if (!isMap(exercise)) return null;
  for (const kind of ["course", "arc", "hold", "descent", "approach", "leg"] as const)
    if (Object.hasOwn(exercise, kind)) return kind;
  return null;
}

/** A new exercise of a kind: what makes it one, still empty. */
export const NEW_EXERCISE: Readonly<Record<ExerciseKind, Values>> = {
  course: { course: "", to: "" },
  leg: { leg: ["", ""] },
  arc: { arc: "", radius_nm: "", from_radial: "", to_radial: "" },
  hold: { hold: "", inbound: "", turns: "right", leg: "1 min" },
  descent: { descent: "", to_ft: "" },
  approach: {
    approach: {
      runway: { threshold: "", end: "", elevation_ft: "" },
      guidance: "localizer",
      glide_path_deg: "3",
    },
  },
};

/** A course has its fix under `to` or under `from`: on the page these are two fields. */
const formOf = (exercise: Values): "to" | "from" => (Object.hasOwn(exercise, "from") ? "from" : "to");

/** The path of a field in this exercise, for values and complaints alike. */
export function pathIn(exercise: Values, { at: path }: Field): Path {
  return path[0] === "fix" || path[0] === "form" ? [formOf(exercise)] : path;
}

export function fieldText(exercise: Values, field: Field): string {
  if (field.at[0] === "form") return formOf(exercise);
  const value = at(exercise, pathIn(exercise, field));
  if (field.at.at(-1) === "step_downs" && Array.isArray(value)) return stepsText(value);
  // a runway's ends stand as two numbers in a brief and in one field here
  if (Array.isArray(value) && value.length === 2) return value.join(", ");
  return textOf(value);
}

export function withField(exercise: Values, field: Field, text: string): Values {
  if (field.at[0] === "form") {
    const { [formOf(exercise)]: fix, ...rest } = exercise;
    return { ...rest, [text]: fix };
  }
  const path = pathIn(exercise, field);
  const changed = put(exercise, path, text) as Values;
  if (path[0] !== "between") return changed;
  const between = [0, 1].map((i) => textOf(at(changed, ["between", i])));
  return put(changed, ["between"], between.every((t) => t === "") ? undefined : between) as Values;
}
