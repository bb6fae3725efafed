/** What is typed into the search of the logbook, as texts that must all stand in a flight: days and verdicts as one, other words each for itself. */

const MONTHS = [
  ...["january", "february", "march", "april", "may", "june"],
  ...["july", "august", "september", "october", "november", "december"],
];
/** A month as it is written, whole or by its first letters, perhaps with a stop. */
const MONTH = `(?:${MONTHS.map((name) => `${name.slice(0, 3)}(?:${restOf(name)})?`).join("|")})`;
const DAY = "(\\d{1,2})(?:st|nd|rd|th)?";
const DAY_FIRST = new RegExp(`(?<![\\d-])${DAY}\\.?\\s+(${MONTH})\\b\\.?`, "g");
const MONTH_FIRST = new RegExp(`\\b(${MONTH})\\b\\.?\\s+${DAY}(?!\\d)`, "g");
const VERDICT = /\b(?:not\s+met|cannot\s+tell|not\s+flown|not\s+judged)\b/g;

/** September is shortened to four letters as often as to three. */
function restOf(name: string): string {
  return name === "september" ? "t|tember" : name.slice(3) || "";
}

const whole = (month: string): string => MONTHS.find((name) => name.startsWith(month.slice(0, 3))) ?? month;

/** Texts to be found, in small letters; one that begins with a figure is not the end of a longer one. */
export function askedWords(typed: string): string[] {
  const phrases: string[] = [];
  const take = (phrase: string): string => {
    phrases.push(phrase);
    return " ";
  };
  const rest = typed
    .toLowerCase()
    .replace(DAY_FIRST, (_, day: string, month: string) => take(`${Number(day)} ${whole(month)}`))
    .replace(MONTH_FIRST, (_, month: string, day: string) => take(`${Number(day)} ${whole(month)}`))
    .replace(VERDICT, (verdict) => take(verdict.replace(/\s+/g, " ")));
  return [...phrases, ...rest.split(/\s+/).filter((word) => word !== "")];
}

/** Whether a phrase stands in a text: "9 june" not in "19 june". */
export function stands(phrase: string, text: string): boolean {
  if (!/^\d+ /.test(phrase)) return text.includes(phrase);
  return new RegExp(`(?<!\\d)${phrase}`).test(text);
}
