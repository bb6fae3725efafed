/** From a draft back to the text of a brief: what is read again is the same draft. */
import { Document, isMap, isScalar, isSeq, Scalar, visit } from "yaml";
import { alongAcrossExact, courseBetween } from "../geodesy/index.ts";
import { nauticalMilesFromMetres } from "../quantity/factor.ts";
import type { BriefedHoldLeg, Fix, StepDown } from "./brief.ts";
import type { WrittenDirection } from "./direction.ts";
import type { BriefDraft, DraftApproach, DraftExercise } from "./draft.ts";

/** A brief as plain values, key by key as in `written.ts`; also one that is not right yet. */
export type WrittenValues = { readonly [key: string]: unknown };

/** A map without the keys that have no value. */
const known = (entries: Record<string, unknown>): WrittenValues =>
  Object.fromEntries(Object.entries(entries).filter(([, value]) => value !== null && value !== undefined));

/** `218`, `218.5T`; north is 360. Digits beyond the sixth decimal are not written: a ten-thousandth of an inch at a mile. */
function writtenDirection({ degrees, reference }: WrittenDirection): number | string {
  const plain = Number(degrees.toFixed(6)) || 360;
  return reference === "true" ? `${plain}T` : plain;
}

const writtenLeg = (leg: BriefedHoldLeg): string => {
  if (leg.by === "distance") return `${leg.distance} NM`;
  return leg.seconds % 60 === 0 ? `${leg.seconds / 60} min` : `${leg.seconds} s`;
};

const writtenFix = ({ latitude, longitude, kind, declination, elevation }: Fix): WrittenValues =>
  known({
    lat: latitude,
    lon: longitude,
    kind: kind === "waypoint" ? null : kind,
    declination,
    elevation_ft: elevation,
  });

/** A step-down of a fix is named for it; one of a distance is not. */
function writtenStep(
  { name, distance, altitude }: StepDown,
  { runway }: DraftApproach,
  fixes: readonly Fix[],
): WrittenValues {
  const { threshold, end } = runway;
  const fix = fixes.find(
    ({ ident, ...place }) =>
      ident === name &&
      -nauticalMilesFromMetres(alongAcrossExact(courseBetween(threshold, end), place).along) === distance,
  );
  return known({ fix: fix?.ident, before_nm: fix ? null : distance, not_below_ft: altitude });
}

function writtenApproach(draft: DraftApproach, fixes: readonly Fix[]): WrittenValues {
  const { runway, guidance, glidePath, minimum, stepDowns, finalFixAltitude, altitude } = draft;
  const { threshold, end } = runway;
  return known({
    runway: known({
      ident: runway.ident,
      threshold: [threshold.latitude, threshold.longitude],
      end: [end.latitude, end.longitude],
      elevation_ft: runway.elevation,
    }),
    guidance: guidance.kind,
    width_deg: guidance.width,
    antenna_ft: guidance.antenna,
    rnp_nm: guidance.rnp,
    station: guidance.station?.ident,
    course: draft.course && writtenDirection(draft.course),
    final_fix: draft.finalFix?.ident,
    final_fix_ft: finalFixAltitude === altitude ? null : finalFixAltitude,
    glide_path_deg: glidePath?.angle,
    threshold_crossing_ft: glidePath?.crossing,
    decision_ft: minimum?.kind === "decision" ? minimum.altitude : null,
    minimum_ft: minimum?.kind === "descent" ? minimum.altitude : null,
    step_downs: stepDowns.length > 0 ? stepDowns.map((step) => writtenStep(step, draft, fixes)) : null,
    missed_point_nm: draft.missedPoint || null,
    missed_to: draft.missedTo?.ident,
    missed_course: draft.missedCourse && writtenDirection(draft.missedCourse),
  });
}

function writtenExercise(draft: DraftExercise, fixes: readonly Fix[]): WrittenValues {
  const any = {
    altitude_ft: draft.altitude,
    between: draft.between && [draft.between.start, draft.between.end],
  };
  switch (draft.kind) {
    case "course":
      return known({
        course: writtenDirection(draft.course),
        [draft.form]: draft.fix.ident,
        scale: draft.scale.id,
        ...any,
      });
    case "leg":
      return known({ leg: [draft.fromFix.ident, draft.fix.ident], scale: draft.scale.id, ...any });
    case "hold":
      return known({
        hold: draft.fix.ident,
        inbound: writtenDirection(draft.inbound),
        turns: draft.turns,
        leg: draft.leg && writtenLeg(draft.leg),
        ...any,
      });
    case "arc":
      return known({
        arc: draft.fix.ident,
        radius_nm: draft.radius,
        from_radial: writtenDirection(draft.fromRadial),
        to_radial: writtenDirection(draft.toRadial),
        turns: draft.turns,
        ...any,
      });
    case "descent":
      return known({
        descent: draft.fix.ident,
        to_ft: draft.toAltitude,
        before_nm: draft.before || null,
        ...any,
      });
    case "approach":
      return known({ approach: writtenApproach(draft, fixes), ...any });
  }
}

/** The plain values of a draft. */
export function writtenBrief({
  title,
  aircraft,
  standard,
  winds,
  fixes,
  exercises,
}: BriefDraft): WrittenValues {
  return known({
    brief: 1,
    title,
    aircraft: aircraft && { tas_kt: aircraft.trueAirspeed, tas_doubt_kt: aircraft.doubt },
    standard,
    wind:
      winds.length > 0
        ? winds.map(({ altitude, from, speed, doubt, source }) =>
            known({ altitude_ft: altitude, from_true: from, kt: speed, doubt_kt: doubt, source }),
          )
        : null,
    fixes: fixes.length > 0 ? Object.fromEntries(fixes.map((fix) => [fix.ident, writtenFix(fix)])) : null,
    exercises: exercises.map((exercise) => writtenExercise(exercise, fixes)),
  });
}

/** Characters of a line before a map is broken over several. Chosen: an approach does not fit, all others do. */
const LINE = 120;

/** As the text of a brief: a line a fix and an exercise, as people write it. Clock times and idents stay text. */
export function briefText(values: WrittenValues): string {
  const document = new Document(values, { schema: "core" });
  visit(document, {
    Map(_, node, path) {
      if (path.length > 3) node.flow = true;
    },
    Seq(_, node, path) {
      if (path.length > 3) node.flow = true;
    },
    Scalar(_, node) {
      // 09:44 is a number of minutes to older readers of YAML
      if (typeof node.value === "string" && /^\s*\d+:\d/.test(node.value)) node.type = Scalar.QUOTE_DOUBLE;
    },
  });
  const { contents } = document;
  if (isMap(contents))
    for (const { key, value } of contents.items)
      if (isScalar(key) && key.value === "aircraft" && (isMap(value) || isSeq(value))) value.flow = true;
  return document.toString({ lineWidth: LINE });
}

/** The draft as the text of a brief. What the maker of a brief saves: `readBrief` reads it back the same. */
export const briefToYaml = (draft: BriefDraft): string => briefText(writtenBrief(draft));
