/**
 * Drawn for this project as one line each on a grid of 24 units, strokes 2 wide with round ends, everything at least a unit
 * inside the grid: `d` of a path that is stroked and never filled.
 */
export const ICON_PATHS = {
  back: 'M21 12 H4 M11 5 L4 12 L11 19',
  next: 'M3 12 H20 M13 5 L20 12 L13 19',
  undo: 'M9 3 L4 8 L9 13 M4 8 H14.5 A6 6 0 0 1 14.5 20 H7',
  done: 'M3.5 13 L9.5 19.5 L20.5 5',
  // From the line and away.
  started: 'M4 4 V20 M9 12 H20.5 M14.5 6 L20.5 12 L14.5 18',
  heard:
    'M5.5 9.5 A6.5 6.5 0 0 1 18.5 9.5 C18.5 14 14 14.5 14 18.5 A3 3 0 0 1 8.3 19.8 M9.5 9.5 A2.5 2.5 0 0 1 14.5 9.5 C14.5 11.5 12 12 11.5 14.5',
  // The ring with a hand, its last quarter made room for more.
  'more-time': 'M20 11 A8.5 8.5 0 1 0 11.5 20 M11.5 6.5 V11.5 L14.5 13.5 M18.5 15 V22 M15 18.5 H22',
  hold: 'M5 4 H9.5 V20 H5 Z M14.5 4 H19 V20 H14.5 Z',
  more: 'M4.4 12 A0.6 0.6 0 1 0 5.6 12 A0.6 0.6 0 1 0 4.4 12 M11.4 12 A0.6 0.6 0 1 0 12.6 12 A0.6 0.6 0 1 0 11.4 12 M18.4 12 A0.6 0.6 0 1 0 19.6 12 A0.6 0.6 0 1 0 18.4 12',
  // A hop from one stand to another.
  move: 'M2.5 14 H9.5 V20 H2.5 Z M6 10 C6 3 17.5 2 17.5 13 M13.5 10 L17.5 14 L21.5 10 M14 20 H21.5',
  shelf: 'M3.5 3 V21.5 M20.5 3 V21.5 M3.5 9.5 H20.5 M3.5 18 H20.5 M7 6 V9 M7 6 H13 V9 M11 14.5 V17.5 M11 14.5 H17 V17.5',
  tub: 'M2 5 H22 M4.5 5 L6.5 20.5 H17.5 L19.5 5 M6 13 C9 10 15 10 18 13',
  'cold-room': 'M4.5 2.5 H19.5 V21.5 H4.5 Z M12 7 V17 M7.7 9.5 L16.3 14.5 M16.3 9.5 L7.7 14.5',
  bench: 'M2 11 H22 M5 11 V21 M19 11 V21 M7.5 11 C7.5 5 16.5 5 16.5 11',
  // Decks as they stand, each with its window.
  oven: 'M3 3 H21 V21 H3 Z M3 12 H21 M7.5 7.5 H16.5 M7.5 16.5 H16.5',
  mixer: 'M2.5 11.5 H15.5 C15.5 15.8 13 18 9 18 C5 18 2.5 15.8 2.5 11.5 Z M5.5 4 H20.5 V21.5 H4 M9 4 V11.5',
  sound: 'M2.5 9 H6.5 L12 4 V20 L6.5 15 H2.5 Z M15.5 9 C17 10.8 17 13.2 15.5 15 M18.8 6 C22.2 9.6 22.2 14.4 18.8 18',
  'sound-off': 'M2.5 9 H6.5 L12 4 V20 L6.5 15 H2.5 Z M16 9 L22 15 M22 9 L16 15',
  // Two that hear each other; two that do not.
  link: 'M2 19 A3 3 0 1 0 8 19 A3 3 0 1 0 2 19 M16 5 A3 3 0 1 0 22 5 A3 3 0 1 0 16 5 M7.2 16.8 L16.8 7.2',
  'no-link': 'M2 19 A3 3 0 1 0 8 19 A3 3 0 1 0 2 19 M16 5 A3 3 0 1 0 22 5 A3 3 0 1 0 16 5 M9.8 9.8 L14.2 14.2 M14.2 9.8 L9.8 14.2',
  phone: 'M6.5 2 H17.5 V22 H6.5 Z M10.5 18 H13.5',
  // The line of now, what is to do on its left, what comes on its right.
  wall: 'M2 4 H22 V20 H2 Z M8.5 7.5 V16.5 M8.5 9.5 H18.5 M8.5 14.5 H14.5',
  // A screen held by an arm from a post.
  station: 'M3.5 2 V22 M3.5 9 H8.5 M8.5 4 H21.5 V15 H8.5 Z M11.5 18.5 H18.5',
  language: 'M2.5 3.5 H21.5 V17 H12 L7 21.5 V17 H2.5 Z M8.5 13.5 L12 6.5 L15.5 13.5 M9.8 11.2 H14.2',
  day: 'M8 12 A4 4 0 1 0 16 12 A4 4 0 1 0 8 12 M12 2 V4 M12 20 V22 M2 12 H4 M20 12 H22 M4.9 4.9 L6.3 6.3 M17.7 17.7 L19.1 19.1 M4.9 19.1 L6.3 17.7 M17.7 6.3 L19.1 4.9',
  night: 'M20.5 15 A9 9 0 1 1 10 3.2 A7.5 7.5 0 0 0 20.5 15 Z',
  question:
    'M2.5 12 A9.5 9.5 0 1 0 21.5 12 A9.5 9.5 0 1 0 2.5 12 M8.8 9.5 C8.8 5.5 15.2 5.5 15.2 9.5 C15.2 12 12 11.8 12 14.2 M12 17.6 V17.7',
  temperature: 'M7 13.5 V5 A2.8 2.8 0 0 1 12.6 5 V13.5 A4.6 4.6 0 1 1 7 13.5 Z M9.8 9 V17 M16.5 4 H20.5 M16.5 8.5 H19 M16.5 13 H20.5',
  count: 'M5 4 V20 M9.7 4 V20 M14.3 4 V20 M19 4 V20 M2 17 L22 7',
  'put-right': 'M3.5 20.5 L5 15 L16.5 3.5 L20.5 7.5 L9 19 Z M13.5 6.5 L17.5 10.5',
  list: 'M10 5.5 H21.5 M10 12 H21.5 M10 18.5 H21.5 M2.5 3 L6 5.5 L2.5 8 Z M2.5 12 H5.5 M2.5 18.5 H5.5',
  // A floor from above: two rooms and a way in.
  places: 'M13 21 H3 V3 H21 V21 H18 M3 12 H9 M13 3 V8 M13 12 H21',
  close: 'M5 5 L19 19 M19 5 L5 19',
} as const;
