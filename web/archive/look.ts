/** Is a file a logbook saved by Hindtrack? Its first entry says so. */
import { strFromU8 } from "fflate";
import { MANIFEST } from "./manifest-name.ts";

/** Where the name of the first entry stands in a ZIP (APPNOTE 4.3.7: the local file header has 30 bytes before it). */
const NAME_AT = 30;

/** Whether the first bytes of a file are those of a saved logbook. */
export function beginsAsArchive(bytes: Uint8Array): boolean {
  const head = strFromU8(bytes.subarray(0, NAME_AT + MANIFEST.length), true);
  return head.startsWith("PK\u0003\u0004") && head.endsWith(MANIFEST);
}

export async function isArchive(file: Blob): Promise<boolean> {
  return beginsAsArchive(new Uint8Array(await file.slice(0, NAME_AT + MANIFEST.length).arrayBuffer()));
}
