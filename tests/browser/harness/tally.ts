/** Where the doughs of a wall are told, in numbers. */
export interface Tally {
  readonly fullRows: number;
  /** In full rows, by their tags and what those count: "C1 C2 +3". */
  readonly inRows: number;
  /** In the line for calls without a row. */
  readonly inMore: number;
  /** In group rows, by their counts. */
  readonly inGroups: number;
  /** By the tags beside those lines; null where there is no axis. */
  readonly onAxis: number | null;
}

/** Counts what the wall writes. Runs in the browser: it may use nothing from outside itself. */
export function tallyOf(): Tally {
  const all = (root: ParentNode, name: string): Element[] => {
    const found: Element[] = [];
    const walk = (inside: ParentNode): void => {
      for (const element of inside.querySelectorAll('*')) {
        if (element.matches(name)) found.push(element);
        if (element.shadowRoot !== null) walk(element.shadowRoot);
      }
    };
    walk(root);
    return found;
  };
  const textsOf = (host: Element, name: string): string[] =>
    [...(host.shadowRoot?.querySelectorAll(name) ?? [])]
      .filter((element) => element.getClientRects().length > 0)
      .map((element) => element.textContent.trim());
  const words = (text: string): number =>
    text
      .split(/\s+/)
      .filter((word) => word !== '')
      .reduce((sum, word) => sum + (/^\+\d+$/.test(word) ? Number(word) : 1), 0);
  const sum = (numbers: readonly number[]): number => numbers.reduce((whole, number) => whole + number, 0);
  const rows = all(document, 'wall-row');
  const counts = all(document, 'wall-group').flatMap((group) => textsOf(group, '.count'));
  const ticks = all(document, 'wall-ticks');
  return {
    fullRows: rows.length,
    // A tag with its weekday before it, "Sat C1", is one.
    inRows: sum(rows.map((row) => textsOf(row, '.tag').length + sum(textsOf(row, '.tags').map(words)))),
    inMore: sum(counts.filter((count) => count.startsWith('+')).map(Number)),
    inGroups: sum(counts.filter((count) => !count.startsWith('+')).map(Number)),
    onAxis: all(document, 'wall-strip').length === 0 ? null : sum(ticks.flatMap((tick) => textsOf(tick, '.label').map(words))),
  };
}
