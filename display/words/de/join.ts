/** How phones come to this kitchen. */
export const JOIN = {
  title: 'Handys',
  code: 'Code, der die Seite fürs Handy öffnet',
  scan: 'Scannen oder eintippen:',
  closed: 'Handys erreichen diese Backstube noch nicht',
  closedMore: 'Sie antwortet nur auf dem eigenen Rechner. Fürs lokale Netz so starten:',
  closedCaution: 'Dann kann jeder in diesem Netz tippen.',
} as const;
