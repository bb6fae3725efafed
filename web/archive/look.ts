/** Is a file a logbook saved by Hindtrack? Its first entry says so. */
import { MANIFEST } from "./manifest-name.ts";

/** Where the name of the first entry stands in a ZIP (APPNOTE 4.3.7: the local file header has 30 bytes before it). */
const NAME_AT = 30;

export async function isArchive(file: Blob): Promise<boolean> {
  const head = await file.slice(0, NAME_AT + MANIFEST.length).text();
  return head.startsWith("PK\u0003\u0004") && head.endsWith(MANIFEST);
}
