/** Timings, `npm run bench`: each entry is a file `*.bench.ts` beside this one that default-exports a list of lines. */
import { readdirSync } from "node:fs";
import { createServer } from "vite";

const here = import.meta.dirname;
const server = await createServer({
  configFile: false,
  root: here,
  logLevel: "error",
  appType: "custom",
  server: { middlewareMode: true, ws: false, watch: null },
  optimizeDeps: { noDiscovery: true },
});
let failed = false;
try {
  const wanted = process.argv[2] ?? "";
  for (const file of readdirSync(here).filter((f) => f.endsWith(".bench.ts") && f.includes(wanted))) {
    const bench = await server.ssrLoadModule(`/${file}`);
    console.log(file.replace(".bench.ts", ""));
    for (const line of await bench.default()) {
      console.log(`  ${line.ok === false ? "TOO SLOW " : ""}${line.text}`);
      failed ||= line.ok === false;
    }
  }
} finally {
  await server.close();
}
process.exitCode = failed ? 1 : 0;
