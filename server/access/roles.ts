import type { ClientCommand } from '../../shared/floor/commands.ts';
import type { Device } from '../../shared/wire/down.ts';

/** What a device may do: look (walls), act (phones on the floor), manage (formulas, kitchen, devices). */
export type AccessRole = 'look' | 'act' | 'manage';

const RANK: Readonly<Record<AccessRole, number>> = { look: 0, act: 1, manage: 2 };

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
  'GET /': 'look',
  'GET /wall': 'look',
  'GET /wall/setup': 'look',
  'GET /phone': 'look',
  'GET /station': 'look',
  'GET /kitchen': 'look',
  'GET /formulas': 'look',
  'GET /weigh': 'look',
  'GET /day': 'look',
  'GET /assets/*': 'look',
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
} as const satisfies Readonly<Record<string, AccessRole>>;

export type Route = keyof typeof ROUTE_ROLES;

/** Says what a device may do (null: a browser or program that the house has not met); null where it may not be here at all. */
export type RoleOf = (device: Device | null) => AccessRole | null;

/** A device's role. Until the house can give roles, everybody who gets in has them all. */
export const everybodyManages: RoleOf = () => 'manage';

/** Whether a role may give a command. */
export function mayGive(role: AccessRole | null, command: ClientCommand['type']): boolean {
  return role !== null && RANK[role] >= RANK[COMMAND_ROLES[command]];
}

/** Whether a role may use a route. */
export function mayUse(role: AccessRole | null, route: Route): boolean {
  return role !== null && RANK[role] >= RANK[ROUTE_ROLES[route]];
}

/** The route of a method and a pattern as it stands in the table; null where it has no line there. HEAD is GET without the body. */
export function knownRoute(method: string, url: string): Route | null {
  const route = `${method === 'HEAD' ? 'GET' : method} ${url}`;
  return Object.hasOwn(ROUTE_ROLES, route) ? (route as Route) : null;
}
