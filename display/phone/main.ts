import '../parts/no-eval.ts';
import { decidedOnFloor } from '../link/decider.ts';
import { openFloorLink } from '../link/open-floor-link.ts';
import { keepChoices } from '../parts/keep-choices.ts';
import { holdSound } from '../sound/hold-sound.ts';
import { languageOfPage } from '../words/page-language.ts';
import { PHONE } from '../words/phone.ts';
import { holdPhone } from './hold-phone.ts';
import './phone-page.ts';

const page = document.querySelector('phone-page');
if (page === null) throw new Error('the page has no phone-page');
document.title = `${PHONE.pageTitle} · Ovenward`;
page.language = languageOfPage();
keepChoices(page, (look) => {
  page.look = look;
});
const link = openFloorLink({ page: 'phone', decide: decidedOnFloor });
holdSound(link);
holdPhone(page, link, () => performance.now());
