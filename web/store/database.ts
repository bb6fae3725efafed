/** The one open logbook of this tab; it gives way when another tab brings a newer one. */
import { openDB, type StoreNames } from "idb";
import { LOGBOOK_NAME, LOGBOOK_VERSION, type Logbook, type LogbookSchema, upgradeLogbook } from "./schema.ts";
import { StorageTrouble, storageTrouble } from "./trouble.ts";

let opening: Promise<Logbook> | null = null;
/** Once a newer tab has asked for the logbook, this one must not take it back. */
let gaveWay = false;

export interface TabEvents {
  /** Another tab holds an older logbook open, so that this one waits. */
  readonly onWaiting: () => void;
  /** A newer tab wants the logbook: this one has let go of it. */
  readonly onGaveWay: () => void;
}
let events: TabEvents = { onWaiting: () => {}, onGaveWay: () => {} };
export const listenToTabs = (to: TabEvents): void => {
  events = to;
};

async function open(): Promise<Logbook> {
  try {
    const db = await openDB<LogbookSchema>(LOGBOOK_NAME, LOGBOOK_VERSION, {
      upgrade: (db, from, _, transaction) => upgradeLogbook(db, from, transaction as never),
      blocked: () => events.onWaiting(),
      blocking: () => {
        db.close();
        opening = null;
        gaveWay = true;
        events.onGaveWay();
      },
      terminated: () => {
        opening = null;
      },
    });
    return db;
  } catch (error) {
    opening = null;
    throw storageTrouble(error, true);
  }
}

/** @throws StorageTrouble where this browser has no logbook for us. */
export function logbook(): Promise<Logbook> {
  if (gaveWay) return Promise.reject(new StorageTrouble("other-tab"));
  opening ??= open();
  return opening;
}

/** Lets go of the logbook; the next use opens it again. */
export async function closeLogbook(): Promise<void> {
  const db = await opening?.catch(() => null);
  db?.close();
  opening = null;
  gaveWay = false;
}

type Names = StoreNames<LogbookSchema>;
type Transaction<N extends Names> = ReturnType<typeof startWriting<N>>;
const startWriting = <N extends Names>(db: Logbook, names: N[]) =>
  // Strict: it stands on the disk, not only in the system's hands, before we say that it is kept.
  db.transaction(names, "readwrite", { durability: "strict" });

/**
 * All of the work is kept, or none of it. The work may wait for nothing but the transaction itself.
 * @throws StorageTrouble
 */
export async function writing<N extends Names, T>(
  names: N[],
  work: (transaction: Transaction<N>) => Promise<T>,
): Promise<T> {
  const transaction = startWriting(await logbook(), names);
  // Awaited below; where the work itself fails, nobody else hears of the end.
  transaction.done.catch(() => {});
  try {
    const result = await work(transaction);
    await transaction.done;
    return result;
  } catch (error) {
    try {
      transaction.abort();
    } catch {
      // It has ended already.
    }
    // A write that fails for want of space may only say "aborted"; the transaction knows why.
    throw storageTrouble(transaction.error ?? error);
  }
}

/** @throws StorageTrouble */
export async function reading<T>(work: (db: Logbook) => Promise<T>): Promise<T> {
  const db = await logbook();
  try {
    return await work(db);
  } catch (error) {
    throw storageTrouble(error);
  }
}
