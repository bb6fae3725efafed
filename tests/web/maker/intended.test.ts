/** What was flown, taken as meant: by the simulator's own flights, whose brief and truth are known. */
import { describe, expect, it } from "vitest";
import { briefText } from "../../../src/brief/index.ts";
import {
  type DocumentExercise,
  debriefFlight,
  type ListedPoint,
  readBrief,
  readLog,
  sideNotes,
} from "../../../src/index.ts";
import { flyScenario } from "../../../src/simulator/index.ts";
import { intended } from "../../../web/maker/intended.ts";
import { noteReadOff, readOffNote } from "../../../web/maker/read-off.ts";

const TARNO: ListedPoint = {
  ident: "TARNO",
  latitude: 35.6,
  longitude: 172.3,
  kind: "vor",
  declination: 2.5,
  elevation: null,
};

async function flown(scenario: string, seed: number) {
  const { gpx } = flyScenario(scenario, seed);
  const log = await readLog([new TextEncoder().encode(gpx)], "log.gpx");
  const { document } = debriefFlight({ log, brief: null });
  return { log, document, time: Date.parse(document.log.startUtc!) };
}
const named = (kind: DocumentExercise["kind"]) => (e: DocumentExercise) =>
  e.kind === kind && e.facts !== null;

describe("a hold that was found", () => {
  it("becomes the hold that the simulator was told to fly, at the known station", async () => {
    const { document, time } = await flown("hold-direct-well-flown", 5001);
    const hold = document.exercises.find(named("hold"))!;
    const meant = intended(hold, { points: [TARNO], time, freeIdent: "P1" })!;
    // as scripted: hold at TARNO, inbound 247 magnetic, right turns, 1 minute (samples/README.md)
    expect(meant.exercise).toMatchObject({ hold: "TARNO", turns: "right", leg: "1 min" });
    expect(Math.abs(Number(meant.exercise.inbound) - 247)).toBeLessThanOrEqual(1);
    expect(meant.fixes).toEqual({ TARNO: { lat: 35.6, lon: 172.3, kind: "vor", declination: 2.5 } });
  });

  it("has the usual leg at its height, whatever was flown, and says so (AIM 5-3-8 j: 1 minute up to 14,000 ft, 1 and a half above)", async () => {
    const { document, time } = await flown("hold-direct-well-flown", 5001);
    const hold = document.exercises.find((e) => e.kind === "hold" && e.facts !== null)!;
    if (hold.kind !== "hold" || !hold.facts) throw new Error("no hold");
    const { facts } = hold;
    // as of a pilot who let the wind lengthen the inbound legs
    const laps = [108.4, 87.6, 90].map((seconds) => ({
      ...facts.laps[0]!,
      inbound: { ...facts.laps[0]!.inbound!, seconds },
    }));
    const at = (meanFt: number | null) =>
      intended(
        {
          ...hold,
          facts: {
            ...facts,
            leg: { by: "time", seconds: 90 },
            laps,
            altitude: meanFt === null ? null : { ...facts.altitude!, meanFt },
          },
        },
        { points: [TARNO], time, freeIdent: "P1" },
      )!;
    expect(at(4000).exercise.leg).toBe("1 min");
    expect(at(null).exercise.leg).toBe("1 min");
    expect(at(15_000).exercise.leg).toBe("90 s");
    expect(at(4000).assumed).toMatch(/leg of 1 min is assumed.* Inbound flown: 108, 88, 90 s\./);
  });

  it("tells how far its inbound course may be off, beside its field until another is typed", async () => {
    const { document, time } = await flown("hold-outbound-flown-parallel", 5001);
    const hold = document.exercises.find((e) => e.kind === "hold" && e.facts !== null)!;
    if (hold.kind !== "hold" || !hold.facts) throw new Error("no hold");
    const { facts } = hold;
    // as scripted: inbound 247 magnetic; that pilot's ways back cut the course and never follow it
    const off = Math.abs(
      Number(intended(hold, { points: [TARNO], time, freeIdent: "P1" })!.exercise.inbound) - 247,
    );
    const told = intended(hold, { points: [TARNO], time, freeIdent: "P1" })!.inboundWithinDeg!;
    expect(off).toBeGreaterThanOrEqual(4);
    expect(off).toBeLessThanOrEqual(told);
    // the sheet says the same
    const note = sideNotes(hold).find(({ text }) => text.includes("no brief names it"))!;
    expect(note.text).toContain(`inbound course (± ${told}°)`);
    const as = (inbound95Deg: number, sure: boolean) =>
      intended(
        { ...hold, facts: { ...facts, inbound95Deg, sure } },
        { points: [TARNO], time, freeIdent: "P1" },
      )!;
    const meant = as(3.3, true);
    expect(meant.inboundWithinDeg).toBe(4);
    expect(meant.assumed).toContain("inbound course is read off the flight, ± 4°: look at it.");
    expect(as(0.9, false).inboundWithinDeg).toBe(1);
    expect(as(0.9, true).inboundWithinDeg).toBeUndefined();
    expect(as(0.9, true).assumed).not.toContain("±");
    noteReadOff(meant.exercise, meant.inboundWithinDeg!);
    expect(readOffNote(meant.exercise)).toBe("± 4° as read off the flight: look at it");
    expect(readOffNote({ ...meant.exercise, inbound: "247" })).toBeNull();
  });

  it("gets a new point where nothing is known there, and is measured as the hold of the brief", async () => {
    const { log, document, time } = await flown("hold-direct-well-flown", 5002);
    const hold = document.exercises.find(named("hold"))!;
    const meant = intended(hold, { points: [], time, freeIdent: "P1" })!;
    const text = briefText({ brief: 1, fixes: meant.fixes, exercises: [meant.exercise] });
    const again = debriefFlight({ log, brief: readBrief(text, "brief.yaml") }).document.exercises;
    const own = again.filter(({ source }) => source === "brief");
    expect(own).toHaveLength(1);
    expect(own[0]!.facts).not.toBeNull();
    expect(again.filter(({ kind, source }) => kind === "hold" && source === "found")).toEqual([]);
  });
});

describe("a fitted course", () => {
  it("becomes a whole magnetic degree to the station that it led to, and is measured against it", async () => {
    const { log, document, time } = await flown("calm-and-tidy", 5003);
    const first = document.exercises.find(named("course"))!;
    const meant = intended(first, { points: [TARNO], time, freeIdent: "P1" })!;
    // as scripted: the first course of that lesson is 241 magnetic to TARNO
    expect(meant.exercise.to).toBe("TARNO");
    expect(meant.exercise.course).toMatch(/^24[01]$/);
    const text = briefText({ brief: 1, fixes: meant.fixes, exercises: [meant.exercise] });
    const [own] = debriefFlight({ log, brief: readBrief(text, "brief.yaml") }).document.exercises;
    expect(own!.kind === "course" && own!.facts?.form).toBe("to");
  });

  it("stands on a new point at its end where no point is known, three figures for what is north of 100", async () => {
    const { document, time } = await flown("calm-and-tidy", 5003);
    const courses = document.exercises.filter(named("course"));
    for (const course of courses) {
      const meant = intended(course, { points: [], time, freeIdent: "P7" })!;
      expect(meant.exercise.to).toBe("P7");
      expect(meant.exercise.course).toMatch(/^\d{3}$/);
    }
  });

  it("is nothing to take over where it stands in a brief already", async () => {
    const { document, time } = await flown("calm-and-tidy", 5003);
    const meant = { ...document.exercises[0]!, source: "brief" } as DocumentExercise;
    expect(intended(meant, { points: [], time, freeIdent: "P1" })).toBeNull();
  });
});
