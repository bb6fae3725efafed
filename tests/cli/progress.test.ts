import { describe, expect, it } from "vitest";
import { readingProgress } from "../../src/cli/progress.ts";

/** A terminal, or not, and a clock that the test sets. */
function watched(isTTY: boolean, size: number) {
  const written: string[] = [];
  const clock = { ms: 0 };
  const out = { isTTY, write: (text: string) => written.push(text) > 0 };
  return { written, clock, progress: readingProgress("log.gpx", size, out as never, () => clock.ms) };
}

describe("by construction: progress on a terminal", () => {
  it("is told after a second, a few times a second, and wiped off", () => {
    const { written, clock, progress } = watched(true, 200);
    for (const [ms, bytes] of [
      [500, 20],
      [1100, 50],
      [1150, 60],
      [1300, 101],
    ] as const) {
      clock.ms = ms;
      progress.say(bytes);
    }
    progress.end();
    const line = (far: string) => `\r\u001b[Kreading log.gpx: ${far} (Ctrl-C cancels)`;
    expect(written).toEqual([line("25 %"), line("50 %"), "\r\u001b[K"]);
  });

  it("of a pipe tells the bytes; a quick read and a stderr that nobody watches get nothing", () => {
    const pipe = watched(true, 0);
    pipe.clock.ms = 2000;
    pipe.progress.say(3_400_000);
    expect(pipe.written[0]).toContain("3.4 MB");
    for (const [isTTY, ms] of [
      [true, 900],
      [false, 5000],
    ] as const) {
      const { clock, progress, written } = watched(isTTY, 100);
      clock.ms = ms;
      progress.say(50);
      progress.end();
      expect(written).toEqual([]);
    }
  });
});
