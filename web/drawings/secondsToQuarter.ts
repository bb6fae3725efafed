/** How long until the needle would show a quarter, were the track held as it is. */
import { type CourseFacts, needleOf } from "./contract.ts";

type FullScale = Parameters<typeof needleOf>[0];

const QUARTER = 0.25;
/** A prediction farther ahead says nothing worth reading. Own choice, s. */
const MOST_SECONDS = 400;
/** Track errors under this are no reason to speak, degrees. Own choice. */
const LEAST_ERROR_DEG = 1;

/** On an arc a quarter of a mile tells; there is no station ahead to end at. */
export const ON_ARC = { scale: { kind: "linear", fullScaleNm: 1 }, form: "from" } as const;

/** On a final, so wide at a moment: the distance at which an angle is so wide, else the width as it is. */
export function onFinal(halfAngleDeg: number | null, fullScaleNm: number) {
  if (halfAngleDeg === null) return { scale: { kind: "linear", fullScaleNm }, form: "to" } as const;
  return { scale: { kind: "angular", fullScaleDeg: halfAngleDeg }, form: "to" } as const;
}

/**
 * Whole seconds, or null: the needle is past a quarter already, or going back, or not there within 400 s or
 * before the station. Method: straight on with the present ground speed and track angle error.
 */
export function secondsToQuarter(
  facts: { readonly scale: FullScale; readonly form: CourseFacts["form"] },
  now: { offNm: number; errorDeg: number; speedKt: number; distanceNm: number },
): number | null {
  const { offNm, errorDeg, speedKt, distanceNm } = now;
  if (![offNm, errorDeg, speedKt, distanceNm].every(Number.isFinite)) return null;
  if (Math.abs(errorDeg) < LEAST_ERROR_DEG) return null;
  if (Math.abs(needleOf(facts.scale, offNm, distanceNm)) >= QUARTER) return null;
  const perSecond = speedKt / 3600;
  const across = perSecond * Math.sin((errorDeg * Math.PI) / 180);
  const along = perSecond * Math.cos((errorDeg * Math.PI) / 180) * (facts.form === "from" ? 1 : -1);
  for (let s = 1; s <= MOST_SECONDS; s++) {
    const distance = distanceNm + along * s;
    if (distance <= 0.3) return null;
    const share = needleOf(facts.scale, offNm + across * s, distance);
    // Only on the side that the track leads to: a needle on its way to centre does not count.
    if (share * Math.sign(across) >= QUARTER) return s;
  }
  return null;
}
