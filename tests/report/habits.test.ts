/** The words of habits: for every tendency, for every status, to either side, with a size in its own unit. */
import { describe, expect, it } from "vitest";
import { type Habit, type HabitReport, type HabitStatus, TENDENCIES } from "../../src/habit/index.ts";
import {
  habitMean,
  habitPractise,
  habitProof,
  habitSentence,
  habitStatus,
  habitsText,
  habitTitle,
  habitTolerance,
  habitToleranceFrom,
  habitTrend,
} from "../../src/report/index.ts";

const habit = (changes: Partial<Habit>): Habit => ({
  ...{ id: "descent-late", unit: "s", oneSided: false, tolerance: 30, status: "beyond" },
  mean: { value: 1.5, low95: 1.2, high95: 1.8 },
  ...{
    chance: 0.001,
    chanceBeyond: 0.01,
    exercises: 12,
    flights: 8,
    trend: null,
    points: [],
    seenOn: [],
    untold: {},
  },
  ...changes,
});
const statuses: HabitStatus[] = ["beyond", "habit", "small", "cannot-tell", "too-few"];
const all = TENDENCIES.map(({ id, unit, oneSided }) => ({ id, unit, oneSided }));

describe("every tendency", () => {
  it.each(all)("$id: has a title, sides, sentences and something to practise", (of) => {
    for (const value of of.oneSided ? [1.5] : [1.5, -1.5]) {
      const h = habit({ ...of, mean: { value, low95: value - 0.3, high95: value + 0.3 } });
      const words = [
        habitTitle(h),
        habitSentence(h),
        habitSentence(h, false),
        habitProof(h),
        habitPractise(h),
      ];
      const more = [habitTolerance(h), habitToleranceFrom(h), habitMean(h), habitTrend(h)];
      for (const text of [...words, ...more]) expect(text).toMatch(/^(?!.*(undefined|NaN|null)).+$/);
      expect(habitSentence(h)).toMatch(/^[A-Z].*\d.*\.$/);
      expect(habitPractise(h)).toMatch(/^[a-z].*\.$/);
    }
  });

  it("titles are told apart", () => {
    expect(new Set(all.map(habitTitle)).size).toBe(all.length);
  });

  it("a tendency without words is a fault, not an empty line", () => {
    expect(() => habitTitle({ id: "no-such-thing" })).toThrow(RangeError);
  });
});

describe("sentences", () => {
  it("say size, unit and side", () => {
    expect(habitSentence(habit({}))).toBe(
      "Descents are begun 45 seconds too late for the rate that is flown.",
    );
    const early = habit({ mean: { value: -1.5, low95: -1.8, high95: -1.2 } });
    expect(habitSentence(early)).toBe("Descents are begun 45 seconds too early for the rate that is flown.");
    expect(habitSentence(habit({}), false)).toBe(
      "It may be that descents are begun 45 seconds too late for the rate that is flown.",
    );
    const outbound = habit({ id: "hold-outbound", unit: "part", tolerance: 1 / 3 });
    expect(habitSentence(outbound)).toBe(
      "Outbound in holds, on average 50 % of the wind correction is missing.",
    );
    const over = { ...outbound, mean: { value: -0.9, low95: -1.2, high95: -0.6 } };
    expect(habitSentence(over)).toBe("Outbound in holds, the wind is on average corrected by 30 % too much.");
  });

  it("say of what a wind correction along a course is the mean", () => {
    const over =
      "chosen here; the mean over the whole judged course, less the times in which the track leads back to it";
    for (const id of ["correction-inbound", "correction-outbound"])
      expect(habitToleranceFrom({ id })).toContain(over);
    expect(habitToleranceFrom({ id: "hold-outbound" })).toBe("chosen here");
  });

  it("say nothing of too little", () => {
    const few = habit({ status: "too-few", mean: null, exercises: 4, flights: 2 });
    expect(habitSentence(few)).toBe("");
    expect(habitMean(few)).toBe("");
    expect(habitProof(few)).toBe(
      "4 exercises on 2 flights: not enough yet; five exercises on two flights are needed.",
    );
  });

  it("say why exercises that were meant for it do not tell", () => {
    const few = habit({ ...all.find(({ id }) => id === "hold-outbound")!, status: "too-few", mean: null });
    const untold = { ...few, exercises: 0, flights: 0, untold: { "wind-not-known": 8 } };
    expect(habitStatus(untold)).toBe("not enough yet (in 8 the wind is not known well enough)");
    expect(habitStatus({ ...untold, untold: { "wind-not-known": 2, "little-wind": 1 } })).toBe(
      "not enough yet (in 2 the wind is not known well enough, in 1 it asked for too little correction to tell)",
    );
    expect(habitStatus({ ...untold, untold: {} })).toBe("not enough yet");
  });

  it("say what they rest on, the largest end last, and the trend where there is one", () => {
    expect(habitProof(habit({}))).toBe("1.5 tolerances (95 %: 1.2 to 1.8), 12 exercises on 8 flights.");
    const better = habit({ trend: { perFlight: -0.1, from: 2, better: true, chance: 0.01 } });
    expect(habitProof(better)).toMatch(/on 8 flights\. Better, by 3 seconds a flight\.$/);
    const across = habit({ mean: { value: -0.4, low95: -1.1, high95: 0.3 } });
    expect(habitProof(across)).toContain("0.4 tolerances (95 %: −0.3 to 1.1)");
  });

  it("a status is a word of its own", () => {
    const words = statuses.map((status) => habitStatus(habit({ status })));
    expect(new Set(words).size).toBe(statuses.length);
  });
});

describe("the text", () => {
  const report = (habits: Habit[]): HabitReport => ({
    flights: [0, 1].map((i) => ({
      ...{ id: `f${i}`, title: `Lesson ${i}`, startUtc: `2026-10-1${i}T09:00:00Z`, endUtc: null },
      ...{ pilot: null, aircraft: null, observations: [] },
    })),
    exercises: 12,
    habits,
  });

  it("says what to practise and why, what it rests on, every number, and the caution", () => {
    const text = habitsText(
      report([habit({ seenOn: [1] }), habit({ id: "chasing", unit: "per-min", status: "small" })]),
    );
    expect(text).toContain("1. Descents are begun 45 seconds too late");
    expect(text).toMatch(/Seen best on\s+11\s+October\s+2026\./);
    expect(text).toMatch(/Practise: before each descent/);
    expect(text).toContain("2 flights, 12 exercises, 10 October 2026 to 11 October 2026.");
    expect(text).toMatch(/Not for\s+navigation, not an official grade/);
    expect(text).toMatch(/Chasing the needle .* no habit/);
    expect(text).not.toMatch(/undefined|NaN|null/);
  });

  it("of several pilots says that they are together, before what to practise", () => {
    const of = (...pilots: (string | null)[]): HabitReport => {
      const one = report([habit({ seenOn: [] })]);
      return { ...one, flights: pilots.map((pilot, i) => ({ ...one.flights[0]!, id: `f${i}`, pilot })) };
    };
    const text = habitsText(of("A", "B", "A", null)).replace(/\s+/g, " ");
    expect(text).toContain("4 flights of 2 pilots together, 12 exercises");
    expect(text).toMatch(
      /Of 2 pilots together, and 1 flight of nobody named: an average over them.* Practise next/,
    );
    for (const alone of [of("A", "A"), of(null, null)])
      expect(habitsText(alone)).not.toMatch(/pilots? together/);
  });

  it("pilot by pilot: name, flights and habits of each, and how to see one in full", () => {
    const of = (pilot: string, ...habits: Parameters<typeof report>[0]): HabitReport => {
      const one = report(habits);
      return { ...one, flights: [{ ...one.flights[0]!, pilot }] };
    };
    const text = habitsText(report([]), [of("A", habit({ seenOn: [] })), of("B")]).replace(/\s+/g, " ");
    expect(text).toMatch(
      /Pilot by pilot \(one in full: --pilot NAME\) A, 1 flight: [A-Z][^.]*\d.*\. B, 1 flight: no habit stands out\. Practise next, all of them together/,
    );
    expect(habitsText(report([]), [of("A")])).not.toContain("Pilot by pilot");
  });

  it("of flights without a pilot's name says that they are taken as one pilot's; of one flight nothing", () => {
    const of = (...pilots: (string | null)[]): string => {
      const one = report([habit({ seenOn: [] })]);
      const flights = pilots.map((pilot) => ({ ...one.flights[0]!, pilot }));
      return habitsText({ ...one, flights }).replace(/\s+/g, " ");
    };
    expect(of(null, null)).toMatch(/No pilot is named .* taken as one pilot’s.* Practise next/);
    expect(of("Bo", null)).toContain("Of Bo, and 1 flight of nobody named, taken as Bo’s too");
    for (const sure of [of("Bo", "Bo"), of(null)]) expect(sure).not.toMatch(/taken as|nobody named/);
  });

  it("names the pilot and the aircraft that all flights have in common", () => {
    const of = (pilots: readonly (string | null)[], aircraft: readonly string[]): string => {
      const one = report([habit({ seenOn: [] })]);
      const flights = pilots.map((pilot, i) => ({ ...one.flights[0]!, pilot, aircraft: aircraft[i]! }));
      return habitsText({ ...one, flights });
    };
    expect(of(["Bo", "Bo"], ["school one", "school one"])).toContain("2 flights of Bo in school one, 12");
    expect(of(["Bo", "Bo"], ["school one", "school two"])).toContain("2 flights of Bo, 12");
    expect(of(["Bo", null], ["school one", "school one"])).toContain("2 flights in school one, 12");
  });

  it("says plainly that there is nothing to say yet", () => {
    expect(habitsText(report([]))).toMatch(/Not enough yet: five exercises on two flights/);
    const few = habit({ status: "too-few", mean: null, exercises: 3, flights: 2 });
    expect(habitsText(report([few]))).toMatch(/not enough yet/);
    const none = habit({ status: "small", mean: { value: 0, low95: -0.1, high95: 0.1 } });
    expect(habitsText(report([none]))).toMatch(/No habit stands out/);
  });
});
