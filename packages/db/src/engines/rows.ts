/** Rows of a raw statement: postgres.js gives an array, PGlite an object. Cast counts to int4 in the statement. */
export function rows<T>(result: unknown): readonly T[] {
  if (Array.isArray(result)) return result as T[];
  return (result as { readonly rows: T[] }).rows;
}
