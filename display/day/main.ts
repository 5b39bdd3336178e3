import '../parts/no-eval.ts';
import { BookStore } from '../formulas/book-store.ts';
import { openFloorLink } from '../link/open-floor-link.ts';
import { newId, randomBytes } from '../link/random-id.ts';
import { keepChoices } from '../parts/keep-choices.ts';
import { DAY } from '../words/day.ts';
import { languageOfPage } from '../words/page-language.ts';
import './day-page.ts';
import { PlanStore } from './plan-store.ts';

const page = document.querySelector('day-page');
if (page === null) throw new Error('the page has no day-page');
document.title = `${DAY.title} · Ovenward`;
page.language = languageOfPage();
page.tools = {
  book: new BookStore((path, init) => fetch(path, init)),
  plan: new PlanStore((path, init) => fetch(path, init)),
  freshId: () => newId(randomBytes),
  wait: (ms) => new Promise((resolve) => setTimeout(resolve, ms)),
  goTo: (search, how) => {
    if (how === 'push') history.pushState(null, '', `${location.pathname}${search}`);
    else history.replaceState(null, '', `${location.pathname}${search}`);
  },
};
page.search = location.search;
window.addEventListener('popstate', () => {
  page.search = location.search;
});
keepChoices(page, (look) => {
  page.look = look;
});
// It looks at the floor as a phone does, and never sounds; orders and plans are the server's to decide.
const link = openFloorLink({ page: 'phone', decide: () => null });
link.setSound('none');
page.clock = { nowMs: () => link.nowMs(), pace: () => link.view.pace };
page.view = link.view;
link.subscribe(() => {
  page.view = link.view;
});
// What is typed or pasted is in nobody's hands but this page's.
window.addEventListener('beforeunload', (event) => {
  if (page.hasDraft) event.preventDefault();
});
