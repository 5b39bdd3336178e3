/** Everything but the sheets is left off the paper; their pages take whatever paper is in the printer. */
const PAPER = `
  @page { margin: 14mm 12mm; }
  .on-paper { display: none; }
  @media print {
    html, body { height: auto; overflow: visible; background: none; }
    body > :not(.on-paper) { display: none !important; }
    .on-paper { display: block; }
    .on-paper > * { break-after: page; }
    .on-paper > :last-child { break-after: auto; }
  }
`;

/**
 * Puts elements on paper, one a page, and takes them off the page again when the browser is done. The document's own
 * elements cannot hide one another across their roots, so that what is printed stands beside the page while it is.
 */
export async function printElements(elements: readonly HTMLElement[], print: () => void = () => globalThis.print()): Promise<void> {
  const styles = new CSSStyleSheet();
  styles.replaceSync(PAPER);
  const paper = document.createElement('div');
  paper.className = 'on-paper';
  paper.append(...elements);
  document.adoptedStyleSheets = [...document.adoptedStyleSheets, styles];
  document.body.append(paper);
  const takeAway = (): void => {
    paper.remove();
    document.adoptedStyleSheets = document.adoptedStyleSheets.filter((sheet) => sheet !== styles);
  };
  globalThis.addEventListener('afterprint', takeAway, { once: true });
  await Promise.all(elements.map((element) => ('updateComplete' in element ? element.updateComplete : undefined)));
  print();
}
