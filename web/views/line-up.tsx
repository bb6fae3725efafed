/** The lesson in flown order, a row an exercise, with the worst needle on one fixed line. */
import type {
  DescentFacts,
  DocumentExercise,
  ExerciseSeries,
  FlightSeries,
  HoldFacts,
} from "../../src/index.ts";
import {
  clock,
  count,
  decidedBy,
  decidingVerdict,
  needleSize,
  offArc,
  sided,
  standing,
  whyNotMeasured,
} from "../../src/index.ts";
import {
  InTurn,
  LineUpHead,
  LineUpRow,
  needleRms,
  RollOutMark,
  VerdictHead,
  VerdictRow,
  worstRollOut,
} from "../drawings/index.ts";
import { useOverrules } from "../notes.ts";
import { VerdictWord } from "./verdicts.tsx";

/** A lesson has fewer exercises; only a log of days has more. */
const ROWS_A_TASK = 40;

/** What it came to where no verdict says so, as in "needle to 0.86 of full scale, 0.31 NM R". */
export function cameTo(exercise: DocumentExercise): string {
  if (!exercise.facts) return whyNotMeasured(exercise);
  if (exercise.kind === "hold") return holdWords(exercise.facts);
  if (exercise.kind === "arc") return `farthest ${offArc(exercise.facts.deviation.maxNm)}`;
  if (exercise.kind === "descent") return crossingWords(exercise.facts);
  const { facts } = exercise;
  const off = sided(facts.crossTrack.maxNm, 2, " NM");
  if (exercise.kind === "course" && exercise.facts?.form === "fitted")
    return `strayed to ${off} of its own straight line`;
  return `needle to ${needleSize(facts.needle.max)}, ${off}`;
}

/** As in "490 ft above 1,800 ft (± 160 ft)". */
function crossingWords({ crossing, toFt }: DescentFacts): string {
  if (!crossing) return "height at the point not known";
  const size = Math.abs(Math.round(crossing.overFt / 10) * 10);
  const side = crossing.overFt > 0 ? "above" : "below";
  return `${size === 0 ? "at" : `${count(size)} ft ${side}`} ${count(toFt)} ft (± ${count(Math.round(crossing.doubt95Ft / 10) * 10)} ft)`;
}

/** Within this every lap counts as rolled out on course, in the words of the line-up. Own choice. */
const ON_COURSE_NM = 0.05;

/** The worst roll-out, and what was flown against what was asked. */
function holdWords(facts: HoldFacts): string {
  const { laps, solved } = facts;
  const worst = laps[worstRollOut(facts)]?.rollOut;
  const on = worst && Math.abs(worst.acrossNm) < ON_COURSE_NM;
  const off = worst && (on ? "on course" : `to ${sided(worst.acrossNm, 2, " NM")}`);
  const out = off ? `rolled out ${off}` : "never rolled out";
  const asked = solved && !("none" in solved) ? solved.factor : null;
  const flown = laps.flatMap(({ factorOfNeed }) => (factorOfNeed === null ? [] : [factorOfNeed.toFixed(1)]));
  if (asked === null || flown.length === 0) return out;
  return `${out}; outbound ×${flown.join(", ×")} of ×${asked.toFixed(1)} asked`;
}

interface RowProps {
  readonly number: number;
  readonly exercise: DocumentExercise;
  readonly columns: ExerciseSeries | null;
  /** The line-up has a column of verdicts. */
  readonly judged: boolean;
}

function Row({ number, exercise, columns, judged }: RowProps) {
  const { facts, startUtc, title, verdicts } = exercise;
  const decides = decidingVerdict(standing(verdicts, useOverrules(exercise)));
  return (
    <tr>
      <td class="n">{number}</td>
      <td class="t">{startUtc ? clock(startUtc) : ""}</td>
      <th scope="row" class="x">
        {facts ? <a href={`#exercise-${number}`}>{title}</a> : title}
      </th>
      <td class="d">
        {decides && <VerdictRow verdicts={verdicts} />}
        {!decides &&
          exercise.kind === "course" &&
          columns?.kind === "course" &&
          exercise.facts?.form !== "fitted" && (
            <LineUpRow exercise={exercise} rms={needleRms(columns.needle, columns.judged)} />
          )}
        {exercise.kind === "hold" && exercise.facts && <RollOutMark facts={exercise.facts} />}
      </td>
      {judged && <td class="v">{decides && <VerdictWord {...decides} />}</td>}
      <td class="why">{decides && facts ? decidedBy(decides) : cameTo(exercise)}</td>
    </tr>
  );
}

/** ISO times of one length sort as text. */
function inFlownOrder(exercises: readonly DocumentExercise[]): boolean {
  const starts = exercises.flatMap(({ startUtc }) => startUtc ?? []);
  return starts.every((start, i) => i === 0 || starts[i - 1]! <= start);
}

interface Props {
  readonly exercises: readonly DocumentExercise[];
  readonly series: FlightSeries;
}

export function LineUp({ exercises, series }: Props) {
  if (exercises.length === 0) return null;
  const fitted = exercises.every((e) => e.source !== "brief");
  const judged = exercises.some((e) => e.verdicts.length > 0);
  const needles = exercises.some((e) => e.kind === "course" && e.facts && e.facts.form !== "fitted");
  const holds = exercises.some((e) => e.kind === "hold" && e.facts !== null);
  return (
    <>
      <table class="lineup">
        <caption>
          {!fitted
            ? inFlownOrder(exercises)
              ? "The lesson in flown order"
              : "The lesson in the order of its brief"
            : holds
              ? "The courses and holds that were flown"
              : "The courses that were held"}
        </caption>
        <thead>
          <tr>
            <th>
              <span class="vh">Number</span>
            </th>
            <th>UTC</th>
            <th>Exercise</th>
            <th class="d">
              <span class="vh">
                {judged ? "Verdicts, in limits" : needles ? "Worst needle, share of full scale" : "Drawing"}
              </span>
              {judged ? <VerdictHead /> : needles && <LineUpHead />}
            </th>
            {judged && <th>Verdict</th>}
            <th>{judged ? "Decided by" : fitted && !holds ? "How straight" : "Worst"}</th>
          </tr>
        </thead>
        <tbody>
          <InTurn each={ROWS_A_TASK}>
            {exercises.map((exercise, i) => (
              <Row
                key={`${exercise.title} ${exercise.startUtc}`}
                number={i + 1}
                exercise={exercise}
                columns={series.exercises[i] ?? null}
                judged={judged}
              />
            ))}
          </InTurn>
        </tbody>
      </table>
      <p class="fine">
        {judged ? (
          <>
            Each dot is one criterion, as a share of its own limit. The bar through it is the doubt (95 %).
            Hachures stand on the far side of a limit. The filled dot decides: where it is 95 % sure to lie
            inside it is <b>met</b>, where so outside <b>not met</b>, else <b>cannot tell</b>, and without a
            dot <b>not flown</b>.
          </>
        ) : fitted ? (
          "No brief was given, so courses are straight lines fitted to what was flown: they show straightness, not deviation."
        ) : (
          needles &&
          "The filled dot is the worst needle and the bar through it the doubt (95 %); the open dot is the root mean square. The line ends at full scale, every time."
        )}
        {holds &&
          " In a hold each lap has a dot, the first on top: where it rolled out, left or right of the inbound course in the middle; the frame ends at 1 NM to either side."}
      </p>
    </>
  );
}
