/** Runs `print.ts`: `npm run accuracy`, `-- --seeds 20` for a quick look, `-- --only "1 base, two laps"` for some lines, `-- --real FOLDER` for logs with measured wind, `-- --approaches` for approaches, `-- --habits` (`--pilots 20` for a quick look) for habits, `-- --causes` for causes on courses and leads on courses, arcs and finals, `-- --verdicts` (`--exercises 200` for a quick look) for verdicts, on all processors. */
import { availableParallelism } from "node:os";
import { isMainThread, parentPort, Worker, workerData } from "node:worker_threads";
import { createServer } from "vite";

/** Runs what a module of this folder exports. */
async function withModule(name, run) {
  const server = await createServer({
    configFile: false,
    root: import.meta.dirname,
    logLevel: "error",
    appType: "custom",
    server: { middlewareMode: true, ws: false, watch: null },
    optimizeDeps: { noDiscovery: true },
  });
  try {
    await run(await server.ssrLoadModule(name));
  } finally {
    await server.close();
  }
}

const tell = (line) => console.log(line);
const args = process.argv.slice(2);

/** Each part in a thread of its own; how far they are goes to the error stream. */
async function verdicts() {
  const asked = args.includes("--exercises") ? args[args.indexOf("--exercises") + 1] : "2000";
  if (!/^[1-9]\d{0,5}$/.test(asked ?? ""))
    throw new RangeError(`invalid --exercises: ${asked}; a whole number from 1 to 999999`);
  const parts = Math.min(availableParallelism(), 8);
  const flown = await Promise.all(
    Array.from(
      { length: parts },
      (_, part) =>
        new Promise((done, fail) => {
          const worker = new Worker(new URL(import.meta.url), {
            workerData: { exercises: Number(asked), part, parts },
          });
          worker.on("message", (m) => (typeof m === "string" ? console.error(m) : done(m)));
          worker.on("error", fail);
        }),
    ),
  );
  await withModule("/print-verdicts.ts", ({ printVerdicts }) => printVerdicts(flown, tell));
}

if (!isMainThread)
  await withModule("/verdict-lines.ts", ({ flyPart }) => {
    const { exercises, part, parts } = workerData;
    parentPort.postMessage(flyPart(exercises, part, parts, (line) => parentPort.postMessage(line)));
  });
else if (args.includes("--verdicts")) await verdicts();
else await withModule("/print.ts", ({ default: print }) => print(args, tell));
