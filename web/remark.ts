/** The instructor's remark on a flight, kept in this browser letter by letter. */
import type { DebriefDocument } from "../src/index.ts";

/** One flight is one log file and the time it begins. */
const key = ({ log }: DebriefDocument): string => `hindtrack remark ${log.file} ${log.startUtc ?? "untimed"}`;

/** What was written here, else what the document carries. */
export function remarkOf(document: DebriefDocument): string {
  const carried = document.remarks.find(({ exercise }) => exercise === null)?.text ?? "";
  try {
    return localStorage.getItem(key(document)) ?? carried;
  } catch {
    return carried;
  }
}

/** False where this browser keeps nothing. */
export function keepRemark(document: DebriefDocument, text: string): boolean {
  try {
    if (text) localStorage.setItem(key(document), text);
    else localStorage.removeItem(key(document));
    return true;
  } catch {
    return false;
  }
}
