/** Timings, `npm run bench`: each file `*.bench.ts` beside this one default-exports a list of lines. Each is built as the program is, and runs in a process of its own: a first run is a first run. */
import { spawnSync } from "node:child_process";
import { readdirSync } from "node:fs";
import { pathToFileURL } from "node:url";
import { build } from "vite";

const here = import.meta.dirname;
/** As deep as this folder, for what is named relative to it. */
const outDir = `${here}/../../dist/bench`;
const wanted = process.argv[2] ?? "";
const benches = readdirSync(here).filter((f) => f.endsWith(".bench.ts") && f.includes(wanted));

const print = (file) => `
const { default: bench } = await import(${JSON.stringify(pathToFileURL(file).href)});
for (const { text, ok } of await bench()) {
  console.log("  " + (ok === false ? "TOO SLOW " : "") + text);
  if (ok === false) process.exitCode = 1;
}`;

await build({
  configFile: false,
  root: here,
  logLevel: "error",
  ssr: { external: ["tinypool"] },
  build: { ssr: true, rolldownOptions: { input: benches }, outDir, emptyOutDir: true, target: "node20" },
});
let failed = false;
for (const bench of benches) {
  console.log(bench.replace(".bench.ts", ""));
  const built = `${outDir}/${bench.replace(/ts$/, "js")}`;
  const { status } = spawnSync(process.execPath, ["--input-type=module", "-e", print(built)], {
    stdio: "inherit",
  });
  failed ||= status !== 0;
}
process.exitCode = failed ? 1 : 0;
