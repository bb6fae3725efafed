/** A real Chromium: one that the machine has, else one from its package manager, else words that say what to install. */
import { spawnSync } from "node:child_process";
import { existsSync } from "node:fs";
import { delimiter, join } from "node:path";

const NAMES = [
  "chromium",
  "chromium-browser",
  "google-chrome",
  "google-chrome-stable",
  "chrome",
  "microsoft-edge",
];

const PLACES = [
  "/Applications/Google Chrome.app/Contents/MacOS/Google Chrome",
  "/Applications/Chromium.app/Contents/MacOS/Chromium",
  "C:\\Program Files\\Google\\Chrome\\Application\\chrome.exe",
  "C:\\Program Files (x86)\\Google\\Chrome\\Application\\chrome.exe",
  "C:\\Program Files (x86)\\Microsoft\\Edge\\Application\\msedge.exe",
];

/** A browser runs where it stands and says its version; a stub that only points to a shop does not. */
const runs = (path: string): boolean =>
  existsSync(path) &&
  (process.platform === "win32" || spawnSync(path, ["--version"], { timeout: 30_000 }).status === 0);

function found(): string | null {
  const folders = (process.env.PATH ?? "").split(delimiter);
  const named = NAMES.flatMap((name) =>
    [...folders, "/usr/bin", "/snap/bin"].map((folder) => join(folder, name)),
  );
  return [...named, ...PLACES].find(runs) ?? null;
}

/** Only where the machine lets us: as root, with apt. */
function install(): boolean {
  if (process.getuid?.() !== 0 || spawnSync("apt-get", ["--version"]).status !== 0) return false;
  console.error("No Chromium on this machine: installing it with apt-get (once) ...");
  const apt = (...words: string[]) =>
    spawnSync("apt-get", words, {
      stdio: ["ignore", 2, 2],
      env: { ...process.env, DEBIAN_FRONTEND: "noninteractive" },
    }).status === 0;
  return apt("update", "-qq") && apt("install", "-y", "-qq", "--no-install-recommends", "chromium");
}

/** The path of a browser that runs. Never skips: without one it throws what to do. */
export function chromiumPath(): string {
  const named = process.env.CHROMIUM;
  if (named) {
    if (runs(named)) return named;
    throw new Error(`CHROMIUM names ${named}, which does not run. Name a Chromium or Chrome, or unset it.`);
  }
  const path = found() ?? (install() ? found() : null);
  if (path) return path;
  throw new Error(
    "The browser tests need Chromium or Chrome. Install one (Debian and Ubuntu: apt-get install chromium; macOS: brew install --cask chromium), or set CHROMIUM to its path.",
  );
}

export const LAUNCH_ARGUMENTS = [
  "--no-sandbox",
  "--disable-gpu",
  "--disable-quic",
  "--no-first-run",
  "--disable-background-networking",
  "--disable-component-update",
  "--disable-sync",
];
