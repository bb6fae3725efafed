/** Dates as tables write them, to YYYY-MM-DD. */

const MONTHS = ["jan", "feb", "mar", "apr", "may", "jun", "jul", "aug", "sep", "oct", "nov", "dec"];

export interface IsoDate {
  readonly text: string;
  /** Both numbers could be the month. */
  readonly eitherWay: boolean;
}

const two = (n: number): string => String(n).padStart(2, "0");
const sure = (year: string, month: number, day: number): IsoDate => ({
  text: `${year}-${two(month)}-${two(day)}`,
  eitherWay: false,
});

/**
 * Read: "2026-10-17", "2026/10/17", "20261017", "17.10.2026", "17 Oct 2026", "Oct 17, 2026". Of "17/10/2026" and
 * "10/17/2026" the only reading that is a date; where both are, the month stands first beside a clock of twelve hours
 * (`twelve`), as where such clocks are used, else the day (common practice, no source). Null where it is no date.
 */
export function isoDate(text: string, twelve: boolean): IsoDate | null {
  const yearFirst = /^(\d{4})([-/.]?)(\d{1,2})\2(\d{1,2})$/.exec(text);
  if (yearFirst !== null) {
    if (yearFirst[2] === "" && text.length !== 8) return null;
    return sure(yearFirst[1]!, Number(yearFirst[3]), Number(yearFirst[4]));
  }
  const named = /^(?:(\d{1,2})[\s.-]*)?([a-z]{3})[a-z]*\.?[\s-]*(?:(\d{1,2}),?\s+)?(\d{4})$/i.exec(text);
  if (named !== null && (named[1] === undefined) !== (named[3] === undefined)) {
    const month = MONTHS.indexOf(named[2]!.toLowerCase());
    return month < 0 ? null : sure(named[4]!, month + 1, Number(named[1] ?? named[3]));
  }
  const yearLast = /^(\d{1,2})([-/.])(\d{1,2})\2(\d{4})$/.exec(text);
  if (yearLast === null) return null;
  const [a, b, year] = [Number(yearLast[1]), Number(yearLast[3]), yearLast[4]!];
  if (yearLast[2] === "." || a > 12) return sure(year, b, a);
  if (b > 12) return sure(year, a, b);
  return { text: twelve ? `${year}-${two(a)}-${two(b)}` : `${year}-${two(b)}-${two(a)}`, eitherWay: a !== b };
}
