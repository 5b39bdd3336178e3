import '../parts/no-eval.ts';
import { openFloorLink } from '../link/open-floor-link.ts';
import './kitchen-page.ts';

const page = document.querySelector('kitchen-page');
if (page === null) throw new Error('the page has no kitchen-page');
// To the house this page is a phone like another: it looks and acts, and never sounds.
const link = openFloorLink({ page: 'phone' });
link.setSound('none');
page.clock = { nowMs: () => link.nowMs(), pace: () => link.view.pace };
page.view = link.view;
link.subscribe(() => {
  page.view = link.view;
});
page.addEventListener('kitchen-command', (event) => void link.send(event.command));
