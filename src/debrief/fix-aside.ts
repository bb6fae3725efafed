/** A fix of the brief that lies far aside of a flight that its other places lie on: a digit of it may be wrong. */
import type { Brief, Exercise, Fix } from "../brief/brief.ts";
import type { Position } from "../geodesy/position.ts";
import type { Issue } from "../quantity/issue.ts";
import type { NauticalMiles } from "../quantity/units.ts";
import { FAR, nearestNm, type Path } from "./implausible-brief.ts";

/** Aside by more than this. Chosen: a turn begun early or vectors round it leave a fix by less; farther than any final or hold reaches. */
const ASIDE: NauticalMiles = 20;
/** Flown by within this, another place lies on the flight. Chosen: a circuit or an intercept beside it. */
const ON_FLIGHT: NauticalMiles = 5;

/** What an exercise is flown over, to, from or about; the fix of a missed approach may never be reached. */
function fixesOf(exercise: Exercise): Fix[] {
  if (exercise.kind === "course") return [exercise.fix, ...(exercise.fromFix ? [exercise.fromFix] : [])];
  if (exercise.kind !== "approach") return [exercise.fix];
  const { finalFix, guidance } = exercise;
  return [finalFix, guidance.station].filter((fix) => fix !== null);
}

/**
 * `flown`: by exercise of the brief, whether it was found on the flight. A radial that was flown may lead from a station
 * far away, so that only fixes of which nothing was flown count; and where no place of the brief lies on the flight,
 * it is the brief of another.
 */
export function fixesAside({ exercises, file }: Brief, flown: readonly boolean[], path: Path): Issue[] {
  const used = new Map<string, { readonly fix: Position; readonly flown: boolean }>();
  exercises.forEach((exercise, i) => {
    for (const fix of fixesOf(exercise)) {
      const known = used.get(fix.ident)?.flown ?? false;
      used.set(fix.ident, { fix, flown: known || flown[i] === true });
    }
  });
  const away = [...used].map(([ident, { fix, flown: was }]) => ({ ident, was, nm: nearestNm(fix, path) }));
  const thresholds = exercises.flatMap((e) => (e.kind === "approach" ? [e.runway.threshold] : []));
  const others = [...away.map(({ nm }) => nm), ...thresholds.map((place) => nearestNm(place, path))];
  if (!others.some((nm) => nm <= ON_FLIGHT)) return [];
  return away
    .filter(({ was, nm }) => !was && nm > ASIDE && nm <= FAR)
    .map(({ ident, nm }) => ({
      code: "brief-fix-aside",
      severity: "warning",
      where: { file },
      facts: { ident, awayNm: Math.round(nm) },
    }));
}
