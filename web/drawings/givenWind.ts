/** A wind that somebody gave, as the record that arrows are drawn from. */
import type { WindRecord } from "./contract.ts";

/** `from` in the reference of the drawing; `doubt95` in every direction, kt. */
export const givenWind = (from: number, speedKt: number, doubt95: number | null): WindRecord => ({
  knowledge: "full",
  fromTrueDeg: from,
  speedKt,
  alongKt: null,
  acrossKt: null,
  along95Kt: null,
  across95Kt: null,
  ellipse95Kt: doubt95 === null ? null : { majorKt: doubt95, minorKt: doubt95, majorTrueDeg: 0 },
  tasKt: null,
  tas95Kt: null,
  restsOn: "prior",
});
