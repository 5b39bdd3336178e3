import type { RecordsTools } from './records-tools.ts';

/** Follows a link of this page within it, unless it is to be opened elsewhere. For `@click` of an anchor. */
export function following(tools: RecordsTools | null): (event: MouseEvent) => void {
  return (event) => {
    const link = event.currentTarget;
    if (tools === null || event.ctrlKey || event.metaKey || event.shiftKey || !(link instanceof HTMLAnchorElement)) return;
    event.preventDefault();
    tools.goTo(new URL(link.href).search);
  };
}
