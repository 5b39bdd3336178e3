/** The index of the list's line from which an event came, by its data-index; null where it came from none. */
export function lineOf(event: Event): number | null {
  for (const target of event.composedPath())
    if (target instanceof HTMLElement && target.dataset['index'] !== undefined) return Number(target.dataset['index']);
  return null;
}
