import { html, nothing, type TemplateResult } from 'lit';
import type { RestPlace, Station } from '../../shared/documents/kitchen.ts';
import { temperatureText } from '../parts/temperature-text.ts';
import { handsWords, KITCHEN, PLACE_KINDS, roomWords } from '../words/kitchen.ts';
import { freeWord, tagsOr, thing, zone, type PlanContext } from './plan-context.ts';

/** Cells that are drawn for a place's room; beyond them only the number is said. */
const MOST_CELLS = 24;

/** Benches, shelves and cold rooms with what stands there, and how much room is left. */
export function placesPlan(context: PlanContext): TemplateResult {
  const { restPlaces } = context.kitchen;
  return zone(
    context,
    'places',
    KITCHEN.restPlaces,
    'restPlace',
    'restPlaces',
    html`${restPlaces.map((place) => placePlan(context, place))}`,
  );
}

function placePlan(context: PlanContext, place: RestPlace): TemplateResult {
  const tags = context.now.tagsAt({ kind: 'restPlace', id: place.id });
  return thing(
    context,
    'restPlace',
    place.id,
    `place ${place.kind}`,
    html`<span class="head">
        <span class="name">${place.name}</span>
        <span class="figure">${temperatureText(place.temperatureC, context.house.units.temperature)}</span>
      </span>
      <span class="soft">${PLACE_KINDS[place.kind]}${place.room === undefined ? '' : ` · ${roomWords(tags.length, place.room)}`}</span>
      ${place.room === undefined || Number.isNaN(place.room) || place.room > MOST_CELLS ? nothing : cells(tags.length, place.room)}
      <span class="tags">${tagsOr(tags, KITCHEN.empty)}</span>`,
  );
}

function cells(taken: number, room: number): TemplateResult {
  return html`<span class="cells" aria-hidden="true">
    ${Array.from({ length: Math.max(0, Math.trunc(room)) }, (_, index) => html`<span class="cell ${index < taken ? 'full' : ''}"></span>`)}
  </span>`;
}

/** Where people work, with the hands that are there and what they are at. */
export function stationsPlan(context: PlanContext): TemplateResult {
  const { stations } = context.kitchen;
  return zone(
    context,
    'stations',
    KITCHEN.stations,
    'station',
    'stations',
    html`${stations.map((station) => stationPlan(context, station))}`,
  );
}

function stationPlan(context: PlanContext, station: Station): TemplateResult {
  const tags = context.now.tagsAt({ kind: 'station', id: station.id });
  return thing(
    context,
    'station',
    station.id,
    'station',
    html`<span class="name">${station.name}</span><span class="soft">${handsWords(station.hands)}</span>
      ${(station.hours ?? []).map(({ from, to }) => html`<span class="soft">${from}–${to}</span>`)}
      <span class="tags">${tagsOr(tags, freeWord(context, { kind: 'station', id: station.id }))}</span>`,
  );
}
