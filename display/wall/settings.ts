import { z } from 'zod';

/** How the wall is looked at. */
export const viewingSchema = z.strictObject({
  /** Diagonal of the screen, in inches. */
  inch: z.number().min(5).max(150),
  /** Distance to the farthest bench, in metres. */
  metres: z.number().min(0.5).max(15),
  /** Height of a capital, in minutes of arc: 20, or 26 for tired eyes. */
  arcmin: z.number().min(16).max(40),
});

export type Viewing = z.infer<typeof viewingSchema>;

export const DEFAULT_VIEWING: Viewing = { inch: 43, metres: 5, arcmin: 20 };

const KEYS = ['inch', 'metres', 'arcmin'] as const;

/**
 * The settings that hold: the defaults, over them what was kept, over that what the address says
 * (`?inch=43&metres=5&arcmin=20`). A value that is no number or out of range is left out, and named in `rejected`.
 */
export function readViewing(
  query: URLSearchParams,
  kept: string | null,
): { readonly viewing: Viewing; readonly rejected: readonly string[] } {
  const viewing = { ...DEFAULT_VIEWING, ...readKept(kept) };
  const rejected: string[] = [];
  for (const key of KEYS) {
    const text = query.get(key);
    if (text === null) continue;
    const parsed = viewingSchema.shape[key].safeParse(text.trim() === '' ? Number.NaN : Number(text));
    if (parsed.success) viewing[key] = parsed.data;
    else rejected.push(`${key}=${text}`);
  }
  return { viewing, rejected };
}

function readKept(kept: string | null): Partial<Viewing> {
  if (kept === null) return {};
  try {
    const parsed = viewingSchema.safeParse(JSON.parse(kept));
    return parsed.success ? parsed.data : {};
  } catch (error) {
    // A page of another version wrote it, or somebody by hand: the defaults do.
    if (error instanceof SyntaxError) return {};
    throw error;
  }
}
