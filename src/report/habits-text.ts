/** The habits as plain text for a terminal or a file: what to practise next, then every number. */
import { type HabitReport, practiseNext } from "../habit/index.ts";
import { CAUTION } from "../quantity/caution.ts";
import { wrap } from "./text.ts";
import {
  flightName,
  HABITS_RULES,
  habitEffect,
  habitInterval,
  habitMean,
  habitProof,
  habitSentence,
  habitStatus,
  habitsHead,
  habitsWhose,
  habitTitle,
  habitTolerance,
  habitToleranceFrom,
  habitTrend,
  noPractise,
  pilotLine,
  practiseSentence,
} from "./words/index.ts";

const TITLE = "What keeps coming back";
const INDENT = "   ";

function practise(report: HabitReport): string[] {
  const items = practiseNext(report);
  if (items.length === 0) return [wrap(noPractise(report))];
  return items.flatMap((item, i) => {
    const { habit, sure } = item;
    const seen = habit.seenOn.map((flight) => flightName(report, flight));
    return [
      ...(i > 0 ? [""] : []),
      `${i + 1}. ${wrap(habitSentence(habit, sure), INDENT).slice(INDENT.length)}`,
      wrap(`${habitProof(habit)}${seen.length > 0 ? ` Seen best on ${seen.join(", ")}.` : ""}`, INDENT),
      wrap(`Practise: ${practiseSentence(item)}`, INDENT),
    ];
  });
}

/** Columns as wide as their widest cell. */
function columns(rows: readonly (readonly string[])[]): string[] {
  const widths = (rows[0] ?? []).map((_, c) => Math.max(...rows.map((row) => row[c]!.length)));
  return rows.map((row) =>
    row
      .map((cell, c) => cell.padEnd(widths[c]!))
      .join("  ")
      .trimEnd(),
  );
}

function numbers({ habits }: HabitReport): string[] {
  return columns([
    ["habit", "mean", "tolerances", "95 %", "exercises", "flights", "trend", "told"],
    ...habits.map((h) => [
      ...[habitTitle(h), habitMean(h), habitEffect(h), habitInterval(h), String(h.exercises)],
      ...[String(h.flights), habitTrend(h), habitStatus(h)],
    ]),
  ]);
}

/** Each pilot in a line or two: name, flights, habits. */
function byPilot(each: readonly HabitReport[]): string[] {
  if (each.length < 2) return [];
  const lines = each.map((report) => wrap(`${report.flights[0]?.pilot}, ${pilotLine(report)}`, INDENT));
  return ["Pilot by pilot (one in full: --pilot NAME)", ...lines, ""];
}

/** `each`: the same flights by pilot, where there are several. */
export function habitsText(report: HabitReport, each: readonly HabitReport[] = []): string {
  const whose = habitsWhose(report);
  return `${[
    TITLE,
    "=".repeat(TITLE.length),
    habitsHead(report),
    wrap(HABITS_RULES),
    "",
    wrap(CAUTION),
    "",
    ...(whose === "" ? [] : [wrap(whose), ""]),
    ...byPilot(each),
    each.length < 2 ? "Practise next" : "Practise next, all of them together",
    ...practise(report),
    ...(report.habits.length === 0
      ? []
      : [
          "",
          "The numbers",
          ...numbers(report),
          "",
          "What counts as one tolerance",
          ...report.habits.map((h) =>
            wrap(`${habitTitle(h)}: ${habitTolerance(h)}; ${habitToleranceFrom(h)}.`, INDENT),
          ),
        ]),
  ].join("\n")}\n`;
}
