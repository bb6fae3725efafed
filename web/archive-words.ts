/** What came of taking in a logbook that was saved as a file, in words. */
import { shownName } from "../src/index.ts";
import type { Damage, ReadArchive } from "./archive/read.ts";
import { flightsWords } from "./outcome-words.ts";

/** More would hide the page. */
const MOST_NAMED = 6;

function listed(names: readonly string[]): string {
  const first = names.slice(0, MOST_NAMED).join("; ");
  return names.length > MOST_NAMED ? `${first}; and ${names.length - MOST_NAMED} more` : first;
}

/** The file, and where it does not say so itself, the flight. */
const damageWords = ({ flight, file }: Damage): string =>
  flight === null || flight === file ? shownName(file) : `${shownName(file)} of ${shownName(flight)}`;

export function archiveWords(
  name: string,
  { added, renewed, left, damaged, anew, brokenOff }: ReadArchive,
): string[] {
  const file = shownName(name);
  const parts = [
    `${flightsWords(added)} added`,
    ...(renewed > 0 ? [`${renewed} brought to a later state`] : []),
    ...(left > 0 ? [`${left} stood here already`] : []),
  ];
  const hurt = new Set(damaged.flatMap(({ flight }) => flight ?? [])).size;
  return [
    `${file}: ${parts.join(", ")}.`,
    ...(brokenOff ? [`${file}: its end is cut off or damaged. What can still be read of it was taken.`] : []),
    ...(damaged.length > 0
      ? [
          `${file}: damaged or missing in it: ${listed(damaged.map(damageWords))}. ${hurt > 0 ? `${hurt === 1 ? "This flight was" : `These ${hurt} flights were`} not taken; what` : "What"} stands here was not changed by it. Another copy of the file may have it whole.`,
        ]
      : []),
    ...(anew.length > 0
      ? [`${file}: the debrief of ${listed(anew.map(shownName))} was damaged and is worked out anew.`]
      : []),
  ];
}
