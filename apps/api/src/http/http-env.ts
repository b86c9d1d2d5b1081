import type { Context } from 'hono';
import type { Log } from '../log.ts';
import type { RefusalType } from '../refusals.ts';
import type { Ctx, Services } from '../services/ctx.ts';
import type { LinkLimits } from '../services/customers/link-limits.ts';
import type { DemoSignIn } from '../services/demo/sign-ins.ts';
import type { Session } from '../services/sessions/read.ts';
import type { SignInLimits } from '../services/sessions/sign-in.ts';
import type { SessionCookie } from './session-cookie.ts';

/** How long streams of events may last. */
interface Streams {
  /** a stream ends after so long; whoever follows connects again */
  readonly maxSeconds: number;
  readonly stopping: () => boolean;
}

/** What the transport needs besides the services. */
export interface Transport {
  readonly cookie: SessionCookie;
  readonly signInLimits: SignInLimits;
  readonly linkLimits: LinkLimits;
  /** the network that a request came from, by its socket: headers can be forged */
  readonly networkOf: (c: Context) => string;
  readonly streams: Streams;
  /** true while the database answers and the service is not stopping */
  readonly isReady: () => Promise<boolean>;
  /** shown on the sign-in page of the invented shop, and only to this machine */
  readonly demoSignIns: readonly DemoSignIn[];
  /** address that browsers use, where it is not the one listened on */
  readonly publicOrigin: string | null;
  /** the built web app, if there is one */
  readonly webFolder: string | null;
  readonly log: Log;
  /** milliseconds on a clock that only runs forward */
  readonly nowMs: () => number;
  readonly newRequestId: () => string;
}

/** What a request carries along. */
export interface HttpEnv {
  Variables: {
    services: Services;
    transport: Transport;
    requestId: string;
    /** once a gate has let the request through */
    ctx: Ctx;
    session: Session | undefined;
    /** for the log */
    refusal: RefusalType | undefined;
  };
}
