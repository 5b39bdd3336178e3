import '../parts/no-eval.ts';
import { openFloorLink } from '../link/open-floor-link.ts';
import { keepChoices } from '../parts/keep-choices.ts';
import { WEIGH } from '../words/weigh.ts';
import { decidedAtWeigh } from './decided-at-weigh.ts';
import { holdWeigh } from './hold-weigh.ts';
import './weigh-page.ts';

const page = document.querySelector('weigh-page');
if (page === null) throw new Error('the page has no weigh-page');
document.title = `${WEIGH.pageTitle} · Ovenward`;
keepChoices(page, () => undefined);
const link = openFloorLink({ page: 'phone', decide: decidedAtWeigh });
link.setSound('none');
holdWeigh(page, link, () => performance.now());
