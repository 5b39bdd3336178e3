/** How phones come to this kitchen. */
export const JOIN = {
  title: 'Téléphones',
  code: 'Code qui ouvre la page du téléphone',
  scan: 'Scanner, ou taper\u00a0:',
  closed: 'Les téléphones n’atteignent pas encore ce fournil',
  closedMore: 'Il ne répond que sur sa propre machine. Pour l’ouvrir au réseau local, le lancer avec',
  closedCaution: 'N’importe qui sur ce réseau peut alors agir.',
} as const;
