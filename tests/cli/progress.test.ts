import { describe, expect, it } from "vitest";
import { folderProgress, readingProgress } from "../../src/cli/progress.ts";

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

  it("of a folder tells how many are done, made before, not usable, and how long it may take", () => {
    const written: string[] = [];
    const clock = { ms: 0 };
    const out = { isTTY: true, write: (text: string) => written.push(text) > 0 };
    const progress = folderProgress(100, out as never, () => clock.ms);
    clock.ms = 120_000;
    progress.say({ done: 30, reused: 10, bad: 2 });
    progress.end();
    // 20 worked out in 2 minutes, 68 to go: 6.8 minutes
    expect(written[0]).toBe(
      "\r\u001b[K32 of 100 flights, 10 made before, 2 not usable, about 7 min left (Ctrl-C keeps what is done)",
    );
    expect(written[1]).toBe("\r\u001b[K");
  });
});
