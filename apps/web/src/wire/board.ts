// What the service sends. Types only: the service has checked it before it left.
export type { Board, BoardOrder } from '@flitchbook/contracts';
