import '../parts/no-eval.ts';
import { decidedOnFloor } from '../link/decider.ts';
import { openFloorLink } from '../link/open-floor-link.ts';
import { keepChoices } from '../parts/keep-choices.ts';
import { holdSound } from '../sound/hold-sound.ts';
import { languageOfPage } from '../words/page-language.ts';
import { STATION } from '../words/station.ts';
import { holdStation } from './hold-station.ts';
import { keepStation, openingStation } from './kept-station.ts';
import './station-page.ts';
import { StayLit } from './stay-lit.ts';

const page = document.querySelector('station-page');
if (page === null) throw new Error('the page has no station-page');
document.title = `${STATION.pageTitle} · Ovenward`;
page.language = languageOfPage();
page.stationId = openingStation();
keepChoices(page, (look) => {
  page.look = look;
});

const link = openFloorLink({ page: 'station', decide: decidedOnFloor });
holdSound(link);
holdStation(page, link, () => performance.now(), keepStation);

const screen = new StayLit({
  // Outside a secure context, as on every address of a local network, a browser has none.
  locks: 'wakeLock' in navigator ? navigator.wakeLock : null,
  isVisible: () => document.visibilityState === 'visible',
  changed: (lit) => {
    page.lit = lit;
  },
});
void screen.look();
document.addEventListener('visibilitychange', () => void screen.look());
window.addEventListener('pointerup', () => void screen.look());
