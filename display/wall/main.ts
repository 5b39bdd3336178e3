import '../parts/no-eval.ts';
import { decidedOnFloor } from '../link/decider.ts';
import { openFloorLink } from '../link/open-floor-link.ts';
import { lookOf, onBrowserLook, showLook } from '../parts/look.ts';
import { LostLinkSound } from '../sound/lost-link-sound.ts';
import { openPageSound } from '../sound/page-sound.ts';
import { answerSoundRequests } from '../sound/sound-requests.ts';
import { watchSound } from '../sound/sound-watch.ts';
import { volumeNow } from '../sound/volume-now.ts';
import { isForControl, isHearKey } from './hear-key.ts';
import { wallSettingsHere } from './kept-settings.ts';
import { WALL } from '../words/wall.ts';
import { isAddressed } from './wall-settings.ts';
import './wall-page.ts';

const link = openFloorLink({ page: 'wall', decide: decidedOnFloor });
const player = openPageSound();
const page = document.createElement('wall-page');
document.title = `${WALL.pageTitle} · Ovenward`;
const { viewing, look, stationId } = wallSettingsHere(location.search);
page.viewing = viewing;
page.look = look;
page.stationId = stationId;
// What stands in this wall's address is set up there too.
page.setUpUrl = isAddressed(new URLSearchParams(location.search)) ? `/wall/setup${location.search}` : '/wall/setup';
page.clockSource = { nowMs: () => link.nowMs(), pace: () => link.view.pace };

const browserLook = (): void => {
  page.browserLook = lookOf('browser');
};
browserLook();
onBrowserLook(browserLook);
page.addEventListener('look-now', (event) => showLook(event.look));

const lostLink = new LostLinkSound({
  after: (ms, callback) => {
    const timer = setTimeout(callback, ms);
    return () => clearTimeout(timer);
  },
  sound: () => void player.play('late', volumeNow(link)),
});

function follow(): void {
  const { view } = link;
  page.view = view;
  page.sound = player.readiness;
  const { connection } = view;
  lostLink.follow(connection, connection.phase === 'lost' ? (link.nowMs() - connection.lastContactMs) / view.pace : 0);
}

link.subscribe(follow);
player.subscribe(follow);
// A wall behind another window may be put to sleep at any moment: another device had better sound.
const sounding = answerSoundRequests(link, player, { isHidden: () => document.visibilityState === 'hidden', felt: () => {} });
document.addEventListener('visibilitychange', () => sounding.tell());
watchSound(player);
follow();
document.body.append(page);

void player.turnOn();
// A touch or a key on a silent wall turns its sound on; a key on a sounding one says "heard".
window.addEventListener('pointerup', () => void player.turnOn());
window.addEventListener('keydown', (event) => {
  if (player.readiness === 'waiting') {
    void player.turnOn();
    return;
  }
  if (isForControl(event) || !isHearKey(event)) return;
  event.preventDefault();
  link.send({ type: 'hearAllCalls' });
});
