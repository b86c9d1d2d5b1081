import type { OpenApiDocument, Schema } from '../../apps/api/src/http/open-api-shape.ts';

type Below = (count: number) => number;

export interface Sampling {
  readonly document: OpenApiDocument;
  readonly below: Below;
  /** value of a string that is an id, by the name of its property */
  readonly idOf: (name: string) => string;
  /** chance in a hundred that a member that may be left out is there */
  readonly fullness: number;
}

/** The schema itself, where it is a reference. */
function resolved(document: OpenApiDocument, schema: Schema): Schema {
  const name = schema.$ref?.split('/').at(-1);
  return name === undefined ? schema : (document.components?.schemas?.[name] ?? {});
}

const dateTexts: Readonly<Record<string, string>> = {
  date: '2027-03-04',
  'date-time': '2027-03-04T10:00:00.000Z',
  email: 'somebody@guest.example',
};

function sampleText(schema: Schema, name: string, { below, idOf }: Sampling): string {
  if (schema.format === 'uuid') return idOf(name);
  const known = dateTexts[schema.format ?? ''];
  if (known !== undefined) return known;
  const least = schema.minLength ?? 0;
  const words = ['ham', 'rib-chop', 'hog', '4.20', 'tenderloin', '17', 'Rind on', 'lb'];
  const text = words[below(words.length)] ?? '';
  return text.length >= least ? text.slice(0, schema.maxLength ?? 80) : text.padEnd(least, 'x');
}

function sampleNumber(schema: Schema, below: Below): number {
  const least = schema.minimum ?? (schema.exclusiveMinimum ?? -1) + 1;
  const most = schema.maximum ?? (schema.exclusiveMaximum ?? least + 41) - 1;
  return least + below(Math.max(1, Math.min(40, most - least + 1)));
}

function sampleObject(schema: Schema, sampling: Sampling): Record<string, unknown> {
  const members = Object.entries(schema.properties ?? {}).filter(
    ([name]) => schema.required?.includes(name) || sampling.below(100) < sampling.fullness,
  );
  return Object.fromEntries(members.map(([name, member]) => [name, sampleOf(member, sampling, name)]));
}

/** A value that a schema of the document allows, as far as the schema says what it allows. */
export function sampleOf(schema: Schema, sampling: Sampling, name = ''): unknown {
  const { document, below } = sampling;
  const known = resolved(document, schema);
  const choices = known.oneOf ?? known.anyOf;
  if (choices) return sampleOf(choices[below(choices.length)] ?? {}, sampling, name);
  if (known.const !== undefined) return known.const;
  if (known.enum) return known.enum[below(known.enum.length)];
  const type = typeof known.type === 'string' ? known.type : known.type?.[below(known.type.length)];
  switch (type) {
    case 'object':
      return sampleObject(known, sampling);
    case 'array': {
      const count = Math.min(known.maxItems ?? 2, Math.max(known.minItems ?? 0, 1 + below(2)));
      return Array.from({ length: count }, () =>
        sampleOf(known.items ?? {}, sampling, name.replace(/s$/, '')),
      );
    }
    case 'integer':
    case 'number':
      return sampleNumber(known, below);
    case 'boolean':
      return below(2) === 0;
    case 'string':
      return sampleText(known, name, sampling);
    default:
      return null;
  }
}
