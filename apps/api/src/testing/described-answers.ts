import { Ajv2020, type ValidateFunction } from 'ajv/dist/2020.js';
import addFormats from 'ajv-formats';
import { expect } from 'vitest';
import { openApiDocument } from '../http/api-routes.ts';
import { type Endpoint, endpointsOf } from '../http/open-api-shape.ts';

const document = openApiDocument();

/** Every method of every path that the document describes. */
export const endpoints: readonly Endpoint[] = endpointsOf(document);

// JSON Schema 2020-12 by a reference validator: not by the shapes that the document is made from.
const ajv = new Ajv2020({ strict: false, allErrors: true });
addFormats(ajv);
ajv.addSchema(document, 'document');

const pointer = (steps: readonly string[]): string =>
  steps.map((step) => encodeURIComponent(step.replaceAll('~', '~0').replaceAll('/', '~1'))).join('/');

const compiled = new Map<string, ValidateFunction>();

function validatorAt(...steps: readonly string[]): ValidateFunction {
  const $ref = `document#/${pointer(steps)}`;
  const known = compiled.get($ref) ?? ajv.compile({ $ref });
  compiled.set($ref, known);
  return known;
}

const problemMedia = 'application/problem+json';

/** RFC 9457, section 3.1: the members that every refusal here has. */
function expectProblem(answer: Response, body: unknown): void {
  const validate = validatorAt('components', 'schemas', 'Problem');
  expect(validate(body) ? [] : validate.errors).toEqual([]);
  expect(body).toMatchObject({
    type: expect.stringMatching(/^\/problems\/[a-z-]+\.[a-z-]+$/),
    status: answer.status,
    instance: `urn:uuid:${answer.headers.get('x-request-id')}`,
  });
  expect(answer.headers.get('cache-control')).toBe('no-store');
}

/** Statuses that the document leaves to HTTP: nothing is at an address, or it has no such method. */
const undescribed = new Set([404, 405]);

/**
 * Holds an answer against what the document says of it: its status, its media type, its body.
 * @returns the body, parsed where it is JSON
 */
export async function expectDescribed(
  { method, path, operation }: Endpoint,
  answer: Response,
): Promise<unknown> {
  const text = await answer.clone().text();
  const media = (answer.headers.get('content-type') ?? '').split(';')[0] ?? '';
  const body: unknown = media.endsWith('json') ? JSON.parse(text) : text;
  const described = operation.responses[String(answer.status)];
  if (media === problemMedia) expectProblem(answer, body);
  if (!described && media === problemMedia && undescribed.has(answer.status)) return body;
  expect(
    described,
    `${method} ${path} answered ${answer.status}, which is not described: ${text}`,
  ).toBeDefined();
  if (described?.content === undefined) {
    expect(text).toBe('');
    return undefined;
  }
  expect(Object.keys(described.content)).toContain(media);
  if (media === 'text/html') return body;
  const validate = validatorAt(
    ...['paths', path, method.toLowerCase(), 'responses', String(answer.status), 'content', media, 'schema'],
  );
  expect(validate(body) ? [] : validate.errors, `${method} ${path} ${answer.status}`).toEqual([]);
  return body;
}
