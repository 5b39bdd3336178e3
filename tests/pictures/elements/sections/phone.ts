import type { TemplateResult } from 'lit';
import '../../../../display/phone/answer-note.ts';
import '../../../../display/phone/bottom-bar.ts';
import { cardOf, firstFreeSlots, type CardModel } from '../../../../display/phone/card-model.ts';
import '../../../../display/phone/day-end.ts';
import '../../../../display/phone/device-panel.ts';
import '../../../../display/phone/dough-card.ts';
import '../../../../display/phone/end-day-button.ts';
import { factsOf, zoneOf } from '../../../../display/phone/floor-facts.ts';
import { obstacleModel, type ObstacleModel } from '../../../../display/phone/obstacle-model.ts';
import { panelOf } from '../../../../display/phone/panel-of.ts';
import { elsewhereOf } from '../../../../display/phone/filter-model.ts';
import '../../../../display/phone/late-elsewhere.ts';
import '../../../../display/phone/later-parts.ts';
import '../../../../display/phone/list-foot.ts';
import '../../../../display/phone/phone-header.ts';
import '../../../../display/phone/phone-list.ts';
import '../../../../display/phone/phone-row.ts';
import { placesOf } from '../../../../display/phone/places-model.ts';
import '../../../../display/phone/places-view.ts';
import '../../../../display/phone/pocket-cover.ts';
import '../../../../display/phone/sound-settings.ts';
import '../../../../display/phone/station-filter.ts';
import { PHONE } from '../../../../display/words/phone.ts';
import { boardRows, type Row } from '../../../../shared/floor/board.ts';
import { obstacleOf } from '../../../../shared/floor/ways-out.ts';
import { assert } from '../../../../shared/result.ts';
import { made } from '../made.ts';
import { floorOf, rowStates } from '../rows.ts';
import type { CardScene, Scene, Scenes } from '../scene.ts';
import { section, shelf, specimen } from '../specimen.ts';

/** Every part of the phone, on a phone 390 px wide. */
export function phoneSection(scenes: Scenes): TemplateResult {
  const busy = scenes.phones['in touch'];
  assert(busy !== undefined, 'there is no phone in touch');
  return section('phone', 'Parts of the phone', [
    headers(scenes),
    rows(busy),
    notes(scenes),
    bars(),
    aroundTheList(busy),
    device(busy),
    shelf('Cards', Object.entries(scenes.cards).map(card)),
    shelf(
      'What stands below a card',
      Object.entries(scenes.cards).flatMap(([name, scene]) => panels(name, scene)),
    ),
  ]);
}

function headers({ phones }: Scenes): TemplateResult {
  return shelf(
    'Headers',
    Object.entries(phones)
      .filter(([, { view }]) => view.state !== null)
      .map(([name, { view, nowMs }]) => specimen(`phone-header, ${name}`, 'on-phone', made('phone-header', { view, nowMs }))),
  );
}

function rows(busy: Scene): TemplateResult {
  const floor = floorOf(busy);
  const stations = new Map((floor.kitchen?.document.stations ?? []).map(({ id, name }) => [id, name]));
  const one = (name: string, row: Row, notSent = false): TemplateResult =>
    specimen(`phone-row, ${name}`, 'on-phone', made('phone-row', { row, nowMs: busy.nowMs, zone: zoneOf(floor), stations, notSent }));
  const states = rowStates(busy);
  const { call } = states;
  assert(call !== undefined, 'there is no call');
  return shelf('Rows: shape, tag, verb, countdown', [
    ...Object.entries(states).map(([name, row]) => one(name, row)),
    one('call, not sent', call, true),
    specimen('phone-list, empty', 'on-phone', made('phone-list', { rows: [] })),
  ]);
}

function notes({ phones }: Scenes): TemplateResult {
  return shelf('Why a tap came to nothing', [
    specimen('answer-note', 'on-phone', made('answer-note', { view: phones['a tap that came to nothing']?.view ?? null })),
  ]);
}

function bars(): TemplateResult {
  const one = (name: string, back: string | null, undoes: string | null): TemplateResult =>
    specimen(`bottom-bar, ${name}`, 'on-phone', made('bottom-bar', { back, undoes }));
  return shelf('The bar at the foot', [
    one('back', PHONE.back, null),
    one('undo', null, 'C1 FOLDED'),
    one('back and undo', PHONE.backToDoughs, 'C1 FOLDED'),
  ]);
}

/** What stands round the list, where a dough stands, and what covers a phone in a pocket. */
function aroundTheList(busy: Scene): TemplateResult {
  const floor = floorOf(busy);
  const stations = floor.kitchen?.document.stations ?? [];
  const rows = boardRows(floor, busy.nowMs);
  const places = placesOf(floor, busy.nowMs);
  const view = (name: string, wantedId: string | null): TemplateResult =>
    specimen(`places-view, ${name}`, 'on-phone', made('places-view', { places, wantedId, nowMs: busy.nowMs, zone: zoneOf(floor) }));
  return shelf('Round the list; where everything stands', [
    specimen('list-foot', 'on-phone', made('list-foot', { shown: 'Bench', undoes: 'C1 FOLDED' })),
    specimen('station-filter', 'on-phone', made('station-filter', { stations, ownId: 'bench', chosenId: 'oven' })),
    specimen('late-elsewhere', 'on-phone', made('late-elsewhere', { elsewhere: elsewhereOf(rows, 'mixer') })),
    view('everything', null),
    view('a dough looked for', rows[0]?.workpieceId ?? null),
    specimen('pocket-cover', 'on-phone cover', made('pocket-cover')),
  ]);
}

function device(busy: Scene): TemplateResult {
  const floor = floorOf(busy);
  return shelf('The phone itself, and the end of the day', [
    specimen(
      'device-panel',
      'on-phone',
      made('device-panel', { device: busy.view.device, stations: floor.kitchen?.document.stations ?? [] }),
    ),
    specimen('sound-settings', 'on-phone', made('sound-settings', { view: busy.view, nowMs: busy.nowMs })),
    specimen('day-end', 'on-phone', made('day-end', { floor, nowMs: busy.nowMs, zone: zoneOf(floor) })),
    specimen('end-day-button', 'on-phone', made('end-day-button', { serviceDate: floor.serviceDate })),
  ]);
}

function modelOf(scene: CardScene): CardModel {
  const model = cardOf(floorOf(scene), scene.workpieceId, scene.nowMs);
  assert(model !== null, 'the dough has no card');
  return model;
}

function card([name, scene]: readonly [string, CardScene]): TemplateResult {
  const floor = floorOf(scene);
  const model = modelOf(scene);
  return specimen(
    `dough-card, ${name}`,
    'on-phone',
    made('dough-card', {
      card: model,
      floor,
      obstacle: obstacle(scene, model),
      nowMs: scene.nowMs,
      zone: zoneOf(floor),
      chosenSlotIds: firstFreeSlots(floor, scene.workpieceId, model.action, scene.nowMs),
      stationId: 'bench',
    }),
  );
}

function obstacle(scene: CardScene, { row }: CardModel): ObstacleModel | null {
  const floor = floorOf(scene);
  const found = obstacleOf(floor, scene.workpieceId, scene.nowMs);
  return found === null ? null : obstacleModel(floor, row, found, factsOf(floor, scene.view.devices, scene.view.device?.id ?? null), 'C');
}

function panels(name: string, scene: CardScene): readonly TemplateResult[] {
  const floor = floorOf(scene);
  const model = modelOf(scene);
  const slotIds = firstFreeSlots(floor, scene.workpieceId, model.action, scene.nowMs);
  return scene.panels.map((panel) =>
    specimen(
      `${panel}, ${name}`,
      'on-phone',
      panelOf(panel, floor, model, slotIds, scene.nowMs, { obstacle: obstacle(scene, model), hasPlaces: true }),
    ),
  );
}
