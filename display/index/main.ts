import { keepChoices } from '../parts/keep-choices.ts';
import { languageOfPage } from '../words/page-language.ts';
import './start-page.ts';

const page = document.querySelector('start-page');
if (page === null) throw new Error('the page has no start-page');
page.address = location.origin;
page.language = languageOfPage();
keepChoices(page, (look) => {
  page.look = look;
});
