import { Temporal } from 'temporal-polyfill';
import fc from 'fast-check';
import jsQR from 'jsqr';
import { describe, expect, test } from 'vitest';
import { glassPx } from '../../display/parts/glass-size.ts';
import { joinAddressOf } from '../../display/parts/join-address.ts';
import { QUIET_MODULES, qrPathOf, type QrPath } from '../../display/parts/qr-path.ts';
import { DEFAULT_VIEWING } from '../../display/wall/settings.ts';
import { pxPerMm, type Screen } from '../../display/wall/type-sizes.ts';
import {
  clockOfMinutes,
  DEFAULT_WALL_LOOK,
  isNightAt,
  minutesOfClock,
  WALL_LOOK_CHOICES,
  wallLookAt,
  type WallLook,
} from '../../display/wall/wall-look.ts';
import { shiftAt } from '../../display/wall/wall-lengths.ts';
import { isAddressed, queryOf, readWallSettings, type WallSettings } from '../../display/wall/wall-settings.ts';
import { gapsFrom, RING_COUNT, scoreOf } from '../../display/wall-setup/ring-answers.ts';
import { degreesOf, GAPS, RING_UNITS, ringDiameterPx, ringPath } from '../../display/wall-setup/ring-geometry.ts';

const SCREEN: Screen = { diagonalInch: 43, distanceM: 5, arcmin: 20, widthPx: 1920, heightPx: 1080 };
const NOTHING_KEPT = { viewing: null, look: null, stationId: null };

describe('the night of a wall', () => {
  test('V1 is every minute that a clock passes from its beginning to its end, over midnight too', () => {
    const minute = fc.integer({ min: 0, max: 1439 });
    fc.assert(
      fc.property(minute, minute, (fromMin, toMin) => {
        const passed = new Set<number>();
        for (let now = fromMin; now !== toMin; now = (now + 1) % 1440) passed.add(now);
        for (let now = 0; now < 1440; now += 7) expect(isNightAt(now, fromMin, toMin), `${now}`).toBe(passed.has(now));
        expect(isNightAt(fromMin, fromMin, toMin)).toBe(fromMin !== toMin);
        expect(isNightAt(toMin, fromMin, toMin)).toBe(false);
      }),
      { numRuns: 50 },
    );
  });

  test('V1 goes by the house’s clock, also on the nights on which that is changed', () => {
    // EU: on 29 March 2026 clocks go forward at 01:00 UTC, on 25 October back; the hours are read by Temporal.
    const look: WallLook = { choice: 'hours', nightFromMin: 22 * 60, nightToMin: 2 * 60 + 30 };
    for (const [day, zone] of [
      ['2026-03-28', 'Europe/Paris'],
      ['2026-10-24', 'Europe/Paris'],
      ['2026-07-01', 'Asia/Kolkata'],
    ] as const) {
      const beginMs = Temporal.PlainDate.from(day).toZonedDateTime({ timeZone: zone, plainTime: '12:00' }).epochMilliseconds;
      for (let ms = beginMs; ms < beginMs + 86_400_000; ms += 5 * 60_000) {
        const { hour, minute } = Temporal.Instant.fromEpochMilliseconds(ms).toZonedDateTimeISO(zone);
        const isNight = hour >= 22 || hour < 2 || (hour === 2 && minute < 30);
        expect(wallLookAt(look, ms, zone, 'day'), `${day} ${hour}:${minute}`).toBe(isNight ? 'night' : 'day');
      }
    }
  });

  test('V1 is only one of the choices', () => {
    const at = (choice: WallLook['choice'], browser: 'day' | 'night'): string =>
      wallLookAt({ ...DEFAULT_WALL_LOOK, choice }, Date.UTC(2026, 2, 7, 23), 'UTC', browser);
    expect(WALL_LOOK_CHOICES.map((choice) => [at(choice, 'day'), at(choice, 'night')])).toEqual([
      ['day', 'day'],
      ['night', 'night'],
      ['day', 'night'],
      ['night', 'night'],
    ]);
  });

  test('V1 times are written and read as clocks are', () => {
    expect([0, 65, 1439].map(clockOfMinutes)).toEqual(['00:00', '01:05', '23:59']);
    expect(['00:00', '01:05', '23:59', '24:00', '7:00', '12:60', ''].map(minutesOfClock)).toEqual([0, 65, 1439, null, null, null, null]);
  });
});

describe('the settings of a wall', () => {
  test('V2 begin as they always were; what was kept goes before, what the address says before that', () => {
    expect(readWallSettings(new URLSearchParams(), NOTHING_KEPT)).toEqual({
      viewing: DEFAULT_VIEWING,
      look: DEFAULT_WALL_LOOK,
      stationId: null,
    });
    const kept = {
      viewing: '{"inch":55,"metres":6,"arcmin":26}',
      look: '{"choice":"hours","nightFromMin":60,"nightToMin":120}',
      stationId: 'oven',
    };
    const read = (query: string): WallSettings => readWallSettings(new URLSearchParams(query), kept);
    expect(read('')).toEqual({
      viewing: { inch: 55, metres: 6, arcmin: 26 },
      look: { choice: 'hours', nightFromMin: 60, nightToMin: 120 },
      stationId: 'oven',
    });
    expect(read('station=bench&look=night&inch=32')).toEqual({
      viewing: { inch: 32, metres: 6, arcmin: 26 },
      look: { choice: 'night', nightFromMin: 60, nightToMin: 120 },
      stationId: 'bench',
    });
    expect(read('station=').stationId).toBeNull();
  });

  test('V2 what cannot be read is left out, but for a station, which the wall is to name', () => {
    const faulty = readWallSettings(new URLSearchParams('look=pink&night=25:00-04:00&inch=-3&station=The+cellar'), {
      viewing: '{"inch":',
      look: '{"choice":"hours"}',
      stationId: null,
    });
    expect(faulty).toEqual({ viewing: DEFAULT_VIEWING, look: DEFAULT_WALL_LOOK, stationId: 'The cellar' });
  });

  test('V2 an address that says them all is read as it was meant', () => {
    const minute = fc.integer({ min: 0, max: 1439 });
    const settings = fc.record({
      viewing: fc.record({
        inch: fc.integer({ min: 50, max: 1500 }).map((tenths) => tenths / 10),
        metres: fc.integer({ min: 1, max: 30 }).map((halves) => halves / 2),
        arcmin: fc.integer({ min: 16, max: 40 }),
      }),
      look: fc.record({ choice: fc.constantFrom(...WALL_LOOK_CHOICES), nightFromMin: minute, nightToMin: minute }),
      stationId: fc.option(fc.constantFrom('oven', 'bench-2', 'Zöpfe & Co')),
    });
    fc.assert(
      fc.property(settings, (meant) => {
        const read = readWallSettings(new URLSearchParams(queryOf(meant)), {
          viewing: null,
          look: JSON.stringify(meant.look),
          stationId: 'other',
        });
        expect(read).toEqual(meant);
      }),
    );
    const hours: WallSettings = { viewing: DEFAULT_VIEWING, look: { choice: 'hours', nightFromMin: 1, nightToMin: 2 }, stationId: null };
    expect(readWallSettings(new URLSearchParams(queryOf(hours)), NOTHING_KEPT)).toEqual(hours);
  });

  test('V2 an address is one of a wall of its own as soon as it says anything of it', () => {
    expect(['', 'language=de', 'station=', 'inch=43', 'look=night'].map((query) => isAddressed(new URLSearchParams(query)))).toEqual([
      false,
      false,
      true,
      true,
      true,
    ]);
  });
});

describe('the glass', () => {
  const window = { screenWidth: 1920, screenHeight: 1080, outerWidth: 1920, innerWidth: 1920, innerHeight: 1080 };

  test('V3 is the screen in the page’s own px, at any zoom and in any window', () => {
    expect(glassPx(window)).toEqual({ widthPx: 1920, heightPx: 1080 });
    // A window with a frame, a bar and a scroll bar, smaller than the screen.
    expect(glassPx({ ...window, outerWidth: 1216, innerWidth: 1185, innerHeight: 700 })).toEqual({ widthPx: 1920, heightPx: 1080 });
    // Zoomed to 200 and 67 %, where the browser's screen size stays as it is and its inside shrinks or grows.
    expect(glassPx({ ...window, innerWidth: 960, innerHeight: 460 })).toEqual({ widthPx: 960, heightPx: 540 });
    expect(glassPx({ ...window, innerWidth: 2866, innerHeight: 1612 })).toEqual({ widthPx: 2866, heightPx: 1612 });
    // Zoomed to 200 % where the browser tells all sizes in the page's px.
    expect(glassPx({ screenWidth: 960, screenHeight: 540, outerWidth: 960, innerWidth: 950, innerHeight: 480 })).toEqual({
      widthPx: 960,
      heightPx: 540,
    });
    expect(glassPx({ ...window, outerWidth: 0 })).toEqual({ widthPx: 1920, heightPx: 1080 });
  });

  test('V3 measures what it measures however much of it the page fills', () => {
    const whole = pxPerMm(SCREEN);
    // 43 inch of 25.4 mm across the diagonal of 1920 by 1080.
    expect(whole).toBeCloseTo(Math.sqrt(1920 ** 2 + 1080 ** 2) / (43 * 25.4), 10);
    expect(pxPerMm({ ...SCREEN, widthPx: 1200, heightPx: 700, glass: { widthPx: 1920, heightPx: 1080 } })).toBe(whole);
  });
});

describe('the rings', () => {
  // ISO 8596, from memory: stroke and gap are a fifth of the diameter, the gap's edges are parallel.
  test('V4 have a stroke and a gap of a fifth of their diameter', () => {
    const numbers = /^M(\S+) (\S+)A(\S+) \S+ 0 1 1 (\S+) (\S+)H(\S+)A(\S+) \S+ 0 1 0 (\S+) (\S+)Z$/.exec(ringPath())?.slice(1).map(Number);
    const [x1 = 0, y1 = 0, outer = 0, x2 = 0, y2 = 0, x3 = 0, inner = 0, x4 = 0, y4 = 0] = numbers ?? [];
    expect(2 * outer).toBe(RING_UNITS);
    expect(outer - inner).toBe(RING_UNITS / 5);
    expect(y1 - y2).toBe(RING_UNITS / 5);
    expect([y1, y4, x1, x3]).toEqual([0.5, 0.5, x2, x4]);
    // The corners of the gap lie on the two circles.
    expect(Math.hypot(x1, y1)).toBeCloseTo(outer, 3);
    expect(Math.hypot(x3, y2)).toBeCloseTo(inner, 3);
  });

  test('V4 stand, with their gaps, at the angle of the wall’s text', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 5, max: 150 }),
        fc.integer({ min: 1, max: 15 }),
        fc.integer({ min: 16, max: 40 }),
        (inch, metres, arcmin) => {
          const diameterMm =
            ringDiameterPx({ ...SCREEN, diagonalInch: inch, distanceM: metres }, arcmin) / (Math.hypot(1920, 1080) / inch / 25.4);
          const angle = (mm: number): number => ((2 * Math.atan(mm / 2 / (metres * 1000)) * 180) / Math.PI) * 60;
          expect(angle(diameterMm)).toBeCloseTo(arcmin, 6);
          expect(angle(diameterMm / 5)).toBeCloseTo(arcmin / 5, 3);
        },
      ),
    );
  });

  test('V4 turn their gap to where it is said to be', () => {
    // SVG turns clockwise, with y pointing down.
    const pointing = { up: [0, -1], right: [1, 0], down: [0, 1], left: [-1, 0] } as const;
    for (const gap of GAPS) {
      const turned = (degreesOf(gap) * Math.PI) / 180;
      expect([Math.cos(turned), Math.sin(turned)].map((part) => Math.round(part) + 0)).toEqual(pointing[gap]);
    }
  });

  test('V4 come in lines that hold every direction and never one three times running', () => {
    const seen = new Map<string, number>();
    fc.assert(
      fc.property(fc.uint8Array({ minLength: RING_COUNT, maxLength: RING_COUNT }), (bytes) => {
        const gaps = gapsFrom(bytes);
        expect(gaps).toHaveLength(RING_COUNT);
        gaps.forEach((gap, index) => {
          seen.set(gap, (seen.get(gap) ?? 0) + 1);
          expect(index >= 2 && gap === gaps[index - 1] && gap === gaps[index - 2]).toBe(false);
        });
      }),
    );
    expect([...seen.keys()].sort()).toEqual([...GAPS].sort());
  });

  test('V4 are read by whom misses one of them at most', () => {
    const gaps = gapsFrom(new Uint8Array([0, 1, 2, 3, 0, 1, 2, 3]));
    const wrong = (count: number): typeof gaps => gaps.map((gap, index) => (index < count ? (gap === 'up' ? 'down' : 'up') : gap));
    expect(scoreOf(gaps, gaps.slice(1))).toBeNull();
    expect([0, 1, 2].map((count) => scoreOf(gaps, wrong(count)))).toEqual([
      { right: 8, passed: true },
      { right: 7, passed: true },
      { right: 6, passed: false },
    ]);
  });
});

/** A QR path as the pixels of a camera, so many to a module. */
function pixelsOf({ modules, path }: QrPath, scale: number): { readonly data: Uint8ClampedArray; readonly size: number } {
  const size = modules * scale;
  const data = new Uint8ClampedArray(size * size * 4).fill(255);
  for (const [, x, y, run] of path.matchAll(/M(\d+) (\d+)h(\d+)v1h-\d+z/g)) {
    for (let row = Number(y) * scale; row < (Number(y) + 1) * scale; row += 1) {
      for (let column = Number(x) * scale; column < (Number(x) + Number(run)) * scale; column += 1)
        data.fill(0, (row * size + column) * 4, (row * size + column) * 4 + 3);
    }
  }
  return { data, size };
}

describe('the code for phones', () => {
  test('V5 is read back as what it says, by another’s reader', () => {
    for (const url of [
      'http://192.168.1.20:8420/phone',
      'http://10.0.0.7:80/phone',
      'http://bakehouse-of-the-long-harbour.example:65535/phone',
    ]) {
      const { data, size } = pixelsOf(qrPathOf(url), 4);
      expect(jsQR.default(data, size, size, { inversionAttempts: 'dontInvert' })?.data).toBe(url);
    }
  });

  test('V5 keeps a quiet zone of four modules', () => {
    // ISO/IEC 18004, from memory.
    const { modules, path } = qrPathOf('http://192.168.1.20:8420/phone');
    const runs = [...path.matchAll(/M(\d+) (\d+)h(\d+)/g)].map(([, x, y, run]) => [Number(x), Number(y), Number(x) + Number(run)] as const);
    expect(Math.min(...runs.flatMap(([x, y]) => [x, y]))).toBe(QUIET_MODULES);
    expect(QUIET_MODULES).toBe(4);
    expect(modules - Math.max(...runs.map(([, y, end]) => Math.max(y + 1, end)))).toBe(4);
  });

  test('V6 leads to the first address of the server, and nowhere where only this machine gets through', () => {
    expect(joinAddressOf([])).toBeNull();
    expect(joinAddressOf(['http://192.168.1.20:8420', 'http://10.0.0.2:8420'])).toEqual({
      isReachable: true,
      url: 'http://192.168.1.20:8420/phone',
      parts: ['http://', '192.168.1.20:8420', '/phone'],
    });
    for (const own of ['http://localhost:8420', 'http://127.0.0.1:8420', 'http://127.4.4.4', 'http://[::1]:8420'])
      expect(joinAddressOf([own]), own).toEqual({ isReachable: false });
    expect(joinAddressOf(['http://127.bakehouse.example:8420'])).toMatchObject({ isReachable: true });
  });
});

describe('against burning in', () => {
  test('V9 the picture moves a pixel every ten minutes, stands as long at either end of both axes, and never to the left or up', () => {
    const places = Array.from({ length: 8 * 6 }, (_, index) =>
      shiftAt(Date.UTC(2026, 2, 7) + index * 10 * 60_000)
        .split(' ')
        .map(Number.parseFloat),
    );
    for (const axis of [0, 1]) {
      const stood = [0, 1, 2].map((px) => places.filter((place) => place[axis] === px).length);
      expect(stood).toEqual([18, 12, 18]);
    }
    places.slice(1).forEach((place, index) => {
      const before = places[index] ?? [];
      expect(Math.abs((place[0] ?? 0) - (before[0] ?? 0)) + Math.abs((place[1] ?? 0) - (before[1] ?? 0))).toBe(1);
    });
    expect(shiftAt(0)).toBe(shiftAt(10 * 60_000 - 1));
    expect(shiftAt(-1)).toBe('0 1px');
  });
});
