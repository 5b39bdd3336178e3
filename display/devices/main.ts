import '../parts/no-eval.ts';
import { keepChoices } from '../parts/keep-choices.ts';
import { DEVICES } from '../words/devices.ts';
import { askDevices, grant } from './device-store.ts';
import './devices-page.ts';

/** So often the list is asked for again while it is looked at: who is connected changes by itself. */
const ASK_AGAIN_MS = 5000;

const page = document.querySelector('devices-page');
if (page === null) throw new Error('the page has no devices-page');
document.title = `${DEVICES.title} · Ovenward`;
keepChoices(page, () => undefined);

const look = async (): Promise<void> => {
  const shown = await askDevices(fetch, () => Date.now());
  if (shown.phase === 'forbidden') location.replace('/join?to=%2Fdevices');
  page.shown = shown;
};
page.addEventListener('device-wish', ({ wish }) => {
  void grant(fetch, wish).then(async (answer) => {
    page.said = answer;
    await look();
  });
});
const lookAgain = async (): Promise<void> => {
  if (document.visibilityState === 'visible') await look();
  setTimeout(() => void lookAgain(), ASK_AGAIN_MS);
};
void lookAgain();
