import type { Page } from 'playwright-core';
import { arcminOf, LEAST_ARCMIN, NEAR_M } from '../../../display/wall/type-sizes.ts';
import type { Viewing } from '../../../display/wall/settings.ts';
import { measurePage, overflowingBoxes, type DrawnText } from './measure-page.ts';
import { measureMarks, type DrawnMark } from './measure-marks.ts';
import { tallyOf, type Tally } from './tally.ts';

/** Text that answers from the farthest bench. */
export const GLANCE =
  /^wall-row \S+\.(tag|countdown|verb)|^wall-row span\.tags|^wall-group div\.(count|word|countdown)|^wall-deck div\.(state|name)|^wall-header time\.clock/;
/** A hundredth of a pixel is lost where lengths are written in tenths. */
const ARCMIN_TOLERANCE = 0.02;
/** WCAG 2.2: 1.4.6 for text, 1.4.11 for what is no text. */
const LEAST_TEXT_CONTRAST = 7;
const LEAST_MARK_CONTRAST = 3;

/** A viewport in CSS px. */
export interface Size {
  readonly width: number;
  readonly height: number;
}

/** What is wrong with the texts of a wall, in words. */
export function textFaults(texts: readonly DrawnText[], viewing: Viewing, size: Size): string[] {
  const screen = {
    diagonalInch: viewing.inch,
    distanceM: viewing.metres,
    arcmin: viewing.arcmin,
    widthPx: size.width,
    heightPx: size.height,
  };
  const nearM = Math.min(NEAR_M, viewing.metres);
  const faults: string[] = [];
  texts.forEach((text, index) => {
    const name = `"${text.text}" (${text.where})`;
    const isTooSmall = (metres: number): boolean => arcminOf(screen, text.sizePx, metres) < LEAST_ARCMIN - ARCMIN_TOLERANCE;
    if (text.left < 0 || text.top < 0 || text.right > size.width + 0.5 || text.bottom > size.height + 0.5)
      faults.push(`${name} runs off the screen`);
    if (text.contrast < LEAST_TEXT_CONTRAST) faults.push(`${name} has a contrast of ${text.contrast.toFixed(2)}`);
    if (isTooSmall(nearM)) faults.push(`${name} is too small from ${nearM} m: ${text.sizePx} px`);
    if (GLANCE.test(text.where) && isTooSmall(viewing.metres)) faults.push(`${name} is too small from afar: ${text.sizePx} px`);
    for (const other of texts.slice(index + 1)) {
      if (overlap(text, other)) faults.push(`${name} overlaps "${other.text}" (${other.where})`);
    }
  });
  return faults;
}

/** Everything that is wrong with the wall that a page shows, in words. `openDoughs` must be on it, each once. */
export async function wallFaults(page: Page, viewing: Viewing, size: Size, openDoughs: number): Promise<string[]> {
  const texts = await page.evaluate(measurePage);
  const boxes = await page.evaluate(overflowingBoxes);
  const marks = await page.evaluate(measureMarks);
  const tally = await page.evaluate(tallyOf);
  const glance = texts.some((text) => GLANCE.test(text.where)) ? [] : ['nothing on it is made to be read from afar'];
  return [...glance, ...textFaults(texts, viewing, size), ...boxes, ...markFaults(marks), ...tallyFaults(tally, openDoughs)];
}

function overlap(a: DrawnText, b: DrawnText): boolean {
  return a.left < b.right - 1 && b.left < a.right - 1 && a.top < b.bottom - 1 && b.top < a.bottom - 1;
}

function markFaults(marks: readonly DrawnMark[]): string[] {
  const faint = marks.filter(({ contrast }) => contrast < LEAST_MARK_CONTRAST);
  const said = new Set(faint.map(({ what, contrast }) => `${what} has a contrast of ${contrast.toFixed(2)}`));
  return marks.length === 0 ? ['there is no mark on it'] : [...said];
}

function tallyFaults({ inRows, inMore, inGroups, onAxis, fullRows }: Tally, openDoughs: number): string[] {
  const told = inRows + inMore + inGroups;
  return [
    ...(told === openDoughs ? [] : [`${openDoughs} doughs are open, ${told} are on it`]),
    ...(onAxis === null || onAxis === inMore + inGroups ? [] : [`${inMore + inGroups} doughs share rows, the axis tells of ${onAxis}`]),
    ...(inMore + inGroups > 0 && fullRows < 2 ? [`only ${fullRows} full rows`] : []),
  ];
}
