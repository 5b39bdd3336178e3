import '../parts/no-eval.ts';
import { openFloorLink } from '../link/open-floor-link.ts';
import { keepChoices } from '../parts/keep-choices.ts';
import { newId, randomBytes } from '../link/random-id.ts';
import { kept } from '../parts/kept.ts';
import { FORMULAS } from '../words/formulas.ts';
import { languageOfPage } from '../words/page-language.ts';
import { BookStore } from './book-store.ts';
import './formulas-page.ts';

const page = document.querySelector('formulas-page');
if (page === null) throw new Error('the page has no formulas-page');
document.title = `${FORMULAS.title} · Ovenward`;
page.language = languageOfPage();
page.tools = { store: new BookStore((path, init) => fetch(path, init)), shelf: kept, freshId: () => newId(randomBytes) };
page.search = location.search;
window.addEventListener('popstate', () => {
  page.search = location.search;
});
keepChoices(page, (look) => {
  page.look = look;
});
// It only looks at the floor: what it saves is decided by the server.
const link = openFloorLink({ page: 'phone', decide: () => null });
link.setSound('none');
page.clock = { nowMs: () => link.nowMs(), pace: () => link.view.pace };
page.view = link.view;
link.subscribe(() => {
  page.view = link.view;
});
// What is written is kept on this device, but a page that goes away with it should not go unasked.
window.addEventListener('beforeunload', (event) => {
  if (page.hasDraft) event.preventDefault();
});
