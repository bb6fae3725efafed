/** The recipe, read top to bottom: a log and perhaps a brief become a debrief. */

import { type KnownRunway, runwaysNear } from "../approach/index.ts";
import type { Brief, Fix } from "../brief/brief.ts";
import { type BriefDraft, resolveBrief } from "../brief/index.ts";
import { variationAt } from "../geodesy/index.ts";
import { standardNamed } from "../grade/index.ts";
import type { ImportedLog } from "../import/imported.ts";
import { droppedByCode } from "../import/index.ts";
import { CAUTION } from "../quantity/caution.ts";
import { type Issue, UnusableInput } from "../quantity/issue.ts";
import { rounded } from "../quantity/round.ts";
import type { TestStandard } from "../standard/test-standard.ts";
import { TEST_STANDARDS } from "../standard/tolerance.ts";
import { cleanTrack, findLegs, smoothTrack } from "../track/index.ts";
import { estimateWind, measuredAir, windByHeight, windRecord } from "../wind/index.ts";
import { chooseFlight } from "./choose-flight.ts";
import type { DebriefDocument } from "./document.ts";
import { briefedExercises, fittedExercises } from "./exercise-records.ts";
import { fixesAside } from "./fix-aside.ts";
import { heightUnitIssue, withHeightUnit, withoutHeights } from "./height-unit.ts";
import { implausibleAirspeed, implausiblePlaces } from "./implausible-brief.ts";
import { implausibleLog } from "./implausible-log.ts";
import { legRecords } from "./leg-records.ts";
import { logRecord } from "./log-record.ts";
import { leftOutOf } from "./not-seen.ts";
import { pathSeries } from "./path-series.ts";
import type { FlightSeries } from "./series.ts";

export interface DebriefInput {
  readonly log: ImportedLog;
  readonly brief: BriefDraft | null;
  /** Which flight of a log that holds several, from 0; the longest that went anywhere where not given. */
  readonly flight?: number | null;
  /** Landing directions of the user's own lists: finals to them are found, and circuits round them are no holds. */
  readonly runways?: readonly KnownRunway[];
  /** What to hold the exercises against, or that nothing is; the published standard that the brief names where not given. */
  readonly standard?: TestStandard | "none" | null;
}

export interface Debrief {
  readonly document: DebriefDocument;
  readonly series: FlightSeries;
}

/**
 * The debrief of one flight. Pure: the same log and brief give the same document. Where the heights of the log are in
 * the other unit, it is that of the log without them.
 * @throws UnusableInput when fewer than two points are left after cleaning, or there is no such flight.
 */
export function debriefFlight(input: DebriefInput): Debrief {
  const debrief = asLogged(input);
  const unit = heightUnitIssue(debrief.document);
  if (!unit) return debrief;
  const { document, series } = asLogged({ ...input, log: withoutHeights(input.log) });
  return { document: withHeightUnit(document, debrief.document, unit), series };
}

function asLogged({
  log,
  brief: draft,
  flight: asked = null,
  standard: given = null,
  runways = [],
}: DebriefInput): Debrief {
  const cleaned = cleanTrack(log.track);
  if (cleaned.track.length < 2) {
    // where nothing is left, what took the points is the reason
    const why = cleaned.issues
      .filter(({ code }) => code !== "no-usable-points")
      .map((issue) => ({ ...issue, where: { file: log.file, ...issue.where } }));
    throw new UnusableInput([
      ...(cleaned.track.length === 0 ? why : []),
      {
        code: "too-few-points",
        severity: "error",
        where: { file: log.file },
        facts: {
          points: log.pointsSeen,
          used: cleaned.track.length,
          backwards: cleaned.dropped["time-going-back"] ?? 0,
        },
      },
      ...(cleaned.track.length === 0 ? [] : why),
    ]);
  }

  const chosen = chooseFlight(cleaned.track, log.file, asked);
  const { track } = chosen;
  const motion = smoothTrack(track);
  const legs = motion ? findLegs(motion) : [];
  const start = motion ? motion.time[0]! : null;
  const brief = draft ? resolveBrief(draft, { time: start }) : null;
  const written = brief?.aircraft ?? null;
  const airspeedOff = brief && written && motion ? implausibleAirspeed(written, motion, brief.file) : null;
  const wind = motion
    ? estimateWind(motion, legs, {
        airspeed: airspeedOff ? null : written,
        winds: brief?.winds ?? [],
        measured: measuredAir(track, motion),
      })
    : null;

  const path = pathSeries(track, motion, legs, wind);
  const named = brief?.standard ? standardNamed(brief.standard) : null;
  const standard = given === "none" ? null : (given ?? named);
  const near = motion ? runwaysNear(motion, runways) : [];
  const { heightsBy } = track;
  const leftOut = leftOutOf(log.pointsSeen, { ...droppedByCode(log.issues), ...cleaned.dropped });
  const flight = {
    path,
    ...(heightsBy && { heightsBy }),
    motion,
    legs,
    wind,
    runways: near,
    stations: brief ? stationsOf(brief) : [],
    standard,
    leftOut,
  };
  const exercises = brief ? briefedExercises(brief, flight) : fittedExercises(flight);

  const middle = path.latitude.length >> 1;
  const variation =
    start === null
      ? null
      : variationAt({ latitude: path.latitude[middle]!, longitude: path.longitude[middle]! }, start);

  const document: DebriefDocument = {
    format: "hindtrack-debrief",
    version: 1,
    caution: CAUTION,
    log: logRecord(log, cleaned, chosen, motion !== null, implausibleLog(log, cleaned, motion)),
    brief: brief && {
      title: brief.title,
      file: brief.file,
      source: brief.source,
      standard: brief.standard,
      aircraft: brief.aircraft && {
        tasKt: brief.aircraft.trueAirspeed,
        doubtKt: brief.aircraft.doubt,
      },
      fixes: brief.fixes.map(({ ident, latitude, longitude, kind }) => ({
        ident,
        latitude,
        longitude,
        kind,
      })),
      issues: [
        ...implausiblePlaces(brief, path, start),
        ...fixesAside(
          brief,
          brief.exercises.map((_, i) => exercises[i]!.record.match !== null),
          path,
        ),
        ...(airspeedOff ? [airspeedOff] : []),
        ...brief.issues,
        ...unknownStandard(brief, named ?? given),
      ].map((issue) => ({
        ...issue,
        where: { ...issue.where },
        facts: { ...issue.facts },
      })),
    },
    standard: standard && { id: standard.id, title: standard.title, citation: standard.citation },
    variation,
    wind: wind && {
      ...windRecord(wind.day),
      altitudeFt: wind.day.altitude,
      priorsUsed: [...wind.priorsUsed],
    },
    windByHeight:
      motion && wind
        ? windByHeight(wind, motion).map((band) => ({
            lowFt: band.low,
            highFt: band.high,
            altitudeFt: band.altitude,
            seconds: band.seconds,
            wind: windRecord(band),
          }))
        : [],
    legs: motion && wind ? legRecords(motion, legs, wind) : [],
    exercises: exercises.map((e) => e.record),
    remarks: [],
    overrules: [],
  };
  return { document: rounded(document), series: { path, exercises: exercises.map((e) => e.series) } };
}

/** A brief that names a standard which is neither published here nor given beside it. */
function unknownStandard({ standard: named, file }: Brief, standard: DebriefInput["standard"]): Issue[] {
  if (named === null || standard) return [];
  const known = TEST_STANDARDS.map(({ id }) => id).join(", ");
  return [
    { code: "unknown-standard", severity: "warning", where: { file }, facts: { standard: named, known } },
  ];
}

/** About which the brief may have arcs flown: its radio stations, and what its own arcs are about. */
const stationsOf = ({ fixes, exercises }: Brief): Fix[] => [
  ...fixes.filter(({ kind }) => kind === "vor" || kind === "ndb"),
  ...exercises.flatMap((e) => (e.kind === "arc" ? [e.fix] : [])),
];
