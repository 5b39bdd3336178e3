import type { FloorView } from '../link/floor-link.ts';
import type { LostLinkSound } from './lost-link-sound.ts';

/**
 * The lost link of a device that may be the house's voice. Whoever was it says that it has lost the house; all the others
 * would only make a din.
 */
export class OwnVoice {
  private readonly lostLink: Pick<LostLinkSound, 'follow'>;
  private wasOurs = false;

  constructor(lostLink: Pick<LostLinkSound, 'follow'>) {
    this.lostLink = lostLink;
  }

  /** Told of every view. `nowMs` is the house's time. */
  follow({ connection, soundingDeviceId, device, pace }: FloorView, nowMs: number): void {
    if (connection.phase === 'live') this.wasOurs = soundingDeviceId !== null && soundingDeviceId === device?.id;
    if (connection.phase === 'live' || this.wasOurs)
      this.lostLink.follow(connection, connection.phase === 'lost' ? (nowMs - connection.lastContactMs) / pace : 0);
  }
}
