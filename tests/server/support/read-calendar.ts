import ICAL from 'ical.js';

/** iCalendar text as another program reads it: ical.js, which shares nothing with ours. Throws on text that is none. */
export function readCalendar(text: string): InstanceType<typeof ICAL.Component> {
  return new ICAL.Component(ICAL.parse(text) as unknown[]);
}

/** Its events, in its order. */
export function eventsOf(text: string): InstanceType<typeof ICAL.Event>[] {
  return readCalendar(text)
    .getAllSubcomponents('vevent')
    .map((event) => new ICAL.Event(event));
}
