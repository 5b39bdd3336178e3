/**
 * What is wrong with the texts of a sheet, in words: beyond their button, beyond the column of tags, over one another in
 * the axis, or off the page's sides. Runs in the browser: it may use nothing from outside itself.
 */
export function sheetFaults(): string[] {
  const faults: string[] = [];
  const range = document.createRange();
  const textBoxes = (node: Text): readonly DOMRect[] => {
    range.selectNodeContents(node);
    return [...range.getClientRects()];
  };
  const check = (node: Text): void => {
    const parent = node.parentElement;
    if (parent === null || node.data.trim() === '' || parent.closest('.unseen, style, script, thead') !== null) return;
    const host = (parent.getRootNode() as ShadowRoot).host as HTMLElement | undefined;
    const isInSheet = host?.localName === 'day-sheet-row' || host?.localName === 'day-sheet-orders' || parent.closest('.paper') !== null;
    const button = parent.closest('button')?.getBoundingClientRect();
    const heading = parent.closest('h3')?.getBoundingClientRect();
    for (const box of textBoxes(node)) {
      const bounds = button ?? heading;
      if (
        bounds !== undefined &&
        (box.left < bounds.left - 1 || box.right > bounds.right + 1 || box.top < bounds.top - 1 || box.bottom > bounds.bottom + 1)
      )
        faults.push(`"${node.data.trim()}" runs out of its button or heading`);
      if (!isInSheet && (box.left < -0.5 || box.right > innerWidth + 0.5)) faults.push(`"${node.data.trim()}" runs off the page`);
    }
  };
  const times: DOMRect[] = [];
  const visit = (root: Node): void => {
    const walker = document.createTreeWalker(root, NodeFilter.SHOW_ELEMENT | NodeFilter.SHOW_TEXT);
    for (let node = walker.nextNode(); node !== null; node = walker.nextNode()) {
      if (node instanceof Text) check(node);
      else if (node instanceof Element) {
        if (node.matches('.times span')) times.push(node.getBoundingClientRect());
        if (node.shadowRoot !== null) visit(node.shadowRoot);
      }
    }
  };
  visit(document.body);
  times.forEach((a, index) => {
    for (const b of times.slice(index + 1))
      if (a.left < b.right - 1 && b.left < a.right - 1 && a.top < b.bottom - 1 && b.top < a.bottom - 1)
        faults.push('two times of the axis lie over one another');
  });
  if (document.documentElement.scrollWidth > innerWidth + 1) faults.push(`the page is ${document.documentElement.scrollWidth} px wide`);
  return [...new Set(faults)];
}
