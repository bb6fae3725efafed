/** A hold flown at the fix of the brief on quite another inbound course: the one that was asked for says so. Truth: the simulator's. */
import { describe, expect, it } from "vitest";
import { readBrief } from "../../src/brief/index.ts";
import { debriefFlight } from "../../src/debrief/index.ts";
import { standardNamed } from "../../src/grade/index.ts";
import { exerciseSentence } from "../../src/report/index.ts";
import { arriving, between, FINAL, flown, hold } from "../support/joined.ts";

const SEEDS = [1, 2, 3];
const COURSE = FINAL + 90;
const JOINED = {
  name: "hold on another course",
  start: arriving("TARNO", COURSE + 30, 5, 3000),
  parts: [hold("TARNO", COURSE, { turns: "left" }), between({ do: "heading", seconds: 60 } as const)],
};

/** Flown on one course with turns to the left; asked for as given, after what else the brief has. */
function debriefed(asked: string, seed: number, before = "") {
  const { track, truth, brief } = flown(JOINED, seed, 1);
  const log = { file: "log.gpx", track, waypoints: [], routes: [], pointsSeen: track.length, issues: [] };
  const text = brief.replace(/- \{ hold: .*/, `${before}- { ${asked}, leg: 1 min }`);
  const standard = standardNamed("instrument-rating-us")!;
  const { document } = debriefFlight({ log, brief: readBrief(text, "brief.yaml"), standard });
  return { exercises: document.exercises, truth: truth.truth.holds[0]! };
}

const off = (utc: string | null, from: string) => Math.abs(Date.parse(utc!) - Date.parse(from)) / 1000;

describe.each(["left", "right"] as const)(
  "asked for on a course 90 degrees off, with turns to the %s",
  (turns) => {
    it.each(SEEDS)(
      "seed %i: what was flown there, when, and with which turns; not flown as asked",
      (seed) => {
        const { exercises, truth } = debriefed(`hold: TARNO, inbound: ${FINAL}T, turns: ${turns}`, seed);
        const [asked, beside] = exercises;
        const [why] = asked!.findings;
        expect(why!.code).toBe("held-otherwise");
        expect(off(why!.evidence.fromUtc, truth.t0)).toBeLessThan(25);
        expect(off(why!.evidence.toUtc, truth.t1)).toBeLessThan(15);
        expect(Math.abs(Number(why!.facts.offDeg) - 90)).toBeLessThanOrEqual(
          Number(why!.facts.doubt95Deg) + 1,
        );
        expect(new Set(asked!.verdicts.map(({ verdict }) => verdict))).toEqual(new Set(["not flown"]));
        const side = turns === "left" ? "" : ", and with turns to the left";
        expect(exerciseSentence(asked!)).toMatch(
          new RegExp(
            `^Not found as the brief gives it; at its fix a hold was flown, \\d\\d:\\d\\d to \\d\\d:\\d\\d UTC, on \\d{3}°[MT].* \\(± \\d+°\\), \\d+° right of its inbound course${side}\\.$`,
          ),
        );
        expect(beside).toMatchObject({ kind: "hold", source: "found" });
      },
    );
  },
);

it.each(SEEDS)("after which the log ends in flight: it may have been flown yet, seed %i", (seed) => {
  const before = `- { course: ${COURSE + 30}T, to: TARNO }\n  `;
  const { exercises } = debriefed(`hold: TARNO, inbound: ${FINAL}T, turns: right`, seed, before);
  expect(exercises[0]).toMatchObject({ kind: "course", match: { by: "geometry" } });
  expect(exercises[1]!.verdicts).toMatchObject([{ verdict: "cannot tell", reason: "log-ends" }]);
});

it.each(SEEDS)("asked for at a time after it: nothing of the kind, seed %i", (seed) => {
  const asked = `hold: TARNO, inbound: ${FINAL}T, turns: left`;
  const end = Date.parse(debriefed(asked, seed).truth.t1);
  const [from, to] = [1, 9].map((minutes) => new Date(end + minutes * 60_000).toISOString().slice(11, 16));
  const { exercises } = debriefed(`${asked}, between: ["${from}", "${to}"]`, seed);
  expect(exercises[0]!.findings.map(({ code }) => code)).not.toContain("held-otherwise");
});

it.each(SEEDS)("asked for at another fix: nothing of the kind, seed %i", (seed) => {
  const { exercises } = debriefed(`hold: LUMDO, inbound: ${FINAL}T, turns: left`, seed);
  expect(exercises[0]!.findings.map(({ code }) => code)).not.toContain("held-otherwise");
});
