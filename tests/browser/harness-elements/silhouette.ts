import type { Locator, Page } from 'playwright-core';

/** Which pixels of a picture stand out from its ground, row by row. */
export type Silhouette = readonly boolean[];

/** A step of grey (of 255) that is seen as an edge. Our own measure. */
const LEAST_STEP = 40;
/** So that a corner of the picture is ground. */
const MARGIN_PX = 2;

/** What of an element stands out from the ground beside it, as `page` shows it now. `decoder` is an empty page that reads pictures. */
export async function silhouette(decoder: Page, page: Page, element: Locator): Promise<Silhouette> {
  await element.scrollIntoViewIfNeeded();
  const box = await element.boundingBox();
  if (box === null) throw new Error('the element is not drawn');
  const clip = {
    x: Math.round(box.x) - MARGIN_PX,
    y: Math.round(box.y) - MARGIN_PX,
    width: Math.round(box.width) + 2 * MARGIN_PX,
    height: Math.round(box.height) + 2 * MARGIN_PX,
  };
  const png = await page.screenshot({ clip });
  return decoder.evaluate(standingOut, { base64: png.toString('base64'), leastStep: LEAST_STEP });
}

/** Runs in the browser. */
async function standingOut({ base64, leastStep }: { readonly base64: string; readonly leastStep: number }): Promise<boolean[]> {
  const bytes = Uint8Array.from(atob(base64), (character) => character.codePointAt(0) ?? 0);
  const bitmap = await createImageBitmap(new Blob([bytes], { type: 'image/png' }));
  const context = new OffscreenCanvas(bitmap.width, bitmap.height).getContext('2d');
  if (context === null) throw new Error('no canvas');
  context.drawImage(bitmap, 0, 0);
  const { data } = context.getImageData(0, 0, bitmap.width, bitmap.height);
  const greys = Array.from({ length: data.length / 4 }, (_, index) => data[index * 4] ?? 0);
  return greys.map((grey) => Math.abs(grey - (greys[0] ?? 0)) >= leastStep);
}

/** How much of what two silhouettes cover together both of them cover, 0 to 1. Throws where there is nothing to compare. */
export function overlap(a: Silhouette | undefined, b: Silhouette | undefined): number {
  if (a === undefined || b === undefined || a.length !== b.length) throw new Error('the pictures are not of one size');
  const both = a.filter((covers, index) => covers && b[index] === true).length;
  const either = a.filter((covers, index) => covers || b[index] === true).length;
  if (either === 0) throw new Error('nothing stands out');
  return both / either;
}
