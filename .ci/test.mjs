/** Everything that must hold, in order: types, lint, unit with truth and architecture, browser. Ends with one line of counts. */
import { spawnSync } from "node:child_process";
import { existsSync, mkdtempSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";

const root = fileURLToPath(new URL("..", import.meta.url));
const scratch = mkdtempSync(join(tmpdir(), "hindtrack-test-"));
let passed = 0;
let failed = 0;

function run(title, command, args) {
  console.log(`\n== ${title}`);
  const started = Date.now();
  const result = spawnSync(command, args, {
    cwd: root,
    stdio: "inherit",
    shell: process.platform === "win32",
  });
  console.log(
    `== ${title}: ${result.status === 0 ? "done" : "FAILED"} in ${((Date.now() - started) / 1000).toFixed(1)} s`,
  );
  return result.status === 0;
}

function step(title, script) {
  if (run(title, "npm", ["run", "-s", script])) passed++;
  else failed++;
}

/** Vitest says in JSON how many tests ran; a run that says nothing, or ran none, has failed. */
function tests(title, config) {
  const report = join(scratch, `${title.replace(/\W/g, "-")}.json`);
  const ok = run(title, "npx", [
    "vitest",
    "run",
    "-c",
    config,
    "--reporter=default",
    "--reporter=json",
    `--outputFile.json=${report}`,
  ]);
  const counts = existsSync(report) ? JSON.parse(readFileSync(report, "utf8")) : null;
  passed += counts?.numPassedTests ?? 0;
  failed += counts?.numFailedTests ?? 0;
  if (!counts || counts.numTotalTests === 0 || (!ok && counts.numFailedTests === 0)) failed++;
}

step("types", "types");
step("lint", "lint");
tests("unit, truth, accuracy gate, architecture", "tests/vitest.config.ts");
tests("browser", "tests/browser/vitest.config.ts");
rmSync(scratch, { recursive: true, force: true });

console.log(`\n${passed} passed, ${failed} failed`);
process.exit(failed === 0 ? 0 : 1);
