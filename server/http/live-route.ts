import type { FastifyInstance } from 'fastify';
import type { LiveHub } from '../live/live-hub.ts';
import { pageKindSchema, type PageKind } from '../../shared/wire/up.ts';
import type { Door } from './device-cookie.ts';
import { sendProblem } from './problem.ts';
import { servePeer } from './websocket-peer.ts';

/** The one websocket: `/live?page=wall`, `/live?page=station`, `/live?page=phone`. */
export function serveLive(app: FastifyInstance, hub: LiveHub, door: Door): void {
  app.route({
    method: 'GET',
    url: '/live',
    preValidation: async (request) => {
      // Here, not in the handler: the answer to the upgrade carries the cookie.
      if (request.ws) door.upgrade(request, pageOf(request.query));
      return undefined;
    },
    handler: async (_request, reply) => sendProblem(reply, 426, 'badInput', { detail: 'This address speaks websocket only.' }),
    wsHandler: (socket, request) => {
      const page = pageOf(request.query);
      servePeer(socket, hub, door.upgrade(request, page), page, request.log);
    },
  });
}

function pageOf(query: unknown): PageKind {
  const asked = typeof query === 'object' && query !== null && 'page' in query ? pageKindSchema.safeParse(query.page) : null;
  return asked?.success === true ? asked.data : 'phone';
}
