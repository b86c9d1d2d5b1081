import type { Context } from 'hono';
import { HTTPException } from 'hono/http-exception';
import { errorFacts, type Log } from '../log.ts';
import { refused } from '../refusals.ts';
import { refusalOf } from '../services/transact.ts';
import { Problem, problemResponse } from './problem.ts';

const fault = refused('server.fault', 'The fault is ours. It is in the log under the instance given here.');

/** Turns whatever was thrown into a problem body. What it does not know stays inside: the caller gets the request's id. */
export const answerErrors =
  (log: Log) =>
  (error: Error, c: Context): Response => {
    if (error instanceof Problem) return problemResponse(c, error.refusal, error.headers);
    if (error instanceof HTTPException && error.status === 415) {
      return problemResponse(c, refused('request.not-json', 'Send the body as application/json.'));
    }
    if (error instanceof HTTPException && error.status === 400) {
      return problemResponse(c, refused('request.malformed', 'The body is not JSON.'));
    }
    const refusal = refusalOf(error);
    if (refusal) return problemResponse(c, refusal);
    log({ level: 'error', event: 'fault', requestId: c.get('requestId'), ...errorFacts(error) });
    return problemResponse(c, fault);
  };
