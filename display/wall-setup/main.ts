import '../parts/no-eval.ts';
import { decidedOnFloor } from '../link/decider.ts';
import { openFloorLink } from '../link/open-floor-link.ts';
import { randomBytes } from '../link/random-id.ts';
import { keepLanguageChoice } from '../parts/keep-choices.ts';
import { lookOf, onBrowserLook, showLook } from '../parts/look.ts';
import { languageOfPage } from '../words/page-language.ts';
import { SETUP } from '../words/wall-setup.ts';
import { keepWallSettings, wallSettingsHere } from '../wall/kept-settings.ts';
import { isAddressed, queryOf } from '../wall/wall-settings.ts';
import { gapsFrom, RING_COUNT } from './ring-answers.ts';
import './setup-page.ts';

// To the house this page is the wall that it is about, but one that never sounds: another device does meanwhile.
const link = openFloorLink({ page: 'wall', decide: decidedOnFloor });
link.setSound('none');
const page = document.createElement('setup-page');
const newGaps = (): void => {
  page.gaps = gapsFrom(randomBytes(RING_COUNT));
};
const browserLook = (): void => {
  page.browserLook = lookOf('browser');
};

document.title = `${SETUP.title} · Ovenward`;
page.language = languageOfPage();
page.settings = wallSettingsHere(location.search);
page.isAddressed = isAddressed(new URLSearchParams(location.search));
page.wallUrl = new URL('/wall', location.href).href;
page.clockSource = { nowMs: () => link.nowMs(), pace: () => link.view.pace };
page.view = link.view;
link.subscribe(() => {
  page.view = link.view;
});
newGaps();
browserLook();
onBrowserLook(browserLook);
keepLanguageChoice(page);
page.addEventListener('look-now', (event) => showLook(event.look));
page.addEventListener('rings-again', newGaps);
page.addEventListener('left-alone', () => location.assign(page.backUrl));
page.addEventListener('settings-changed', (event) => {
  page.settings = event.settings;
  // A wall whose address says how it is has what it is set to in its address, and leaves what is kept to the others.
  if (page.isAddressed) history.replaceState(null, '', `?${queryOf(event.settings)}`);
  else keepWallSettings(event.settings);
});
document.body.append(page);
