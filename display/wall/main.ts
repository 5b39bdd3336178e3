import '../parts/no-eval.ts';
import { openFloorLink } from '../link/open-floor-link.ts';
import { LostLinkSound } from '../sound/lost-link-sound.ts';
import { openPageSound } from '../sound/page-sound.ts';
import { answerSoundRequests } from '../sound/sound-requests.ts';
import { isHearKey } from './hear-key.ts';
import { keepViewing } from './kept-viewing.ts';
import './wall-page.ts';

const link = openFloorLink({ page: 'wall' });
const player = openPageSound();
const page = document.createElement('wall-page');
page.viewing = keepViewing(location.search);
page.clockSource = { nowMs: () => link.nowMs(), pace: () => link.view.pace };

const lostLink = new LostLinkSound({
  after: (ms, callback) => {
    const timer = setTimeout(callback, ms);
    return () => clearTimeout(timer);
  },
  sound: () => void player.play('late'),
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
answerSoundRequests(link, player);
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
  if (!isHearKey(event)) return;
  event.preventDefault();
  link.send({ type: 'hearAllCalls' });
});
