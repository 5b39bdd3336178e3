/** What screens say of sounding, in French. */
export const SOUND = {
  title: 'Son',
  thisPhone: 'ce téléphone sonne',
  nobody: 'aucun appareil ne sonne\u00a0: touchez ce téléphone une fois',
  thisFixed: 'cet écran sonne',
  nobodyFixed: 'aucun appareil ne sonne\u00a0: touchez cet écran une fois',
  heard: 'Entendu',
  notHeard: 'Pas entendu',
  testNow: 'Essayer le son maintenant',
  testWaits: 'L’essai sonne dès qu’un appareil le peut.',
  testDid: 'essai du son',
  nobodyNow: 'Aucun appareil ne peut sonner pour le moment.',
  never: 'Jamais essayé.',
  wallNever: 'son non essayé',
  settings: 'Comment la maison sonne',
  volume: 'Volume selon l’heure',
  from: 'dès',
  addVolume: 'Ajouter une heure',
  removeVolume: 'Retirer',
  quiet: 'Heures calmes\u00a0: un simple appel attend leur fin',
  quietMore: 'Ce qui est en retard ou en train d’être perdu sonne quand même.',
  quietFrom: 'Calme de',
  quietTo: 'à',
  testAt: 'Essai du son chaque jour à',
  timeNeeded: 'il faut une heure, par exemple 05:00',
} as const;

export function soundAskWords(clock: string, station: string | null): string {
  return station === null ? `Essai du son ${clock}\u00a0: entendu\u00a0?` : `Essai du son ${clock}\u00a0: entendu (${station})\u00a0?`;
}

export function soundOkWords(clock: string): string {
  return `son essayé ${clock}`;
}

export function soundOldWords(clock: string): string {
  return `dernier son entendu ${clock}`;
}

export function soundNotHeardWords(clock: string): string {
  return `son pas entendu ${clock}`;
}

export function quietTillWords(clock: string): string {
  return `calme jusqu’à ${clock}`;
}

export function noWallWords(deviceName: string): string {
  return `aucun mur ne sonne\u00a0: ${deviceName} sonne`;
}

export function soundsOnWords(deviceName: string): string {
  return `${deviceName} sonne.`;
}

export function lastHeardWords(clock: string): string {
  return `Entendu en dernier ${clock}.`;
}

export function lostFirstWords(tag: string): string {
  return `${tag} est en train d’être perdu\u00a0: pas d’essai maintenant.`;
}

export function volumeLabelWords(clock: string): string {
  return `Volume dès ${clock}`;
}
