import type { FloorView } from '../../../display/link/floor-link.ts';
import type { Panel } from '../../../display/phone/phone-events.ts';
import type { DayParts } from '../../browser/harness-day/day-stage.ts';
import type { SheetScenes } from '../../browser/harness-day-sheet/sheet-stage.ts';
import type { SoundReadiness } from '../../../shared/wire/up.ts';

/** What a page is told, at an instant, how its sound stands, and whose it is where it is a station's. */
export interface Scene {
  readonly view: FloorView;
  readonly nowMs: number;
  readonly sound?: SoundReadiness;
  readonly stationId?: string;
}

/** The card of a dough, with the panel that is open. */
export interface CardScene extends Scene {
  readonly workpieceId: string;
  readonly panels: readonly Panel[];
}

/** A weigh-out, by the workpiece that it is of. */
export interface WeighScene extends Scene {
  readonly workpieceId: string;
}

/** Everything that the page of elements shows, by the names that it gives it. */
export interface Scenes {
  readonly walls: Readonly<Record<string, Scene>>;
  readonly phones: Readonly<Record<string, Scene>>;
  readonly cards: Readonly<Record<string, CardScene>>;
  readonly kitchen: Scene;
  readonly sheets: SheetScenes;
  readonly day: DayParts;
  readonly weighs: Readonly<Record<string, WeighScene>>;
}
