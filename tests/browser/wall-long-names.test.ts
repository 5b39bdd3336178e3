import type { Browser } from 'playwright-core';
import { mkdirSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { Floor } from '../domain/support/floor.ts';
import { bringInCommand } from '../domain/support/harbour.ts';
import { SERVER_DEVICE } from '../domain/support/ids.ts';
import { coveringArray } from './harness/covering-array.ts';
import { longNamed } from './harness/long-names.ts';
import { dayOf, workedFloor } from './harness/staged-wall.ts';
import { wallFaults } from './harness/wall-faults.ts';
import { openDoughs, stageWall, WallStage, type FontChoice } from './harness/wall-stage.ts';
import { launchChromium } from './support/chromium.ts';

const PICTURES = fileURLToPath(new URL('../../.build/pictures', import.meta.url));

const FACTORS = {
  inch: [32, 43, 55],
  metres: [3, 4, 5, 6],
  batches: [1, 8, 20],
  language: ['en', 'de', 'fr'] as const,
  font: ['ours', 'fallback'] as readonly FontChoice[],
  arcmin: [20, 26],
};

const floors = new Map<number, Floor>();

/** Names, checks and tags as long as they can be: of two days, cuts in loads, things that cannot be used. */
function longFloor(batches: number): Floor {
  const known = floors.get(batches);
  if (known !== undefined) return known;
  const file = longNamed(dayOf(batches, 7));
  const floor = workedFloor(file, { untilMin: 150 + batches * 3, neglected: { Mm1: 130 } });
  const proving = Object.values(floor.state.workpieces).findLast((workpiece) => workpiece.steps['prove']?.status === 'started');
  if (proving !== undefined && (proving.pieces ?? 0) > 4) {
    floor.ok({ type: 'makeLoads', workpieceId: proving.id, pieces: [2, (proving.pieces ?? 0) - 2] });
  }
  floor.ok(bringInCommand(longNamed(dayOf(1, 5)), floor.nowMs, '2026-03-11'), { deviceId: SERVER_DEVICE });
  floor.ok({ type: 'blockResource', resource: { kind: 'mixer', id: 'spiral' }, why: 'allergenChangeOver', minutes: 40 });
  floor.ok({ type: 'blockResource', resource: { kind: 'deck', id: 'bottom' }, why: 'outOfOrder' });
  floor.ok({ type: 'blockResource', resource: { kind: 'slot', id: 'front' }, why: 'cleaning', minutes: 45 });
  floor.wait(9);
  floor.raiseCalls();
  floors.set(batches, floor);
  return floor;
}

let browser: Browser;
let stage: WallStage;

beforeAll(async () => {
  mkdirSync(PICTURES, { recursive: true });
  browser = await launchChromium();
  stage = await WallStage.build(browser);
});

afterAll(async () => {
  await stage.close();
  await browser.close();
});

describe('W-G2 the longest names, checks and tags', () => {
  const size = { width: 1920, height: 1080 };

  test.each(coveringArray(FACTORS, 2))(
    '$inch inch, $metres m, $arcmin minutes of arc, $batches batches, $language, font: $font: legible, whole, apart, complete',
    async ({ inch, metres, batches, language, font, arcmin }) => {
      const viewing = { inch, metres, arcmin };
      const page = await stage.page({ language, font, density: 1 }, size);
      const floor = longFloor(batches);
      await stageWall(page, floor, viewing);
      if (inch === 43 && arcmin === 20)
        await page.screenshot({ path: `${PICTURES}/wall-long-${batches}-${metres}m-${language}-${font}.png` });
      expect(await wallFaults(page, viewing, size, openDoughs(floor))).toEqual([]);
    },
  );

  test('and the pages complained of nothing', () => {
    expect(stage.complaints).toEqual([]);
  });
});
