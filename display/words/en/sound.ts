/** What screens say of sounding: who does, when it was last heard, and by which hours. */
export const SOUND = {
  title: 'Sound',
  thisPhone: 'this phone sounds',
  nobody: 'no device sounds: touch this phone once',
  thisFixed: 'this screen sounds',
  nobodyFixed: 'no device sounds: touch this screen once',
  heard: 'Heard',
  notHeard: 'Not heard',
  testNow: 'Test the sound now',
  testWaits: 'The test sounds as soon as a device can.',
  testDid: 'sound test',
  nobodyNow: 'No device can sound at present.',
  never: 'Never tested.',
  wallNever: 'sound not tested',
  settings: 'How the house sounds',
  volume: 'How loud, by the time of day',
  from: 'from',
  addVolume: 'Add a time of day',
  removeVolume: 'Take out',
  quiet: 'Quiet hours: what is only a call waits for their end',
  quietMore: 'What is late or being lost sounds all the same.',
  quietFrom: 'Quiet from',
  quietTo: 'till',
  testAt: 'Daily sound test at',
  timeNeeded: 'a time is needed, such as 05:00',
} as const;

/** Asked of phones after a test. `station` is where the phone stands, if anywhere. */
export function soundAskWords(clock: string, station: string | null): string {
  return station === null ? `Sound test ${clock}: heard?` : `Sound test ${clock}: heard at the ${station.toLowerCase()}?`;
}

/** `clock` is a time of today, or one with its weekday. */
export function soundOkWords(clock: string): string {
  return `sound ok ${clock}`;
}

export function soundOldWords(clock: string): string {
  return `sound last heard ${clock}`;
}

export function soundNotHeardWords(clock: string): string {
  return `sound not heard ${clock}`;
}

export function quietTillWords(clock: string): string {
  return `quiet till ${clock}`;
}

/** No wall can sound: which device does in its place. */
export function noWallWords(deviceName: string): string {
  return `no wall sounds: ${deviceName} does`;
}

/** Which device sounds, for a phone's own page. */
export function soundsOnWords(deviceName: string): string {
  return `${deviceName} sounds.`;
}

/** The last test that was heard, for a phone's own page. */
export function lastHeardWords(clock: string): string {
  return `Last heard ${clock}.`;
}

export function lostFirstWords(tag: string): string {
  return `${tag} is being lost: no test may sound now.`;
}

export function volumeLabelWords(clock: string): string {
  return `Volume from ${clock}`;
}
