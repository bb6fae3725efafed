/** The built program as a user starts it: a process that ends, what it said, and its exit code. */
import { spawnSync } from "node:child_process";

export interface Ended {
  readonly status: number | null;
  readonly stdout: string;
  readonly stderr: string;
}

export function run(program: string, cwd: string, args: readonly string[]): Ended {
  const { status, stdout, stderr } = spawnSync(process.execPath, [program, ...args], {
    encoding: "utf8",
    cwd,
    maxBuffer: 1 << 28,
  });
  return { status, stdout, stderr };
}
