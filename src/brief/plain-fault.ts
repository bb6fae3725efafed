/** What is wrong with the writing of a brief, in words for who knows briefs and not YAML. */

/** By the reader's own message first, for one code stands for several faults (package yaml 2.9, compose and lex errors). */
const BY_MESSAGE: readonly (readonly [RegExp, (found: RegExpExecArray) => string])[] = [
  [
    /must be sufficiently indented and end with a (.)/,
    (m) => `a bracket is opened and never closed: ${m[1]} is missing`,
  ],
  [
    /Expected flow (?:map|sequence) to end with (.)/,
    (m) => `a bracket is opened and never closed: ${m[1]} is missing`,
  ],
  [/Missing closing .?quote/, () => "a quotation mark is opened and never closed"],
  [/Missing , /, () => "a comma is missing between two entries"],
  [
    /Implicit map keys need|Implicit keys need to be on a single line/,
    () => "a colon is missing behind a name, or a text runs over two lines",
  ],
  [
    /Nested mappings are not allowed/,
    () => "two colons stand on one line: a text with a colon in it needs quotes",
  ],
  [/nested too deeply/, () => "brackets are nested deeper than any brief needs"],
];

const BY_CODE: Readonly<Record<string, string>> = {
  BAD_INDENT: "this line begins farther left or right than its neighbours",
  TAB_AS_INDENT: "a tab stands where the line begins; use spaces",
  BLOCK_AS_IMPLICIT_KEY: "two colons stand on one line: a text with a colon in it needs quotes",
  BLOCK_IN_FLOW: "a list with dashes stands inside brackets; write one or the other",
  MULTILINE_IMPLICIT_KEY: "a colon is missing behind a name, or a text runs over two lines",
  MISSING_CHAR: "a bracket, a comma, a colon or a quotation mark is missing",
  UNEXPECTED_TOKEN: "something stands here that does not belong: often a bracket, a comma or a dash too many",
  BAD_SCALAR_START: "a text begins with a sign that has a meaning of its own here; put it in quotes",
  BAD_DQ_ESCAPE: "a backslash stands in double quotes; use single quotes",
  BAD_ALIAS: "a star begins a text; put it in quotes",
  BAD_DIRECTIVE: "a percent sign begins a line; put the text in quotes",
  MULTIPLE_DOCS: "three dashes begin a second brief; a file holds one",
  TAG_RESOLVE_FAILED: "an exclamation mark begins a text; put it in quotes",
};

/** One plain clause; the same whatever the reader calls it. */
export function plainFault(code: string, message: string): string {
  for (const [pattern, words] of BY_MESSAGE) {
    const found = pattern.exec(message);
    if (found) return words(found);
  }
  return BY_CODE[code] ?? "it is not written as a brief is: names, colons, and lines indented alike";
}
