import { html, nothing, type TemplateResult } from 'lit';
import type { FloorState } from '../../shared/floor/state.ts';
import { lineOf } from '../../shared/floor/weigh-out.ts';
import { factsOf } from '../phone/floor-facts.ts';
import { RANGE_C } from '../phone/reading-model.ts';
import { refusalWords } from '../words/refusals.ts';
import { WEIGH } from '../words/weigh.ts';
import './degrees-choice.ts';
import './dough-view.ts';
import './forget-panel.ts';
import './line-actions.ts';
import './list-actions.ts';
import { lotFor, viewsOf, type PieceModel } from './piece-model.ts';

import { shortOutcome } from './short-model.ts';
import './short-panel.ts';
import './water-actions.ts';
import { knownOf, plainWaterC } from './water-model.ts';
import './water-view.ts';
import type { WaterPanel, WeighView } from './weigh-events.ts';
import './weigh-line.ts';
import './weigh-list.ts';
import { neighbourId } from './weigh-model.ts';
import './wild-ask.ts';

/** What stands in place of a view's buttons. */
export type Over = 'short' | WaterPanel;

/** A weigh-out as a thumb has left it. */
export interface PieceScreen {
  readonly piece: PieceModel;
  readonly floor: FloorState;
  readonly view: WeighView;
  readonly over: Over | null;
  readonly lots: ReadonlyMap<string, string | null>;
  readonly nowMs: number;
  /** The list stands beside what is at hand. */
  readonly isWide: boolean;
  /** The wild reading has been asked about. */
  readonly isAsked: boolean;
}

/** The upper half of the screen: what is to be known. */
export function pieceMain(screen: PieceScreen): TemplateResult {
  const { piece, view } = screen;
  switch (view) {
    case 'line':
      return lineMain(screen);
    case 'list':
      return pieceList(screen, null);
    case 'water':
      return html`<water-view
        .model=${piece.water}
        .taken=${piece.workpiece.water}
        .units=${piece.units}
        .zone=${piece.zone}
        .iceC=${piece.iceC}
      ></water-view>`;
    case 'dough':
      return html`<dough-view .model=${piece.dough} .unit=${piece.units.temperature} .zone=${piece.zone}></dough-view>`;
  }
}

function lineMain({ piece, floor, lots }: PieceScreen): TemplateResult {
  const { placed } = piece;
  return html`<weigh-line
    .placed=${placed}
    .kind=${piece.kind}
    .units=${piece.units}
    .zone=${piece.zone}
    .verbs=${piece.verbs}
    .hasLot=${piece.hasLot}
    .lot=${placed === null ? null : lotFor(floor, piece, placed.line.id, lots)}
    .notSent=${placed !== null && piece.unsentIds.has(placed.line.id)}
  ></weigh-line>`;
}

/** All lines; `openId` is the one that stands open beside them. */
export function pieceList({ piece, floor, lots }: PieceScreen, openId: string | null): TemplateResult {
  return html`<weigh-list
    .out=${piece.out}
    .workpieceId=${piece.workpiece.id}
    .units=${piece.units}
    .verbs=${piece.verbs}
    .unsentIds=${piece.unsentIds}
    .lotOf=${(lineId: string) => lotFor(floor, piece, lineId, lots)}
    .openId=${openId}
  ></weigh-list>`;
}

/** The lower half of the screen: what a thumb can do. */
export function pieceActions(screen: PieceScreen): TemplateResult | typeof nothing {
  const { piece, view, over, isWide, isAsked } = screen;
  if (piece.wild !== null && !isAsked)
    return html`<wild-ask .wild=${piece.wild} .workpieceId=${piece.workpiece.id} .unit=${piece.units.temperature}></wild-ask>`;
  if (over !== null) return overPanel(screen, over);
  switch (view) {
    case 'line':
      return lineActions(screen);
    case 'list':
      return html`<list-actions .views=${viewsOf(piece)}></list-actions>`;
    case 'water':
      return html`<water-actions
        .workpieceId=${piece.workpiece.id}
        .model=${piece.water}
        ?isMixed=${piece.out.isMixed}
        ?besideList=${isWide}
      ></water-actions>`;
    case 'dough':
      return doughActions(screen);
  }
}

function lineActions({ piece, floor, lots, isWide }: PieceScreen): TemplateResult {
  const { placed, out, workpiece } = piece;
  if (placed === null) return html`<list-actions .views=${viewsOf(piece)}></list-actions>`;
  const { line } = placed;
  return html`<line-actions
    .workpieceId=${workpiece.id}
    .line=${line}
    .lot=${lotFor(floor, piece, line.id, lots)}
    .beforeId=${neighbourId(out, line.id, -1)}
    .nextId=${neighbourId(out, line.id, 1)}
    ?besideList=${isWide}
    ?canScale=${!out.isMixed}
  ></line-actions>`;
}

function doughActions({ piece, isWide }: PieceScreen): TemplateResult {
  const { dough, units, out } = piece;
  const unit = units.temperature;
  const toList = isWide ? nothing : html`<list-actions .views=${['list'] as const}></list-actions>`;
  if (dough === null || !out.isMixed)
    return html`<p class="still-to-mix">${WEIGH.notMixed}</p>
      ${toList}`;
  return html`<degrees-choice
      data-where="dough"
      .heading=${WEIGH.doughAsk}
      .unit=${unit}
      .expectedC=${dough.targetC}
      isTarget
      .leastC=${RANGE_C.dough.least}
      .mostC=${RANGE_C.dough.most}
    ></degrees-choice>
    ${toList}`;
}

function overPanel({ piece, floor, nowMs }: PieceScreen, over: Over): TemplateResult | typeof nothing {
  const { placed, water, workpiece, units } = piece;
  switch (over) {
    case 'short':
      return html`<short-panel
        .line=${placed?.line ?? null}
        .workpieceId=${workpiece.id}
        .units=${units}
        .outcomeOf=${(grams: number) => {
          const line = placed === null ? null : lineOf(piece.out, placed.line.id);
          return line === null ? null : shortOutcome(floor, workpiece, line, grams, nowMs);
        }}
        .whyNot=${(outcome: ReturnType<typeof shortOutcome>) => (outcome.ok ? '' : refusalWords(outcome.refusal, factsOf(floor, [], null)))}
      ></short-panel>`;
    case 'forget':
      return html`<forget-panel
        .mixer=${water?.mixer ?? null}
        .formulaId=${workpiece.formulaId}
        .formulaName=${piece.formulaName}
      ></forget-panel>`;
    case 'water':
      return html`<degrees-choice
        data-where="water"
        .heading=${WEIGH.otherWaterTitle}
        .more=${WEIGH.otherWaterMore}
        .unit=${units.temperature}
        .expectedC=${water === null ? null : plainWaterC(water)}
        .leastC=${RANGE_C.water.least}
        .mostC=${RANGE_C.water.most}
      ></degrees-choice>`;
    case 'flour':
    case 'room':
    case 'preferment':
    case 'tap':
      return html`<degrees-choice
        data-where=${over}
        .heading=${WEIGH.inputTitle[over]}
        .unit=${units.temperature}
        .expectedC=${water === null ? null : (knownOf(water, over)?.celsius ?? null)}
        .leastC=${RANGE_C[over].least}
        .mostC=${RANGE_C[over].most}
      ></degrees-choice>`;
  }
}
