/** Where the profile of an approach and the strips beneath it stand, px. */
import type { ApproachWindow } from "./approachWindow.ts";
import type { StripFrame } from "./Strip.tsx";
import { type FixedScales, PX_PER_MM } from "./scale.ts";

/** Room at the right for the names of limits and of the minimum. */
const MARGINS = { wide: { left: 64, right: 70 }, narrow: { left: 50, right: 14 } } as const;
/** Above the profile its title, and the names of the gates reach so far over the line. */
const HEAD_PX = 30;
/** Under the runway, so that it does not stand on the frame. */
const GROUND_PX = 8;
/** Between charts: ticks and the next title. */
const BETWEEN_PX = 36;
const FOOT_PX = 38;
/** Rates shown: so much up and down, ft/min. Own choice: from a go-around to half as much again as criteria allow. */
const RATE_SHOWN = { up: 500, down: 1500 } as const;

export const profileMargins = (narrow: boolean) => (narrow ? MARGINS.narrow : MARGINS.wide);

export interface ProfileLayout {
  readonly left: number;
  readonly right: number;
  readonly width: number;
  readonly height: number;
  readonly profile: { readonly top: number; readonly bottom: number };
  readonly lateral: StripFrame;
  /** Null where there is no glide path. */
  readonly glide: StripFrame | null;
  /** Null where the log has no times. */
  readonly rate: StripFrame | null;
  /** Where the miles stand. */
  readonly axis: number;
  readonly x: (distanceNm: number) => number;
  readonly y: (heightFt: number) => number;
}

export function profileLayout(
  window: ApproachWindow,
  scales: FixedScales,
  narrow: boolean,
  has: { readonly glidePath: boolean; readonly times: boolean },
): ProfileLayout {
  const margins = profileMargins(narrow);
  const pxPerFoot = (scales.mmPerThousandFeet * PX_PER_MM) / 1000;
  const plot = (window.farNm - window.nearNm) * window.pxPerMile;
  const top = HEAD_PX;
  const bottom = top + (window.topFt - window.bottomFt) * pxPerFoot + GROUND_PX;
  const needle = 2 * scales.mmPerFullScaleOfStrip * PX_PER_MM;
  const frame = (at: number, height: number, upper: number, lower: number): StripFrame => ({
    ...{ left: margins.left, top: at, width: plot, height, upper, lower },
  });
  // right of course lies below, and so does what is below the path
  const lateral = frame(bottom + BETWEEN_PX, needle, -1, 1);
  const glide = has.glidePath ? frame(lateral.top + needle + BETWEEN_PX, needle, 1, -1) : null;
  const rateHeight =
    ((RATE_SHOWN.up + RATE_SHOWN.down) / 1000) * scales.mmPerThousandFeetPerMinute * PX_PER_MM;
  const last = glide ?? lateral;
  const rate = has.times
    ? frame(last.top + needle + BETWEEN_PX, rateHeight, RATE_SHOWN.up, -RATE_SHOWN.down)
    : null;
  const axis = (rate ? rate.top + rateHeight : last.top + needle) + 8;
  return {
    left: margins.left,
    right: margins.left + plot,
    width: Math.ceil(margins.left + plot + margins.right),
    height: Math.ceil(axis + FOOT_PX),
    profile: { top, bottom },
    lateral,
    glide,
    rate,
    axis,
    x: (distanceNm) => margins.left + (window.farNm - distanceNm) * window.pxPerMile,
    y: (heightFt) => bottom - GROUND_PX - (heightFt - window.bottomFt) * pxPerFoot,
  };
}
