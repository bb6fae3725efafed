/** How far reading is, on one line of stderr, for who waits at a terminal; pipes and files get nothing. */

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
