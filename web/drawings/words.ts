/** The few texts that stand inside drawings: directions with M or T, sides, clock times, fractions of a mile. */
import type { WindRecord } from "./contract.ts";

const pad = (value: number, places: number): string => String(value).padStart(places, "0");

/** As in "218°T"; north is 360. */
export function directionText(degrees: number, reference: "T" | "M"): string {
  const whole = ((Math.round(degrees) % 360) + 360) % 360;
  return `${pad(whole === 0 ? 360 : whole, 3)}°${reference}`;
}

/** Hours and minutes of UTC, as in "09:45". */
export function clockText(time: number): string {
  const date = new Date(time);
  return `${pad(date.getUTCHours(), 2)}:${pad(date.getUTCMinutes(), 2)}`;
}

/** With seconds, as in "09:45:31". */
export function clockSecondsText(time: number): string {
  return `${clockText(time)}:${pad(new Date(time).getUTCSeconds(), 2)}`;
}

/** R for positive, L for negative, nothing for zero. */
export const sideLetter = (value: number): string => (value > 0 ? " R" : value < 0 ? " L" : "");

export const sideWord = (value: number): string => (value > 0 ? "right" : "left");

/** As in "¼", "½", "¾", "0.1", "2". */
export function fractionText(value: number): string {
  const sign = { 0.25: "¼", 0.5: "½", 0.75: "¾" }[value];
  return sign ?? String(value);
}

/** A wind in a few words, as a name for its arrow. */
export function windText(wind: WindRecord): string {
  if (wind.knowledge === "full" && wind.fromTrueDeg !== null && wind.speedKt !== null) {
    return `wind from ${directionText(wind.fromTrueDeg, "T").replace("°T", "° true")}, ${Math.round(wind.speedKt)} kt`;
  }
  if (wind.knowledge === "along" && wind.alongKt !== null) {
    return `wind along the track only, ${Math.round(Math.abs(wind.alongKt))} kt ${wind.alongKt >= 0 ? "from behind" : "from ahead"}`;
  }
  return "wind not known";
}

/** The same, short enough to stand under an arrow: "191°T 20 kt". */
export function windLabel(wind: WindRecord): string {
  if (wind.knowledge === "full" && wind.fromTrueDeg !== null && wind.speedKt !== null) {
    return `${directionText(wind.fromTrueDeg, "T")} ${Math.round(wind.speedKt)} kt`;
  }
  if (wind.knowledge === "along" && wind.alongKt !== null) {
    return `${Math.round(Math.abs(wind.alongKt))} kt ${wind.alongKt >= 0 ? "behind" : "ahead"}`;
  }
  return "not known";
}

/** Millimetres as in "20 mm", one decimal only where it matters. */
export const millimetreText = (mm: number): string =>
  `${mm >= 10 ? Math.round(mm) : Math.round(mm * 10) / 10} mm`;
