/** What screens say of sounding, in German. */
export const SOUND = {
  title: 'Ton',
  thisPhone: 'dieses Handy tönt',
  nobody: 'kein Gerät tönt: dieses Handy einmal berühren',
  thisFixed: 'dieser Bildschirm tönt',
  nobodyFixed: 'kein Gerät tönt: diesen Bildschirm einmal berühren',
  heard: 'Gehört',
  notHeard: 'Nicht gehört',
  testNow: 'Ton jetzt proben',
  testWaits: 'Die Probe kommt, sobald ein Gerät tönen kann.',
  testDid: 'Tonprobe',
  nobodyNow: 'Kein Gerät kann im Augenblick tönen.',
  never: 'Nie geprobt.',
  wallNever: 'Ton nicht geprobt',
  settings: 'Wie das Haus tönt',
  volume: 'Wie laut, je nach Tageszeit',
  from: 'ab',
  addVolume: 'Tageszeit dazu',
  removeVolume: 'Streichen',
  quiet: 'Ruhezeit: was nur ruft, wartet auf ihr Ende',
  quietMore: 'Was überfällig ist oder verloren geht, tönt trotzdem.',
  quietFrom: 'Ruhe von',
  quietTo: 'bis',
  testAt: 'Tägliche Tonprobe um',
  timeNeeded: 'eine Uhrzeit fehlt, etwa 05:00',
} as const;

export function soundAskWords(clock: string, station: string | null): string {
  return station === null ? `Tonprobe ${clock}: gehört?` : `Tonprobe ${clock}: gehört (${station})?`;
}

export function soundOkWords(clock: string): string {
  return `Ton geprobt ${clock}`;
}

export function soundOldWords(clock: string): string {
  return `Ton zuletzt gehört ${clock}`;
}

export function soundNotHeardWords(clock: string): string {
  return `Ton nicht gehört ${clock}`;
}

export function quietTillWords(clock: string): string {
  return `Ruhe bis ${clock}`;
}

export function noWallWords(deviceName: string): string {
  return `keine Wand tönt: ${deviceName} tut es`;
}

export function soundsOnWords(deviceName: string): string {
  return `${deviceName} tönt.`;
}

export function lastHeardWords(clock: string): string {
  return `Zuletzt gehört ${clock}.`;
}

export function lostFirstWords(tag: string): string {
  return `${tag} geht gerade verloren: jetzt keine Probe.`;
}

export function volumeLabelWords(clock: string): string {
  return `Lautstärke ab ${clock}`;
}
