/** What the page and the worker of the archive say to each other. */
import type { ReadArchive } from "./read.ts";

export type ArchiveRequest =
  | { readonly kind: "write"; readonly saved: string }
  | { readonly kind: "read"; readonly archive: Blob; readonly name: string };

export type ArchiveMessage =
  | { readonly kind: "flight"; readonly done: number; readonly of: number }
  | { readonly kind: "written"; readonly archive: Blob }
  | { readonly kind: "read"; readonly read: ReadArchive }
  /** Words for the reader. */
  | { readonly kind: "failed"; readonly text: string };
