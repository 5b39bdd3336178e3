import '../parts/no-eval.ts';
import { trustSchema, TRUSTS_COOKIE, type Trust } from '../../shared/wire/trust.ts';
import { answerTo } from '../parts/answer-to.ts';
import { keepChoices } from '../parts/keep-choices.ts';
import { TRUST } from '../words/trust.ts';
import './trust-page.ts';

/** So often it is tried again whether this browser comes through: somebody may be putting the root in at this moment. */
const TRY_AGAIN_MS = 3000;
/** As long as a browser keeps a cookie at most. */
const MAX_AGE_S = 400 * 24 * 3600;

const page = document.querySelector('trust-page');
if (page === null) throw new Error('the page has no trust-page');
document.title = `${TRUST.title} · Ovenward`;
keepChoices(page, () => undefined);
page.url = `${location.origin}/trust`;

const asked = new URLSearchParams(location.search).get('to') ?? '';
const to = asked.startsWith('/') && !asked.startsWith('//') ? asked : '/';

async function begin(): Promise<void> {
  const answer = await answerTo(fetch, 'GET', '/api/trust');
  const trust = trustSchema.safeParse(answer?.body);
  if (!trust.success) {
    if (page !== null) page.shown = { phase: answer?.status === 404 ? 'none' : 'failed' };
    return;
  }
  await tryAgain(trust.data);
}

async function tryAgain(trust: Trust): Promise<void> {
  if (page === null) return;
  const { fingerprint, port } = trust;
  const secure = `https://${location.hostname}:${port}`;
  // What was scanned stands behind the #, and comes along.
  page.secureUrl = secure + to + location.hash;
  if (page.shown.phase !== 'here') page.shown = { phase: 'here', fingerprint, isTrusted: null };
  const isTrusted = await comesThrough(`${secure}/api/trust`);
  page.shown = { phase: 'here', fingerprint, isTrusted };
  if (isTrusted) document.cookie = `${TRUSTS_COOKIE}=1; Max-Age=${MAX_AGE_S}; Path=/; SameSite=Strict`;
  else setTimeout(() => void tryAgain(trust), TRY_AGAIN_MS);
}

/** Whether a connection over TLS comes about: what is answered is nobody's business here. */
async function comesThrough(url: string): Promise<boolean> {
  try {
    await fetch(url, { mode: 'no-cors', cache: 'no-store' });
    return true;
  } catch {
    // The browser does not say why; a certificate that it does not trust is what is expected.
    return false;
  }
}

void begin();
