/** How phones come to this kitchen. */
export const JOIN = {
  title: 'Phones',
  code: 'Code that opens the phone’s page',
  scan: 'Scan it, or type:',
  closed: 'Phones cannot reach this kitchen yet',
  closedMore: 'It was started for its own machine only. For the local network as well, start it with',
  closedCaution: 'Nobody gets in without being let in.',
  joining: 'Letting devices in',
  roles: { look: 'Who joins now may look.', act: 'Who joins now may act on the floor.', manage: 'Who joins now may manage the kitchen.' },
  joinScan: 'Scan, then type',
  joinDigits: 'Code',
  joinAt: 'or without a camera, to look only:',
  locked: 'Too many wrong codes: nobody is let in for ten minutes.',
} as const;
