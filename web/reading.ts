/** Reads the logs of a request, one after the other, inside the worker. */
import {
  beginningOfTable,
  type ImportedLog,
  readLog,
  type TableBeginning,
  UnusableInput,
} from "../src/index.ts";
import type { OpenRequest, Unread } from "./messages.ts";
import { BEGINNING_BYTES } from "./sorting.ts";

export interface UnreadFile {
  readonly file: File;
  readonly error: UnusableInput;
}

/** As it is told to the page. */
export const unreadSaid = (unread: readonly UnreadFile[]): Unread[] =>
  unread.map(({ file, error }) => ({ file: file.name, issues: error.issues }));

/** A table whose columns the reader must tell. */
export interface TableQuestion extends TableBeginning {
  readonly file: string;
}

/** Called with the file and how much of all is read, from 0 to 1. */
export type OnRead = (file: string, share: number) => void;

/** The pieces of a stream, for browsers whose streams cannot be iterated. */
async function* pieces(stream: ReadableStream<Uint8Array>): AsyncGenerator<Uint8Array> {
  const reader = stream.getReader();
  for (;;) {
    const { done, value } = await reader.read();
    if (done) return;
    yield value;
  }
}

function readOne(
  file: File,
  columns: OpenRequest["columns"],
  onRead: (share: number) => void,
): Promise<ImportedLog> {
  onRead(0);
  let said = 0;
  return readLog(pieces(file.stream()), file.name, {
    ...(columns ? { csvColumns: columns } : {}),
    onProgress: (bytes) => {
      if (performance.now() - said < 50) return;
      said = performance.now();
      onRead(bytes / file.size);
    },
  });
}

/** The first rows of a table that could be read if its columns were known. */
async function tableOf(file: File, { issues }: UnusableInput): Promise<TableBeginning | null> {
  if (!issues.some(({ code }) => code === "no-headings")) return null;
  return beginningOfTable(new Uint8Array(await file.slice(0, BEGINNING_BYTES).arrayBuffer()));
}

/** Each log in turn: what `keep` makes of it stays in memory, the log does not. A question ends the reading. */
export async function readEach<T>(
  logs: readonly File[],
  columns: OpenRequest["columns"],
  onRead: OnRead,
  keep: (log: ImportedLog, file: File) => T,
): Promise<{ readonly read: readonly T[]; readonly unread: readonly UnreadFile[] } | TableQuestion> {
  const read: T[] = [];
  const unread: UnreadFile[] = [];
  for (const [i, file] of logs.entries()) {
    try {
      const log = await readOne(file, columns, (share) => onRead(file.name, (i + share) / logs.length));
      read.push(keep(log, file));
    } catch (error) {
      if (!(error instanceof UnusableInput)) throw error;
      const table = await tableOf(file, error);
      if (table) return { file: file.name, ...table };
      unread.push({ file, error });
    }
  }
  return { read, unread };
}
