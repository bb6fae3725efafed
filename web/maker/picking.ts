/** A place that is being picked on the plan: for a field of an exercise, or for a new point of the brief. */
import { signal } from "@preact/signals";
import type { ListedPoint, Position } from "../../src/index.ts";
import { change, freeIdent, said, values } from "./making.ts";
import { listedFix, newFix } from "./new-fix.ts";
import { at, mapOf, type Path, textOf } from "./values.ts";

export interface Picking {
  /** The field that gets the point's ident; null for a point alone. */
  readonly path: Path | null;
  /** As in "Fix of exercise 2". */
  readonly words: string;
}

export const picking = signal<Picking | null>(null);

/** A known point, or a new one where nothing is named. */
export function picked(point: ListedPoint | null, place: Position): void {
  const all = mapOf(values.value.fixes);
  const { ident, fixes } = point ? listedFix(point) : newFix(place, identFor(all));
  if (all[ident] === undefined) change(["fixes"], { ...all, ...fixes });
  const { path } = picking.value ?? { path: null };
  if (path) change(path, ident);
  said.value = path ? `${ident} is in the field.` : `${ident} is among the points of the brief.`;
  picking.value = null;
  if (path) document.getElementById(fieldId(path))?.focus();
}

/** What stands in the field is the name of the point, where nothing else has that name. */
function identFor(fixes: Readonly<Record<string, unknown>>): string {
  const { path } = picking.value ?? { path: null };
  const typed = path ? textOf(at(values.value, path)).trim() : "";
  return typed !== "" && !Object.hasOwn(fixes, typed) ? typed : freeIdent();
}

/** The id of the field at a path of the brief. */
export const fieldId = (path: Path): string => `brief-${path.join("-").replace(/[^\w-]/g, "_")}`;
