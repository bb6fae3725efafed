/** Why this browser did not keep or give something, in words that say what to do. */

export type TroubleKind = "full" | "nothing-kept" | "newer" | "other-tab" | "failed";

const WORDS: Readonly<Record<TroubleKind, string>> = {
  full: "The space that this browser gives to Hindtrack is full: the last change was not kept. Save the logbook as a file, delete flights that are no longer wanted and clear them away, then try again.",
  "nothing-kept":
    "This browser keeps nothing, as in a private window or where storage is switched off: a reload will lose what is on the page. Save it before leaving.",
  newer:
    "The logbook in this browser was written by a newer Hindtrack than this page. Reload the page; nothing was changed.",
  "other-tab":
    "A newer Hindtrack wants the logbook and this tab has let go of it. Reload this tab to go on; what was kept is safe.",
  failed: "The browser failed to read or write the logbook. Reload the page; what was kept before is safe.",
};

export class StorageTrouble extends Error {
  readonly kind: TroubleKind;
  constructor(kind: TroubleKind, cause?: unknown) {
    super(WORDS[kind], { cause });
    this.name = "StorageTrouble";
    this.kind = kind;
  }
}

/** What an error of the database means to its user. */
export function storageTrouble(error: unknown, opening = false): StorageTrouble {
  if (error instanceof StorageTrouble) return error;
  const name = error instanceof Error || error instanceof DOMException ? error.name : "";
  if (name === "QuotaExceededError") return new StorageTrouble("full", error);
  if (name === "VersionError") return new StorageTrouble("newer", error);
  return new StorageTrouble(opening ? "nothing-kept" : "failed", error);
}
