/** What was out at a gate of an approach in words, and what changed there that no text limits. */
import type { Finding } from "../../debrief/document.ts";
import { given, num } from "./fact.ts";
import { feet, needleWords, rate } from "./measured.ts";
import { count } from "./number.ts";

const OUT: Readonly<Record<string, (f: Finding["facts"]) => string>> = {
  lateral: (f) => `the needle ${needleWords(f.lateralNeedle)} off`,
  vertical: (f) =>
    `${needleWords(f.verticalNeedle)} ${num(f.verticalNeedle) > 0 ? "above" : "below"} the glide path`,
  rate: (f) => `sinking at ${rate(f.verticalFpm)}`,
  bank: (f) => `banked ${Math.round(Math.abs(num(f.bankDeg)))}°`,
};

export function unstable(f: Finding["facts"]): string {
  const out = String(f.out)
    .split(", ")
    .map((what) => OUT[what]?.(f) ?? what);
  const list = out.length > 1 ? `${out.slice(0, -1).join(", ")} and ${out.at(-1)}` : out[0];
  const lowest = given(f.lowestAboveThresholdFt);
  const then = lowest === null ? "" : ` Continued down to ${feet(lowest)} above it.`;
  return `Not stable ${count(num(f.heightFt))} ft above the threshold: ${list}.${f.continued === true && lowest === null ? " Continued to a landing." : then}`;
}

export function unsteady({ heightFt, groundSpeedChangeKt, trackUnsteadyDeg }: Finding["facts"]): string {
  const gate = `${count(num(heightFt))} ft above the threshold`;
  const [change, track] = [given(groundSpeedChangeKt), given(trackUnsteadyDeg)];
  const unsteadyBy = track === null ? "" : `track was unsteady by ${Math.round(track)}°`;
  if (change === null) return `The ${unsteadyBy} about ${gate}.`;
  const speed = `The ground speed ${change > 0 ? "rose" : "fell"} ${Math.round(Math.abs(change))} kt in the 30 seconds before ${gate}`;
  return track === null ? `${speed}.` : `${speed}, and the ${unsteadyBy}.`;
}
