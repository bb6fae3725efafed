/** How often verdicts of holds are wrong, or not given, on simulated holds whose truth is known. */
import type { HoldExercise } from "../../src/brief/brief.ts";
import { courseThrough } from "../../src/geodesy/index.ts";
import { gradeHold, standardNamed } from "../../src/grade/index.ts";
import { holdAgainst, measureHold } from "../../src/hold/index.ts";
import { turnFrom } from "../../src/quantity/angle.ts";
import { fly, scenarioNamed } from "../../src/simulator/index.ts";
import { offset } from "../../src/simulator/step.ts";
import type { TrueHold } from "../../src/simulator/truth.ts";
import { HOLDING } from "../../src/standard/holding.ts";
import type { Limit, TestStandard } from "../../src/standard/test-standard.ts";
import { cleanTrack, findLegs, smoothTrack } from "../../src/track/index.ts";
import { estimateWind } from "../../src/wind/index.ts";
import { around, type Tallies, tell } from "./tally.ts";

const US = standardNamed("instrument-rating-us")!;
const RADIAN = Math.PI / 180;
/** Sectors as FAA AIM FIG 5-3-4 shows them, from the inbound course toward the holding side: where each begins and ends. */
const SECTORS = { direct: [-70, 110], teardrop: [110, 180], parallel: [180, 290] } as const;

/** How far the true heading at the fix lies outside the sector of the entry flown; negative inside. */
function outside({ entry, headingAtFixTrueDeg, inboundTrueDeg, turn }: TrueHold): number {
  const off = (turn === "right" ? 1 : -1) * turnFrom(inboundTrueDeg, headingAtFixTrueDeg);
  const [from, to] = SECTORS[entry];
  return Math.abs(turnFrom((from + to) / 2, off)) - (to - from) / 2;
}

/** The true needle, worst from established on to the mile before the fix, or all of that where it never was; and whether a lap was never established, which is met by no limit. */
function trueNeedle(
  hold: TrueHold,
  kind: "vor" | "waypoint",
  start: number,
  columns: ReturnType<typeof fly>["columns"],
): { readonly needle: number | null; readonly never: boolean } {
  const [latitude, longitude] = hold.fix;
  let never = false;
  const worst = hold.laps.flatMap(({ inboundUtc, endUtc }) => {
    const rows: { needle: number; parallel: boolean }[] = [];
    const within: { needle: number; parallel: boolean }[] = [];
    for (let k = 1; k < columns.length; k++) {
      const time = start + columns.seconds[k]! * 1000;
      if (time < Date.parse(inboundUtc) || time > Date.parse(endUtc)) continue;
      const from = (i: number) => {
        const place = { latitude: columns.latitude[i]!, longitude: columns.longitude[i]! };
        const way = offset({ latitude, longitude }, place);
        const aside = (way.azimuthAtStart - hold.inboundTrueDeg) * RADIAN;
        return {
          along: (way.distance / 1852) * Math.cos(aside),
          across: (way.distance / 1852) * Math.sin(aside),
        };
      };
      const [before, now] = [from(k - 1), from(k)];
      const angle = Math.atan2(now.across - before.across, now.along - before.along) / RADIAN;
      if (now.along >= 0 || (kind === "vor" && Math.hypot(now.along, now.across) < 1)) {
        // within a mile of the station: 0.175 NM are full scale there
        within.push({
          needle: Math.abs(now.across) / Math.tan(10 * RADIAN),
          parallel: Math.abs(angle) <= 10,
        });
        continue;
      }
      const needle = kind === "vor" ? Math.atan2(now.across, -now.along) / RADIAN / 10 : now.across;
      rows.push({ needle: Math.abs(needle), parallel: Math.abs(angle) <= 10 });
    }
    const heldFrom = (of: typeof rows) =>
      of.findIndex(
        (_, i) => i + 10 < of.length && of.slice(i, i + 11).every((r) => r.needle <= 0.5 && r.parallel),
      );
    const established = heldFrom(rows);
    if (established < 0 && kind === "vor" && heldFrom(within) >= 0) return [];
    never ||= established < 0;
    if (rows.length < 2) return [];
    return [Math.max(...rows.slice(Math.max(0, established)).map((r) => r.needle))];
  });
  return { needle: worst.length > 0 ? Math.max(...worst) : null, never };
}

/** Worst, off the time asked: inbound, but of the first leg where it was flown out for that time; rounded rules as published. */
function trueLegOff(hold: TrueHold, asked: number): number {
  return Math.max(
    ...hold.laps.map(({ outboundUtc, abeamUtc, inboundTurnUtc, inboundS }, i) => {
      // ICAO Doc 8168: from abeam the fix or on the outbound heading, whichever comes later
      const from = abeamUtc && abeamUtc > outboundUtc ? abeamUtc : outboundUtc;
      const out = Math.abs((Date.parse(inboundTurnUtc) - Date.parse(from)) / 1000 - asked);
      const back = Math.abs(inboundS - asked);
      return i === 0 && out <= 10 && back > 10 ? out : back;
    }),
  );
}

/** Degrees and seconds do not scale with the deviation: a limit within 15 of it to both sides, evenly spread. */
const about = (truth: number, seed: number): Limit<number> => ({
  limit: truth - 15 + 30 * ((seed * 0.6180339887) % 1),
  edge: "within",
  citation: "drawn",
});

/** One hold a seed, logged each second, in a wind that the pilot knew to 3 kt. */
export function calibrateHolds(first: number, flights: number): Tallies {
  const tallies: Tallies = {};
  for (let seed = first; seed < first + flights; seed++) {
    const scenario = scenarioNamed("hold-any");
    const { track, truth, columns } = fly(scenario, seed);
    const [hold] = truth.truth.holds;
    const motion = smoothTrack(cleanTrack(track).track)!;
    const legs = findLegs(motion);
    const fix = { latitude: hold!.fix[0], longitude: hold!.fix[1] };
    const kind = seed % 2 === 0 ? "vor" : "waypoint";
    const leg = hold!.leg as { seconds?: number; distanceNm?: number };
    const exercise = {
      ...{ kind: "hold", index: 0, title: "Hold", between: null, altitude: null, magnetic: null },
      fix: { ...fix, ident: "TARNO", kind, declination: null, elevation: null },
      course: courseThrough(fix, hold!.inboundTrueDeg),
      variation: { degrees: 0, from: "written-true", model: null, dayDegrees: 0 },
      turns: hold!.turn,
      leg: leg.seconds === undefined ? { by: "distance", distance: 4 } : { by: "time", seconds: leg.seconds },
    } as HoldExercise;
    const found = holdAgainst(motion, legs, { fix, inbound: hold!.inboundTrueDeg, turns: hold!.turn });
    if (!found || found.turns !== hold!.turn || found.laps.length !== hold!.laps.length) continue;
    const { windFromTrueDeg, windKt } = hold!.laps[0]!;
    const known = { from: windFromTrueDeg, speed: windKt, doubt: 3, altitude: null, source: "known" };
    const wind = estimateWind(motion, legs, { airspeed: null, winds: [known] });
    const { facts } = measureHold({ exercise, found, motion, wind, standard: HOLDING.us });
    const { needle, never } = trueNeedle(hold!, kind, scenario.start.time, columns);
    const off = leg.seconds === undefined ? null : trueLegOff(hold!, leg.seconds);
    const toward = outside(hold!);
    const standard: TestStandard = {
      ...US,
      hold: {
        ...US.hold,
        needle: around(needle ?? 1, seed),
        legTime: about(off ?? 1, seed),
        entry: about(toward, seed),
      },
    };
    const verdicts = gradeHold(facts, standard);
    const verdict = (id: string) => verdicts.find((v) => v.criterion === id);
    if (needle !== null && facts.laps.some((lap) => lap.tracking)) {
      const found = verdict("hold-needle")!;
      // that a lap was never established is told, and right or wrong as any verdict
      if (found.reason === "lap-never-established")
        tell(tallies, { ...found, verdict: "not met" }, never ? Number.POSITIVE_INFINITY : 0);
      else tell(tallies, found, never && found.verdict === "met" ? Number.POSITIVE_INFINITY : needle);
    }
    // that no leg outbound makes one inbound of that time is no verdict, and right where the truth has none either
    const unflyable = hold!.laps.every(({ solvedOutboundS }) => solvedOutboundS === null);
    const legTime = verdict("hold-leg-time");
    if (off !== null && !(unflyable && legTime?.reason === "no-racetrack")) tell(tallies, legTime, off);
    tell(tallies, verdict("hold-entry"), toward, false);
  }
  return tallies;
}
