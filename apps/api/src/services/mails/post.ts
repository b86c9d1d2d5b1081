import type { Mail } from '@flitchbook/db';

/** Carries one mail away. Throws where it could not: the outbox tries again. */
export interface Post {
  send(mail: Mail): Promise<void>;
}
