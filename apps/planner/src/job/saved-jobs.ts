/** A job as kept in this browser. */
export interface SavedJob {
  readonly id: string;
  readonly title: string;
  readonly text: string;
  readonly overlay: { readonly name: string; readonly text: string } | null;
  readonly saved: string;
}

function opened(): Promise<IDBDatabase> {
  return new Promise((resolve, reject) => {
    const request = indexedDB.open("branchwork-planner", 1);
    request.onupgradeneeded = () => request.result.createObjectStore("jobs", { keyPath: "id" });
    request.onsuccess = () => resolve(request.result);
    request.onerror = () => reject(request.error ?? new Error("the browser's store did not open"));
  });
}

async function within<T>(mode: IDBTransactionMode, work: (store: IDBObjectStore) => IDBRequest<T>): Promise<T> {
  const database = await opened();
  try {
    return await new Promise<T>((resolve, reject) => {
      const transaction = database.transaction("jobs", mode);
      const request = work(transaction.objectStore("jobs"));
      transaction.oncomplete = () => resolve(request.result);
      transaction.onabort = () => reject(transaction.error ?? new Error("the browser kept nothing"));
    });
  } finally {
    database.close();
  }
}

/** Every job kept here, the last saved first. */
export const savedJobs = async (): Promise<readonly SavedJob[]> =>
  (await within<SavedJob[]>("readonly", (store) => store.getAll())).sort((a, b) => b.saved.localeCompare(a.saved));

export const saveJob = (job: SavedJob): Promise<unknown> => within("readwrite", (store) => store.put(job));

export const forgetJob = (id: string): Promise<unknown> => within("readwrite", (store) => store.delete(id));
