import type { z } from 'zod';
import { readViewing, type Viewing } from './settings.ts';
import { clockOfMinutes, DEFAULT_WALL_LOOK, minutesOfClock, WALL_LOOK_CHOICES, wallLookSchema, type WallLook } from './wall-look.ts';

/** Everything that is set of one wall. */
export interface WallSettings {
  readonly viewing: Viewing;
  readonly look: WallLook;
  /** The station whose wall it is; null for a wall of everything. */
  readonly stationId: string | null;
}

/** What a screen kept, by what it is of; null where it kept nothing. */
export interface KeptSettings {
  readonly viewing: string | null;
  readonly look: string | null;
  readonly stationId: string | null;
}

const KEYS = ['inch', 'metres', 'arcmin', 'look', 'night', 'station'] as const;

/** Whether an address says how its wall is, rather than leaving that to what the screen kept. */
export function isAddressed(query: URLSearchParams): boolean {
  return KEYS.some((key) => query.has(key));
}

/**
 * The settings that hold: the defaults, over them what was kept, over that what the address says
 * (`?inch=43&metres=5&arcmin=20&look=hours&night=20:00-04:00&station=oven`; an empty station is a wall of everything).
 * What cannot be read is left out; a station is taken as it stands, so that the wall can say that it knows none such.
 */
export function readWallSettings(query: URLSearchParams, kept: KeptSettings): WallSettings {
  const look = readLook(kept.look);
  const choice = WALL_LOOK_CHOICES.find((known) => known === query.get('look')) ?? look.choice;
  const station = (query.get('station') ?? kept.stationId ?? '').trim().slice(0, STATION_CHARACTERS);
  return {
    viewing: readViewing(query, kept.viewing).viewing,
    look: { ...look, choice, ...readNight(query.get('night')) },
    stationId: station === '' ? null : station,
  };
}

/** The address' query that says all of it, for a screen that keeps nothing or shares its browser with another wall. */
export function queryOf({ viewing, look, stationId }: WallSettings): string {
  const { inch, metres, arcmin } = viewing;
  const night = look.choice === 'hours' ? `&night=${clockOfMinutes(look.nightFromMin)}-${clockOfMinutes(look.nightToMin)}` : '';
  return `inch=${inch}&metres=${metres}&arcmin=${arcmin}&look=${look.choice}${night}&station=${encodeURIComponent(stationId ?? '')}`;
}

/** Longer than any station's id. */
const STATION_CHARACTERS = 60;

/** "20:00-04:00" as the night's hours; nothing where it is no such text. */
function readNight(text: string | null): Partial<WallLook> {
  const [from, to] = (text ?? '').split('-').map(minutesOfClock);
  return from === undefined || from === null || to === undefined || to === null ? {} : { nightFromMin: from, nightToMin: to };
}

function readLook(kept: string | null): WallLook {
  const parsed: z.ZodSafeParseResult<WallLook> = wallLookSchema.safeParse(kept === null ? null : jsonOrNull(kept));
  return parsed.success ? parsed.data : DEFAULT_WALL_LOOK;
}

function jsonOrNull(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch (error) {
    // A page of another version wrote it, or somebody by hand: the defaults do.
    if (error instanceof SyntaxError) return null;
    throw error;
  }
}
