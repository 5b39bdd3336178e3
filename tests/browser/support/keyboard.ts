import type { Page } from 'playwright-core';
import { expect } from 'vitest';

/** More stops than any page has. */
const MOST_STOPS = 250;

/** What has the keyboard, through all shadow roots: its accessible words as far as they are its own, and its ring. */
interface Focused {
  readonly words: string;
  readonly outline: string;
}

/**
 * Presses the tabulator until what has the keyboard is called so, by its text or its aria-label. Whoever sees must see where
 * the keyboard is: the ring has to be drawn. Throws where no stop is called so.
 */
export async function tabTo(page: Page, name: string | RegExp, key: 'Tab' | 'Shift+Tab' = 'Tab'): Promise<void> {
  const passed: string[] = [];
  for (let stop = 0; stop < MOST_STOPS; stop += 1) {
    await page.keyboard.press(key);
    const { words, outline } = await focused(page);
    passed.push(words);
    if (typeof name === 'string' ? words !== name : !name.test(words)) continue;
    expect(outline, `the ring around ${words}`).toBe('solid');
    return;
  }
  throw new Error(`the tabulator leads to nothing called ${String(name)}, only to ${[...new Set(passed)].join(' | ')}`);
}

function focused(page: Page): Promise<Focused> {
  return page.evaluate(() => {
    let element: Element | null = document.activeElement;
    while (element?.shadowRoot?.activeElement) element = element.shadowRoot.activeElement;
    if (element === null) return { words: '', outline: '' };
    const labels = 'labels' in element && element.labels instanceof NodeList ? [...element.labels] : [];
    // A label that lies around its field holds the field's own words too.
    const own = (label: Node): string =>
      [...label.childNodes]
        .filter((node) => node instanceof Text)
        .map((node) => node.data)
        .join('');
    const label = labels.map((each) => own(each).trim() || (each.textContent ?? '')).join(' ');
    const words = element.getAttribute('aria-label') ?? (label === '' ? element.textContent : label);
    return { words: words.replace(/\s+/g, ' ').trim(), outline: getComputedStyle(element).outlineStyle };
  });
}
