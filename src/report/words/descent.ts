/** A descent in words: its findings, the sentence over the drawing, and the notes beside it. */

import type { ConstantDescent, DescentFacts, DescentRecord, Finding } from "../../debrief/document.ts";
import type { FeetPerMinute } from "../../quantity/units.ts";
import { type FindingWords, given, num } from "./fact.ts";
import { HEIGHT_UNIT } from "./height-unit.ts";
import { feet, miles, rate, seconds } from "./measured.ts";
import { capital, clockSeconds, count, plain } from "./number.ts";
import { PRESSURE_HEIGHTS } from "./pressure-heights.ts";

/** No light aircraft descends so fast in training. Chosen: twice a brisk descent of 1,500 ft/min. */
const NO_DESCENT: FeetPerMinute = 3000;

const gradient = (ftPerNm: unknown): string => `${count(num(ftPerNm))} ft/NM`;

const REASONS: Readonly<Record<string, string>> = {
  "no-times": "the log has no times, so no rates",
  "height-is-pressure": PRESSURE_HEIGHTS,
  "no-height": "the log has no heights",
  "height-unit": HEIGHT_UNIT,
  "gps-height":
    "heights are by GPS, not by the altimeter that was flown by; the doubt covers the receiver, the air and the instrument, taking the log’s heights as above sea level",
};

/** As in "1 NM before BELVO"; "at BELVO". */
const place = (fix: unknown, beforeNm: unknown): string =>
  num(beforeNm) > 0 ? `${num(beforeNm)} NM before ${fix}` : `at ${fix}`;

const source = (f: Finding["facts"]): string => (f.by === "pressure" ? "on 1013.25 hPa" : "by GPS");
const crossing = (f: Finding["facts"]): string =>
  `${given(f.silentS) === null ? "" : "about "}${feet(f.altitudeFt)} ${source(f)} ${place(f.fix, f.beforeNm)}`;
const off = (f: Finding["facts"]): string =>
  `${feet(Math.abs(num(f.overFt)))} ${num(f.overFt) > 0 ? "above" : "below"} ${count(num(f.toFt))} ft`;
const untellable = (f: Finding["facts"]): string =>
  given(f.silentS) !== null
    ? `, but the log is silent there for ${seconds(f.silentS)}: the altimeter’s height is told only to ± ${feet(f.doubt95Ft)}`
    : `, but ${f.by === "pressure" ? "such a" : "a GPS"} height tells the altimeter’s only to ± ${feet(f.doubt95Ft)}`;

function began(f: Finding["facts"]): string {
  const down = given(f.downFpm);
  const flown = `the ${down === null ? gradient(f.downFtPerNm) : rate(down)} flown`;
  const at = f.basis === "as-flown" ? flown : `${gradient(f.downFtPerNm)}, 3°,`;
  const by = given(f.lateS) === null ? miles(f.lateNm) : `${miles(f.lateNm)}, ${seconds(f.lateS)},`;
  return `Begun ${miles(f.toGoNm)} before the point; at ${at} ${miles(f.beginToGoNm)} before it would have done, ${by}`;
}

/** As in "1,240 ft/min was needed"; of a rate that none flies, that there was none. */
const wasNeeded = (down: FeetPerMinute): string =>
  down > NO_DESCENT ? "no usable rate of descent would have reached it" : `${rate(down)} was needed`;

const neededThere = (f: Finding["facts"]): string => {
  const needed = given(f.neededDownFpm);
  return needed === null ? `${gradient(f.neededDownFtPerNm)} was needed` : wasNeeded(needed);
};

export const DESCENT_WORDS: Readonly<Record<string, FindingWords>> = {
  "descent-crossed-at": (f) =>
    given(f.silentS) === null
      ? `${capital(crossing(f))}, within 100 ft of ${count(num(f.toFt))} ft.`
      : `${capital(crossing(f))}, ${count(num(f.toFt))} ft wanted${untellable(f)}.`,
  "descent-crossed-high": (f) =>
    f.sure === true
      ? `Too high: ${crossing(f)}, ${off(f)} (± ${feet(f.doubt95Ft)}).`
      : `${capital(crossing(f))}, ${off(f)}${untellable(f)}.`,
  "descent-crossed-low": (f) =>
    f.sure === true
      ? `Too low: ${crossing(f)}, ${off(f)} (± ${feet(f.doubt95Ft)}).`
      : `${capital(crossing(f))}, ${off(f)}${untellable(f)}.`,
  "descent-went-below": (f) =>
    `Down to ${feet(f.altitudeFt)} ${source(f)} ${miles(f.toGoNm)} before the point, ${feet(f.underFt)} below ${count(num(f.toFt))} ft${f.sure === true ? ` (± ${feet(f.doubt95Ft)})` : `, but ${f.by === "pressure" ? "such a" : "a GPS"} height tells the altimeter’s only to ± ${feet(f.doubt95Ft)}`}.`,
  "descent-not-begun": (f) => `No descent was begun before the point ${place(f.fix, f.beforeNm)}.`,
  "descent-begun-late": (f) => `${began(f)} earlier. From where it began ${neededThere(f)}.`,
  "descent-begun-early": (f) => `${began(f)} later.`,
  "descent-too-shallow": (f) =>
    `${f.onward === true ? "Flown on from the descent before" : "Begun in time"}, ${miles(f.toGoNm)} before the point, where ${neededThere(f)}; ${rate(f.downFpm)} was flown.`,
  "descent-levelled-off": (f) =>
    `Level at about ${count(Math.round(num(f.altitudeFt) / 100) * 100)} ft for ${seconds(f.seconds)} on the way down.`,
};

/** The sentence of the most telling finding; where that is the crossing alone, what explains it as well. */
export function descentSentence({ findings }: DescentRecord, facts: DescentFacts): string {
  const lead = findings[0];
  if (!lead) return capital(`${untold(facts) ?? "nothing can be told of this descent."}`);
  return DESCENT_WORDS[lead.code]?.(lead.facts, lead) ?? `${plain(lead.code)}.`;
}

/** Begun early is no reason for having gone too low, and a height that was met has nothing to explain. */
const NOT_EXPLAINED = ["descent-went-below", "descent-crossed-low", "descent-crossed-at"];
const NO_CAUSE = ["gap-in-exercise", "descent-crossed-at", "descent-crossed-high", "descent-crossed-low"];

/** The finding that says why the height was not met, where the first one does not. */
export const descentCause = ({ findings: [lead, ...rest] }: DescentRecord): Finding | undefined =>
  lead && NOT_EXPLAINED.includes(lead.code) ? undefined : rest.find(({ code }) => !NO_CAUSE.includes(code));

/** As in "10.2 to 6.3 NM before the point"; past it, and on both sides of it, so too. */
export function betweenNm(earliestToGoNm: number, toGoNm: number): string {
  const [a, b] = [miles(earliestToGoNm), miles(toGoNm)];
  if (earliestToGoNm >= 0 && toGoNm >= 0) return `${a.replace(" NM", "")} to ${b} before the point`;
  return earliestToGoNm < 0
    ? `${a.replace(" NM", "")} to ${b} past the point`
    : `${a} before to ${b} past the point`;
}

function flownNote({ flown, began: from, reached, mostNeeded }: DescentFacts): string | null {
  if (!from) return null;
  const unseen = from.silence
    ? `Begun in ${seconds(from.silence.seconds)} without a point, ${betweenNm(from.silence.earliestToGoNm, from.toGoNm)}`
    : null;
  if (!flown) return unseen && `${unseen}.`;
  const mean =
    flown.meanDownFpm === null
      ? gradient(flown.meanDownFtPerNm)
      : `${rate(flown.meanDownFpm)}, ${gradient(flown.meanDownFtPerNm)}`;
  const on = from.afterEarlier
    ? `Flown as one with the descent before and counted from its point, ${miles(from.toGoNm)} before this one: `
    : "";
  const start = `${on}${unseen ? `${unseen}; from there ` : ""}${feet(flown.lostFt)} lost in ${miles(flown.distanceNm)} at ${mean} in the mean`;
  const most = mostNeeded
    ? mostNeeded.downFpm > NO_DESCENT
      ? "; at last no usable rate of descent would have reached it"
      : `; at most ${rate(mostNeeded.downFpm)} was needed`
    : "";
  const level =
    reached === null
      ? "; the height was not reached"
      : reached.silence
        ? `; within 100 ft of the height in ${seconds(reached.silence.seconds)} without a point, ${betweenNm(reached.silence.earliestToGoNm, reached.toGoNm)}`
        : `; within 100 ft of the height ${miles(reached.toGoNm)} ${reached.toGoNm >= 0 ? "before" : "past"} the point`;
  return `${start}${most}${level}.`;
}

/** As in "500 ft/min from 8.9 NM before the point (01:09:10 UTC)". */
function constantWords(c: ConstantDescent): string | null {
  if (c.beginToGoNm === null) return null;
  const at = c.beginUtc ? ` (${clockSeconds(c.beginUtc)} UTC)` : "";
  const name =
    c.basis === "usual-gradient"
      ? `318 ft/NM, 3°${c.downFpm === null ? "" : `, ${rate(c.downFpm)} at this ground speed`},`
      : c.downFpm === null
        ? gradient(c.downFtPerNm)
        : rate(c.downFpm);
  return `${name} from ${miles(c.beginToGoNm)} before the point${at}`;
}

function remedy({ constant }: DescentFacts): string | null {
  const told = constant
    .filter(({ basis }) => basis !== "as-flown")
    .map(constantWords)
    .filter((words) => words !== null);
  return told.length === 0 ? null : `${capital(told.join("; or "))}.`;
}

function untold({ cannotTell }: DescentFacts): string | null {
  const reasons = [...new Set(cannotTell.map(({ reason }) => REASONS[reason] ?? plain(reason)))];
  return reasons.length === 0 ? null : `${capital(reasons.join("; "))}.`;
}

/** The notes beside the drawing, in reading order; null where there is nothing to say. */
export function descentNotes(exercise: DescentRecord, facts: DescentFacts): [string, string | null][] {
  const cause = descentCause(exercise);
  return [
    ["Why.", cause ? (DESCENT_WORDS[cause.code]?.(cause.facts, cause) ?? null) : null],
    ["What it came to.", flownNote(facts)],
    ["What would have worked.", remedy(facts)],
    ["What cannot be told.", untold(facts)],
  ];
}
