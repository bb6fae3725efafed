/** The route of a GPX file as a brief: a leg between each two points. */
import { type Issue, UnusableInput } from "../quantity/issue.ts";
import type { Degrees, FeetMsl } from "../quantity/units.ts";
import { NEEDLE_SCALES } from "../standard/needle.ts";
import type { Fix } from "./brief.ts";
import type { BriefDraft, DraftLeg } from "./draft.ts";
import { legTitle } from "./exercise.ts";
import { samePlace } from "./same-place.ts";

interface RoutePoint {
  readonly ident: string;
  readonly latitude: Degrees;
  readonly longitude: Degrees;
  readonly altitude: FeetMsl | null;
}

/**
 * The legs of a route, each with a full scale of 1 NM. Points without a name are numbered. Two points in the
 * same place make no leg: that is an issue `route-leg-without-length`.
 * @throws UnusableInput, code `route-without-legs`, when no leg is left.
 */
export function briefFromRoute(
  route: { readonly name: string; readonly points: readonly RoutePoint[] },
  file: string,
): BriefDraft {
  const fixes = route.points.map(
    (point, i): Fix => ({
      ident: point.ident.trim() || `Point ${i + 1}`,
      latitude: point.latitude,
      longitude: point.longitude,
      kind: "waypoint",
      declination: null,
      elevation: null,
    }),
  );
  const issues: Issue[] = [];
  const exercises: DraftLeg[] = [];
  for (let i = 1; i < fixes.length; i++) {
    const [fromFix, fix] = [fixes[i - 1]!, fixes[i]!];
    const where = { file, path: `rte.rtept[${i}]` };
    if (samePlace(fromFix, fix)) {
      const facts = { from: fromFix.ident, to: fix.ident };
      issues.push({ code: "route-leg-without-length", severity: "warning", where, facts });
      continue;
    }
    exercises.push({
      kind: "leg",
      fromFix,
      fix,
      scale: NEEDLE_SCALES["rnav-1"],
      title: legTitle(fromFix, fix),
      between: null,
      altitude: null,
      where,
    });
  }
  if (exercises.length === 0) {
    const facts = { route: route.name, points: fixes.length };
    throw new UnusableInput([
      { code: "route-without-legs", severity: "error", where: { file }, facts },
      ...issues,
    ]);
  }
  return {
    title: route.name.trim() || file,
    file,
    source: "gpx-route",
    aircraft: null,
    standard: null,
    winds: [],
    fixes,
    exercises,
    issues,
  };
}
