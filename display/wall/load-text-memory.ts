import { placeLoadTexts, type LoadText } from './load-texts.ts';

/**
 * Names the loads of one deck, anew only where one of them, or what is reserved, stands otherwise than the time before:
 * a wall draws every second, and its loads creep by a pixel a minute.
 */
export class LoadTextMemory {
  private named: { readonly key: string; readonly texts: LoadText[] } | null = null;

  /** As `placeLoadTexts`. */
  readonly place: typeof placeLoadTexts = (loads, widthPx, sizePx, reserved, uncounted) => {
    const key = JSON.stringify([loads, widthPx, sizePx, reserved, uncounted]);
    if (this.named?.key !== key) this.named = { key, texts: placeLoadTexts(loads, widthPx, sizePx, reserved, uncounted) };
    return this.named.texts;
  };
}
