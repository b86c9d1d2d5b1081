/** As much of an OpenAPI 3.1 document as the reference page and the tests read. */
export interface Schema {
  readonly $ref?: string;
  readonly type?: string | readonly string[];
  readonly description?: string;
  readonly enum?: readonly unknown[];
  readonly const?: unknown;
  readonly format?: string;
  readonly pattern?: string;
  readonly minimum?: number;
  readonly maximum?: number;
  readonly exclusiveMinimum?: number;
  readonly exclusiveMaximum?: number;
  readonly minLength?: number;
  readonly maxLength?: number;
  readonly minItems?: number;
  readonly maxItems?: number;
  readonly items?: Schema;
  readonly properties?: Readonly<Record<string, Schema>>;
  readonly additionalProperties?: boolean | Schema;
  readonly required?: readonly string[];
  readonly oneOf?: readonly Schema[];
  readonly anyOf?: readonly Schema[];
  readonly allOf?: readonly Schema[];
}

export interface Parameter {
  readonly name: string;
  readonly in: string;
  readonly required?: boolean;
  readonly description?: string;
  readonly schema?: Schema;
}

interface Content {
  readonly content?: Readonly<Record<string, { readonly schema?: Schema }>>;
}

export interface Operation {
  readonly operationId?: string;
  readonly summary?: string;
  readonly description?: string;
  readonly tags?: readonly string[];
  readonly parameters?: readonly Parameter[];
  readonly requestBody?: Content;
  readonly responses: Readonly<Record<string, Content & { readonly description: string }>>;
  /** roles that may, or 'everyone' */
  readonly 'x-roles'?: readonly string[];
}

export interface OpenApiDocument {
  readonly openapi: string;
  readonly info: { readonly title: string; readonly version: string; readonly description?: string };
  readonly paths: Readonly<Record<string, Readonly<Record<string, Operation>>>>;
  readonly components?: { readonly schemas?: Readonly<Record<string, Schema>> };
}

export interface Endpoint {
  readonly method: string;
  readonly path: string;
  readonly operation: Operation;
}

const methods = ['get', 'post', 'put', 'patch', 'delete'];

/** Every method of every path, in the document's order. */
export const endpointsOf = (document: OpenApiDocument): readonly Endpoint[] =>
  Object.entries(document.paths).flatMap(([path, item]) =>
    methods.flatMap((method) => {
      const operation = item[method];
      return operation ? [{ method: method.toUpperCase(), path, operation }] : [];
    }),
  );
