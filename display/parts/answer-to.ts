/** What a server said: its status, and its body as JSON; null for a body that is empty. */
export interface Answer {
  readonly status: number;
  readonly body: unknown;
}

/** Asks the house's own server, sending `body` as JSON unless it is undefined. null where nothing came through, or nothing that is JSON. */
export async function answerTo(fetching: typeof fetch, method: string, path: string, body?: unknown): Promise<Answer | null> {
  try {
    const sent = body === undefined ? {} : { headers: { 'content-type': 'application/json' }, body: JSON.stringify(body) };
    const response = await fetching(path, { method, ...sent });
    const text = await response.text();
    return { status: response.status, body: text === '' ? null : (JSON.parse(text) as unknown) };
  } catch {
    // A link that is gone, an answer cut short: all the same to the one who waits for it.
    return null;
  }
}
