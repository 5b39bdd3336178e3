/** What this device keeps between two loads of a page: small settings, by key. Where a browser forbids storage, nothing is kept. */
export const kept = {
  read(key: string): string | null {
    return storageOrNull()?.getItem(key) ?? null;
  },
  write(key: string, value: string): void {
    storageOrNull()?.setItem(key, value);
  },
};

function storageOrNull(): Storage | null {
  try {
    return localStorage;
  } catch (error) {
    if (error instanceof DOMException) return null;
    throw error;
  }
}
