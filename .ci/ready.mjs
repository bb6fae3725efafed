/** Makes a fresh checkout ready: the right Node, and the packages of the lockfile, installed only when missing or stale. */
import { spawnSync } from "node:child_process";
import { createHash } from "node:crypto";
import { existsSync, readFileSync, writeFileSync } from "node:fs";
import { fileURLToPath } from "node:url";

const root = fileURLToPath(new URL("..", import.meta.url));
const major = Number(process.versions.node.split(".")[0]);
if (major < 20) {
  console.error(
    `Hindtrack needs Node 20 or newer; this is ${process.versions.node}. Install it from your package manager and run the command again.`,
  );
  process.exit(1);
}

const lock = createHash("sha256")
  .update(readFileSync(`${root}package-lock.json`))
  .digest("hex");
const stamp = `${root}node_modules/.hindtrack-lock`;
const installed = existsSync(stamp) && readFileSync(stamp, "utf8") === lock;
if (!installed) {
  console.error("Installing the packages of package-lock.json (once) ...");
  const result = spawnSync("npm", ["ci", "--no-audit", "--no-fund", "--loglevel=error"], {
    cwd: root,
    stdio: ["ignore", 2, 2],
    shell: process.platform === "win32",
  });
  if (result.status !== 0) {
    console.error("npm ci failed: see above. Is the npm registry within reach?");
    process.exit(1);
  }
  writeFileSync(stamp, lock);
}
