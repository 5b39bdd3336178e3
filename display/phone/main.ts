import '../parts/no-eval.ts';
import { openFloorLink } from '../link/open-floor-link.ts';
import { holdPhone } from './hold-phone.ts';
import './phone-page.ts';

const page = document.querySelector('phone-page');
if (page === null) throw new Error('the page has no phone-page');
holdPhone(page, openFloorLink({ page: 'phone' }), () => performance.now());
