/** Runs `print.ts`: `npm run accuracy`, `-- --seeds 20` for a quick look, `-- --only "1 base, two laps"` for some lines, `-- --real FOLDER` for logs with measured wind, `-- --approaches` for approaches, `-- --habits` (`--pilots 20` for a quick look) for habits, `-- --causes` for causes on courses and leads on courses, arcs and finals, `-- --verdicts` for verdicts. */
import { createServer } from "vite";

const server = await createServer({
  configFile: false,
  root: import.meta.dirname,
  logLevel: "error",
  appType: "custom",
  server: { middlewareMode: true, ws: false, watch: null },
  optimizeDeps: { noDiscovery: true },
});
try {
  const { default: print } = await server.ssrLoadModule("/print.ts");
  print(process.argv.slice(2), (line) => console.log(line));
} finally {
  await server.close();
}
