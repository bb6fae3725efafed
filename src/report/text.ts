/** The debrief as plain text for a terminal or a file: the sheet's words, without its drawings. */
import type { DebriefDocument, DocumentExercise } from "../debrief/document.ts";
import {
  asFineAs,
  capital,
  clock,
  count,
  day,
  duration,
  exerciseSentence,
  findingSentence,
  issueSentence,
  lapSentences,
  logCautions,
  NOT_JUDGED,
  otherFindings,
  overruleWords,
  secondsBetween,
  shownName,
  sideNotes,
  TOP_WORDS,
  verdictSentence,
  windSentence,
} from "./words/index.ts";

const WIDTH = 88;

/** Breaks a paragraph at spaces so that no line is longer than the width, later lines indented. */
export function wrap(text: string, indent = "", width = WIDTH): string {
  const lines: string[] = [];
  let line = "";
  for (const word of text.split(" ")) {
    if (line && (indent + line).length + 1 + word.length > width) {
      lines.push(indent + line);
      line = word;
    } else line = line ? `${line} ${word}` : word;
  }
  lines.push(indent + line);
  return lines.join("\n");
}

function head(document: DebriefDocument): string[] {
  const { log, brief, standard } = document;
  const title = shownName(brief?.title || log.name);
  const when =
    log.startUtc && log.endUtc
      ? `${day(log.startUtc)}, ${clock(log.startUtc)} to ${clock(log.endUtc)} UTC, ${duration(secondsBetween(log.startUtc, log.endUtc))}, ${Math.round(log.distanceNm)} NM`
      : `no times in this log, ${Math.round(log.distanceNm)} NM`;
  const left = log.points - log.used;
  return [
    title,
    "=".repeat(title.length),
    when,
    `Log ${shownName(log.file)}: ${count(log.used)} of ${count(log.points)} points used${left > 0 ? `, ${count(left)} left out` : ""}.`,
    ...logCautions(document).map((sentence) => wrap(sentence)),
    wrap(windSentence(document)),
    ...(standard && document.exercises.some((e) => e.verdicts.length > 0)
      ? [wrap(`Held against: ${standard.title} (${standard.citation}). ${NOT_JUDGED}`)]
      : []),
    "",
    wrap(document.caution),
  ];
}

/** What the instructor wrote of an exercise, or of the flight (null). */
function written({ remarks, overrules = [] }: DebriefDocument, index: number | null): string[] {
  const titled = (title: string | undefined) => (index === null && title ? `On “${title}”, earlier: ` : "");
  return [
    ...overrules
      .filter((o) => o.exercise === index)
      .map((o) => `${titled(o.title)}${overruleWords(o)} (${o.criterion})`),
    ...remarks
      .filter((r) => r.exercise === index)
      .map((r) => `${titled(r.title)}Remark: ${r.text.trim().replace(/\s+/g, " ")}`),
  ].map((line) => wrap(line, "   "));
}

function exercise(document: DebriefDocument, measured: DocumentExercise, index: number): string[] {
  const e = asFineAs(document.log, measured);
  const when = e.startUtc && e.endUtc ? `, ${clock(e.startUtc)} to ${clock(e.endUtc)} UTC` : "";
  return [
    "",
    `${index + 1}. ${e.title}${when}`,
    wrap(exerciseSentence(e), "   "),
    ...sideNotes(e).map(({ lead, text }) => wrap(`${lead} ${text}`, "   ")),
    ...lapSentences(e).map((lap) => wrap(lap, "   ")),
    ...otherFindings(e).map((finding) => wrap(findingSentence(finding, e), "   ")),
    ...e.verdicts.map((verdict) => wrap(capital(verdictSentence(verdict)), "   ")),
    ...written(document, index),
  ];
}

export function debriefText(document: DebriefDocument): string {
  const issues = [...document.log.issues, ...(document.brief?.issues ?? [])].filter(
    ({ code }) => !(code in TOP_WORDS), // said at the top
  );
  return `${[
    ...head(document),
    ...document.exercises.flatMap((e, i) => exercise(document, e, i)),
    ...(document.exercises.length === 0
      ? ["", "No course to compare: the log has no long straight and there is no brief."]
      : []),
    ...(written(document, null).length > 0 ? ["", "Remarks", ...written(document, null)] : []),
    ...(issues.length > 0
      ? ["", "What was noticed in the files", ...issues.map((i) => wrap(issueSentence(i), "   "))]
      : []),
  ].join("\n")}\n`;
}
