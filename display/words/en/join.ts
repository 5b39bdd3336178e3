/** How phones come to this kitchen. */
export const JOIN = {
  title: 'Phones',
  code: 'Code that opens the phone’s page',
  scan: 'Scan it, or type:',
  closed: 'Phones cannot reach this kitchen yet',
  closedMore: 'It answers on its own machine only. To open it to the local network, start it with',
  closedCaution: 'Anybody on that network can then tap.',
} as const;
