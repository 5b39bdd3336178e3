/** How phones come to this kitchen. */
export const JOIN = {
  title: 'Handys',
  code: 'Code, der die Seite fürs Handy öffnet',
  scan: 'Scannen oder eintippen:',
  closed: 'Handys erreichen diese Backstube noch nicht',
  closedMore: 'Sie wurde nur für den eigenen Rechner gestartet. Auch fürs lokale Netz so starten:',
  closedCaution: 'Niemand kommt hinein, der nicht eingelassen wird.',
  joining: 'Geräte einlassen',
  roles: {
    look: 'Wer jetzt dazukommt, darf zusehen.',
    act: 'Wer jetzt dazukommt, darf in der Backstube tippen.',
    manage: 'Wer jetzt dazukommt, darf die Backstube verwalten.',
  },
  joinScan: 'Scannen, dann tippen',
  joinDigits: 'Code',
  joinAt: 'oder ohne Kamera, nur zum Zusehen:',
  locked: 'Zu viele falsche Codes: Zehn Minuten lang kommt niemand hinein.',
} as const;
