/** What is worth saying of a course as flown: codes with facts and the times they rest on, most telling first. */
import type { CourseExercise } from "../brief/brief.ts";
import { gapFindings } from "../quantity/gap-finding.ts";
import type { Finding } from "../quantity/record.ts";
import type { Span } from "../quantity/span.ts";
import { utcText } from "../quantity/time.ts";
import { CHASED, OVERSHOT_NEEDLE } from "../standard/tracking.ts";
import {
  type CausedExcursion,
  type Correction,
  causeFindings,
  chasedFinding,
  excursionFinding,
  type Joining,
  type Reversals,
  toldExcursions,
  turnedFindings,
  wentOnFacts,
} from "../track/index.ts";
import type { CourseFacts } from "./facts.ts";
import { isFitted } from "./fit.ts";
import type { Judged } from "./judged.ts";
import type { Rows } from "./path.ts";
import { straightBeside } from "./straight-beside.ts";

/** A drift made the worst needle of a course when it came to this share of it. Tuned: apart from noise it is all of it. */
const MADE_THE_WORST = 0.8;

export interface FindingsFrom {
  readonly exercise: CourseExercise;
  readonly rows: Rows;
  readonly judged: Judged;
  readonly facts: CourseFacts;
  readonly excursions: readonly CausedExcursion[];
  /** The reversals where they are called chasing. */
  readonly chased: Reversals | null;
  /** They are those of the excursions: nothing more is said of each. */
  readonly weave: boolean;
  readonly joining: Joining | null;
  /** Correction over the drifting rows of an excursion; null where the wind is not known. */
  readonly correctionOver: (span: Span) => Correction | null;
}

export function findingsOf(from: FindingsFrom): Finding[] {
  const { exercise, rows, judged, facts, excursions } = from;
  if (isFitted(exercise)) return [trackedWithin(from), ...gaps(rows, judged.span)];
  const neverEstablished: Finding[] = facts.neverEstablished
    ? [
        {
          code: "never-established",
          facts: { worstNeedle: Math.abs(facts.needle.max), worstNm: facts.crossTrack.maxNm },
          evidence: evidence(rows, judged.span),
        },
      ]
    : [];
  const beside = straightBeside(rows, judged.span, facts.neverEstablished === true);
  const chased = from.chased && chasedFinding("chased", rows, from.chased);
  const told = from.weave ? [] : toldExcursions(rows, excursions, chased !== null);
  const drifts = told.flatMap((e) => {
    const drift = excursionFinding("drifted-before-needle", rows, e, exercise.variation);
    return [drift, ...causeFindings(e, from.correctionOver(e.drifting))];
  });
  // a drift that is not what made the worst of this course does not lead: the worst itself does
  const drifted = told.some(
    (e) => Math.abs(e.record.worstNeedle) >= MADE_THE_WORST * Math.abs(facts.needle.max),
  );
  const worst = trackedWithin(from);
  return [
    ...neverEstablished,
    ...(facts.neverEstablished ? beside : []),
    ...(chased ? [chased] : []),
    ...(drifted ? [...drifts, ...turned(from), worst] : [...turned(from), worst, ...drifts]),
    ...(facts.neverEstablished ? [] : beside),
    ...gaps(rows, judged.span),
  ];
}

type Timed = Pick<Rows, "timed" | "timeMs">;

export function evidence(rows: Timed, span: Span): Finding["evidence"] {
  if (!rows.timed) return { fromUtc: null, toUtc: null };
  return { fromUtc: utcText(rows.timeMs[span.start]!), toUtc: utcText(rows.timeMs[span.end - 1]!) };
}

function trackedWithin({ rows, judged, facts }: FindingsFrom): Finding {
  return {
    code: "tracked-within",
    facts: {
      worstNeedle: Math.abs(facts.needle.max),
      worstNm: facts.crossTrack.maxNm,
      meanNm: facts.crossTrack.meanNm,
      doubt95Nm: facts.crossTrack.doubt95Nm,
      ...unseenFacts(facts),
    },
    evidence: evidence(rows, judged.span),
  };
}

/** What the worst may have come to between two points, where that is more. */
function unseenFacts({ crossTrack, needle }: CourseFacts): Finding["facts"] {
  const { unseen } = crossTrack;
  if (!unseen) return {};
  return { unseenNm: unseen.most, unseenNeedle: needle.unseen?.most ?? null, unseenS: unseen.seconds };
}

export function wasChased(rows: Rows, r: Reversals): boolean {
  return (
    r.count >= CHASED.count && r.perMinute >= CHASED.perMinute && rows.timeMs[r.to]! > rows.timeMs[r.from]!
  );
}

/** An intercept that went past the course, else a turn that ended off it. */
function turned(from: FindingsFrom): Finding[] {
  const past = overshot(from);
  return past.length > 0 ? past : turnedFindings(from.joining);
}

function overshot({ facts: { intercept } }: FindingsFrom): Finding[] {
  const overshootNeedle = intercept?.overshootNeedle;
  if (!intercept || overshootNeedle == null) return [];
  if (!(Math.max(overshootNeedle, intercept.wentOn?.needle ?? 0) >= OVERSHOT_NEEDLE)) return [];
  return [
    {
      code: "intercept-overshot",
      facts: {
        side: intercept.startCrossTrackNm > 0 ? "left" : "right",
        overshootNm: intercept.overshootNm,
        overshootNeedle,
        ...(intercept.turnBeganPastNm === undefined ? {} : { turnBeganPastNm: intercept.turnBeganPastNm }),
        ...wentOnFacts(intercept.wentOn),
        angleDeg: Math.abs(intercept.angleDeg),
      },
      evidence: { fromUtc: intercept.startUtc, toUtc: intercept.joinedUtc },
    },
  ];
}

/** Nothing without times: a silence has none. */
export const gaps = (rows: Timed & Pick<Rows, "gapBefore">, judged: Span): Finding[] =>
  gapFindings(rows.timeMs, judged, (row) => rows.timed && rows.gapBefore[row] === 1);
