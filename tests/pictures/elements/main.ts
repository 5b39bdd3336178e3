// First, as in the pages: before any schema is made.
import '../../../display/parts/no-eval.ts';
import { html, render, type TemplateResult } from 'lit';
import { LOOKS, showLook, type Look } from '../../../display/parts/look.ts';
import type { Scenes } from './scene.ts';
import { accessSection } from './sections/access.ts';
import { coloursSection } from './sections/colours.ts';
import { commonSection } from './sections/common.ts';
import { daySection } from './sections/day.ts';
import { daySheetSection } from './sections/day-sheet.ts';
import { formulasBookSection } from './sections/formulas-book.ts';
import { formulasMethodSection } from './sections/formulas-method.ts';
import { kitchenSection } from './sections/kitchen.ts';
import { iconsSection, marksSection } from './sections/marks.ts';
import { phoneSection } from './sections/phone.ts';
import { recordsLearnedSection } from './sections/records-learned.ts';
import { recordsSection } from './sections/records.ts';
import { traceSection } from './sections/trace.ts';
import { screensSection } from './sections/screens.ts';
import { wallSection } from './sections/wall.ts';
import { weighSection } from './sections/weigh.ts';
import { showScreen } from './show-screen.ts';

const query = new URLSearchParams(location.search);
const look = LOOKS.find((known) => known === query.get('look')) ?? 'day';
const scenes = (await (await fetch('./scenes.json')).json()) as Scenes;

const SECTIONS = {
  colours: coloursSection,
  marks: marksSection,
  icons: iconsSection,
  common: commonSection,
  access: accessSection,
  wall: wallSection,
  phone: phoneSection,
  kitchen: kitchenSection,
  'formulas-book': formulasBookSection,
  'formulas-method': formulasMethodSection,
  weigh: weighSection,
  day: daySection,
  'day-sheet': daySheetSection,
  records: recordsSection,
  'records-learned': recordsLearnedSection,
  'records-trace': traceSection,
  screens: screensSection,
} as const satisfies Readonly<Record<string, (scenes: Scenes, look: Look) => TemplateResult>>;

/** `?look=night`, `?only=marks,wall` for some of the sections, `?screen=wall&scene=no dough` for one whole page. */
async function showPage(): Promise<void> {
  showLook(look);
  // Widths of texts are measured before they are drawn.
  await document.fonts.load("700 40px 'Atkinson Hyperlegible Next Variable'");
  const screen = query.get('screen');
  if (screen === null) showGallery();
  else showScreen(scenes, screen, query.get('scene') ?? '');
  document.body.dataset['shown'] = 'yes';
}

function showGallery(): void {
  const only = query.get('only')?.split(',') ?? Object.keys(SECTIONS);
  const chosen = Object.entries(SECTIONS).filter(([id]) => only.includes(id));
  render(
    html`<main class="gallery">
      <h1>Every element in every state</h1>
      <nav aria-label="Sections">${chosen.map(([id]) => html`<a href="#${id}">${id}</a> `)}</nav>
      ${chosen.map(([, show]) => show(scenes, look))}
    </main>`,
    document.body,
  );
}

await showPage();
