/** How far reading or a folder is, on one line of stderr, for who waits at a terminal; pipes and files get nothing. */

/** Shorter work needs no progress. Own choice. */
const AFTER_MS = 1000;
const EVERY_MS = 100;
/** Back to the line's start, and the line emptied (ECMA-48, CR and EL). */
const CLEAR = "\r\u001b[K";

/** `size` in bytes; 0 for a pipe, whose end nobody knows. Call `end` when reading is over. */
export function readingProgress(
  path: string,
  size: number,
  out: Pick<NodeJS.WriteStream, "isTTY" | "write"> = process.stderr,
  now: () => number = () => performance.now(),
): { say: (bytes: number) => void; end: () => void } {
  const start = now();
  let said = 0;
  return {
    say: (bytes) => {
      const at = now();
      if (!out.isTTY || at - start < AFTER_MS || at - said < EVERY_MS) return;
      said = at;
      const far = size > 0 ? `${Math.floor((100 * bytes) / size)} %` : `${(bytes / 1e6).toFixed(1)} MB`;
      out.write(`${CLEAR}reading ${path}: ${far} (Ctrl-C cancels)`);
    },
    end: () => {
      if (said > 0) out.write(CLEAR);
    },
  };
}

/** How far a folder is. */
export function folderProgress(
  whole: number,
  out: Pick<NodeJS.WriteStream, "isTTY" | "write"> = process.stderr,
  now: () => number = () => performance.now(),
): { say: (so: { done: number; reused: number; bad: number }) => void; end: () => void } {
  const start = now();
  let said = 0;
  return {
    say: ({ done, reused, bad }) => {
      const at = now();
      if (!out.isTTY || at - start < AFTER_MS || at - said < EVERY_MS) return;
      said = at;
      const worked = done - reused;
      const left = whole - done - bad;
      const minutes = worked > 0 ? ((at - start) / 60_000 / worked) * left : null;
      out.write(
        `${CLEAR}${done + bad} of ${whole} flights${reused > 0 ? `, ${reused} made before` : ""}${bad > 0 ? `, ${bad} not usable` : ""}${minutes === null ? "" : `, about ${Math.ceil(minutes)} min left`} (Ctrl-C keeps what is done)`,
      );
    },
    end: () => {
      if (said > 0) out.write(CLEAR);
    },
  };
}
