/** The verdicts of one exercise as a table: value with its doubt, limit, verdict, how sure, and where it is written. */
import {
  type DebriefDocument,
  type DocumentExercise,
  NOT_JUDGED,
  type Overrule,
  overruleWords,
  standing,
  type Verdict,
  verdictConfidence,
  verdictLimit,
  verdictReason,
  verdictTitle,
  verdictValue,
} from "../../src/index.ts";
import { VerdictMark } from "../drawings/index.ts";
import { useOverrules } from "../notes.ts";
import { Overruling } from "./overruling.tsx";

const CLASSES: Readonly<Record<Verdict["verdict"], string>> = {
  met: "",
  "not met": "v-not",
  "cannot tell": "v-cannot",
  "not flown": "v-un",
};

/** The word of a verdict in its weight; position and word carry it, never colour. The instructor's says whose it is. */
export function VerdictWord({
  verdict,
  overrule,
}: Pick<Verdict, "verdict"> & { overrule?: Overrule | null }) {
  return (
    <>
      <span class={CLASSES[verdict]}>{verdict}</span>
      {overrule && <small class="signed">instructor’s</small>}
    </>
  );
}

function beyond({ beyondS }: Verdict): string {
  return beyondS ? `; beyond it ${Math.round(beyondS)} s` : "";
}

export function Verdicts({
  exercise,
  standard,
}: {
  exercise: DocumentExercise;
  standard: DebriefDocument["standard"];
}) {
  const { verdicts, title } = exercise;
  const overrules = useOverrules(exercise);
  if (!standard || verdicts.length === 0) return null;
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls must be reachable by the keyboard
    <section class="scroll" tabIndex={0} aria-label={`Verdicts, ${title}`}>
      <table class="data facts verdicts">
        <caption>Verdicts, {title}</caption>
        <thead>
          <tr>
            <th>Criterion</th>
            <th class="r">Value</th>
            <th class="r">Limit</th>
            <th>Verdict</th>
            <th class="r">Sure</th>
            <th>Where it is written</th>
          </tr>
        </thead>
        <tbody>
          {standing(verdicts, overrules).map(({ overrule, ...verdict }, i) => (
            <tr key={verdict.criterion}>
              <th scope="row">{verdictTitle(verdict)}</th>
              <td class="r">{verdictValue(verdict)}</td>
              <td class="r">{verdictLimit(verdict)}</td>
              <td class="mark">
                <VerdictMark verdict={verdict} /> <VerdictWord verdict={verdicts[i]!.verdict} />
                {overrule && (
                  <div>
                    <VerdictWord verdict={verdict.verdict} overrule={overrule} />
                  </div>
                )}
              </td>
              <td class="r">{verdictConfidence(verdict)}</td>
              <td class="cite">
                {verdict.citation}
                {beyond(verdict)}
                {verdicts[i]!.reason && `; ${verdictReason(verdicts[i]!)}`}
                {overrule && <b class="by">{overruleWords(overrule)}</b>}
              </td>
            </tr>
          ))}
        </tbody>
      </table>
      <p class="fine">
        Held against: {standard.title}. {NOT_JUDGED} A training aid’s opinion, not a grade.
      </p>
      <Overruling exercise={exercise} />
    </section>
  );
}
