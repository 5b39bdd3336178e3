import '../parts/no-eval.ts';
import { newId, randomBytes } from '../link/random-id.ts';
import { answerTo } from '../parts/answer-to.ts';
import { keepChoices } from '../parts/keep-choices.ts';
import { languageOfPage } from '../words/page-language.ts';
import { RECORDS } from '../words/records.ts';
import './records-page.ts';
import { askRecordsBy } from './records-store.ts';
import { VIEWS, viewNamed } from './views.ts';

// What the address asks for is fetched while the page is put together; where that fails, the page asks again.
VIEWS[viewNamed(new URLSearchParams(location.search).get('view'))].load().catch(() => undefined);

const page = document.querySelector('records-page');
if (page === null) throw new Error('the page has no records-page');
document.title = `${RECORDS.title} · Ovenward`;
page.language = languageOfPage();
page.tools = {
  ask: askRecordsBy((path, init) => fetch(path, init)),
  command: (command) => answerTo(fetch, 'POST', '/api/commands', { commandId: newId(randomBytes), command }),
  read: (path) => answerTo(fetch, 'GET', path),
  goTo: (search) => {
    history.pushState(null, '', `${location.pathname}${search}`);
    page.search = search;
    window.scrollTo(0, 0);
  },
  wallMs: () => Date.now(),
};
page.search = location.search;
window.addEventListener('popstate', () => {
  page.search = location.search;
});
keepChoices(page, (look) => {
  page.look = look;
});
