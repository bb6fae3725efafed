/** Which fields an exercise of each kind has, in trade units, and where the reader's complaints about them point. */
import { NEEDLE_SCALES } from "../../src/index.ts";
import { heightComplaint } from "./feet.ts";
import { endComplaint } from "./runway-line.ts";
import { typedSteps } from "./steps.ts";
import { HEIGHTS, type Path, typedPlace } from "./values.ts";

export const EXERCISE_KINDS = ["course", "leg", "arc", "hold", "descent", "approach"] as const;
export type ExerciseKind = (typeof EXERCISE_KINDS)[number];

export type Choice = readonly [value: string, words: string];

export interface Field {
  readonly label: string;
  /** An example, or what stands where nothing is typed. */
  readonly hint: string;
  /** What the field takes: idents offer the known points, directions show the variation. */
  readonly takes: "ident" | "runway" | "direction" | "number" | "clock" | "text" | "choice";
  readonly choices?: readonly Choice[];
  /** Where it stands in the exercise, and where complaints about it point. */
  readonly at: Path;
  readonly needed?: boolean;
  /** A complaint of the page's own, where the reader sees only the outcome. */
  readonly complaint?: (text: string) => string | null;
}

const scales = (linear: boolean): Choice[] => [
  ["", linear ? "RNAV terminal, ±1 NM" : "by the kind of fix"],
  ...Object.values(NEEDLE_SCALES)
    .filter(({ kind }) => !linear || kind === "linear")
    .map(({ id, label }): Choice => [id, label]),
];
const TURNS: readonly Choice[] = [
  ["right", "right"],
  ["left", "left"],
];

const TIMES: readonly Field[] = [
  { label: "From, UTC", hint: "else it is looked for", takes: "clock", at: ["between", 0] },
  { label: "To, UTC", hint: "", takes: "clock", at: ["between", 1] },
];
const ident = (label: string, path: Path, needed = true): Field => ({
  label,
  hint: needed ? "type its name" : "may be left out",
  takes: "ident",
  at: path,
  needed,
});
const direction = (label: string, hint: string, path: Path, needed = true): Field => ({
  label,
  hint,
  takes: "direction",
  at: path,
  needed,
});
const number = (label: string, hint: string, path: Path, needed = false): Field => ({
  label,
  hint,
  takes: "number",
  at: path,
  needed,
  ...(HEIGHTS.has(String(path.at(-1))) && { complaint: heightComplaint }),
});
const ALTITUDE = number("Altitude, ft", "may be left out", ["altitude_ft"]);
const placeComplaint = (text: string): string | null =>
  typedPlace(text) ? null : "Write latitude and longitude, as in 35.6720, 172.3950.";
const approach = (...path: Path): Path => ["approach", ...path];

const FIELDS: Readonly<Record<ExerciseKind, readonly Field[]>> = {
  course: [
    direction("Course", "218, or 218T for true", ["course"]),
    {
      label: "Flown",
      hint: "",
      takes: "choice",
      choices: [
        ["to", "to the fix"],
        ["from", "from the fix"],
      ],
      at: ["form"],
    },
    ident("Fix", ["fix"]),
    { label: "Needle", hint: "", takes: "choice", choices: scales(false), at: ["scale"] },
    ALTITUDE,
    ...TIMES,
  ],
  leg: [
    ident("From fix", ["leg", 0]),
    ident("To fix", ["leg", 1]),
    { label: "Needle", hint: "", takes: "choice", choices: scales(true), at: ["scale"] },
    ALTITUDE,
    ...TIMES,
  ],
  arc: [
    ident("Station", ["arc"]),
    number("Radius, NM", "10", ["radius_nm"], true),
    direction("From radial", "300", ["from_radial"]),
    direction("To radial", "350", ["to_radial"]),
    {
      label: "Way round",
      hint: "",
      takes: "choice",
      choices: [
        ["", "the shorter way"],
        ["right", "clockwise"],
        ["left", "anticlockwise"],
      ],
      at: ["turns"],
    },
    ALTITUDE,
    ...TIMES,
  ],
  hold: [
    ident("Fix", ["hold"]),
    direction("Inbound course", "247, or 247T for true", ["inbound"]),
    { label: "Turns", hint: "", takes: "choice", choices: TURNS, at: ["turns"] },
    { label: "Leg", hint: "1 min, 90 s or 4 NM", takes: "text", at: ["leg"] },
    ALTITUDE,
    ...TIMES,
  ],
  descent: [
    ident("Fix", ["descent"]),
    number("Down to, ft", "1800", ["to_ft"], true),
    number("Before the fix, NM", "0, at the fix", ["before_nm"]),
    ...TIMES,
  ],
  approach: [
    { label: "Runway", hint: "22, or of a point list", takes: "runway", at: approach("runway", "ident") },
    {
      label: "Threshold",
      hint: "35.6720, 172.3950",
      takes: "text",
      at: approach("runway", "threshold"),
      needed: true,
      complaint: placeComplaint,
    },
    {
      label: "Far end, or course and length",
      hint: "35.6619, 172.3840 or 218T 2600",
      takes: "text",
      at: approach("runway", "end"),
      needed: true,
      complaint: endComplaint,
    },
    number("Threshold elevation, ft", "420", approach("runway", "elevation_ft"), true),
    {
      label: "Guidance",
      hint: "",
      takes: "choice",
      choices: [
        ["localizer", "localizer"],
        ["vor", "VOR"],
        ["lnav", "LNAV"],
        ["lpv", "LPV"],
        ["lnav-vnav", "LNAV/VNAV"],
        ["rnp", "RNP"],
        ["centre-line", "extended centre line"],
      ],
      at: approach("guidance"),
    },
    ident("VOR station", approach("station"), false),
    direction("Final course", "along the runway", approach("course"), false),
    ident("Final approach fix", approach("final_fix"), false),
    number("Altitude over it, ft", "may be left out", approach("final_fix_ft")),
    number("Glide path, °", "3; none for level-offs", approach("glide_path_deg")),
    number("Decision altitude, ft", "may be left out", approach("decision_ft")),
    number("Minimum descent altitude, ft", "instead of decision", approach("minimum_ft")),
    {
      label: "Step-downs",
      hint: "LUMDO 2400, 2 NM 900",
      takes: "text",
      at: approach("step_downs"),
      complaint: (text) =>
        typedSteps(text) ? null : "Write a fix or a distance and a height each, as in LUMDO 2400, 2 NM 900.",
    },
    number("Missed approach point, NM before", "0, at the threshold", approach("missed_point_nm")),
    direction("Missed approach course", "may be left out", approach("missed_course"), false),
    ident("Missed approach to", approach("missed_to"), false),
    ...TIMES,
  ],
};
export const fieldsOf = (kind: ExerciseKind): readonly Field[] => FIELDS[kind];

/** What a key of a brief is called on the page, as in "Decision altitude" for decision_ft; the key itself where it has no field. */
export function fieldName(key: string): string {
  const field = EXERCISE_KINDS.flatMap(fieldsOf).find(({ at: path }) => path.at(-1) === key);
  return field?.label.replace(/, \S+$/, "") ?? key;
}
