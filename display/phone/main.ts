import '../parts/no-eval.ts';
import { openFloorLink } from '../link/open-floor-link.ts';
import { keptLookChoice, lookOf, onBrowserLook, showLook } from '../parts/look.ts';
import { holdPhone } from './hold-phone.ts';
import './phone-page.ts';

const page = document.querySelector('phone-page');
if (page === null) throw new Error('the page has no phone-page');
const look = (): void => showLook(lookOf(keptLookChoice('browser')));
look();
onBrowserLook(look);
holdPhone(page, openFloorLink({ page: 'phone' }), () => performance.now());
