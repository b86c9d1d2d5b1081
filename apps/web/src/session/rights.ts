import type { Session } from '../wire/client.ts';

/** What the screens offer a person. The service decides for itself; this only keeps dead ends off the screen. */
export interface Rights {
  readonly takeOrders: boolean;
  /** settle choices, try them out, plan again */
  readonly settle: boolean;
}

export function rightsOf({ person: { role } }: Session): Rights {
  return {
    takeOrders: role === 'counter' || role === 'owner',
    settle: role === 'butcher' || role === 'owner',
  };
}

export const allRights: Rights = { takeOrders: true, settle: true };
