import type { TrimLot } from '../trim/trim-lot.ts';
import { type Circle, circleKey, type SausagePromise } from './kitchen-day.ts';

/** Whether a lot may go into a batch of a circle. The shop's meat and a customer's own never meet. */
export function mayJoin(lot: TrimLot, circle: Circle): boolean {
  if (circle.of === 'shop') return lot.ownerId === null;
  if (circle.of === 'owner') return lot.ownerId === circle.ownerId;
  return lot.mayPool && lot.ownerId !== null && circle.ownerIds.includes(lot.ownerId);
}

/** Whether a promise may be filled from a batch of a circle. */
export function mayFill(promise: SausagePromise, circle: Circle): boolean {
  if (circle.of === 'shop') return promise.ownerId === null;
  if (circle.of === 'owner') return promise.ownerId === circle.ownerId;
  return promise.ownerId !== null && circle.ownerIds.includes(promise.ownerId);
}

/**
 * The circles in which one recipe is asked for. A pool is of the owners who want this sausage and agreed to share, two
 * at least: nobody's trim is ground into what he did not ask for.
 */
export function circlesFor(promises: readonly SausagePromise[], lots: readonly TrimLot[]): Circle[] {
  const wanting = [...new Set(promises.map(({ ownerId }) => ownerId))];
  const circles = wanting.map(
    (ownerId): Circle => (ownerId === null ? { of: 'shop' } : { of: 'owner', ownerId }),
  );
  const ownerIds = wanting
    .filter((owner) => owner !== null)
    .filter((owner) => lots.some(({ ownerId, mayPool }) => mayPool && ownerId === owner));
  return ownerIds.length > 1 ? [...circles, { of: 'pool', ownerIds }] : circles;
}

/** Why lots may not be ground together, or nothing. */
export function mixFault(lots: readonly TrimLot[], circle: Circle): string | null {
  const stranger = lots.find((lot) => !mayJoin(lot, circle));
  if (!stranger) return null;
  const whose = stranger.ownerId === null ? 'the shop’s' : `of ${stranger.ownerId}`;
  return `${stranger.lotId} is ${whose} and may not go into a batch of ${circleKey(circle)}`;
}
