/** @jsxImportSource hono/jsx */
import type { Schema } from './open-api-shape.ts';

const shapeName = (ref: string): string => ref.slice(ref.lastIndexOf('/') + 1);

const types = (schema: Schema): string => {
  if (schema.const !== undefined) return JSON.stringify(schema.const);
  if (schema.enum) return schema.enum.map((value) => JSON.stringify(value)).join(' | ');
  return [schema.type ?? 'anything'].flat().join(' or ');
};

const limits = (schema: Schema): string =>
  [
    schema.format,
    schema.minimum !== undefined && `from ${schema.minimum}`,
    schema.exclusiveMinimum !== undefined && `above ${schema.exclusiveMinimum}`,
    schema.maximum !== undefined && `to ${schema.maximum}`,
    schema.exclusiveMaximum !== undefined && `below ${schema.exclusiveMaximum}`,
    schema.minLength !== undefined && `at least ${schema.minLength} characters`,
    schema.maxLength !== undefined && `at most ${schema.maxLength} characters`,
    schema.minItems !== undefined && `at least ${schema.minItems}`,
    schema.maxItems !== undefined && `at most ${schema.maxItems}`,
    schema.pattern !== undefined && `like ${schema.pattern}`,
  ]
    .filter(Boolean)
    .join(', ');

/** A schema as nested lists; a named one is a link to its own section. */
export function SchemaView({ schema }: { readonly schema: Schema }) {
  if (schema.$ref) {
    const name = shapeName(schema.$ref);
    return <a href={`#shape-${name}`}>{name}</a>;
  }
  const choices = schema.oneOf ?? schema.anyOf;
  if (choices) return <Choices among={choices} />;
  if (schema.allOf) return <Choices among={schema.allOf} joined />;
  if (schema.properties) return <Fields schema={schema} />;
  if (schema.items) {
    return (
      <>
        list{limits(schema) && ` (${limits(schema)})`} of <SchemaView schema={schema.items} />
      </>
    );
  }
  if (typeof schema.additionalProperties === 'object') {
    return (
      <>
        for each name: <SchemaView schema={schema.additionalProperties} />
      </>
    );
  }
  return (
    <>
      <code>{types(schema)}</code>
      {limits(schema) && ` ${limits(schema)}`}
    </>
  );
}

function Choices({ among, joined }: { readonly among: readonly Schema[]; readonly joined?: boolean }) {
  return (
    <>
      {joined ? 'all of' : 'one of'}
      <ul>
        {among.map((schema) => (
          <li>
            <SchemaView schema={schema} />
          </li>
        ))}
      </ul>
    </>
  );
}

function Fields({ schema }: { readonly schema: Schema }) {
  return (
    <ul class="fields">
      {Object.entries(schema.properties ?? {}).map(([name, field]) => (
        <li>
          <b>{name}</b>
          {schema.required?.includes(name) ? '' : ' (may be left out)'}: <SchemaView schema={field} />
          {field.description && <span class="note"> {field.description}</span>}
        </li>
      ))}
    </ul>
  );
}
