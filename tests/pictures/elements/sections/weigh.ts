import type { TemplateResult } from 'lit';
import '../../../../display/weigh/degrees-choice.ts';
import '../../../../display/weigh/dough-view.ts';
import '../../../../display/weigh/forget-panel.ts';
import '../../../../display/weigh/line-actions.ts';
import '../../../../display/weigh/list-actions.ts';
import { pieceOf, viewsOf, type PieceModel } from '../../../../display/weigh/piece-model.ts';
import '../../../../display/weigh/short-panel.ts';
import { shortOutcome } from '../../../../display/weigh/short-model.ts';
import '../../../../display/weigh/waiting-list.ts';
import { waitingOf } from '../../../../display/weigh/waiting-model.ts';
import '../../../../display/weigh/water-actions.ts';
import '../../../../display/weigh/water-view.ts';
import '../../../../display/weigh/weigh-line.ts';
import '../../../../display/weigh/weigh-list.ts';
import { allLines, neighbourId } from '../../../../display/weigh/weigh-model.ts';
import '../../../../display/weigh/wild-ask.ts';
import { assert } from '../../../../shared/result.ts';
import { made } from '../made.ts';
import { floorOf } from '../rows.ts';
import type { Scenes, WeighScene } from '../scene.ts';
import { section, shelf, specimen } from '../specimen.ts';

/** Every part of the weigh-out, on a phone 390 px wide. */
export function weighSection({ weighs }: Scenes): TemplateResult {
  const scenes = Object.entries(weighs);
  const [first] = scenes;
  assert(first !== undefined, 'nothing is weighed');
  const floor = floorOf(first[1]);
  return section('weigh', 'Parts of the weigh-out', [
    shelf('What waits', [
      specimen('waiting-list', 'on-phone', made('waiting-list', { waiting: waitingOf(floor) })),
      specimen('waiting-list, empty', 'on-phone', made('waiting-list')),
    ]),
    shelf(
      'A line, large',
      scenes.flatMap(([name, scene]) => lines(name, scene)),
    ),
    shelf(
      'All lines',
      scenes.map(([name, scene]) => list(name, modelOf(scene))),
    ),
    shelf(
      'The water',
      scenes.map(([name, scene]) => water(name, modelOf(scene))),
    ),
    shelf(
      'What a thumb does',
      scenes.flatMap(([name, scene]) => actions(name, scene)),
    ),
  ]);
}

function modelOf(scene: WeighScene, lineId: string | null = null): PieceModel {
  const model = pieceOf(scene.view, floorOf(scene), scene.workpieceId, lineId, scene.nowMs);
  assert(model !== null, 'the weigh-out is not on the floor');
  return model;
}

function lines(name: string, scene: WeighScene): readonly TemplateResult[] {
  return allLines(modelOf(scene).out).map(({ line }) => {
    const { placed, kind, units, zone, verbs, hasLot } = modelOf(scene, line.id);
    const lot = line.lots[0] ?? null;
    return specimen(`weigh-line, ${name}, ${line.name}`, 'on-phone', made('weigh-line', { placed, kind, units, zone, verbs, hasLot, lot }));
  });
}

function list(name: string, { out, workpiece, units, verbs }: PieceModel): TemplateResult {
  return specimen(
    `weigh-list, ${name}`,
    'on-phone',
    made('weigh-list', { out, workpieceId: workpiece.id, units, verbs, unsentIds: new Set(['0-1']) }),
  );
}

function water(name: string, { water: model, workpiece, units, zone, iceC }: PieceModel): TemplateResult {
  return specimen(`water-view, ${name}`, 'on-phone', made('water-view', { model, taken: workpiece.water, units, zone, iceC }));
}

function actions(name: string, scene: WeighScene): readonly TemplateResult[] {
  const model = modelOf(scene);
  const { out, placed, workpiece, units, water: waterModel, dough, wild, zone } = model;
  const { id: workpieceId } = workpiece;
  const unit = units.temperature;
  const line = placed?.line ?? null;
  assert(line !== null, 'there is nothing to weigh');
  const one = (tag: string, content: HTMLElement): TemplateResult => specimen(`${tag}, ${name}`, 'on-phone', content);
  const beforeId = neighbourId(out, line.id, -1);
  const nextId = neighbourId(out, line.id, 1);
  return [
    one('line-actions', made('line-actions', { workpieceId, line, beforeId, nextId, canScale: !out.isMixed })),
    one('list-actions', made('list-actions', { views: viewsOf(model) })),
    one('water-actions', made('water-actions', { workpieceId, model: waterModel, isMixed: out.isMixed })),
    one('dough-view', made('dough-view', { model: dough, unit, zone })),
    one(
      'degrees-choice',
      made('degrees-choice', {
        heading: dough?.tag ?? '',
        unit,
        expectedC: dough?.targetC ?? null,
        isTarget: true,
        leastC: -25,
        mostC: 50,
      }),
    ),
    one(
      'short-panel',
      made('short-panel', {
        line,
        workpieceId,
        units,
        outcomeOf: (grams) => shortOutcome(floorOf(scene), workpiece, line, grams, scene.nowMs),
      }),
    ),
    one(
      'forget-panel',
      made('forget-panel', {
        mixer: { id: 'spiral', name: 'Spiral', ofFormula: 3, ofAll: 7 },
        formulaId: workpiece.formulaId,
        formulaName: model.formulaName,
      }),
    ),
    ...(wild === null ? [] : [one('wild-ask', made('wild-ask', { wild, workpieceId, unit }))]),
  ];
}
