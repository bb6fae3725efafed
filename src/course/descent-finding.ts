/** What is worth saying of a descent as flown: codes with facts and the times they rest on, most telling first. */
import type { Finding } from "../quantity/record.ts";
import type { Feet, FeetPerMinute, NauticalMiles, Seconds, Share } from "../quantity/units.ts";
import type { ConstantDescent, DescentFacts } from "./descent-facts.ts";

/** Begun so much earlier or later than the rate flown asked for is worth telling. Chosen: over the softness of a hand-flown descent, some 10 s. */
const MISTIMED: Seconds = 25;
/** ... without times, in miles: the same at 100 kt. */
const MISTIMED_NM: NauticalMiles = 0.7;
/** Flown slower than needed from the beginning by this share, with a usual rate enough: too shallow. Chosen. */
const SHALLOW: Share = 0.85;
const ENOUGH: FeetPerMinute = 600;
/** Off the height by this much is told though the doubt is larger, as far as the log can tell. FAA-S-ACS-8C: 100 ft. */
const TOLD: Feet = 100;

export function descentFindings(facts: DescentFacts): Finding[] {
  const { crossing, began, constant } = facts;
  if (!crossing) return [];
  const span = {
    fromUtc: began?.utc ?? null,
    toUtc: crossing.utc,
  };
  const over = crossing.overFt;
  const sure = Math.abs(over) > crossing.doubt95Ft;
  let code = "descent-crossed-at";
  if (Math.abs(over) > TOLD) code = over > 0 ? "descent-crossed-high" : "descent-crossed-low";
  const crossed: Finding = {
    code,
    facts: {
      overFt: over,
      altitudeFt: crossing.altitudeFt,
      toFt: facts.toFt,
      beforeNm: facts.beforeNm,
      fix: facts.fix,
      doubt95Ft: crossing.doubt95Ft,
      sure,
      silentS: crossing.silentS ?? null,
      reachedToGoNm: facts.reached?.toGoNm ?? null,
    },
    evidence: span,
  };
  const below = lowestFinding(facts);
  if (!began) {
    const notBegun: Finding = { code: "descent-not-begun", facts: { ...crossed.facts }, evidence: span };
    return over > TOLD ? [notBegun, crossed] : [crossed];
  }
  const high = code === "descent-crossed-high";
  const held = facts.levelOffs.map(
    ({ seconds, altitudeFt, fromUtc, toUtc }): Finding => ({
      code: "descent-levelled-off",
      facts: { seconds, altitudeFt },
      evidence: { fromUtc, toUtc },
    }),
  );
  const by = timedBy(constant, high);
  const timing = by ? timingFinding(facts, by, high) : [];
  return high ? [...below, crossed, ...held, ...timing] : [...below, crossed, ...timing, ...held];
}

/** A height that was left below before the point is told first: it is the one with something beneath it. */
function lowestFinding({ lowest, toFt, began, crossing }: DescentFacts): Finding[] {
  if (!lowest) return [];
  const { altitudeFt, underFt, doubt95Ft, toGoNm, utc } = lowest;
  return [
    {
      code: "descent-went-below",
      facts: { altitudeFt, underFt, toFt, doubt95Ft, toGoNm, sure: underFt > doubt95Ft },
      evidence: { fromUtc: utc ?? began?.utc ?? null, toUtc: crossing?.utc ?? null },
    },
  ];
}

const isMistimed = ({ lateS, lateNm }: ConstantDescent): boolean =>
  lateS === null ? Math.abs(lateNm ?? 0) >= MISTIMED_NM : Math.abs(lateS) >= MISTIMED;

/**
 * When it should have begun is told at the rate flown; who dived for the height, steeper than 3 degrees, and missed it
 * all the same is told by 3 degrees.
 */
function timedBy(constant: DescentFacts["constant"], high: boolean): ConstantDescent | undefined {
  const asFlown = constant.find(({ basis }) => basis === "as-flown");
  const usual = constant.find(({ basis }) => basis === "usual-gradient");
  if (!asFlown || !usual || !high || isMistimed(asFlown)) return asFlown;
  return asFlown.downFtPerNm > usual.downFtPerNm ? usual : asFlown;
}

function timingFinding(facts: DescentFacts, by: ConstantDescent, high: boolean): Finding[] {
  const { began } = facts;
  const { lateS, lateNm, beginToGoNm, downFpm, downFtPerNm } = by;
  if (!began || lateNm === null || !isMistimed(by)) return [];
  const told = {
    toGoNm: began.toGoNm,
    beginToGoNm,
    lateS: lateS === null ? null : Math.abs(lateS),
    lateNm: Math.abs(lateNm),
    basis: by.basis,
    downFpm,
    downFtPerNm,
    neededDownFpm: began.neededDownFpm,
    neededDownFtPerNm: began.neededDownFtPerNm,
    groundSpeedKt: began.groundSpeedKt,
  };
  const evidence = { fromUtc: began.utc, toUtc: facts.crossing?.utc ?? null };
  const late = lateNm > 0;
  if (late && !high) return []; // it was made up for
  const needed = began.neededDownFpm;
  const onward = began.afterEarlier === true;
  // flown on from the descent before, it could not have been begun earlier
  const usual = needed !== null && (needed <= ENOUGH || onward);
  const shallow = late && usual && downFpm !== null && downFpm < SHALLOW * needed;
  if (late && onward && !shallow) return [];
  let code = late ? "descent-begun-late" : "descent-begun-early";
  if (shallow) code = "descent-too-shallow";
  return [{ code, facts: { ...told, ...(onward ? { onward } : {}) }, evidence }];
}
