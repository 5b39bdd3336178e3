import type { Verb } from '../documents/method.ts';
import { unreachable } from '../result.ts';
import type { Due } from './due.ts';
import type { FloorState } from './state.ts';

/** Where on its way a dough is, roughly: what group rows are named after. */
export type Stage = 'planned' | 'mixing' | 'bulk' | 'cold' | 'makeUp' | 'proving' | 'oven' | 'cooling' | 'prep';

/** The stage in which a workpiece stands. Dough in a cold place is cold, whatever rest it has there. */
export function stageOf(state: FloorState, due: Due): Stage {
  if (due.phase === 'planned') return 'planned';
  const place = state.kitchen?.document.restPlaces.find((candidate) => candidate.id === due.workpiece.placeId);
  const isCold = place !== undefined && (place.kind === 'retarder' || place.kind === 'cold-room' || place.kind === 'freezer');
  if (isCold && due.phase === 'resting') return 'cold';
  return stageOfVerb(due.step.verb);
}

function stageOfVerb(verb: Verb): Stage {
  switch (verb) {
    case 'weigh':
    case 'add':
    case 'firstSpeed':
    case 'secondSpeed':
    case 'stand':
    case 'turnOut':
      return 'mixing';
    case 'bulk':
    case 'fold':
      return 'bulk';
    case 'retard':
    case 'chill':
      return 'cold';
    case 'divide':
    case 'scale':
    case 'round':
    case 'benchRest':
    case 'shape':
    case 'tin':
    case 'fill':
    case 'lockIn':
    case 'sheet':
    case 'turn':
      return 'makeUp';
    case 'prove':
    case 'temper':
    case 'top':
    case 'wash':
    case 'seed':
    case 'dust':
    case 'dock':
    case 'score':
    case 'load':
      return 'proving';
    case 'bake':
    case 'partBake':
    case 'bakeOff':
    case 'takeOut':
      return 'oven';
    case 'depan':
    case 'cool':
    case 'wait':
    case 'glaze':
    case 'slice':
    case 'pack':
      return 'cooling';
    case 'feed':
    case 'ripen':
    case 'cook':
    case 'clean':
      return 'prep';
    default:
      return unreachable(verb);
  }
}
