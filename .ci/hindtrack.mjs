/** Runs the terminal's program; builds it first where its sources, or the packages, are newer than what was built last. */
import { existsSync, readdirSync, rmSync, statSync, utimesSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath, pathToFileURL } from "node:url";

const root = fileURLToPath(new URL("..", import.meta.url));
/** Written once a build is whole, and taken away before the next: a build that broke off is never run. */
const built = join(root, "dist/cli/built");
/** The page is among them: the one-page sheet is made of it. */
const sources = ["src", "web", "package.json", "package-lock.json"];

const isFolder = (path) => statSync(path).isDirectory();

/** The last change of a file, or of anything in a folder; a file that went away changes its folder. */
function changed(path) {
  const own = statSync(path).mtimeMs;
  if (!isFolder(path)) return own;
  return Math.max(own, ...readdirSync(path).map((name) => changed(join(path, name))));
}

const newest = Math.max(...sources.map((path) => changed(join(root, path))));
if (!existsSync(built) || statSync(built).mtimeMs < newest) {
  rmSync(built, { force: true });
  const begun = new Date();
  console.error("Building the program (once, until its sources change) ...");
  const { build } = await import("vite");
  await build({ configFile: join(root, "src/cli/vite.config.ts"), logLevel: "error" });
  writeFileSync(built, "");
  utimesSync(built, begun, begun); // what changed meanwhile may not be in it
}
await import(pathToFileURL(join(root, "dist/cli/hindtrack.js")).href);
