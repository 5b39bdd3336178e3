import { describe, expect, test } from 'vitest';
import { isOfStation, pressingElsewhere } from '../../display/parts/station-rows.ts';
import { announcementOf } from '../../display/wall/announcement.ts';
import { arrange } from '../../display/wall/arrangement.ts';
import { countElsewhere, elsewhereTags, elsewhereText, wordBehindCounts, wordsFit } from '../../display/wall/elsewhere.ts';
import { joinCodePx } from '../../display/wall/join-place.ts';
import { noticeOf } from '../../display/wall/notice.ts';
import { worksAtOvens } from '../../display/wall/oven-station.ts';
import type { Screen } from '../../display/wall/type-sizes.ts';
import { axisWidthPx } from '../../display/wall/wall-lengths.ts';
import { boardRows } from '../../shared/floor/board.ts';
import type { FloorState } from '../../shared/floor/state.ts';
import { dayOf, viewOf, workedFloor } from '../browser/harness/staged-wall.ts';
import { textWidthPx } from '../../display/parts/text-width.ts';

const SCREEN: Screen = { diagonalInch: 43, distanceM: 5, arcmin: 20, widthPx: 1920, heightPx: 1080 };
const STATIONS = ['mixer', 'bench', 'oven', 'fillings'] as const;
const TWENTY = workedFloor(dayOf(20, 9), { untilMin: 200, neglected: { R1: 176, C1: 195 } });
const CALM = workedFloor(dayOf(1, 5), { untilMin: 102 });

/** The state with every step that names a station left to anybody. */
function withoutStations(state: FloorState): FloorState {
  const bare = <Step extends { station?: string | undefined }>(steps: readonly Step[]): Step[] =>
    steps.map((step) => ({ ...step, station: undefined }));
  return {
    ...state,
    formulas: Object.fromEntries(
      Object.entries(state.formulas).map(([key, formula]) => [key, { ...formula, method: bare(formula.method) }]),
    ),
    products: Object.fromEntries(Object.entries(state.products).map(([key, product]) => [key, { ...product, way: bare(product.way) }])),
  };
}

describe('the wall of one station', () => {
  test('V7 shows its rows and those of nobody; what is late or lost elsewhere is counted, so that nothing pressing is hidden', () => {
    const rows = boardRows(TWENTY.state, TWENTY.nowMs);
    const pressing = rows.filter((row) => row.role === 'late' || row.role === 'lost');
    expect(pressing.length).toBeGreaterThan(3);
    for (const station of STATIONS) {
      const shown = rows.filter((row) => isOfStation(row, station));
      for (const row of shown) expect(row.stationIds.length === 0 || row.stationIds.includes(station)).toBe(true);
      const counted = [...shown.filter((row) => pressing.includes(row)), ...pressingElsewhere(rows, station)];
      expect(counted.map((row) => row.tag).sort()).toEqual(pressing.map((row) => row.tag).sort());
    }
    expect(pressingElsewhere(rows, null)).toEqual([]);
    // Every dough is at some station, or at all of them.
    for (const row of rows)
      expect(
        STATIONS.some((station) => isOfStation(row, station)),
        row.tag,
      ).toBe(true);
  });

  test('V7 has the doughs of its station on its plan and no others, and a line for the rest', () => {
    const tagsOf = (station: string | null): string[] => {
      const { plan } = arrange(TWENTY.state, TWENTY.nowMs, SCREEN, false, null, station);
      expect(plan.elsewherePx > 0).toBe(station !== null);
      return [...plan.rows.full.flat(), ...(plan.rows.more?.rows ?? []), ...plan.rows.groups.flatMap((group) => group.rows)]
        .map((row) => row.tag)
        .sort();
    };
    const rows = boardRows(TWENTY.state, TWENTY.nowMs);
    for (const station of [null, ...STATIONS])
      expect(tagsOf(station)).toEqual(
        rows
          .filter((row) => isOfStation(row, station))
          .map((row) => row.tag)
          .sort(),
      );
  });

  test('V7 has the decks where the station loads or takes out, or where methods leave that to anybody', () => {
    const { state } = TWENTY;
    expect(STATIONS.map((station) => worksAtOvens(state, station))).toEqual([false, false, true, false]);
    expect(worksAtOvens(state, null)).toBe(true);
    expect(worksAtOvens(withoutStations(state), 'mixer')).toBe(true);
  });

  test('V7 announces its own calls by what they are, and those of others by their number', () => {
    expect(announcementOf(TWENTY.state, TWENTY.nowMs, 'oven')).toMatch(/^Being lost: OUT R1\. .*1 being lost, 3 late elsewhere\.$/);
    expect(announcementOf(TWENTY.state, TWENTY.nowMs)).not.toContain('elsewhere');
  });

  test('V7 says in words that it does not know a station, with the known ones as links', () => {
    const notice = noticeOf(viewOf(TWENTY.state), false, 'cellar');
    expect(notice?.heading).toContain('cellar');
    expect(notice?.links.map(({ href }) => href)).toEqual([...STATIONS.map((station) => `/wall?station=${station}`), '/wall?station=']);
    expect(noticeOf(viewOf(TWENTY.state), false, 'oven')).toBeNull();
    expect(noticeOf(viewOf({ ...TWENTY.state, kitchen: null }), false, 'cellar')).toBeNull();
  });
});

describe('the line for what presses elsewhere', () => {
  const rows = boardRows(TWENTY.state, TWENTY.nowMs);
  const pressing = pressingElsewhere(rows, 'fillings');

  test('V7 counts every one of them, in words where these find room', () => {
    const counts = countElsewhere(pressing);
    expect(counts.lost + counts.late).toBe(pressing.length);
    expect(counts.lost).toBe(rows.filter((row) => row.role === 'lost').length);
    expect(elsewhereText(counts)).toBe(`${counts.lost} being lost, ${counts.late} late elsewhere`);
    expect(elsewhereText({ lost: 0, late: 0 })).toBe('nothing late elsewhere');
    const neededPx = textWidthPx(elsewhereText(counts), 70);
    expect([neededPx - 1, neededPx].map((roomPx) => wordsFit(counts, 70, roomPx))).toEqual([false, true]);
    // The word goes where even it finds no room; the counts never do.
    expect([700, 200].map((roomPx) => wordBehindCounts(counts, 70, roomPx, 70))).toEqual(['elsewhere', '']);
  });

  test('V7 names what fits and counts what does not', () => {
    const tags = ['R3 Bench', 'R1 Oven', 'Ch2 Mixer', 'C6 Mixer'];
    for (let roomPx = 0; roomPx < 1400; roomPx += 20) {
      const text = elsewhereTags(tags, 53, roomPx);
      expect(textWidthPx(text, 53)).toBeLessThanOrEqual(roomPx);
      if (text === '') continue;
      const [, more = '0'] = / \+(\d+)$/.exec(text) ?? [];
      expect(text.replace(/ \+\d+$/, '').split(' · ').length + Number(more)).toBe(tags.length);
    }
    expect(elsewhereTags(tags, 53, 1400)).toBe(tags.join(' · '));
  });
});

describe('the code for phones on a wall', () => {
  const codeOf = (floor: typeof CALM, more: Parameters<typeof viewOf>[1] = {}): number | null => {
    const view = viewOf(floor.state, more);
    const arrangement = arrange(floor.state, floor.nowMs, SCREEN, false, null);
    return joinCodePx(view, boardRows(floor.state, floor.nowMs), arrangement, axisWidthPx(arrangement.plan, SCREEN.widthPx), SCREEN);
  };

  test('V8 stands where nothing calls, phones can come and there is room, at least 100 mm wide', () => {
    const pxPerMm = Math.hypot(1920, 1080) / (43 * 25.4);
    const widthPx = codeOf(CALM) ?? 0;
    expect(widthPx / pxPerMm).toBeGreaterThanOrEqual(100);
    expect(widthPx / pxPerMm).toBeLessThanOrEqual(150);
  });

  test('V8 is not there while something calls, without a link, on a full wall, or where it would lead nowhere', () => {
    expect(codeOf(TWENTY)).toBeNull();
    expect(codeOf(CALM, { connection: { phase: 'lost', lastContactMs: CALM.nowMs } })).toBeNull();
    expect(codeOf(CALM, { addresses: ['http://localhost:8420'] })).toBeNull();
    expect(codeOf(CALM, { addresses: [] })).toBeNull();
  });
});
