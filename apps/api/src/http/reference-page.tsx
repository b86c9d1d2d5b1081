/** @jsxImportSource hono/jsx */
import { type RefusalType, refusals } from '../refusals.ts';
import type { Endpoint, OpenApiDocument, Operation, Parameter } from './open-api-shape.ts';
import { endpointsOf } from './open-api-shape.ts';
import { problemAddress } from './problem.ts';
import { SchemaView } from './reference-schema.tsx';

const anchor = ({ method, path }: Endpoint): string =>
  `${method}-${path}`.replaceAll(/[^A-Za-z0-9]+/g, '-').toLowerCase();

/** A whole page without any script; its style is a file beside it. */
function Page({ title, children }: { readonly title: string; readonly children?: unknown }) {
  return (
    <html lang="en">
      <head>
        <meta charset="utf-8" />
        <meta name="viewport" content="width=device-width, initial-scale=1" />
        <title>{title}</title>
        <link rel="stylesheet" href="/api/reference.css" />
      </head>
      <body>{children}</body>
    </html>
  );
}

function Parameters({ list }: { readonly list: readonly Parameter[] }) {
  if (list.length === 0) return null;
  return (
    <table>
      <caption>In the address and the headers</caption>
      <thead>
        <tr>
          <th scope="col">Name</th>
          <th scope="col">Where</th>
          <th scope="col">What</th>
        </tr>
      </thead>
      <tbody>
        {list.map((parameter) => (
          <tr>
            <td>
              <b>{parameter.name}</b>
              {parameter.required ? '' : ' (may be left out)'}
            </td>
            <td>{parameter.in}</td>
            <td>
              {parameter.schema && <SchemaView schema={parameter.schema} />} {parameter.description}
            </td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}

function Answers({ operation }: { readonly operation: Operation }) {
  return (
    <table>
      <caption>Answers</caption>
      <thead>
        <tr>
          <th scope="col">Status</th>
          <th scope="col">When</th>
          <th scope="col">Body</th>
        </tr>
      </thead>
      <tbody>
        {Object.entries(operation.responses).map(([status, answer]) => (
          <tr>
            <td>{status}</td>
            <td>{answer.description}</td>
            <td>
              {Object.entries(answer.content ?? {}).map(([media, { schema }]) => (
                <div>
                  {media}: {schema && <SchemaView schema={schema} />}
                </div>
              ))}
            </td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}

function EndpointSection({ endpoint }: { readonly endpoint: Endpoint }) {
  const { method, path, operation } = endpoint;
  const body = operation.requestBody?.content?.['application/json']?.schema;
  return (
    <section id={anchor(endpoint)}>
      <h3>
        <code>
          {method} {path}
        </code>
      </h3>
      <p>
        {operation.summary} {operation.description}
      </p>
      <p>For: {(operation['x-roles'] ?? []).join(', ')}</p>
      <Parameters list={operation.parameters ?? []} />
      {body && (
        <div>
          <h4>Body</h4>
          <SchemaView schema={body} />
        </div>
      )}
      <Answers operation={operation} />
    </section>
  );
}

function Contents({ endpoints }: { readonly endpoints: readonly Endpoint[] }) {
  return (
    <nav aria-label="Contents">
      <ul>
        {endpoints.map((endpoint) => (
          <li>
            <a href={`#${anchor(endpoint)}`}>
              <code>
                {endpoint.method} {endpoint.path}
              </code>
            </a>{' '}
            {endpoint.operation.summary}
          </li>
        ))}
        <li>
          <a href="#problems">Problems</a>
        </li>
        <li>
          <a href="#shapes">Shapes</a>
        </li>
      </ul>
    </nav>
  );
}

function Problems() {
  return (
    <section id="problems">
      <h2>Problems</h2>
      <p>
        Every refusal is a body of RFC 9457 in <code>application/problem+json</code>; <code>errors</code>{' '}
        names the fields at fault and <code>instance</code> the request, for whoever reads the log.
      </p>
      <table>
        <thead>
          <tr>
            <th scope="col">Type</th>
            <th scope="col">Status</th>
            <th scope="col">Title</th>
          </tr>
        </thead>
        <tbody>
          {Object.entries(refusals).map(([type, { status, title }]) => (
            <tr>
              <td>
                <a href={problemAddress(type as RefusalType)}>{problemAddress(type as RefusalType)}</a>
              </td>
              <td>{status}</td>
              <td>{title}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}

/** The whole document, readable. */
export function ReferencePage({ document }: { readonly document: OpenApiDocument }) {
  const endpoints = endpointsOf(document);
  return (
    <Page title={`${document.info.title}: reference`}>
      <h1>{document.info.title}</h1>
      {(document.info.description ?? '').split('\n').map((paragraph) => (
        <p>{paragraph}</p>
      ))}
      <p>
        For machines: <a href="/api/openapi.json">OpenAPI {document.openapi}</a>.
      </p>
      <Contents endpoints={endpoints} />
      <main>
        <h2>Addresses</h2>
        {endpoints.map((endpoint) => (
          <EndpointSection endpoint={endpoint} />
        ))}
        <Problems />
        <section id="shapes">
          <h2>Shapes</h2>
          {Object.entries(document.components?.schemas ?? {}).map(([name, schema]) => (
            <section id={`shape-${name}`}>
              <h3>{name}</h3>
              {schema.description && <p>{schema.description}</p>}
              <SchemaView schema={schema} />
            </section>
          ))}
        </section>
      </main>
    </Page>
  );
}

/** What one problem type means: where its address leads. */
export function ProblemPage({ type }: { readonly type: RefusalType }) {
  const { status, title } = refusals[type];
  return (
    <Page title={title}>
      <main>
        <h1>{title}</h1>
        <p>
          Type <code>{problemAddress(type)}</code>, status {status}.
        </p>
        <p>
          <a href="/api/reference#problems">All problems</a>
        </p>
      </main>
    </Page>
  );
}
