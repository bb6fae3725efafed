/** The fixes and runways that exercises name: of the brief itself, else of the user's point lists. */
import {
  distanceNm,
  type KnownPoints,
  type ListedPoint,
  pointsNamed,
  runwaysNamed,
} from "../geodesy/index.ts";
import type { Issue } from "../quantity/issue.ts";
import type { Fix } from "./brief.ts";
import { nearMiss } from "./near-miss.ts";
import { errorAt } from "./problems.ts";
import type { Path, PlacedValues } from "./text.ts";

/** A runway as a brief writes it out. */
export interface WrittenRunway {
  readonly ident: string;
  readonly threshold: readonly [number, number];
  readonly end: readonly [number, number];
  readonly elevation_ft: number;
  readonly length_assumed?: true;
}

export interface LookUp {
  /** Null where there is no such fix (noted as an issue) or it was in error (noted already). */
  readonly fix: (ident: string, path: Path) => Fix | null;
  /** A point of the lists alone, whatever the brief has; null where there is none. */
  readonly listed: (ident: string, path: Path) => ListedPoint | null;
  /** Null where no list has such a runway, or its elevation is not known (noted). */
  readonly runway: (ident: string, path: Path) => WrittenRunway | null;
  /** Fixes taken from the lists, in the order of their first use. */
  readonly taken: readonly Fix[];
}

/** `fixes` are those of the brief; null where one is in error. */
export function lookUpIn(
  fixes: ReadonlyMap<string, Fix | null>,
  known: KnownPoints | null,
  placed: PlacedValues,
  issues: Issue[],
): LookUp {
  const taken: Fix[] = [];
  /** Says which of several was meant, and whether that can be told. Once an ident. */
  const told = new Set<string>();
  const tellWhich = (
    ident: string,
    path: Path,
    places: readonly { latitude: number; longitude: number }[],
  ) => {
    if (places.length < 2 || told.has(ident)) return;
    told.add(ident);
    const { near } = known!;
    const where = placed.placeOf(path);
    if (near === null)
      issues.push({
        code: "brief-ident-twice",
        severity: "warning",
        where,
        facts: { ident, places: places.length },
      });
    else {
      const facts = { ident, places: places.length, awayNm: Math.round(distanceNm(places[0]!, near)) };
      issues.push({ code: "brief-ident-by-place", severity: "note", where, facts });
    }
  };
  const listed = (ident: string, path: Path): ListedPoint | null => {
    const found = known ? pointsNamed(known, ident) : [];
    tellWhich(ident, path, found);
    return found[0] ?? null;
  };
  const take = (ident: string, path: Path): Fix | null => {
    const already = taken.find((fix) => fix.ident === ident);
    if (already) return already;
    const found = listed(ident, path);
    if (!found) return null;
    const { latitude, longitude, kind, declination, elevation } = found;
    const fix: Fix = { ident, latitude, longitude, kind, declination, elevation };
    taken.push(fix);
    return fix;
  };
  const fix = (ident: string, path: Path): Fix | null => {
    const own = fixes.get(ident);
    if (own !== undefined) return own;
    const found = take(ident, path);
    if (found) return found;
    const names = [...fixes.keys()];
    const facts = { ident, didYouMean: nearMiss(ident, names), known: names.join(", ") };
    issues.push(errorAt(placed, path, "brief-unknown-fix", facts));
    return null;
  };
  const runway = (ident: string, path: Path): WrittenRunway | null => {
    const found = known ? runwaysNamed(known, ident) : [];
    const [first] = found;
    if (!first) {
      const names = known?.runways.map((r) => r.ident) ?? [];
      const facts = { ident, didYouMean: nearMiss(ident, names) };
      issues.push(errorAt(placed, path, "brief-unknown-runway", facts));
      return null;
    }
    tellWhich(
      ident,
      path,
      found.map((r) => r.threshold),
    );
    if (first.elevation === null) {
      issues.push(errorAt(placed, path, "brief-runway-without-elevation", { ident }));
      return null;
    }
    const { threshold, end, elevation, lengthAssumed } = first;
    return {
      ident,
      threshold: [threshold.latitude, threshold.longitude],
      end: [end.latitude, end.longitude],
      elevation_ft: elevation,
      ...(lengthAssumed && { length_assumed: lengthAssumed }),
    };
  };
  return { fix, listed, runway, taken };
}
