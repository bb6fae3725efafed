/** The floors of the house: every import points down, wings are entered by their doors, the page and the terminal by the one door. */
import { readdirSync, readFileSync, statSync } from "node:fs";
import { dirname, join, relative, resolve } from "node:path";
import { describe, expect, it } from "vitest";

const ROOT = resolve(import.meta.dirname, "..");
const SRC = join(ROOT, "src");

/** What each wing may import, besides itself. DEVELOPERS.md has the same table with reasons. */
const MAY_IMPORT: Record<string, readonly string[]> = {
  quantity: [],
  geodesy: ["quantity"],
  standard: ["quantity"],
  track: ["geodesy", "quantity"],
  brief: ["standard", "geodesy", "quantity"],
  import: ["track", "geodesy", "quantity"],
  wind: ["track", "geodesy", "quantity"],
  match: ["track", "brief", "geodesy", "quantity"],
  course: ["wind", "track", "brief", "standard", "geodesy", "quantity"],
  hold: ["wind", "track", "brief", "standard", "geodesy", "quantity"],
  approach: ["wind", "track", "brief", "standard", "geodesy", "quantity"],
  simulator: ["wind", "track", "standard", "geodesy", "quantity"],
  grade: ["course", "hold", "approach", "brief", "standard", "quantity"],
  debrief: [
    ...["grade", "course", "hold", "approach", "match", "wind", "import", "brief", "track"],
    ...["standard", "geodesy", "quantity"],
  ],
  habit: ["debrief", "standard", "quantity"],
  report: ["habit", "debrief", "quantity"],
};

/** Files besides `index.ts` through which a wing may be entered: its vocabulary. */
const ALSO_DOORS = new Set([
  "geodesy/position.ts",
  "geodesy/course.ts",
  "track/track.ts",
  "track/motion.ts",
  "track/leg.ts",
  "wind/wind.ts",
  "wind/record.ts",
  "brief/brief.ts",
  "import/imported.ts",
  "match/match.ts",
  "course/facts.ts",
  "course/arc-facts.ts",
  "course/descent-facts.ts",
  "course/series.ts",
  "approach/facts.ts",
  "approach/series.ts",
  "hold/facts.ts",
  "hold/series.ts",
  "grade/verdict.ts",
  "debrief/document.ts",
  "debrief/series.ts",
]);
/** Wings that are all vocabulary: any file may be imported. */
const ALL_DOORS = new Set(["quantity", "standard"]);
/** Of `debrief`, what shows it may see only the contract. */
const CONTRACT_ONLY = new Set(["report", "habit"]);
const CONTRACT = new Set(["debrief/document.ts", "debrief/series.ts"]);

interface Import {
  from: string;
  to: string;
}

function files(folder: string): string[] {
  return readdirSync(folder).flatMap((name) => {
    const path = join(folder, name);
    if (statSync(path).isDirectory()) return files(path);
    return /\.tsx?$/.test(name) ? [path] : [];
  });
}

/** The module names that a source imports or exports from, static and dynamic. */
function specifiers(source: string): string[] {
  const withoutComments = source.replace(/\/\*[\s\S]*?\*\//g, "").replace(/(^|\s)\/\/[^\n]*/g, "$1");
  const pattern = /(?:\bfrom\s*|\bimport\s*\(\s*|\bimport\s+)["']([^"']+)["']/g;
  return [...withoutComments.matchAll(pattern)].map((m) => m[1]!);
}

function importsOf(folder: string): Import[] {
  return files(folder).flatMap((path) =>
    specifiers(readFileSync(path, "utf8"))
      .filter((s) => s.startsWith("."))
      .map((s) => ({ from: relative(ROOT, path), to: relative(ROOT, resolve(dirname(path), s)) })),
  );
}

const wingOf = (path: string): string | null => /^src\/([^/]+)\//.exec(path)?.[1] ?? null;

/** Why an import inside `src/` is not allowed, or null. */
function breach({ from, to }: Import): string | null {
  if (from.endsWith("/vite.config.ts")) return null; // builds, and is no part of what is built
  if (!to.startsWith("src/")) return "leaves src/";
  const [fromWing, toWing] = [wingOf(from), wingOf(to)];
  const inner = to.slice("src/".length).replace(/\?.*$/, "");
  if (fromWing === null) return null; // the one door sees every wing
  if (fromWing === "cli") {
    return toWing === "cli" || to === "src/index.ts" ? null : "the terminal reaches past src/index.ts";
  }
  if (toWing === null) return "a wing imports the one door";
  if (fromWing === toWing) {
    return inner === `${toWing}/index.ts` ? "a sibling imports its own wing's door" : null;
  }
  if (!(MAY_IMPORT[fromWing] ?? []).includes(toWing)) return `${fromWing} may not import ${toWing}`;
  if (CONTRACT_ONLY.has(fromWing) && toWing === "debrief" && !CONTRACT.has(inner)) {
    return `${fromWing} may see only the contract of debrief`;
  }
  if (ALL_DOORS.has(toWing) || inner === `${toWing}/index.ts` || ALSO_DOORS.has(inner)) return null;
  return `${toWing} is entered past its door`;
}

const say = (list: { i: Import; why: string | null }[]): string[] =>
  list.filter((x) => x.why).map((x) => `${x.i.from} -> ${x.i.to}: ${x.why}`);

describe("the floors of the house (DEVELOPERS.md)", () => {
  it("lets every import in src/ point down and enter by a door", () => {
    const all = importsOf(SRC);
    expect(all.length).toBeGreaterThan(50);
    expect(say(all.map((i) => ({ i, why: breach(i) })))).toEqual([]);
  });

  it("knows every wing", () => {
    const wings = readdirSync(SRC).filter((n) => statSync(join(SRC, n)).isDirectory() && n !== "cli");
    expect(wings.filter((w) => !(w in MAY_IMPORT))).toEqual([]);
  });

  it("lets the page reach src/ only through the one door", () => {
    const out = importsOf(join(ROOT, "web")).filter(
      (i) => i.to.startsWith("src/") && i.to.replace(/\?.*$/, "") !== "src/index.ts",
    );
    expect(out.map((i) => `${i.from} -> ${i.to}`)).toEqual([]);
  });

  it("keeps Node's modules out of everything below the terminal", () => {
    const out = files(SRC)
      .filter((p) => !p.startsWith(join(SRC, "cli")))
      .flatMap((p) => specifiers(readFileSync(p, "utf8")).map((s) => ({ p, s })))
      .filter(({ s }) => s.startsWith("node:"));
    expect(out).toEqual([]);
  });

  it("opens every file with one sentence that says what it is for", () => {
    const silent = files(SRC).filter((p) => !/^\s*(#!.*\n)?\/\*\*/.test(readFileSync(p, "utf8")));
    expect(silent.map((p) => relative(ROOT, p))).toEqual([]);
  });
});

describe("the checker itself", () => {
  it.each([
    ["an upward import", "src/quantity/a.ts", "src/track/track.ts"],
    ["a wing entered past its door", "src/course/a.ts", "src/track/smooth.ts"],
    ["two wings of one floor", "src/hold/a.ts", "src/course/facts.ts"],
    ["the terminal past the one door", "src/cli/a.ts", "src/track/track.ts"],
    ["a sibling through its own door", "src/wind/a.ts", "src/wind/index.ts"],
    ["a report that looks into the recipe", "src/report/a.ts", "src/debrief/index.ts"],
    ["a wing that imports the one door", "src/wind/a.ts", "src/index.ts"],
  ])("refuses %s", (_, from, to) => {
    expect(breach({ from, to })).not.toBeNull();
  });

  it("finds imports of every form and none in comments", () => {
    const source = `import a from "./a.ts";\nexport * from './b.ts';\nawait import("./c.ts");\nimport "./d.ts";\n// import "./e.ts"\n/* from "./f.ts" */`;
    expect(specifiers(source)).toEqual(["./a.ts", "./b.ts", "./c.ts", "./d.ts"]);
  });
});
