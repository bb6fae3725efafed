/**
 * Courses and radials are read against their station, headings on the compass. A station is set to its declination when it
 * is built, and keeps it while the variation drifts away (FAA-H-8083-15, from memory): here by 5 degrees, on paper only,
 * as the same true lines are written in its terms. The variation of the day is by magvar, another implementation.
 */

import { readFileSync } from "node:fs";
import { join } from "node:path";
import { magvar } from "magvar";
import { describe, expect, it } from "vitest";
import { type DebriefDocument, documentSchema } from "../../src/debrief/document.ts";
import { debriefText } from "../../src/report/index.ts";
import { approaches, courses, debriefOf, holds } from "../support/debriefed.ts";
import { near } from "../support/near.ts";

const OFF = 5;
const TARNO = [35.6, 172.3] as const;
/** Of 17 October 2026. */
const VARIATION = magvar(...TARNO, 0, 2026.8);

const sample = (name: string, file: string) =>
  readFileSync(join(import.meta.dirname, "../../samples", name, file), "utf8");

const three = (degrees: number) => String(((Math.round(degrees) + 359) % 360) + 1).padStart(3, "0");

/** The brief of a sample with a declination so much greater, its magnetic directions so much less. */
const asOld = (brief: string): string =>
  brief
    .replace("declination: 2.5", `declination: ${2.5 + OFF}`)
    .replace(
      /(course|inbound|from_radial|to_radial): (\d{3})\b/g,
      (_, key, degrees) => `${key}: ${three(degrees - OFF)}`,
    );

async function old(name: string, change = (brief: string) => brief): Promise<DebriefDocument> {
  return (await debriefOf(sample(name, "log.gpx"), change(asOld(sample(name, "brief.yaml"))))).document;
}

/** A heading in magnetic degrees against its true ones. */
function onCompass(magnetic: number | null, trueDeg: number | null): void {
  near(((trueDeg! - magnetic! + 540) % 360) - 180, VARIATION, 0.05, "°");
}

describe("a station whose declination is 5° more than the variation of the day", () => {
  it("courses are told by the station, the heading that holds one by the compass", async () => {
    const [course] = courses(await old("strong-crosswind-badly-corrected"));
    expect(course!.facts.courseMagneticDeg).toBe(236);
    const worked = course!.whatWouldHaveWorked!;
    onCompass(worked.headingMagneticDeg, worked.headingTrueDeg);
  });

  it("a drift is told by the station: track and course in one reference", async () => {
    const [course] = courses(await old("strong-crosswind-badly-corrected"));
    const drift = course!.findings.find(({ code }) => code === "drifted-before-needle")!.facts as Record<
      string,
      number
    >;
    near(drift.courseMagneticDeg!, 236, 0.2, "°");
    near(Math.abs(drift.trackMagneticDeg! - drift.courseMagneticDeg!), drift.degrees!, 0.01, "°");
  });

  it("a hold is inbound by the station, its outbound heading by the compass", async () => {
    const document = await old("hold-direct-well-flown");
    const [{ facts }] = holds(document) as [ReturnType<typeof holds>[number]];
    expect(facts.inboundMagneticDeg).toBe(242);
    if (!facts.solved || "none" in facts.solved) throw new Error("no racetrack");
    const text = debriefText(document).replace(/\s+/g, " ");
    expect(text).toContain(`heading ${three(facts.solved.outboundHeadingTrueDeg - VARIATION)}°M`);
    expect(text).toContain("variation of the day, 2.3°E; courses by the station’s declination, 7.5°E.");
    expect(text).toContain(`heading ${three(facts.entry!.headingTrueDeg - VARIATION)}°M at the fix`);
  });

  it("an arc has radials by the station, headings by the compass", async () => {
    const arc = (await old("arc-to-a-radial")).exercises.find(({ kind }) => kind === "arc")!;
    if (arc.kind !== "arc") throw new Error("no arc");
    expect(arc.facts!.fromRadialMagneticDeg).toBe(295);
    for (const at of arc.whatWouldHaveWorked!.headings) {
      onCompass(at.headingMagneticDeg, at.headingTrueDeg);
      near((at.radialTrueDeg - at.radialMagneticDeg! + 360) % 360, 2.5 + OFF, 0.001, "°");
    }
  });

  it("an approach along a VOR’s radial has its course by the station, the heading that holds it by the compass", async () => {
    const vor = (brief: string) =>
      brief.replace(
        "guidance: localizer\n      antenna_ft: 6500",
        "guidance: vor\n      station: TARNO\n      course: 221.5T",
      );
    const [approach] = approaches(await old("approach-track-chased", vor));
    near(approach!.facts.finalCourseTrueDeg - approach!.facts.finalCourseMagneticDeg!, 2.5 + OFF, 0.001, "°");
    const worked = approach!.whatWouldHaveWorked!;
    onCompass(worked.headingMagneticDeg, worked.headingTrueDeg);
  });

  it("on a day that no model covers, headings take the declination; without one, no heading is called magnetic", async () => {
    const early = (name: string, change: (brief: string) => string) =>
      debriefOf(sample(name, "log.gpx").replaceAll("2026-", "2013-"), change(sample(name, "brief.yaml")));
    const station = courses((await early("strong-crosswind-badly-corrected", asOld)).document)[0]!
      .whatWouldHaveWorked!;
    near(station.headingTrueDeg - station.headingMagneticDeg!, 2.5 + OFF, 0.001, "°");
    const unknown = (brief: string) =>
      brief
        .replace(", declination: 2.5", "")
        .replace(/course: (\d{3})/g, "course: $1T")
        .replace(/\bT+,/g, "T,");
    const none = courses((await early("strong-crosswind-badly-corrected", unknown)).document)[0]!;
    expect(none.facts.courseMagneticDeg).toBeNull();
    expect(none.whatWouldHaveWorked!.headingMagneticDeg).toBeNull();
  });

  it("documents of earlier versions, which had none of it, can still be read", async () => {
    const text = JSON.stringify(await old("hold-direct-well-flown"), (key, value) =>
      key === "dayDegrees" || (key === "variation" && "from" in Object(value)) ? undefined : value,
    );
    expect(documentSchema.safeParse(JSON.parse(text)).success).toBe(true);
  });
});
