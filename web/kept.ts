/** The files opened last, kept in this browser so that a reload loses nothing. */
import type { OpenRequest } from "./messages.ts";

const STORE = "opened";
const KEY = "last";

const settled = <T>(request: IDBRequest<T>): Promise<T> =>
  new Promise((resolve, reject) => {
    request.onsuccess = () => resolve(request.result);
    request.onerror = () => reject(request.error);
  });

function database(): Promise<IDBDatabase> {
  const request = indexedDB.open("hindtrack", 1);
  request.onupgradeneeded = () => request.result.createObjectStore(STORE);
  return settled(request);
}

async function inStore<T>(
  mode: IDBTransactionMode,
  work: (store: IDBObjectStore) => IDBRequest<T>,
): Promise<T> {
  const db = await database();
  try {
    return await settled(work(db.transaction(STORE, mode).objectStore(STORE)));
  } finally {
    db.close();
  }
}

/** Keeps the bytes themselves: a file on disk may be gone by the next time. False where the browser will not keep anything. */
export async function keep(request: OpenRequest): Promise<boolean> {
  try {
    const files = await Promise.all(
      request.files.map(async (f) => new File([await f.arrayBuffer()], f.name, { type: f.type })),
    );
    await inStore("readwrite", (store) => store.put({ ...request, files }, KEY));
    return true;
  } catch {
    return false;
  }
}

/** What was kept, or null. */
export async function kept(): Promise<OpenRequest | null> {
  try {
    return (await inStore<OpenRequest | undefined>("readonly", (store) => store.get(KEY))) ?? null;
  } catch {
    return null;
  }
}
