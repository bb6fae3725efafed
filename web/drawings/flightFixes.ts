/** Which fixes of the brief stand on the plan of a flight: those that an exercise used, and those that lie beside it anyway. */
import type { DebriefDocument, DocumentExercise } from "./contract.ts";
import { type Bounds, boundsOf } from "./plane.ts";

/** Idents of the fixes that an exercise was measured against. */
function fixesOf({ kind, facts }: DocumentExercise): (string | null)[] {
  if (!facts) return [];
  if (kind === "course" && "fromFix" in facts) return [facts.fix, facts.fromFix];
  if ("finalFix" in facts) return [facts.finalFix?.ident ?? null];
  if (!("fix" in facts)) return [];
  return [typeof facts.fix === "string" || facts.fix === null ? facts.fix : facts.fix.ident];
}

type Fix = NonNullable<DebriefDocument["brief"]>["fixes"][number];
type Placed = { readonly fix: Fix; readonly at: readonly [number, number] };

/** The fixes to draw, with what has to fit into the plan: a fix far off that nobody used would only make the flight small. */
export function fixesShown(
  debrief: DebriefDocument,
  flown: readonly (readonly [number, number])[],
  place: (latitude: number, longitude: number) => readonly [number, number],
): { readonly fixes: Placed[]; readonly bounds: Bounds | null } {
  const used = new Set(debrief.exercises.flatMap(fixesOf));
  const placed = (debrief.brief?.fixes ?? []).map((fix) => ({ fix, at: place(fix.latitude, fix.longitude) }));
  const bounds = boundsOf([...flown, ...placed.filter(({ fix }) => used.has(fix.ident)).map(({ at }) => at)]);
  if (bounds === null) return { fixes: placed, bounds };
  const { west, east, south, north } = bounds;
  const fixes = placed.filter(({ at: [x, y] }) => x >= west && x <= east && y >= south && y <= north);
  return { fixes, bounds };
}
