import { html, type TemplateResult } from 'lit';
import { place, px } from '../../../../display/parts/place.ts';
import '../../../../display/wall/sound-panel.ts';
import '../../../../display/wall/wall-axis.ts';
import '../../../../display/wall/wall-group.ts';
import '../../../../display/wall/wall-header.ts';
import '../../../../display/wall/wall-notice.ts';
import '../../../../display/wall/wall-row.ts';
import '../../../../display/wall/wall-strip.ts';
import { arrange, type Arrangement } from '../../../../display/wall/arrangement.ts';
import { noteGapPx, rowTextPx } from '../../../../display/wall/governor.ts';
import { noticeOf } from '../../../../display/wall/notice.ts';
import { rowModel } from '../../../../display/wall/row-model.ts';
import { stripModel } from '../../../../display/wall/strip-model.ts';
import { axisWidthPx, wallLengths } from '../../../../display/wall/wall-lengths.ts';
import { ROLES } from '../../../../display/words/roles.ts';
import { STAGES } from '../../../../display/words/stages.ts';
import { moreWords, WALL } from '../../../../display/words/wall.ts';
import { boardRows } from '../../../../shared/floor/board.ts';
import { assert } from '../../../../shared/result.ts';
import { made } from '../made.ts';
import { floorOf, rowStates } from '../rows.ts';
import type { Scene, Scenes } from '../scene.ts';
import { section, shelf, specimen } from '../specimen.ts';

/** A 43-inch wall read from 3 m: texts small enough for the page. */
const SCREEN = { diagonalInch: 43, distanceM: 3, arcmin: 20, widthPx: 1920, heightPx: 1080 };

/** The elements of the wall that stand by themselves; what only a whole wall arranges is among the screens. */
export function wallSection(scenes: Scenes): TemplateResult {
  const busy = sceneOf(scenes, 'late and being lost');
  const blocked = sceneOf(scenes, 'things in the way, over two days');
  const arrangement = arrange(floorOf(busy), busy.nowMs, SCREEN, false, null);
  const { plan } = arrangement;
  const lengths = {
    ...wallLengths(arrangement, busy.nowMs),
    '--row-top': px((plan.rowPx - rowTextPx(plan.sizes)) / 2),
    '--note-gap': px(noteGapPx(plan.sizes)),
  };
  return html`<div ${place(lengths)}>
    ${section('wall', 'Parts of the wall', [
      rows(busy, blocked, arrangement),
      groups(),
      headers(busy),
      strips(busy, arrangement),
      axis(arrangement),
      notices(scenes),
      covers(),
    ])}
  </div>`;
}

function sceneOf(scenes: Scenes, name: string): Scene {
  const scene = scenes.walls[name];
  assert(scene !== undefined, `there is no wall "${name}"`);
  return scene;
}

function rows(busy: Scene, blocked: Scene, { plan, columns }: Arrangement): TemplateResult {
  const one = (name: string, model: ReturnType<typeof rowModel>, detailLines = 0): TemplateResult =>
    specimen(
      `wall-row, ${name}`,
      'on-wall row',
      made('wall-row', { model, columns, sizes: plan.sizes, widthPx: plan.leftPx, detailLines }),
    );
  const floor = floorOf(busy);
  const states = rowStates(busy);
  const call = states['call'];
  assert(call !== undefined, 'there is no call');
  const inTheWay = boardRows(floorOf(blocked), blocked.nowMs).map((row) => rowModel(floorOf(blocked), [row], blocked.nowMs));
  return shelf(
    'Rows: shape, tag, verb, countdown',
    [
      ...Object.entries(states).map(([name, row]) => one(name, rowModel(floor, [row], busy.nowMs))),
      one('a call of three doughs', rowModel(floor, [call, { ...call, tag: 'C2' }, { ...call, tag: 'S1' }], busy.nowMs)),
      one('with what to look for', { ...rowModel(floor, [call], busy.nowMs), detail: 'Edges hold a fold; bubbles at the rim.' }, 1),
      ...inTheWay
        .filter(({ obstacle }) => obstacle !== null)
        .map((model) => one(`something in the way of ${model.tags.join(', ')}`, model)),
    ],
    'stacked',
  );
}

function groups(): TemplateResult {
  const one = (words: string, countdown: string, level: keyof typeof ROLES): TemplateResult =>
    specimen(`wall-group, ${level}`, 'on-wall group', made('wall-group', { words, countdown, level, levelWord: ROLES[level] }));
  return shelf(
    'Groups, and calls without a row',
    [
      one(`4 ${STAGES.bulk}`, '25 min', 'running'),
      one(moreWords(3), '0:00', 'call'),
      one(moreWords(3), '+6:10', 'late'),
      one(moreWords(3), '+31:00', 'lost'),
    ],
    'stacked',
  );
}

function headers(busy: Scene): TemplateResult {
  const houseName = floorOf(busy).house?.document.name ?? '';
  const one = (
    name: string,
    soundWords: string,
    soundIsLate: boolean,
    lastContact: string | null,
    wrongWords: string | null = null,
  ): TemplateResult =>
    specimen(
      `wall-header, ${name}`,
      'on-wall',
      made('wall-header', { clock: '06:30', houseName, soundWords, soundIsLate, lastContact, wrongWords }),
    );
  return shelf(
    'Header: the house, its link and its sound',
    [
      one('in order', WALL.soundOn, false, null),
      one('no device sounds', WALL.soundNone, true, null),
      one('no link', WALL.soundOn, false, '06:29'),
    ],
    'stacked',
  );
}

function strips(busy: Scene, { plan }: Arrangement): TemplateResult {
  const floor = floorOf(busy);
  return shelf(
    'Strips: the way of a dough right of NOW',
    boardRows(floor, busy.nowMs).map((row) =>
      specimen(
        `wall-strip, ${row.tag}`,
        'on-axis row',
        made('wall-strip', { model: stripModel(floor, [row], busy.nowMs, axisWidthPx(plan, SCREEN.widthPx), plan.sizes.nearPx) }),
      ),
    ),
    'stacked',
  );
}

function axis({ plan }: Arrangement): TemplateResult {
  return shelf('The axis', [
    specimen('wall-axis', 'on-axis cover', made('wall-axis', { widthPx: axisWidthPx(plan, SCREEN.widthPx), sizePx: plan.sizes.nearPx })),
  ]);
}

function notices(scenes: Scenes): TemplateResult {
  return shelf(
    'Notices where there are no doughs',
    Object.entries(scenes.walls).flatMap(([name, { view }]) => {
      const notice = noticeOf(view, false);
      return notice === null
        ? []
        : [specimen(`wall-notice, ${name}`, 'on-wall', made('wall-notice', { notice, addresses: view.addresses }))];
    }),
    'stacked',
  );
}

function covers(): TemplateResult {
  return shelf('Sound that waits for a touch', [specimen('sound-panel', 'on-wall cover', made('sound-panel'))]);
}
