import '../parts/no-eval.ts';
import { decidedOnFloor } from '../link/decider.ts';
import { openFloorLink } from '../link/open-floor-link.ts';
import { keepChoices } from '../parts/keep-choices.ts';
import { KITCHEN } from '../words/kitchen.ts';
import { languageOfPage } from '../words/page-language.ts';
import { askBackups } from './backup-store.ts';
import './kitchen-page.ts';

const page = document.querySelector('kitchen-page');
if (page === null) throw new Error('the page has no kitchen-page');
document.title = `${KITCHEN.title} · Ovenward`;
page.language = languageOfPage();
keepChoices(page, (look) => {
  page.look = look;
});
// To the house this page is a phone like another: it looks and acts, and never sounds.
const link = openFloorLink({ page: 'phone', decide: decidedOnFloor });
link.setSound('none');
page.clock = { nowMs: () => link.nowMs(), pace: () => link.view.pace };
page.view = link.view;
link.subscribe(() => {
  page.view = link.view;
});
page.addEventListener('kitchen-command', (event) => void link.send(event.command));
// Only the last that was asked counts: an older answer may come later.
let asked = 0;
page.addEventListener('backups-asked', ({ isNow }) => {
  asked += 1;
  const mine = asked;
  page.backups = { phase: isNow ? 'making' : 'asking' };
  void askBackups((path, init) => fetch(path, init), isNow, Date.now).then((shown) => {
    if (mine === asked) page.backups = shown;
  });
});
// Another language is another load: what was changed and not kept would be lost with it.
window.addEventListener('beforeunload', (event) => {
  if (page.hasDraft) event.preventDefault();
});
