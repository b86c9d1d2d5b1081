import { describe, expect, it } from 'vitest';
import { openApiDocument } from '../../apps/api/src/http/api-routes.ts';
import { endpointsOf } from '../../apps/api/src/http/open-api-shape.ts';
import { jsonText } from '../harness/src/json-text.ts';

const document = openApiDocument();
const operations = endpointsOf(document).map(({ operation }) => operation);

describe('the OpenAPI document', () => {
  it('is kept in docs/openapi.json as the program gives it out (npm run documents writes it anew)', async () => {
    await expect(jsonText(document, 110)).toMatchFileSnapshot('../../docs/openapi.json');
  });

  it('names each operation once, with roles, a summary and a good answer first', () => {
    const ids = operations.map(({ operationId }) => operationId);
    expect(new Set(ids).size).toBe(ids.length);
    const poor = operations.filter(
      ({ summary, responses, ...more }) =>
        !summary || !more['x-roles']?.length || !/^2\d\d$/.test(Object.keys(responses)[0] ?? ''),
    );
    expect(poor.map(({ operationId }) => operationId)).toEqual([]);
  });

  it('points only at schemas that are there', () => {
    const known = Object.keys(document.components?.schemas ?? {});
    const named = [...JSON.stringify(document).matchAll(/"\$ref":"#\/components\/schemas\/([^"]+)"/g)];
    expect(named.length).toBeGreaterThan(20);
    expect(named.map(([, name]) => name).filter((name) => !known.includes(name ?? ''))).toEqual([]);
  });

  // JSON Schema draft 2020-12: a nullable component is a union; "all of" it and null is nothing at all.
  it('leaves no value that nothing fits', () => {
    expect(JSON.stringify(document)).not.toContain('"allOf"');
  });
});
