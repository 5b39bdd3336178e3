import type { Page } from 'playwright-core';

export interface Box {
  readonly text: string;
  readonly classes: string;
  readonly host: string;
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
}

/** The boxes of all buttons that can be seen, in CSS px, shadow trees and all. */
export function buttonBoxes(page: Page): Promise<Box[]> {
  return page.evaluate(() => {
    const found: Box[] = [];
    const visit = (root: ParentNode, host: string): void => {
      for (const element of root.querySelectorAll('*')) {
        if (element.shadowRoot !== null) visit(element.shadowRoot, element.localName);
        if (!(element instanceof HTMLButtonElement)) continue;
        const { left, top, right, bottom } = element.getBoundingClientRect();
        found.push({ text: element.textContent.replace(/\s+/g, ' ').trim(), classes: element.className, host, left, top, right, bottom });
      }
    };
    visit(document, '');
    return found;
  });
}

/** Texts that reach beyond their button, the screen's sides, or a box that hides what overflows sideways. */
export function clippedTexts(page: Page): Promise<string[]> {
  return page.evaluate(() => {
    const clipped: string[] = [];
    const range = document.createRange();
    const check = (node: Text): void => {
      const parent = node.parentElement;
      if (parent === null || node.data.trim() === '' || parent.closest('.unseen, style, script, noscript') !== null) return;
      range.selectNodeContents(node);
      const bounds = parent.closest('button')?.getBoundingClientRect() ?? { left: 0, right: innerWidth, top: -Infinity, bottom: Infinity };
      for (const box of range.getClientRects()) {
        const isOut =
          box.left < bounds.left - 0.5 || box.right > bounds.right + 0.5 || box.top < bounds.top - 0.5 || box.bottom > bounds.bottom + 0.5;
        if (isOut) clipped.push(`${node.data.trim()} (${box.left}–${box.right} in ${bounds.left}–${bounds.right})`);
      }
    };
    const visit = (root: Node): void => {
      const walker = document.createTreeWalker(root, NodeFilter.SHOW_ELEMENT | NodeFilter.SHOW_TEXT);
      for (let node = walker.nextNode(); node !== null; node = walker.nextNode()) {
        if (node instanceof Text) check(node);
        else if (node instanceof Element) {
          if (node.shadowRoot !== null) visit(node.shadowRoot);
          if (node.scrollWidth > node.clientWidth + 1 && getComputedStyle(node).overflowX !== 'visible' && !node.matches('input, .unseen'))
            clipped.push(`<${node.localName}> scrolls sideways`);
        }
      }
    };
    visit(document.body);
    return clipped;
  });
}

/** Pairs of buttons that are closer to each other than `leastPx`, of one host. */
export function tooClose(boxes: readonly Box[], leastPx: number): string[] {
  const pairs: string[] = [];
  boxes.forEach((a, index) => {
    for (const b of boxes.slice(index + 1)) {
      const acrossPx = Math.max(a.left - b.right, b.left - a.right);
      const downPx = Math.max(a.top - b.bottom, b.top - a.bottom);
      if (Math.max(acrossPx, downPx) < leastPx - 0.5) pairs.push(`${a.text} | ${b.text}: ${Math.max(acrossPx, downPx)} px`);
    }
  });
  return pairs;
}

/** The box of the first button that says a text, scrolled to where a thumb can reach it. Throws where no button says it. */
export async function boxInView(page: Page, text: string): Promise<Box> {
  await page.evaluate((wanted) => {
    const find = (root: ParentNode): HTMLButtonElement | null => {
      for (const element of root.querySelectorAll('*')) {
        if (element instanceof HTMLButtonElement && element.textContent.replace(/\s+/g, ' ').includes(wanted)) return element;
        const within = element.shadowRoot === null ? null : find(element.shadowRoot);
        if (within !== null) return within;
      }
      return null;
    };
    find(document)?.scrollIntoView({ block: 'nearest' });
  }, text);
  const box = (await buttonBoxes(page)).find((candidate) => candidate.text.includes(text));
  if (box === undefined) throw new Error(`no button says ${text}`);
  return box;
}
