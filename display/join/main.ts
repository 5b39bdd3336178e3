import '../parts/no-eval.ts';
import { keepChoices } from '../parts/keep-choices.ts';
import { JOINING } from '../words/joining.ts';
import { joinPlaceOf } from './join-address.ts';
import './join-page.ts';
import { askAccess, askToJoin } from './join-store.ts';

/** So often a page that waits for joining to be opened asks again. */
const ASK_AGAIN_MS = 4000;

const page = document.querySelector('join-page');
if (page === null) throw new Error('the page has no join-page');
document.title = `${JOINING.title} · Ovenward`;
keepChoices(page, () => undefined);
const place = joinPlaceOf(location);
page.as = place.as;
page.to = place.to;
page.isScanned = place.ticket !== null;
// A ticket is good once: it is not left in the address, where it would be shown about and gone back to.
if (location.hash !== '') history.replaceState(null, '', location.pathname + location.search);

const look = async (): Promise<void> => {
  if (!page.isBusy) page.access = (await askAccess(fetch)) ?? 'failed';
  setTimeout(() => void look(), ASK_AGAIN_MS);
};
page.addEventListener('join-wanted', ({ code, deviceName }) => {
  page.isBusy = true;
  page.answer = null;
  void askToJoin(fetch, { code, ticket: place.ticket, as: place.as, name: deviceName }).then((answer) => {
    page.isBusy = false;
    page.answer = answer;
    if (answer.kind === 'joined') location.replace(place.to);
  });
});
void look();
