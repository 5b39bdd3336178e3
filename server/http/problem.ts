import type { FastifyReply } from 'fastify';

/** Where problem types are described: a fragment of the project's own guide. */
const TYPE_PREFIX = 'urn:ovenward:problem:';

/** The problems that routes answer with; each stands in DEVELOPERS.md. */
export type ProblemCode =
  | 'badInput'
  | 'refused'
  | 'notKept'
  | 'forbidden'
  | 'wrongCode'
  | 'joiningClosed'
  | 'tooManyTries'
  | 'tooManyRequests'
  | 'otherHost'
  | 'notFound'
  | 'tooLarge'
  | 'wrongMediaType'
  | 'unexpected'
  | 'unavailable';

const TITLES: Readonly<Record<ProblemCode, string>> = {
  badInput: 'The input is not right',
  refused: 'The floor refused the command',
  notKept: 'The journal could not keep the command',
  forbidden: 'Not allowed',
  wrongCode: 'The code is not right',
  joiningClosed: 'Nobody is let in at present',
  tooManyTries: 'Too many wrong codes',
  tooManyRequests: 'Too much is asked from there',
  otherHost: 'This is another server',
  notFound: 'There is nothing here',
  tooLarge: 'The body is too large',
  wrongMediaType: 'The body is not JSON',
  unexpected: 'Something is wrong with the server',
  unavailable: 'The server cannot keep anything at present',
};

/** What a problem may carry beside the members of RFC 9457. */
export interface ProblemDetails {
  readonly detail: string;
  /** Every fault with its field, where the input was not right. */
  readonly faults?: readonly { readonly path: string; readonly message: string }[];
  /** Members of our own (RFC 9457 section 3.2). */
  readonly more?: Readonly<Record<string, unknown>>;
}

/** Answers with `application/problem+json` (RFC 9457). */
export function sendProblem(
  reply: FastifyReply,
  status: number,
  code: ProblemCode,
  { detail, faults, more }: ProblemDetails,
): FastifyReply {
  return reply
    .code(status)
    .type('application/problem+json')
    .send(
      JSON.stringify({
        type: `${TYPE_PREFIX}${code}`,
        title: TITLES[code],
        status,
        detail,
        ...(faults === undefined ? {} : { faults }),
        ...more,
      }),
    );
}
