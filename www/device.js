// Values kept by the browser, where it keeps any: in "localStorage", or in "sessionStorage" as long as the tab is open.

/** Keeps a value; false where there is no room or no store. */
export function put(store, key, value) {
  try {
    globalThis[store].setItem(key, JSON.stringify(value));
    return true;
  } catch {
    return false;
  }
}

/** Keeps a value no longer. */
export function lose(store, key) {
  try {
    globalThis[store].removeItem(key);
  } catch {
    // Where there is no store there is nothing to be lost.
  }
}

/** The names of all that is kept. */
export function all(store) {
  try {
    return Object.keys(globalThis[store]);
  } catch {
    return [];
  }
}

/** What is kept; null where that is nothing, or nothing that can be read. */
export function read(store, key) {
  try {
    return JSON.parse(globalThis[store].getItem(key));
  } catch {
    return null;
  }
}
