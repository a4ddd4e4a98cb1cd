/** IndexedDB with promises. A connection that the browser has closed is opened anew; one that stands in a newer version's way closes. */
export function database(name, version, upgrade) {
  let open = null;

  const connect = () => open ??= new Promise((resolve, reject) => {
    const asked = indexedDB.open(name, version);
    asked.onupgradeneeded = event => upgrade(asked.result, event.oldVersion);
    asked.onerror = () => { open = null; reject(asked.error); };
    asked.onsuccess = () => {
      const db = asked.result;
      db.onversionchange = () => { db.close(); open = null; };
      db.onclose = () => { open = null; };
      resolve(db);
    };
  });

  async function begin(stores, mode, work) {
    const db = await connect();
    return new Promise((resolve, reject) => {
      const transaction = db.transaction(stores, mode, mode === "readwrite" ? { durability: "strict" } : {});
      let result;
      transaction.oncomplete = () => resolve(result instanceof IDBRequest ? result.result : result);
      transaction.onabort = () => reject(transaction.error ?? new DOMException("aborted", "AbortError"));
      result = work(...stores.map(store => transaction.objectStore(store)));
    });
  }

  /** Runs work in one transaction over some stores; resolves, when it is complete, with the value of the request that work returns. */
  return async (stores, mode, work) => {
    try {
      return await begin(stores, mode, work);
    } catch (lost) {
      if (lost.name !== "InvalidStateError") throw lost;
      open = null;
      return begin(stores, mode, work);
    }
  };
}
