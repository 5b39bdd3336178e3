import { kept } from '../parts/kept.ts';
import { readWallSettings, type WallSettings } from './wall-settings.ts';

const VIEWING = 'ovenward.viewing';
const LOOK = 'ovenward.wall-look';
const STATION = 'ovenward.wall-station';

/**
 * The settings that hold on this screen. What the address says holds for this address only and is not kept: two walls of
 * one machine share what their browser keeps.
 */
export function wallSettingsHere(query: string): WallSettings {
  return readWallSettings(new URLSearchParams(query), {
    viewing: kept.read(VIEWING),
    look: kept.read(LOOK),
    stationId: kept.read(STATION),
  });
}

/** Keeps the settings for every next load of a wall on this device. */
export function keepWallSettings({ viewing, look, stationId }: WallSettings): void {
  kept.write(VIEWING, JSON.stringify(viewing));
  kept.write(LOOK, JSON.stringify(look));
  kept.write(STATION, stationId ?? '');
}
