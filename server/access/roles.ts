import type { ClientCommand } from '../../shared/floor/commands.ts';
import type { AccessRole } from '../../shared/wire/joining.ts';

export type { AccessRole } from '../../shared/wire/joining.ts';

/** What a route asks for: a role, or nothing where it holds nothing of the house (pages, joining). */
export type LeastRole = AccessRole | 'anybody';

const RANK: Readonly<Record<LeastRole, number>> = { anybody: -1, look: 0, act: 1, manage: 2 };

/** The least role for each command. A new command without a line here does not compile. */
export const COMMAND_ROLES: Readonly<Record<ClientCommand['type'], AccessRole>> = {
  startStep: 'act',
  finishStep: 'act',
  giveMoreTime: 'act',
  answerPrompt: 'act',
  hearCall: 'look',
  hearAllCalls: 'look',
  holdWorkpiece: 'act',
  releaseWorkpiece: 'act',
  skipStep: 'act',
  discardWorkpiece: 'act',
  decideHolding: 'manage',
  readTemperature: 'act',
  reportProgress: 'act',
  helpStep: 'act',
  handOver: 'act',
  sayWhere: 'act',
  moveWorkpiece: 'act',
  correctTime: 'act',
  correctCount: 'act',
  correctTag: 'act',
  makeLoads: 'act',
  joinWorkpieces: 'act',
  drawFrom: 'act',
  putBack: 'act',
  planFeed: 'act',
  addIngredient: 'act',
  nameLoss: 'act',
  setDeck: 'act',
  readPlace: 'act',
  openPlace: 'act',
  moveLoad: 'act',
  startTestPiece: 'act',
  endTestPiece: 'act',
  beginProgramme: 'act',
  blockResource: 'act',
  freeResource: 'act',
  closeDay: 'act',
  adoptKitchen: 'manage',
  adoptHouse: 'manage',
  adoptFormula: 'manage',
  adoptProduct: 'manage',
  adoptIngredient: 'manage',
  archiveFormula: 'manage',
  leaveLesson: 'manage',
  bringInBook: 'manage',
  planBatches: 'manage',
  placeOrders: 'manage',
  withdrawOrders: 'manage',
  adoptStanding: 'manage',
  setPin: 'manage',
  liftPin: 'manage',
  weighIngredient: 'act',
  unweighIngredient: 'act',
  scaleToLine: 'act',
  takeWater: 'act',
  forgetRise: 'act',
  askSoundTest: 'act',
  answerSoundTest: 'act',
  undoCommand: 'look',
};

/** The least role for each route. */
export const ROUTE_ROLES = {
  'GET /': 'anybody',
  'GET /wall': 'anybody',
  'GET /wall/setup': 'anybody',
  'GET /phone': 'anybody',
  'GET /station': 'anybody',
  'GET /kitchen': 'anybody',
  'GET /formulas': 'anybody',
  'GET /weigh': 'anybody',
  'GET /day': 'anybody',
  'GET /join': 'anybody',
  'GET /devices': 'anybody',
  'GET /records': 'anybody',
  'GET /trust': 'anybody',
  'GET /root.crt': 'anybody',
  'GET /api/trust': 'anybody',
  'GET /assets/*': 'anybody',
  'GET /api/access': 'anybody',
  'POST /api/join': 'anybody',
  'GET /api/joining': 'manage',
  'POST /api/joining': 'manage',
  'DELETE /api/joining': 'manage',
  'GET /api/devices': 'manage',
  'PUT /api/devices/:id/role': 'manage',
  'DELETE /api/devices/:id': 'manage',
  'DELETE /api/devices/:id/name': 'manage',
  'GET /live': 'look',
  'GET /health': 'look',
  'GET /api/state': 'look',
  'GET /api/events': 'look',
  'POST /api/commands': 'act',
  'GET /api/book': 'look',
  'GET /api/book/formulas/:id': 'look',
  'GET /api/book/export': 'look',
  'POST /api/book/import': 'manage',
  'GET /api/weigh-out/:id': 'look',
  'GET /api/export': 'manage',
  'GET /api/records/:question': 'look',
  'GET /api/records-export': 'manage',
  'GET /api/backups': 'manage',
  'POST /api/backups': 'manage',
  'POST /api/calc/:name': 'look',
  'GET /api/plan': 'look',
  'POST /api/plan/proposals': 'manage',
  'GET /api/plan/proposals/:id': 'look',
  'DELETE /api/plan/proposals/:id': 'manage',
  'POST /api/plan/proposals/:id/keep': 'manage',
  'POST /api/plan/tries': 'manage',
  'GET /api/plan/tries/:id': 'look',
  'GET /api/plan/calendar': 'look',
} as const satisfies Readonly<Record<string, LeastRole>>;

export type Route = keyof typeof ROUTE_ROLES;

/** Who has come without a token that the house knows. */
export interface Guest {
  /** From the server's own machine. */
  readonly isHere: boolean;
  /** The page that opens a websocket; null for a request. */
  readonly page: 'wall' | 'station' | 'phone' | null;
}

/** What a guest may do; null where it may not be here at all. */
export type RoleOfGuest = (guest: Guest) => AccessRole | null;

/** The wall on the server's own machine needs no phone to let it in, and whoever sits there may look. Nobody else is in. */
export const looksWhereTheServerIs: RoleOfGuest = ({ isHere, page }) => (isHere && (page === null || page === 'wall') ? 'look' : null);

/** Of two roles the one that may more. */
export function higherRole(a: AccessRole, b: AccessRole): AccessRole {
  return RANK[a] >= RANK[b] ? a : b;
}

/** Whether a role may give a command. */
export function mayGive(role: AccessRole | null, command: ClientCommand['type']): boolean {
  return role !== null && RANK[role] >= RANK[COMMAND_ROLES[command]];
}

/** Whether a role may use a route. */
export function mayUse(role: AccessRole | null, route: Route): boolean {
  return RANK[role ?? 'anybody'] >= RANK[ROUTE_ROLES[route]];
}

/** The route of a method and a pattern as it stands in the table; null where it has no line there. HEAD is GET without the body. */
export function knownRoute(method: string, url: string): Route | null {
  const route = `${method === 'HEAD' ? 'GET' : method} ${url}`;
  return Object.hasOwn(ROUTE_ROLES, route) ? (route as Route) : null;
}
