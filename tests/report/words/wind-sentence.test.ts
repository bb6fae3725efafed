/** The sentence of the wind: what it rests on, and the manoeuvre that would have made it known, from what was flown. */
import { describe, expect, it } from "vitest";
import type { DebriefDocument, DocumentLeg } from "../../../src/index.ts";
import { windSentence } from "../../../src/index.ts";
import { sampleDebrief } from "../../support/debriefed.ts";

const { document: sample } = await sampleDebrief("calm-and-tidy");
const time = (minute: number) => new Date(Date.UTC(2026, 9, 17, 9, minute)).toISOString();
const unknown = {
  ...sample.legs[0]!.wind,
  knowledge: "none",
  fromTrueDeg: null,
  speedKt: null,
  alongKt: null,
  acrossKt: null,
  ellipse95Kt: null,
  restsOn: "nothing",
} as const;
const known = {
  ...unknown,
  knowledge: "full",
  fromTrueDeg: 190,
  speedKt: 20,
  ellipse95Kt: { majorKt: 3, minorKt: 3, majorTrueDeg: 0 },
  restsOn: "turns",
} as const;

/** Ten minutes each: a straight on a track, or a turn through so many degrees. */
const leg = (i: number, over: Partial<DocumentLeg>): DocumentLeg => ({
  ...sample.legs[0]!,
  kind: "straight",
  startUtc: time(10 * i),
  endUtc: time(10 * i + 9),
  turnDeg: 0,
  verticalFpm: 0,
  wind: unknown,
  ...over,
});
const say = (
  legs: Partial<DocumentLeg>[],
  day: DebriefDocument["legs"][number]["wind"] = unknown,
  brief: DebriefDocument["brief"] = null,
): string =>
  windSentence({
    ...sample,
    brief,
    wind: { ...day, altitudeFt: 3000, priorsUsed: [] },
    legs: legs.map((over, i) => leg(i, over)),
  });

describe("D. Gray, Using GPS to accurately establish true airspeed, 1998: three courses at one airspeed fix a wind, or two at a known one", () => {
  it("asks for three courses or a full turn after one course and its reverse", () => {
    expect(say([{ trackTrueDeg: 90 }, { trackTrueDeg: 275 }])).toBe(
      "The direction of the wind cannot be told from this log: courses near 090°T and its reverse show at most what helps or hinders along them. A full turn, or a minute each on three courses 60° and more apart at one airspeed, would have made it known.",
    );
  });

  it("asks for one more course only where the brief gives the airspeed", () => {
    const brief = { ...sample.brief!, aircraft: { tasKt: 100, doubtKt: 5 } };
    const sentence = say([{ trackTrueDeg: 90 }], unknown, brief);
    expect(sentence).toContain("one course near 090°T shows");
    expect(sentence).toContain("a second course 60 to 90° off the first at the airspeed of the brief");
    expect(sentence).not.toContain("three courses");
  });
});

describe("what was flown decides what is asked for (by construction)", () => {
  it("does not ask for a full turn as if none had been flown", () => {
    const turn = { kind: "turn", turnDeg: -707, verticalFpm: -620 } as const;
    expect(say([{ trackTrueDeg: 90 }, turn])).toContain(
      "the turn through 707° at 09:10, descending 600 ft a minute, leaves too much doubt. A full turn at one height and one airspeed",
    );
  });

  it("names the longest stretch without a wind beside the wind of the day", () => {
    const legs = [{ wind: known }, {}, { wind: known }, { trackTrueDeg: 40 }, { trackTrueDeg: 50 }];
    const sentence = say(legs, known);
    expect(sentence).toContain("from 190° true, 20 kt, 95 % within 3.0 kt; it rests on the turns.");
    expect(sentence).toContain("From 09:30 to 09:49 it is not known: one course near 040°T shows");
  });

  it("says nothing of stretches where all is known", () => {
    expect(say([{ wind: known }, { wind: known }], known)).toMatch(/it rests on the turns\.$/);
  });

  it("says that a light wind has no sure direction", () => {
    expect(say([], { ...known, speedKt: 2 })).toContain("its direction is not sure");
    expect(say([], known)).not.toContain("its direction is not sure");
  });
});
