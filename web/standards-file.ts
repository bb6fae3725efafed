/** A school's standard that is given as a file: read, and kept in this browser for every flight. */
import { issueSentence, readStandard, shownName, UnusableInput } from "../src/index.ts";
import { keepStandard } from "./store/standards.ts";
import { storageTrouble } from "./store/trouble.ts";

export interface TakenStandard {
  /** Whether it can be held against at all. */
  readonly usable: boolean;
  readonly said: readonly string[];
}

export async function takeStandard(file: File): Promise<TakenStandard> {
  const text = await file.text();
  try {
    const { id, title } = readStandard(text, file.name);
    await keepStandard(id, text);
    return {
      usable: true,
      said: [
        `${shownName(file.name)} is a standard, ${title}. It is kept in this browser: every sheet with a brief offers it under “Held against”, and there it can be made the usual one.`,
      ],
    };
  } catch (error) {
    if (!(error instanceof UnusableInput)) return { usable: true, said: [storageTrouble(error).message] };
    const said = error.issues.map((issue) =>
      issueSentence({ ...issue, where: { ...issue.where }, facts: { ...issue.facts } }),
    );
    return { usable: false, said };
  }
}
