import type { ReactiveController, ReactiveControllerHost } from 'lit';

/** The window's inner size in CSS px; asks for an update when it changes. */
export class ViewportSize implements ReactiveController {
  private readonly host: ReactiveControllerHost;
  private readonly onResize = (): void => this.host.requestUpdate();

  constructor(host: ReactiveControllerHost) {
    this.host = host;
    host.addController(this);
  }

  get widthPx(): number {
    return window.innerWidth;
  }

  get heightPx(): number {
    return window.innerHeight;
  }

  hostConnected(): void {
    window.addEventListener('resize', this.onResize);
  }

  hostDisconnected(): void {
    window.removeEventListener('resize', this.onResize);
  }
}
