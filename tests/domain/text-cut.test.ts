import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { fittingText, textWidthPx } from '../../display/parts/text-width.ts';

const PX = 42;

describe('W-G5 a text longer than its line', () => {
  const text = 'Doubled; a floured finger leaves a dent that stays.';

  test('is cut at a word, and says so', () => {
    expect(fittingText(text, PX, textWidthPx('Doubled; a floured finger leaves a dent th…', PX))).toBe(
      'Doubled; a floured finger leaves a dent…',
    );
    expect(fittingText(text, PX, textWidthPx('Doubled; a floured finger…', PX))).toBe('Doubled; a floured finger…');
    // No comma and no dot stands before the ellipsis.
    expect(fittingText('Seeded rye in tins, Milk buns, custard', PX, textWidthPx('Seeded rye in tins, Milk buns, cus…', PX))).toBe(
      'Seeded rye in tins, Milk buns…',
    );
  });

  test('is cut within a word where that is long', () => {
    expect(fittingText('Sauerteigvollkornbrot', PX, textWidthPx('Sauerteigvoll…', PX))).toBe('Sauerteigvoll…');
    expect(fittingText('In Sauerteigvollkornbrot', PX, textWidthPx('In Sauerteigvoll…', PX))).toBe('In Sauerteigvoll…');
  });

  test('fits, begins as the whole does, and is whole where there is room', () => {
    fc.assert(
      fc.property(fc.lorem({ maxCount: 12 }), fc.integer({ min: 80, max: 900 }), (given, widthPx) => {
        const shown = fittingText(given, PX, widthPx);
        if (textWidthPx(given, PX) <= widthPx) expect(shown).toBe(given);
        else {
          expect(shown.endsWith('…')).toBe(true);
          expect(given.startsWith(shown.slice(0, -1))).toBe(true);
          expect(textWidthPx(shown, PX)).toBeLessThanOrEqual(widthPx);
        }
      }),
    );
  });
});
