/** How phones come to this kitchen. */
export const JOIN = {
  title: 'Téléphones',
  code: 'Code qui ouvre la page du téléphone',
  scan: 'Scanner, ou taper\u00a0:',
  closed: 'Les téléphones n’atteignent pas encore ce fournil',
  closedMore: 'Il a été lancé pour sa seule machine. Pour l’ouvrir aussi au réseau local, le lancer avec',
  closedCaution: 'Personne n’entre sans y être admis.',
  joining: 'Admission d’appareils',
  roles: {
    look: 'Qui entre maintenant peut regarder.',
    act: 'Qui entre maintenant peut agir au fournil.',
    manage: 'Qui entre maintenant peut gérer le fournil.',
  },
  joinScan: 'Scanner, puis taper',
  joinDigits: 'Code',
  joinAt: 'ou sans caméra, pour regarder seulement\u00a0:',
  locked: 'Trop de codes faux\u00a0: personne n’entre pendant dix minutes.',
} as const;
